"""How far two samples lie from each other, with an interval (Hodges and Lehmann).

Source: Hodges and Lehmann 1963; the intervals, free of any distribution, as in Hollander and Wolfe 1973,
sections 3.3 and 4.3.
"""

import math
from collections.abc import Sequence

import attrs

from paddock_tui.calc.chances import normal_quantile
from paddock_tui.calc.descriptive import median, numbers
from paddock_tui.calc.errors import within
from paddock_tui.calc.ranks import EXACT_UP_TO, ways


@attrs.frozen
class LocationShift:
    """A shift and its interval; `covers` is what the interval really covers, None: too few for one."""

    shift: float
    low: float | None = None
    high: float | None = None
    covers: float | None = None


def two_samples(first: Sequence[float], second: Sequence[float], covers: float = 0.95) -> LocationShift:
    """Return the median of all differences first - second, not the difference of medians, and its
    interval.
    """
    x, y = numbers("first sample", first), numbers("second sample", second)
    n, m = len(x), len(y)
    differences = sorted(a - b for a in x for b in y)
    if max(n, m) <= EXACT_UP_TO:
        return _between(differences, median(differences), covers, ways(n, m), math.comb(n + m, n))
    return _by_normal(differences, covers, n * m / 2.0, math.sqrt(n * m * (n + m + 1) / 12.0))


def _between(
    ordered: list[float], shift: float, covers: float, counts: Sequence[int], total: int
) -> LocationShift:
    """Leave out as many at each end as keep the interval from covering less than was asked for."""
    tail = (1.0 - within("cover", covers, 0.5, 0.9999)) / 2.0
    out, below = 0, 0
    while out < len(counts) and (below + counts[out]) / total <= tail:
        below += counts[out]
        out += 1
    if out == 0:
        return LocationShift(shift)
    return LocationShift(shift, ordered[out - 1], ordered[-out], 1.0 - 2.0 * below / total)


def _by_normal(ordered: list[float], covers: float, middle: float, sd: float) -> LocationShift:
    z = normal_quantile(1.0 - (1.0 - within("cover", covers, 0.5, 0.9999)) / 2.0)
    out = max(1, math.floor(middle - z * sd))
    return LocationShift(median(ordered), ordered[out - 1], ordered[-out], covers)
