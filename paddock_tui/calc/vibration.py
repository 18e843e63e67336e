"""How fast an end bounces by itself, and how firmly it is damped: from rate and mass, or from a push.

One mass on one spring: f = sqrt(k / m) / 2 pi, rates in N/mm at the wheel, masses in kg on that wheel. What
swings freely dies by the same share each time: the decrement d = ln(first / last) / swings, and the damping
ratio z = d / sqrt(4 pi^2 + d^2). Linear spring, damping that goes with speed; friction alone takes the same
amount each time instead, and then no ratio holds. Sources: OpenStax College Physics 2e, 16.3; Inman,
Engineering Vibration, from memory.
"""

import math

from paddock_tui.calc.errors import Inconsistent, above, within

_MOST_HZ = 30.0


def natural_frequency_hz(wheel_rate_n_per_mm: float, mass_kg: float) -> float:
    """Return the frequency in Hz at which a mass bounces on its spring, undamped."""
    rate = above("wheel rate", wheel_rate_n_per_mm, 0.0, 2000.0, "N/mm")
    return math.sqrt(rate * 1000.0 / above("mass on the wheel", mass_kg, 0.0, 2000.0, "kg")) / (2.0 * math.pi)


def frequency_of_deflection_hz(deflection_mm: float, g_m_s2: float = 9.80665) -> float:
    """Return the frequency of a linear spring pressed so far in all by its load: sqrt(g / x) / 2 pi.

    The deflection is the whole one, preload counted at the wheel; sag alone gives too high a figure.
    """
    pressed = above("deflection under the load", deflection_mm, 0.0, 1000.0, "mm")
    return math.sqrt(g_m_s2 / (pressed / 1000.0)) / (2.0 * math.pi)


def critical_damping_n_s_per_m(wheel_rate_n_per_mm: float, mass_kg: float) -> float:
    """Return the damping in N s/m from which on nothing swings any more: 2 sqrt(k m)."""
    return 4.0 * math.pi * natural_frequency_hz(wheel_rate_n_per_mm, mass_kg) * mass_kg


def decrement(first: float, last: float, swings: float) -> float:
    """Return the logarithmic decrement of two peaks on the same side, so many whole swings apart."""
    above("first swing", first, 0.0, None)
    within("swings", swings, 0.5, 1000.0)
    if not 0.0 < last < first:
        raise Inconsistent("last swing", "it has to be smaller than the first, and above nothing")
    return math.log(first / last) / swings


def damping_ratio(first: float, last: float, swings: float) -> float:
    """Return the damping ratio of what swings freely: 0 never stops, 1 does not swing back at all."""
    found = decrement(first, last, swings)
    return found / math.hypot(2.0 * math.pi, found)


def damping_ratio_of(damping_n_s_per_m: float, wheel_rate_n_per_mm: float, mass_kg: float) -> float:
    """Return the damping ratio of a known damping in N s/m: c / (2 sqrt(k m))."""
    damping = within("damping", damping_n_s_per_m, 0.0, None, "N s/m")
    return damping / critical_damping_n_s_per_m(wheel_rate_n_per_mm, mass_kg)


def undamped_hz(counted_hz: float, ratio: float) -> float:
    """Return the undamped frequency of a counted one: f / sqrt(1 - z^2)."""
    counted = above("counted frequency", counted_hz, 0.0, _MOST_HZ, "Hz")
    return counted / math.sqrt(1.0 - within("damping ratio", ratio, 0.0, 0.99) ** 2)


def friction_n(gap_mm: float, wheel_rate_n_per_mm: float) -> float:
    """Return the friction in N that a gap between push and lift stands for: half the gap times the rate."""
    gap = within("gap between push and lift", gap_mm, 0.0, 200.0, "mm")
    return gap / 2.0 * above("wheel rate", wheel_rate_n_per_mm, 0.0, 2000.0, "N/mm")
