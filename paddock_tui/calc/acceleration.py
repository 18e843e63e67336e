"""Mean figures of a run from one speed to another: acceleration and distance.

Speeds in m/s, times in s. Source: OpenStax University Physics 1, chapter 3.
"""

from paddock_tui.calc.errors import above, within


def mean_m_s2(speed_change_m_s: float, time_s: float) -> float:
    """Return the mean acceleration in m/s2; below nothing while slowing down."""
    change = within("change of speed", speed_change_m_s, -150.0, 150.0, "m/s")
    return change / above("time", time_s, 0.0, 600.0, "s")


def distance_m(from_m_s: float, to_m_s: float, time_s: float) -> float:
    """Return the distance in m of a steady change of speed: the mean speed times the time."""
    both = within("speed", from_m_s, 0.0, 150.0, "m/s") + within("speed", to_m_s, 0.0, 150.0, "m/s")
    return both / 2.0 * above("time", time_s, 0.0, 600.0, "s")
