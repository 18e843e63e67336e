"""A value taken from the line, as the piece it becomes: steps counted out, far pressures asked about."""

import re
from collections.abc import Mapping
from typing import Any, cast

from paddock_tui.entry.field_names import said_label
from paddock_tui.entry.line import Choice, LineContext, LineQuestion, Piece, Unread
from paddock_tui.entry.typed import far_from, is_tyre_pressure
from paddock_tui.entry.values import Taken
from paddock_tui.records.edits import MISSING, Missing, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import Field
from paddock_tui.records.paths import Path
from paddock_tui.records.shapes import Reference

_BARE = re.compile(r"[0-9.,]+")


def lookup(data: Mapping[str, Any], path: Path) -> Value | Missing:
    """Return the value at a path of plain data; MISSING where there is none."""
    here: Any = data
    for key in path:
        if not isinstance(here, Mapping) or key not in here:
            return MISSING
        here = here[key]
    return cast("Value", here)


def piece_of(
    taken: Taken, field: Field, start: int, text: str, context: LineContext
) -> Piece | LineQuestion | Unread:
    """Make the piece of a value; `start` is where its call begins."""
    label = said_label(context.kind, field)
    value = taken.value
    if taken.steps is not None:
        value = _stepped(field, taken.steps, context)
        if value is MISSING:
            said = _cannot_step(field, label, context)
            return Unread(start, taken.end, said, f"set it with = and a value, {field.shape.expected}")
    if value is MISSING:
        return Piece(start, taken.end, field.path, MISSING, label)
    if isinstance(field.shape, Reference):
        return _reference(taken, field, label, start, str(value), context)
    typed = text[taken.start : taken.end]
    if is_tyre_pressure(field.shape) and _BARE.fullmatch(typed):
        last = lookup(context.data, field.path)
        far = far_from(field, value, context.last.get(field.path, MISSING) if last is MISSING else last)
        if far is not None:
            ask = f"{label} {value}, while the last was {far}?"
            return LineQuestion(taken.start, taken.end, ask, (Choice(f"yes, {value}", str(value)),))
    return Piece(start, taken.end, field.path, value, label)


def _stepped(field: Field, steps: int, context: LineContext) -> Value | Missing:
    """Return the value so many steps further; MISSING where there is none."""
    old = lookup(context.data, field.path)
    held = field.shape.load(old) if old is not MISSING else None
    if held is None or isinstance(held, InputError):
        return MISSING
    found = field.shape.step(held, steps)
    return MISSING if found is None or found == held else cast("Value", field.shape.dump(found))


def _cannot_step(field: Field, label: str, context: LineContext) -> str:
    old = lookup(context.data, field.path)
    held = field.shape.load(old) if old is not MISSING else None
    if held is None or isinstance(held, InputError):
        return f"{label} is not known, so it cannot be stepped"
    shown = field.shape.show(held)
    if field.shape.step(held, 1) is None:
        return f"{label} {shown} has no steps"
    return f"{label} is at its end: {shown}"


def _reference(
    taken: Taken, field: Field, label: str, start: int, value: str, context: LineContext
) -> Piece | Unread:
    """Look an id up in the listing; the start of one will do where only one has it."""
    kind = field.shape.kind if isinstance(field.shape, Reference) else ""
    ids = context.ids(kind)
    if ids is None or value in ids:
        return Piece(start, taken.end, field.path, value, label)
    near = [one for one in ids if one.startswith(value)]
    if len(near) == 1:
        return Piece(start, taken.end, field.path, near[0], label)
    listed = ", ".join((near or list(ids))[:6]) or "there are none"
    return Unread(taken.start, taken.end, f'there is no {kind} "{value}"', f"one of: {listed}")
