"""Limits: every threshold by theme, declared once, and the ones in force in a garage."""

from paddock_tui.limits import (  # noqa: F401 - register their limits
    aids,
    brakes,
    fuel,
    machine,
    matters,
    noise,
    pressures,
    rider,
    sag,
    suspension,
    traction,
    tyres,
    weather,
)
from paddock_tui.limits.core import LIMITS, Limit, Limits, fitting

__all__ = ["LIMITS", "Limit", "Limits", "fitting"]
