"""What everyday instruments of a paddock can tell, and what their errors make of a figure worked out of them.

The errors are those of common thermometers, hygrometers and tapes as they are used, common practice, no
source: better ones are worth reading more exactly, and no figure is better than what it was read with.
"""

import itertools
from collections.abc import Callable, Mapping
from typing import Final

from paddock_tui.calc.errors import Inconsistent, OutOfRange

THERMOMETER_K: Final = 1.0
HYGROMETER_PERCENT: Final = 5.0
TAPE_MM: Final = 1.0
ROLLED_SHARE: Final = 0.01
"""A circumference rolled off along the floor: tape, pressure and load."""
MARKING_ROLLS_LESS: Final = (0.01, 0.03)
"""How much less a loaded tyre rolls than its marking says, least and most."""


def band(
    figure: Callable[[Mapping[str, float]], float],
    at: Mapping[str, float],
    either: Mapping[str, float],
    bounds: Mapping[str, tuple[float, float]] | None = None,
) -> tuple[float, float]:
    """Return the least and greatest figure with each input at either end of its error.

    Exact where the figure rises or falls with each input over its error. `bounds` keep an input within what
    it can be (a humidity never over 100 %). Ends that the figure's method refuses are passed over; where it
    refuses all of them the figure itself, with no error, is both ends.
    """
    keys = tuple(key for key in either if key in at)
    found = []
    for signs in itertools.product((-1.0, 1.0), repeat=len(keys)):
        moved = dict(at)
        for key, sign in zip(keys, signs, strict=True):
            low, high = (bounds or {}).get(key, (float("-inf"), float("inf")))
            moved[key] = min(max(at[key] + sign * either[key], low), high)
        try:
            found.append(figure(moved))
        except (OutOfRange, Inconsistent):
            continue
    return (min(found), max(found)) if found else (figure(at), figure(at))
