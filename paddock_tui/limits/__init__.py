"""Limits: every threshold by theme, declared once, and the ones in force in a garage."""

from types import ModuleType

from paddock_tui.limits import (
    aids,
    brakes,
    fuel,
    machine,
    matters,
    next_change,
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

__all__ = ["LIMITS", "THEMES", "Limit", "Limits", "fitting"]

_MODULES: tuple[tuple[str, ModuleType], ...] = (
    ("aids", aids),
    ("traction control", traction),
    ("brakes", brakes),
    ("tyre pressures", pressures),
    ("tyres", tyres),
    ("suspension", suspension),
    ("sag", sag),
    ("fuel", fuel),
    ("bike", machine),
    ("rider", rider),
    ("weather", weather),
    ("sound level", noise),
    ("what was written down", matters),
    ("next change", next_change),
)

THEMES: dict[str, str] = {
    one.rule: theme
    for theme, module in reversed(_MODULES)
    for one in vars(module).values()
    if isinstance(one, Limit)
}
"""The theme of each rule that has limits, in the words of the page that lists them."""
