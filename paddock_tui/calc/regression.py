"""A straight line through points: least squares, and the robust one of Theil and Sen.

Sources: Draper and Smith 1998, chapter 1, checked against the certified values of NIST StRD; Theil 1950 and
Sen 1968, the interval by Kendall's statistic as in Hollander and Wolfe 1973, section 9.3.
"""

import math
from collections import Counter
from collections.abc import Sequence

import attrs

from paddock_tui.calc.chances import normal_quantile
from paddock_tui.calc.descriptive import mean, median, numbers
from paddock_tui.calc.errors import Inconsistent, within


@attrs.frozen
class FittedLine:
    """Intercept and slope with their standard deviations, that of the residuals, R squared, F and r.

    The deviations and F are None where there are too few points, or none is off the line; R squared and r
    are None where all y are alike.
    """

    intercept: float
    slope: float
    intercept_sd: float | None
    slope_sd: float | None
    residual_sd: float | None
    r_squared: float | None
    f: float | None
    r: float | None


@attrs.frozen
class Slope:
    """A robust slope with its interval; None where there are too few points for one."""

    slope: float
    intercept: float
    low: float | None
    high: float | None


def least_squares(x: Sequence[float], y: Sequence[float]) -> FittedLine:
    """Fit a line; raises Inconsistent with fewer than two points, or where all x are alike."""
    xs, ys = _points(x, y)
    middle_x, middle_y = mean(xs), mean(ys)
    off_x, off_y = [one - middle_x for one in xs], [one - middle_y for one in ys]
    of_x = math.fsum(one * one for one in off_x)
    of_y = math.fsum(one * one for one in off_y)
    slope = math.fsum(a * b for a, b in zip(off_x, off_y, strict=True)) / of_x
    left = math.fsum((b - slope * a) ** 2 for a, b in zip(off_x, off_y, strict=True))
    explained = slope * slope * of_x
    freedom = len(xs) - 2
    sd = math.sqrt(left / freedom) if freedom > 0 else None
    r = None if of_y == 0.0 else max(-1.0, min(1.0, slope * math.sqrt(of_x / of_y)))
    return FittedLine(
        intercept=middle_y - slope * middle_x,
        slope=slope,
        intercept_sd=None if sd is None else sd * math.sqrt(1.0 / len(xs) + middle_x * middle_x / of_x),
        slope_sd=None if sd is None else sd / math.sqrt(of_x),
        residual_sd=sd,
        r_squared=None if of_y == 0.0 else max(0.0, 1.0 - left / of_y),
        f=explained / (sd * sd) if sd else None,
        r=r,
    )


def theil_sen(x: Sequence[float], y: Sequence[float], covers: float = 0.95) -> Slope:
    """Return the median of the slopes between all pairs of points, with an interval.

    Raises Inconsistent with fewer than two points, or where all x are alike.
    """
    xs, ys = _points(x, y)
    n = len(xs)
    slopes = sorted(
        (ys[j] - ys[i]) / (xs[j] - xs[i]) for i in range(n) for j in range(i + 1, n) if xs[i] != xs[j]
    )
    slope = median(slopes)
    z = normal_quantile(1.0 - (1.0 - within("cover", covers, 0.5, 0.9999)) / 2.0)
    tied = sum(
        count * (count - 1) * (2 * count + 5) for values in (xs, ys) for count in Counter(values).values()
    )
    sigma = math.sqrt(max(0.0, (n * (n - 1) * (2 * n + 5) - tied) / 18.0))
    low = round((len(slopes) - z * sigma) / 2.0) - 1
    high = round((len(slopes) + z * sigma) / 2.0)
    wide = low < 0 or high > len(slopes) - 1
    intercept = median(ys) - slope * median(xs)
    return Slope(slope, intercept, None if wide else slopes[low], None if wide else slopes[high])


def _points(x: Sequence[float], y: Sequence[float]) -> tuple[list[float], list[float]]:
    if len(x) != len(y):
        raise Inconsistent("points", f"{len(x)} x and {len(y)} y")
    xs, ys = numbers("x", x, 2), numbers("y", y, 2)
    if min(xs) == max(xs):
        raise Inconsistent("points", "all x are the same, so there is no slope")
    return xs, ys
