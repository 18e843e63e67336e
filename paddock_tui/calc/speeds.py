"""Speeds: what a limiter that counts in steps can be set to under a posted limit."""

import math

from paddock_tui.calc.errors import within


def limiter_figure_km_h(posted_km_h: float, step_km_h: float = 1.0) -> float:
    """Return the highest figure of a limiter that counts in steps of km/h which is not above the posted
    limit.
    """
    posted = within("posted limit", posted_km_h, 0.0, 400.0, "km/h")
    step = within("step of the limiter", step_km_h, 0.001, 100.0, "km/h")
    return math.floor(posted / step + 1e-9) * step
