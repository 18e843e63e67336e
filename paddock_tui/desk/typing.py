"""What is typed or chosen, turned into one step."""

import datetime as dt
import getpass
from collections.abc import Mapping, Sequence
from typing import Any, cast

import attrs

from paddock_tui.records.bike import Bike
from paddock_tui.records.common import Units
from paddock_tui.records.edits import MISSING, Change, Edit, Missing, Step, Value
from paddock_tui.records.fielding import Field, field_at
from paddock_tui.records.paths import Path, Ref, parse, spell
from paddock_tui.records.shapes import Amount, AmountOrWord
from paddock_tui.records.trouble import Trouble
from paddock_tui.rules import Finding
from paddock_tui.store.data import lookup, same
from paddock_tui.store.garage import GarageFiles

_BARE = {"C": "temperature", "km/h": "speed", "km": "distance", "kg": "mass", "l": "volume"}
"""The units of rows for which the garage or the rider may prefer another, and the name of that choice."""


def field_of(files: GarageFiles, ref: Ref, path: Path) -> Field | None:
    """Give the field at a path of a record, with the shapes of its bike."""
    loaded = files.read(ref)
    record = loaded.record if loaded is not None else None
    named = getattr(record, "bike", None) if ref.kind in ("session", "profile") else None
    bike = files.read(Ref("bike", named)) if isinstance(named, str) else None
    known = bike.record if bike is not None and isinstance(bike.record, Bike) else None
    return field_at(ref.kind, path, record, known)


def setting(
    files: GarageFiles, ref: Ref, wanted: Sequence[tuple[str, str]], units: Units | None = None
) -> Step | list[Trouble]:
    """Make one step of path and text pairs; an empty text clears. All troubles at once."""
    edits: list[Edit] = []
    troubles: list[Trouble] = []
    data = files.data(ref)
    for spelled, text in wanted:
        path = parse(spelled)
        field = field_of(files, ref, path) if path is not None else None
        if path is None or field is None:
            troubles.append(_no_such_path(ref, spelled))
            continue
        new = MISSING if not text.strip() else read_typed(field, text, units)
        if isinstance(new, Trouble):
            troubles.append(attrs.evolve(new, path=path))
            continue
        edit = _edit(data, path, new)
        if edit is not None:
            edits.append(edit)
    if troubles:
        return troubles
    return Step(_label(files, ref, edits), (Change(ref, tuple(edits)),) if edits else ())


def setting_value(files: GarageFiles, ref: Ref, path: Path, value: Value | Missing) -> Step:
    """Make one step that puts a plain value at a path."""
    edit = _edit(files.data(ref), path, value)
    edits = [edit] if edit is not None else []
    return Step(_label(files, ref, edits), (Change(ref, tuple(edits)),) if edits else ())


def clearing(files: GarageFiles, ref: Ref, path: Path) -> Step:
    """Make one step that clears a value to 'not known'."""
    return setting_value(files, ref, path, MISSING)


def read_typed(field: Field, text: str, units: Units | None = None) -> Value | Trouble:
    """Read what was typed on a field, bare numbers in the unit that this garage or rider prefers."""
    shape = field.shape
    preferred = _preferred(shape, units)
    if preferred is not None and isinstance(shape, Amount | AmountOrWord):
        found = shape.read_in(text, preferred)
    else:
        found = shape.read(text)
    return found if isinstance(found, Trouble) else cast("Value", shape.dump(found))


def accepting(
    files: GarageFiles, ref: Ref, finding: Finding, reason: str, now: dt.datetime, initials: str | None
) -> Step:
    """Make the step that accepts a serious finding: reason, who, when, and the facts as they read now."""
    path = ("accepted", finding.rule, finding.subject)
    value: Mapping[str, Value] = {
        "reason": reason.strip(),
        "by": initials or login(),
        "at": now.time().replace(microsecond=0),
        "facts": finding.facts,
    }
    old = lookup(files.data(ref), path)
    label = f"accepted: {finding.message}"
    if isinstance(old, Mapping):
        edits = [_edit(files.data(ref), (*path, key), item) for key, item in value.items()]
        return Step(label, (Change(ref, tuple(edit for edit in edits if edit is not None)),))
    return Step(label, (Change(ref, (Edit(path, MISSING, value),)),))


def withdrawing(files: GarageFiles, ref: Ref, rule: str, subject: str) -> Step | None:
    """Make the step that takes an acceptance back; None where there is none."""
    path = ("accepted", rule, subject)
    old = lookup(files.data(ref), path)
    if not isinstance(old, Mapping):
        return None
    return Step(f"no longer accepted: {rule} {subject}", (Change(ref, (Edit(path, old, MISSING),)),))


def login() -> str:
    """Give the name of whoever is logged in; 'rider' where the system does not say."""
    try:
        return getpass.getuser()
    except (OSError, KeyError, ImportError):
        return "rider"


def shown(value: Value | Missing, field: Field | None = None) -> str:
    """Write a plain value for the last line."""
    if value is MISSING:
        return "not known"
    if isinstance(value, Mapping):
        return "a table"
    loaded = field.shape.load(value) if field is not None else None
    if field is not None and not isinstance(loaded, Trouble):
        return field.shape.show(loaded)
    return str(value)


def _edit(data: Mapping[str, Any], path: Path, new: Value | Missing) -> Edit | None:
    """Give the edit that puts a value at a path; None where it stands there already."""
    old = lookup(data, path)
    if (old is MISSING and new is MISSING) or (new is not MISSING and old is not MISSING and same(old, new)):
        return None
    return Edit(path, old, new)


def _label(files: GarageFiles, ref: Ref, edits: Sequence[Edit]) -> str:
    if not edits:
        return "nothing to change"
    words = []
    for edit in edits:
        field = field_of(files, ref, edit.path)
        name = field.label if field is not None else spell(edit.path)
        words.append(f"{name} {shown(edit.old, field)} -> {shown(edit.new, field)}")
    return "; ".join(words)


def _preferred(shape: object, units: Units | None) -> str | None:
    amount = shape.amount if isinstance(shape, AmountOrWord) else shape
    wanted = _BARE.get(amount.unit) if isinstance(amount, Amount) else None
    return getattr(units, wanted) if units is not None and wanted is not None else None


def _no_such_path(ref: Ref, spelled: str) -> Trouble:
    return Trouble(
        f'"{spelled}"', f"a path of a {ref.kind}", f"see them with: paddock-tui show GARAGE {ref} --paths"
    )
