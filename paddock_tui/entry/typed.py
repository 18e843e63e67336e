"""What was typed for one field, as the plain value that its file holds."""

from typing import Any, cast

from paddock_tui.quantities import Quantity
from paddock_tui.records.common import Units
from paddock_tui.records.edits import Missing, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import Field
from paddock_tui.records.shapes import Amount, AmountOrWord, Shape

FAR_BAR = 0.4
"""A bare pressure further than this from the one before is asked about. Common practice, no source."""

_CHOSEN = {"C": "temperature", "km/h": "speed", "km": "distance", "kg": "mass", "l": "volume"}
"""The units of rows for which the garage or the rider may prefer another, and the name of that choice."""


def read_typed(field: Field, text: str, units: Units | None = None) -> Value | InputError:
    """Read what was typed on a field, bare numbers in the unit that this garage or rider prefers."""
    shape = field.shape
    preferred = bare_unit(shape, units)
    if preferred is not None and isinstance(shape, Amount | AmountOrWord):
        found = shape.read_in(text, preferred)
    else:
        found = shape.read(text)
    return found if isinstance(found, InputError) else cast("Value", shape.dump(found))


def bare_unit(shape: Shape[Any], units: Units | None) -> str | None:
    """Return the unit that a bare number is in where the garage or the rider chose one; else None."""
    amount = shape.amount if isinstance(shape, AmountOrWord) else shape
    wanted = _CHOSEN.get(amount.unit) if isinstance(amount, Amount) else None
    chosen = getattr(units, wanted) if units is not None and wanted is not None else None
    return chosen if isinstance(chosen, str) else None


def is_tyre_pressure(shape: Shape[Any]) -> bool:
    """Return whether bare numbers of a shape take their unit by the band in which they lie."""
    return isinstance(shape, Amount) and shape.dimension == "pressure" and shape.unit == "bar"


def far_from(field: Field, typed: Value, last: Value | Missing) -> Quantity | None:
    """Return the last pressure where the typed one is so far from it that its unit may be another."""
    shape = field.shape
    if not isinstance(shape, Amount) or not is_tyre_pressure(shape):
        return None
    old, new = shape.load(last), shape.load(typed)
    if isinstance(old, InputError) or isinstance(new, InputError):
        return None
    return old if abs(new.to("bar") - old.to("bar")) > FAR_BAR else None
