"""The clean laps of two sessions compared: how far apart, how sure of that, and the chance of it by luck.

It is about those laps only. The laps of one session share that session's luck, so this never tells why.
"""

from collections.abc import Sequence

import attrs

from paddock_tui.calc.ranks import mann_whitney
from paddock_tui.calc.shifts import two_samples

FEWEST = 3
"""Clean laps that each session has to have."""


@attrs.frozen
class Compared:
    """Later minus earlier in s (below zero: faster), its 95 % interval, and the two-sided chance by ranks."""

    shift_s: float
    low_s: float | None
    high_s: float | None
    chance: float
    exact: bool


def compared(earlier_s: Sequence[float], later_s: Sequence[float]) -> Compared | None:
    """Compare the clean laps of two sessions; None where one has fewer than three."""
    if min(len(earlier_s), len(later_s)) < FEWEST:
        return None
    shift = two_samples(later_s, earlier_s)
    ranked = mann_whitney(later_s, earlier_s)
    return Compared(shift.shift, shift.low, shift.high, ranked.chance, ranked.exact)
