"""One field as a row: its value as typed, in the preferred unit beside it, or what is wrong with it."""

import functools
from typing import Any

import attrs

from paddock_tui.entry.typing_kinds import COUNTED, choices_of, typing_kind
from paddock_tui.facts import FACTS
from paddock_tui.facts.core import PerSubject
from paddock_tui.pages.rows import NOTHING, Row
from paddock_tui.quantities import Quantity, compatible
from paddock_tui.records.common import AIR_PRESSURE, Units
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import value_at
from paddock_tui.records.fields_of_record import SET_UP, Field
from paddock_tui.records.paths import Path
from paddock_tui.store.data import lookup
from paddock_tui.store.garage import Loaded
from paddock_tui.text import printable

UNKNOWN_WORD = "not known"


def field_row(loaded: Loaded, field: Field, units: Units) -> Row:
    """Make the row of one field."""
    value = value_at(loaded.record, field.path) if loaded.record is not None else None
    row = Row(
        label=field.label,
        value=empty_word(loaded.ref.kind, field) if value is None else printable(field.shape.show(value)),
        aside=also_in(value, units) if field.shape is not AIR_PRESSURE else "",
        ref=loaded.ref,
        path=field.path,
        edit="" if value is None else field.shape.show(value),
        known=value is not None,
        typing=typing_kind(field.shape),
        choices=tuple(printable(one) for one in choices_of(field.shape)),
        unit=getattr(field.shape, "unit", "") if typing_kind(field.shape) in COUNTED else "",
    )
    return with_trouble(loaded, row)


def empty_word(kind: str, field: Field) -> str:
    """Return what is said of a field without a value: loud only for what a rule may wait for."""
    return UNKNOWN_WORD if _asked(kind, field.path) else NOTHING


@functools.cache
def _asked(kind: str, path: Path) -> bool:
    """Return whether a fact names this place as where it is entered; a set-up stands in two kinds."""
    role = "setup" if path[:1] == (SET_UP,) else kind
    return any(
        one.role in (kind, role)
        and len(one.path) == len(path)
        and all(_names(key, here, one.per) for key, here in zip(one.path, path, strict=True))
        for one in FACTS.values()
    )


def _names(key: str, here: str, per: PerSubject | None) -> bool:
    """Return whether a part of a fact's place, with its subject put in, is that of a field."""
    if per == "end":
        return here in (key.format(subject="front"), key.format(subject="rear"))
    return key.startswith("{") or key == here


def also_in(value: Any, units: Units) -> str:
    """Write an amount in the preferred unit where it was typed in another; empty where it is the same."""
    if not isinstance(value, Quantity):
        return ""
    wanted = {
        "pressure": units.pressure,
        "temperature": units.temperature,
        "speed": units.speed,
        "mass": units.mass,
        "volume": units.volume,
    }.get(value.dimension)
    if wanted is None or wanted == value.unit or not compatible(wanted, value.dimension):
        return ""
    return value.show(wanted)


def trouble_at(loaded: Loaded, path: Path) -> InputError | None:
    """Return what is wrong with the value at a path; None where it can be read or is not there."""
    return next((one for one in loaded.troubles if one.path == path), None)


def with_trouble(loaded: Loaded, row: Row) -> Row:
    """Show a value that cannot be read as it stands in the file, with what was expected and the mend."""
    trouble = trouble_at(loaded, row.path)
    if trouble is None:
        return row
    raw = lookup(loaded.data, row.path)
    text = raw if isinstance(raw, str) else trouble.found
    mend = f"; {trouble.mend}" if trouble.mend else ""
    said = printable(f"cannot be read: expected {trouble.expected}{mend}")
    return attrs.evolve(row, value=printable(text), trouble=said, edit=text, bar=None, known=False)
