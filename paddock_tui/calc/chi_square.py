"""The chi-square distribution, and the interval of a standard deviation that it gives.

The regularized incomplete gamma function by series and continued fraction (Abramowitz and Stegun 1964, 6.5.29
and 6.5.31), its quantile by halving. A deviation s of n figures that vary like one normal distribution lies
between s sqrt((n - 1) / q) of the upper and of the lower quantile.
"""

import math

import attrs

from paddock_tui.calc.errors import above, within

_TERMS = 500


@attrs.frozen
class DeviationBand:
    """A standard deviation with the interval in which the true one lies."""

    deviation: float
    low: float
    high: float


def below_chi_square(value: float, freedom: float) -> float:
    """Return the chance of a chi-square figure at or below a value."""
    half = above("degrees of freedom", freedom, 0.0, 10_000.0) / 2.0
    x = within("value", value, 0.0, None) / 2.0
    if x == 0.0:
        return 0.0
    lead = math.exp(half * math.log(x) - x - math.lgamma(half))
    return lead * _series(half, x) if x < half + 1.0 else 1.0 - lead * _fraction(half, x)


def chi_square_quantile(chance: float, freedom: float) -> float:
    """Return the value below which a chi-square figure lies with this chance."""
    wanted = within("chance", chance, 1e-6, 1.0 - 1e-6)
    low, high = 0.0, freedom + 100.0 + 20.0 * math.sqrt(2.0 * freedom)
    for _ in range(100):
        middle = (low + high) / 2.0
        low, high = (middle, high) if below_chi_square(middle, freedom) < wanted else (low, middle)
    return (low + high) / 2.0


def deviation_band(deviation: float, count: int, covers: float = 0.95) -> DeviationBand:
    """Return the interval of a standard deviation that was taken from `count` figures."""
    within("deviation", deviation, 0.0, None)
    freedom = within("figures", count, 2, 10_000) - 1
    tail = (1.0 - within("cover", covers, 0.5, 0.9999)) / 2.0
    low = deviation * math.sqrt(freedom / chi_square_quantile(1.0 - tail, freedom))
    return DeviationBand(deviation, low, deviation * math.sqrt(freedom / chi_square_quantile(tail, freedom)))


def _series(half: float, x: float) -> float:
    term = total = 1.0 / half
    for step in range(1, _TERMS):
        term *= x / (half + step)
        total += term
        if term < total * 1e-16:
            break
    return total


def _fraction(half: float, x: float) -> float:
    b = x + 1.0 - half
    c, d = 1e300, 1.0 / b
    found = d
    for step in range(1, _TERMS):
        a = -step * (step - half)
        b += 2.0
        d = 1.0 / (a * d + b)
        c = b + a / c
        found *= d * c
        if abs(d * c - 1.0) < 1e-15:
            break
    return found
