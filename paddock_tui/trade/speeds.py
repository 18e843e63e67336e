"""Speeds: metres per second and the figures that are posted."""

import math
from typing import Final

from paddock_tui.trade.errors import within

M_S_PER_KM_H: Final = 1.0 / 3.6
M_S_PER_MPH: Final = 0.44704
"""Exact: 1609.344 m in 3600 s. Source: NIST SP 811 (2008), appendix B."""


def m_s_from_km_h(speed_km_h: float) -> float:
    """Return the speed in m/s from km/h."""
    return _speed(speed_km_h) * M_S_PER_KM_H


def km_h_from_m_s(speed_m_s: float) -> float:
    """Return the speed in km/h from m/s."""
    return _speed(speed_m_s) / M_S_PER_KM_H


def km_h_from_mph(speed_mph: float) -> float:
    """Return the speed in km/h from miles an hour."""
    return _speed(speed_mph) * M_S_PER_MPH / M_S_PER_KM_H


def limiter_figure_km_h(posted_km_h: float, step_km_h: float = 1.0) -> float:
    """Return the highest figure of a limiter that counts in steps of km/h which is not above the posted
    limit.
    """
    posted = within("posted limit", posted_km_h, 0.0, 400.0, "km/h")
    step = within("step of the limiter", step_km_h, 0.001, 100.0, "km/h")
    return math.floor(posted / step + 1e-9) * step


def _speed(speed: float) -> float:
    return within("speed", speed, 0.0, 1000.0)
