"""Consumption learnt from refills: litres between two brims over the kilometres between them.

Only brim to brim counts: a tank that was merely topped up says nothing of its level. Every litre added
between two brims belongs to that stretch.
"""

from collections.abc import Mapping
from typing import NamedTuple

import attrs

from paddock_tui.calc.errors import within


@attrs.frozen
class Refill:
    """One filling: kilometres since the last one, litres added, whether to the brim, and the riding mode.

    The mode is that of the kilometres just ridden; None where it was not recorded.
    """

    km_since_last: float
    added_l: float
    to_brim: bool
    mode: str | None = None


@attrs.frozen
class LearntRate:
    """Consumption in l/100 km: all litres over all kilometres, and the lowest and highest stretch."""

    rate_l_per_100km: float
    lowest_l_per_100km: float
    highest_l_per_100km: float
    stretches: int
    km: float


class _Since(NamedTuple):
    """Kilometres and litres since the last brim, and the modes of those kilometres."""

    km: float = 0.0
    litres: float = 0.0
    modes: frozenset[str | None] = frozenset()


class _Stretches(NamedTuple):
    """The stretches of one mode: all litres, all kilometres, the lowest and highest rate, how many."""

    litres: float
    km: float
    lowest: float
    highest: float
    stretches: int


class Learning(NamedTuple):
    """What a run of refills teaches so far; `since` is None before the first brim."""

    since: _Since | None = None
    by_mode: Mapping[str, _Stretches] = {}

    def after(self, refill: Refill, shortest_km: float = 10.0) -> "Learning":
        """Return what it teaches with one more refill. Raises OutOfRange for a figure that cannot be."""
        within("kilometres since the last refill", refill.km_since_last, 0.0, 2000.0, "km")
        within("litres added", refill.added_l, 0.0, 60.0, "l")
        since = self.since
        if since is not None:
            modes = since.modes | {refill.mode} if refill.km_since_last > 0.0 else since.modes
            since = _Since(since.km + refill.km_since_last, since.litres + refill.added_l, modes)
        if not refill.to_brim:
            return Learning(since, self.by_mode)
        return Learning(_Since(), _closed(self.by_mode, since or _Since(), shortest_km))

    def rates(self) -> dict[str, LearntRate]:
        """Return the consumption for each riding mode that a whole stretch was ridden in."""
        return {
            mode: LearntRate(100.0 * one.litres / one.km, one.lowest, one.highest, one.stretches, one.km)
            for mode, one in self.by_mode.items()
        }


def _closed(by_mode: Mapping[str, _Stretches], since: _Since, shortest_km: float) -> Mapping[str, _Stretches]:
    """Count a stretch that ended with a brim, where it was ridden in one mode and is long enough."""
    km, litres, modes = since
    mode = next(iter(modes)) if len(modes) == 1 else None
    if mode is None or km < shortest_km or km <= 0.0 or litres <= 0.0:
        return by_mode
    rate = 100.0 * litres / km
    old = by_mode.get(mode, _Stretches(0.0, 0.0, rate, rate, 0))
    counted = _Stretches(
        old.litres + litres, old.km + km, min(old.lowest, rate), max(old.highest, rate), old.stretches + 1
    )
    return {**by_mode, mode: counted}
