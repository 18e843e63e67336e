"""What a typed figure is asked about before it is taken: one place for every way in.

On the screen a question is answered by enter; where nobody can be asked, what would be asked is refused.
"""

from collections.abc import Iterable, Iterator, Mapping

from paddock_tui.entry.typed import FAR_BAR
from paddock_tui.quantities import Quantity
from paddock_tui.records.common import TYRE_PRESSURE
from paddock_tui.records.edits import MISSING, Edit, Missing, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import field_at
from paddock_tui.records.impossible import is_outside, likely_slip
from paddock_tui.records.paths import Path, Ref
from paddock_tui.store.data import lookup

_READINGS = "pressures"


def questions(ref: Ref, data: Mapping[str, Value], edits: Iterable[Edit]) -> list[InputError]:
    """List what is asked about the edits of a record before they are made; `data` is how it stands."""
    found: list[InputError] = []
    units: dict[Path, Quantity] = {}
    for edit in edits:
        # A bare pressure far from the last one is refused where it is read: its unit may be another.
        asked = question(ref, data, edit.path, edit.new, MISSING)
        new = TYRE_PRESSURE.load(edit.new) if edit.path[:1] == (_READINGS,) else None
        if isinstance(new, Quantity) and edit.path[-1] in ("front", "rear"):
            other = units.setdefault(edit.path[:-1], new)
            if not asked and other.unit != new.unit:
                asked = f"{other} and {new}: two units in one entry?"
        if asked:
            found.append(InputError(asked, "an answer", "--yes takes it as it is", path=edit.path))
    return found


def question(
    ref: Ref, data: Mapping[str, Value], path: Path, new: Value | Missing, old: Value | Missing
) -> str:
    """Return what is asked about one figure; empty where nothing is."""
    return next(_asked(ref, data, path, new, old), "")


def _asked(
    ref: Ref, data: Mapping[str, Value], path: Path, new: Value | Missing, old: Value | Missing
) -> Iterator[str]:
    field = field_at(ref.kind, path)
    if field is None or new is MISSING or isinstance(new, Mapping):
        return
    value, band = field.shape.load(new), field.shape.band()
    if isinstance(value, InputError):
        return
    of_bike = path[:2] in (("setup", "adjusters"), ("setup", "offsets"))
    if not of_bike and is_outside(value, band):
        slip = likely_slip(value, field.shape)
        yield f"{field.label} cannot be {new}{f' ({slip})' if slip else ''}"
    if path[:1] == (_READINGS,) and isinstance(value, Quantity) and value.dimension == "pressure":
        yield from _of_pressure(data, path, value, old)


def _of_pressure(
    data: Mapping[str, Value], path: Path, value: Quantity, old: Value | Missing
) -> Iterator[str]:
    last = None if old is MISSING else TYRE_PRESSURE.load(old)
    if isinstance(last, Quantity) and abs(value.to("bar") - last.to("bar")) > FAR_BAR:
        yield f"{value}, while the last was {last}?"
    cold = sent_out_with(data, path[-1]) if path[1:2] == ("hot",) else None
    if cold is not None and value.to("bar") < cold.to("bar"):
        yield f"{value} hot is below {cold} cold: read again?"


def sent_out_with(data: Mapping[str, Value], end: str) -> Quantity | None:
    """Return the pressure that one end was sent out with: as set, else as read cold."""
    for key in (f"set_to_{end}", end):
        held = TYRE_PRESSURE.load(lookup(data, (_READINGS, "cold", key)))
        if isinstance(held, Quantity):
            return held
    return None
