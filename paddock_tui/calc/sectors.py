"""Sectors: the lap that the best of each would make, and where the time is.

Times in s. The ideal lap is the sum of the best sectors of one session: nobody has ridden it, and a sector
that cost the next one counts in it all the same. Arithmetic; no source is needed.
"""

from collections.abc import Mapping, Sequence

import attrs

from paddock_tui.calc.descriptive import median
from paddock_tui.calc.errors import Inconsistent, above


@attrs.frozen
class SectorTime:
    """One sector: its best time in s and the lap of it, the usual time in s, and what lies between."""

    number: int
    best_s: float
    best_lap: int
    usual_s: float

    @property
    def to_find_s(self) -> float:
        """How much of the usual time the best one saves."""
        return self.usual_s - self.best_s


@attrs.frozen
class IdealLap:
    """The best sectors put together, in s, with each sector, and the best lap with all of its sectors."""

    ideal_s: float
    sectors: tuple[SectorTime, ...]
    best_s: float
    best_lap: int

    @property
    def widest(self) -> SectorTime:
        """The sector in which best and usual are furthest apart; the first of equals."""
        return max(self.sectors, key=lambda one: (one.to_find_s, -one.number))


def ideal_lap(laps: Mapping[int, Sequence[float]]) -> IdealLap:
    """Return the ideal lap from the sector times of each lap by its number.

    Raises Inconsistent without a lap, or where the laps have not the same number of sectors (two or more).
    """
    if not laps:
        raise Inconsistent("sectors", "no lap has any")
    counts = {len(one) for one in laps.values()}
    if len(counts) != 1 or counts == {1} or counts == {0}:
        raise Inconsistent("sectors", "every lap needs the same number of them, two or more")
    for times in laps.values():
        for one in times:
            above("sector", one, 0.0, 3600.0, "s")
    found = tuple(_sector(place, laps) for place in range(counts.pop()))
    best = min(laps, key=lambda number: (sum(laps[number]), number))
    return IdealLap(sum(one.best_s for one in found), found, sum(laps[best]), best)


def _sector(place: int, laps: Mapping[int, Sequence[float]]) -> SectorTime:
    lap = min(laps, key=lambda number: (laps[number][place], number))
    return SectorTime(place + 1, laps[lap][place], lap, median([one[place] for one in laps.values()]))
