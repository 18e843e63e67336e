"""The laps of one session: which are clean, how fast they were, how they spread, and how they fall off.

A lap marked out, in or traffic is set aside. Of the others, one that took longer than the median by more than
three times the spread (1.4826 times the median absolute deviation, at least a thousandth of the median) is
set aside too: one-sided, since nobody is fast by mishap. The rule needs four laps. Common practice,
no source.
"""

import math
from collections.abc import Iterable

import attrs

from paddock_tui.calc.descriptive import deviation, median, spread
from paddock_tui.calc.errors import above
from paddock_tui.calc.regression import Slope, theil_sen

FACTOR = 3.0
LEAST_SHARE = 0.001
_FEWEST = 4


@attrs.frozen
class TimedLap:
    """One lap: its number, its time in s, and its mark ("" where it has none)."""

    number: int
    seconds: float
    mark: str = ""


@attrs.frozen
class Aside:
    """A lap that does not count, and why."""

    lap: TimedLap
    why: str


@attrs.frozen
class Stint:
    """The clean laps of a session in order, and those set aside."""

    clean: tuple[TimedLap, ...]
    aside: tuple[Aside, ...] = ()

    @property
    def times_s(self) -> list[float]:
        """The times of the clean laps."""
        return [one.seconds for one in self.clean]

    @property
    def best_s(self) -> float | None:
        """The fastest lap of all that did not leave or enter the pits; None without one."""
        timed = [*self.clean, *(one.lap for one in self.aside if one.lap.mark not in ("out", "in"))]
        return min((one.seconds for one in timed), default=None)

    @property
    def usual_s(self) -> float | None:
        """The median clean lap; None without one."""
        return median(self.times_s) if self.clean else None

    @property
    def spread_s(self) -> float | None:
        """Robust spread of the clean laps from lap to lap; None with fewer than three."""
        return spread(self.times_s) if len(self.clean) >= 3 else None

    @property
    def deviation_s(self) -> float | None:
        """Standard deviation of the clean laps; None with fewer than two."""
        return deviation(self.times_s) if len(self.clean) >= 2 else None

    @property
    def fall_off(self) -> Slope | None:
        """How many s each lap took longer than the one before, by all pairs; None with fewer than four."""
        if len(self.clean) < _FEWEST:
            return None
        return theil_sen([float(one.number) for one in self.clean], self.times_s)


def stint(laps: Iterable[TimedLap]) -> Stint:
    """Return part clean laps from the others; raises OutOfRange for a time that is not above zero."""
    given = sorted(laps, key=lambda one: one.number)
    for one in given:
        if not 0.0 < one.seconds < math.inf:
            above("lap", one.seconds, 0.0, None, "s")
    marked = [Aside(one, _MARKED.get(one.mark, one.mark)) for one in given if one.mark]
    free = [one for one in given if not one.mark]
    limit = _limit_s(free)
    slow = [
        Aside(one, f"{one.seconds - limit[0]:.2f} s over the median")
        for one in free
        if one.seconds > limit[1]
    ]
    clean = tuple(one for one in free if one.seconds <= limit[1])
    return Stint(clean, tuple(sorted((*marked, *slow), key=lambda one: one.lap.number)))


_MARKED = {"out": "out lap", "in": "in lap"}


def _limit_s(free: list[TimedLap]) -> tuple[float, float]:
    """Return the median and the time over which a lap does not count."""
    times = [one.seconds for one in free]
    if len(times) < _FEWEST:
        return 0.0, float("inf")
    middle = median(times)
    return middle, middle + FACTOR * max(spread(times), LEAST_SHARE * middle)
