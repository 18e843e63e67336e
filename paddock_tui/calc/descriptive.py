"""Figures that describe a few numbers: mean, spread, quantiles, and how each goes with the one before.

Sums are exact (`math.fsum`) and deviations are taken from the mean in a second pass, so that nothing is lost
where the numbers are large and their spread is small. Checked against the certified values of NIST StRD.
"""

import itertools
import math
from collections.abc import Sequence

from paddock_tui.calc.errors import Inconsistent, within

TO_DEVIATION = 1.4826
"""A median absolute deviation times this is a standard deviation of well-behaved numbers."""


def numbers(what: str, given: Sequence[float], least: int = 1) -> list[float]:
    """Return the numbers as floats; raises Inconsistent for too few, OutOfRange at one not finite."""
    if len(given) < least:
        raise Inconsistent(what, f"{len(given)} given, it takes at least {least}")
    values = [float(one) for one in given]
    if not all(map(math.isfinite, values)):
        for one in values:
            within(what, one, None, None)
    return values


def mean(given: Sequence[float]) -> float:
    """Return the mean; raises Inconsistent without a number."""
    values = numbers("numbers", given)
    return math.fsum(values) / len(values)


def deviation(given: Sequence[float]) -> float:
    """Return the standard deviation of a sample (n - 1); raises Inconsistent with fewer than two numbers."""
    values = numbers("numbers", given, 2)
    return math.sqrt(squares(values) / (len(values) - 1))


def squares(given: Sequence[float]) -> float:
    """Return the sum of squared deviations from the mean, corrected for the rounding of the mean itself."""
    middle = mean(given)
    off = [one - middle for one in given]
    return max(0.0, math.fsum(one * one for one in off) - math.fsum(off) ** 2 / len(off))


def autocorrelation(given: Sequence[float]) -> float:
    """Return the correlation of numbers with those one before; raises Inconsistent where all are alike."""
    values = numbers("numbers", given, 2)
    middle = mean(values)
    off = [one - middle for one in values]
    whole = math.fsum(one * one for one in off)
    if whole == 0.0:
        raise Inconsistent("numbers", "all are the same, so nothing goes with anything")
    return math.fsum(one * next_ for one, next_ in itertools.pairwise(off)) / whole


def quantile(given: Sequence[float], share: float) -> float:
    """Return the number below which a share of 0 to 1 lies, by straight line between neighbours.

    Source: Hyndman and Fan 1996, definition 7.
    """
    values = sorted(numbers("numbers", given))
    at = within("share", share, 0.0, 1.0) * (len(values) - 1)
    low = math.floor(at)
    high = min(low + 1, len(values) - 1)
    return values[low] + (at - low) * (values[high] - values[low])


def median(given: Sequence[float]) -> float:
    """Return the middle number."""
    return quantile(given, 0.5)


def absolute_deviation(given: Sequence[float]) -> float:
    """Return the median distance from the median, not scaled (MAD)."""
    middle = median(given)
    return median([abs(one - middle) for one in given])


def spread(given: Sequence[float]) -> float:
    """Return the spread that one odd number does not move: the MAD times 1.4826."""
    return TO_DEVIATION * absolute_deviation(given)
