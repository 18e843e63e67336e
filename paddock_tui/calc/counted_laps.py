"""Which laps of a session count where sessions are compared, by one spread for all sessions of a rider.

A handful of laps tells badly how far they scatter; those of a whole record tell it well. So the spread is
shared: the lower quartile of how far a lap lies from the one before, over that of a normal figure, which
neither a slow lap now and then nor a drift within the session moves much (von Neumann 1941 for successive
differences). A lap slower than the median by more than twice the spread is traffic or a mistake, and the
first two are warm-up while they are slower by more than one: nobody is fast by mishap. Common practice, no
source.
"""

import functools
import itertools
from collections.abc import Iterable

import attrs

from paddock_tui.calc.descriptive import mean, median, quantile, squares
from paddock_tui.calc.errors import above
from paddock_tui.calc.session_comparison import FEWEST

CUT, WARM_UP, MOST_WARM_UP = 2.0, 1.0, 2
PASSES = 2
QUARTILE = 0.450624
"""Lower quartile of how far two independent figures of standard normal distribution lie from each other."""

LEAST_SPREAD = 0.0005
"""Laps do not lie nearer each other than this share of one: a stopwatch and a line. No source."""


@attrs.frozen
class CountedLaps:
    """The mean in s of the laps that count, their sum of squared deviations in s^2, and how many they are."""

    mean_s: float
    squares: float
    count: int


def spread_of(sessions: Iterable[tuple[float, ...]]) -> float:
    """Return the spread in s from lap to lap that sessions share; raises Inconsistent without two laps."""
    given = [one for one in sessions if one]
    apart = [abs(after - before) for laps in given for before, after in itertools.pairwise(laps)]
    least = LEAST_SPREAD * median([median(laps) for laps in given])
    return max(quantile(apart, 0.25) / QUARTILE, least)


@functools.lru_cache(maxsize=8192)
def counted(laps_s: tuple[float, ...], spread_s: float) -> CountedLaps:
    """Return what the laps that count come to; at least the three fastest do, where there are three."""
    for lap in laps_s:
        above("lap", lap, 0.0, None, "s")
    kept = sorted(_warm(laps_s, spread_s))
    for _ in range(PASSES):
        limit = median(kept) + CUT * spread_s
        kept = kept[: max(FEWEST, sum(one <= limit for one in kept))]
    return CountedLaps(mean(kept), squares(kept), len(kept))


def _warm(laps_s: tuple[float, ...], spread_s: float) -> tuple[float, ...]:
    """Leave out the first laps while they are slow, at most two, and never so that less than three stay."""
    limit = median(laps_s) + WARM_UP * spread_s
    cold = 0
    while cold < min(MOST_WARM_UP, len(laps_s) - FEWEST) and laps_s[cold] > limit:
        cold += 1
    return laps_s[cold:]
