"""Whole records: create, duplicate, rename with the references following, retire and bring back."""

import datetime as dt
from collections.abc import Mapping
from typing import Any

from paddock_tui.desk.edits.values import setting_value
from paddock_tui.records.edits import MISSING, AnyChange, Change, Create, Edit, Rekey, Rename, Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import ANY
from paddock_tui.records.ids import is_id
from paddock_tui.records.paths import Path, Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.references import reference_fields
from paddock_tui.store.render import render_line, render_table

_ID = "an id of lower-case letters, digits and hyphens, such as my-bike"


def creating(files: GarageFiles, ref: Ref, values: Mapping[str, Value]) -> Step | InputError:
    """Make the step that creates a record with these values, root values before tables."""
    wrong = _name_trouble(files, ref)
    if wrong is not None:
        return wrong
    return Step(f"new {ref.kind} {ref.id}", (Create(ref, record_text(values)),))


def duplicating(files: GarageFiles, ref: Ref, new_id: str) -> Step | InputError:
    """Make the step that copies a record, comments and all, to another id."""
    wrong = _name_trouble(files, Ref(ref.kind, new_id))
    loaded = files.read(ref)
    if wrong is not None:
        return wrong
    if loaded is None or loaded.record is None:
        return InputError(f"{ref} cannot be read", "a record that can be read", "correct its file first")
    return Step(f"{ref.kind} {ref.id} copied to {new_id}", (Create(Ref(ref.kind, new_id), loaded.text),))


def renaming(files: GarageFiles, ref: Ref, new_id: str) -> Step | InputError:
    """Make the step that renames a record and every reference to it; one undo takes all of it back."""
    wrong = _name_trouble(files, Ref(ref.kind, new_id))
    if wrong is not None:
        return wrong
    changes: list[AnyChange] = []
    if files.path_of(ref) is None:
        return InputError(f"there is no {ref.kind} {ref.id}", "a record that is there", "g shows them all")
    for other in files.mentioning(ref.id):
        loaded = files.read(other)
        if other != ref and (loaded is None or loaded.record is None):
            name = files.name_of(other)
            return InputError(
                f"{name} names it and cannot be read", "a file that can be read", "correct it first"
            )
        edits = tuple(_following(other.kind, files.data(other), ref, new_id))
        if edits:
            changes.append(Change(other, edits))
        changes += _entries_following(other, files.data(other), ref, new_id)
    return Step(f"{ref.kind} {ref.id} -> {new_id}", (*changes, Rename(ref, new_id)))


def retiring(files: GarageFiles, ref: Ref, on: dt.date) -> Step:
    """Make the step that hides a record from the lists since a day; references to it still resolve."""
    return setting_value(files, ref, ("retired",), on)


def bringing_back(files: GarageFiles, ref: Ref) -> Step:
    """Make the step that shows a retired record again."""
    return setting_value(files, ref, ("retired",), MISSING)


def record_text(values: Mapping[str, Value]) -> str:
    """Write a new record: its root values one a line, then its tables, each under its heading."""
    lines = [render_line((key,), value) for key, value in values.items() if not isinstance(value, Mapping)]
    for key, value in values.items():
        if isinstance(value, Mapping) and value:
            lines += ["", *render_table((key,), value)]
    return "\n".join(lines).lstrip("\n") + "\n"


def _name_trouble(files: GarageFiles, ref: Ref) -> InputError | None:
    if not is_id(ref.id):
        return InputError(f'"{ref.id}"', _ID)
    if files.path_of(ref) is not None:
        return InputError(
            f"there is a {ref.kind} {ref.id} already", "a name that is free", "choose another name"
        )
    return None


def _following(kind: str, data: Mapping[str, Any], ref: Ref, new_id: str) -> list[Edit]:
    """List the edits by which a record's references follow a rename."""
    edits: list[Edit] = []
    for pattern, wanted in reference_fields(kind):
        if wanted == ref.kind:
            edits += [
                Edit(path, ref.id, new_id) for path in _matching(data, pattern) if _at(data, path) == ref.id
            ]
    return edits


def _entries_following(day: Ref, data: Mapping[str, Any], ref: Ref, new_id: str) -> list[Rekey]:
    """Return the entries of a day that stand under the renamed rider or bike their new key."""
    entries = data.get("entries")
    found: list[Rekey] = []
    for rider, bikes in entries.items() if day.kind == "day" and isinstance(entries, Mapping) else ():
        if ref.kind == "rider" and rider == ref.id:
            found.append(Rekey(day, ("entries", rider), new_id))
        elif ref.kind == "bike" and isinstance(bikes, Mapping) and ref.id in bikes:
            found.append(Rekey(day, ("entries", rider, ref.id), new_id))
    return found


def _matching(data: Any, pattern: Path, at: Path = ()) -> list[Path]:
    if not pattern:
        return [at]
    if not isinstance(data, Mapping):
        return []
    keys = list(data) if pattern[0] == ANY else [pattern[0]] if pattern[0] in data else []
    return [path for key in keys for path in _matching(data[key], pattern[1:], (*at, key))]


def _at(data: Any, path: Path) -> Any:
    for key in path:
        data = data[key]
    return data
