"""Springs: loads, rates, and what a linkage, a pair or a leaning fork makes of them.

Lengths in mm, forces in N, rates in N/mm, and Hooke's law F = k x throughout: progressive springs, air
springs and top-out springs need a narrower reading. Sources: Barton and Fieldhouse, Automotive Chassis
Engineering, 3.9.2.1 (wheel rate); Cossalter, Motorcycle Dynamics, 2nd ed. 2006 (rake), from memory.
"""

import math
from typing import Final

import attrs

from paddock_tui.calc.errors import above, within

G_M_S2: Final = 9.80665

_MOST_RATE = 2000.0
_MOST_MASS = 2000.0


def weight_n(mass_kg: float) -> float:
    """Weight in N of a mass in kg, with standard gravity."""
    return within("mass", mass_kg, 0.0, _MOST_MASS, "kg") * G_M_S2


def rate_from_load_n_per_mm(load_n: float, deflection_mm: float) -> float:
    """Return the rate from one load and the deflection it makes from free: k = F / x."""
    return within("load", load_n, 0.0, None, "N") / above("deflection", deflection_mm, 0.0, None, "mm")


def deflection_mm(load_n: float, rate_n_per_mm: float) -> float:
    """Deflection from free under a load: x = F / k."""
    return within("load", load_n, 0.0, None, "N") / _rate(rate_n_per_mm)


@attrs.frozen
class TwoLoads:
    """What two loads on one spring tell: its rate, and how far the first one had pressed it from free."""

    rate_n_per_mm: float
    first_deflection_mm: float


def rate_from_two_loads(first_n: float, second_n: float, further_mm: float) -> TwoLoads:
    """Return the rate from two loads and the further deflection between them: k = (F2 - F1) / dx, x1 = F1
    / k.
    """
    rate = above("second load over the first", second_n - first_n, 0.0, None, "N") / above(
        "further deflection", further_mm, 0.0, None, "mm"
    )
    return TwoLoads(rate, first_n / rate)


def pair_rate_n_per_mm(left_n_per_mm: float, right_n_per_mm: float) -> float:
    """Return the rate of two springs side by side, as in a fork: the sum."""
    return _rate(left_n_per_mm) + _rate(right_n_per_mm)


def series_rate_n_per_mm(first_n_per_mm: float, second_n_per_mm: float) -> float:
    """Return the rate of two springs one on the other: 1/k = 1/k1 + 1/k2."""
    return 1.0 / (1.0 / _rate(first_n_per_mm) + 1.0 / _rate(second_n_per_mm))


def wheel_rate_n_per_mm(spring_n_per_mm: float, motion_ratio: float) -> float:
    """Return the rate felt at the wheel through a linkage: k r^2, with r = spring travel / wheel travel
    (0.1 to
    1.5).

    Some texts turn the ratio round; a rising-rate linkage has another r at every height.
    """
    return _rate(spring_n_per_mm) * _ratio(motion_ratio) ** 2


def spring_for_wheel_rate_n_per_mm(wheel_n_per_mm: float, motion_ratio: float) -> float:
    """Spring rate that gives a wanted wheel rate: k_w / r^2."""
    return _rate(wheel_n_per_mm) / _ratio(motion_ratio) ** 2


def vertical_rate_n_per_mm(along_n_per_mm: float, rake_deg: float) -> float:
    """Vertical rate of a fork that leans by its rake from upright: k / cos^2(rake), 0 to 45 degrees."""
    rake = math.radians(within("rake", rake_deg, 0.0, 45.0, "degrees"))
    return _rate(along_n_per_mm) / math.cos(rake) ** 2


def _rate(rate_n_per_mm: float) -> float:
    return above("spring rate", rate_n_per_mm, 0.0, _MOST_RATE, "N/mm")


def _ratio(motion_ratio: float) -> float:
    return within("motion ratio, spring travel over wheel travel", motion_ratio, 0.1, 1.5)
