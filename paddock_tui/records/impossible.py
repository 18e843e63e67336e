"""Figures outside what can be: which, within what, and the slip that most likely made them."""

import datetime as dt
from collections.abc import Iterator
from decimal import Decimal
from typing import Any

from paddock_tui import quantities
from paddock_tui.quantities import Quantity
from paddock_tui.records.shapes import Shape

FigureBand = tuple[float, float, str]

_UNITS = {
    "pressure": ("bar", "psi", "kPa", "hPa"),
    "temperature": ("C", "F"),
    "length": ("mm", "cm", "m", "km", "in", "mi"),
    "speed": ("km/h", "mph", "m/s"),
    "mass": ("kg", "lb"),
    "volume": ("l", "ml", "US gal"),
    "torque": ("N m", "lbf ft"),
    "time": ("min", "s", "h"),
    "spring rate": ("N/mm", "kgf/mm", "lbf/in"),
    "power": ("kW", "hp"),
}
"""What a figure of each dimension may have been read in."""


def is_outside(value: Any, band: FigureBand | None) -> bool:
    """Return whether a value lies outside the band of its field; what has no band never does."""
    if band is None:
        return False
    low, high, unit = band
    if isinstance(value, Quantity):
        if not quantities.compatible(unit, value.dimension):
            return False
        return not low <= value.to(unit) <= high
    return isinstance(value, int | float) and not isinstance(value, bool) and not low <= value <= high


def likely_slip(value: Any, shape: Shape[Any]) -> str:
    """Name what explains a figure outside its band: another unit, the point, or either; empty for none."""
    band = shape.band()
    if band is None:
        return ""
    meant = next(_other_units(value, band), "")
    shifted = any(not is_outside(one, band) for one in _shifted(value))
    slips = [slip for slip in (meant, "a decimal point" if shifted else "") if slip]
    return f"{' or '.join(slips)}?" if slips else ""


def _other_units(value: Any, band: FigureBand) -> Iterator[str]:
    if not isinstance(value, Quantity):
        return
    for unit in _UNITS.get(value.dimension, ()):
        other = unit != value.unit and quantities.compatible(unit, value.dimension)
        if other and not is_outside(Quantity(value.number, unit), band):
            yield unit


def _shifted(value: Any) -> Iterator[Any]:
    """Give a figure with its point one or two places to the left, or one to the right."""
    for places in (-1, -2, 1):
        if isinstance(value, Quantity):
            yield Quantity(value.number.scaleb(places), value.unit)
        elif isinstance(value, int | float):
            yield float(Decimal(repr(value)).scaleb(places))


_HOUR, _HALF_A_DAY = 60, 12 * 60


def clock_slip(before: dt.time, after: dt.time) -> str:
    """Name the slip that explains a time which lies before what it follows; empty for none.

    A clock that was not set for summer time is off by an hour; a watch of twelve hours by twelve.
    """
    early = (before.hour - after.hour) * 60 + before.minute - after.minute
    if 0 < early <= _HOUR:
        return "the clock off by an hour?"
    return "afternoon?" if _HOUR < early <= _HALF_A_DAY and after.hour < 12 else ""
