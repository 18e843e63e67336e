"""Chances: the normal distribution, and Student's, without a library of statistics.

Student's distribution is the incomplete beta function by its continued fraction (Abramowitz and Stegun 1964,
26.5.8 and 26.7.1), evaluated as Lentz does.
"""

import math
import statistics

from paddock_tui.calc.errors import above, within

_NORMAL = statistics.NormalDist()
_TINY = 1e-300
_TERMS = 500


def above_normal(z: float) -> float:
    """Return the chance of a standard normal figure above z, without loss in the far tail."""
    return 0.5 * math.erfc(z / math.sqrt(2.0))


def normal_quantile(chance: float) -> float:
    """Return the figure below which a standard normal one lies with this chance, between 0 and 1."""
    return _NORMAL.inv_cdf(above("chance", chance, 0.0, 1.0 - 1e-16))


def above_student(t: float, freedom: float) -> float:
    """Return the chance of a figure of Student's distribution above t, with these degrees of freedom."""
    above("degrees of freedom", freedom, 0.0, None)
    within("t", t, None, None)
    tail = 0.5 * _beta(freedom / (freedom + t * t), freedom / 2.0, 0.5)
    return tail if t >= 0.0 else 1.0 - tail


def _beta(x: float, a: float, b: float) -> float:
    """Return the regularized incomplete beta function."""
    if x <= 0.0 or x >= 1.0:
        return 0.0 if x <= 0.0 else 1.0
    lead = math.exp(
        math.lgamma(a + b) - math.lgamma(a) - math.lgamma(b) + a * math.log(x) + b * math.log1p(-x)
    )
    if x < (a + 1.0) / (a + b + 2.0):
        return lead * _fraction(x, a, b) / a
    return 1.0 - lead * _fraction(1.0 - x, b, a) / b


def _fraction(x: float, a: float, b: float) -> float:
    c, d = 1.0, _kept(1.0 - (a + b) * x / (a + 1.0))
    d = 1.0 / d
    found = d
    for m in range(1, _TERMS):
        even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
        odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
        step = 1.0
        for term in (even, odd):
            d = 1.0 / _kept(1.0 + term * d)
            c = _kept(1.0 + term / c)
            step = c * d
            found *= step
        if abs(step - 1.0) < 1e-15:
            break
    return found


def _kept(value: float) -> float:
    return value if abs(value) > _TINY else _TINY
