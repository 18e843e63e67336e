"""Whole records: create, duplicate, rename with the references following, retire and bring back."""

import datetime as dt
from collections.abc import Mapping
from typing import Any

from paddock_tui.desk.edits.values import setting_value
from paddock_tui.records.edits import MISSING, AnyChange, Change, Create, Edit, Rekey, Rename, Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.former_ids import FORMER, former_ids
from paddock_tui.records.ids import is_id
from paddock_tui.records.paths import Ref
from paddock_tui.store.data import lookup
from paddock_tui.store.former_ids import matching
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.mentions import mentioning
from paddock_tui.store.patch import Patched, patch
from paddock_tui.store.references import reference_fields
from paddock_tui.store.render import render_line, render_table

_ID = "an id of lower-case letters, digits and hyphens, e.g. my-bike"


def creating(files: GarageFiles, ref: Ref, values: Mapping[str, Value]) -> Step | InputError:
    """Make the step that creates a record with these values, root values before tables."""
    wrong = _name_trouble(files, ref)
    if wrong is not None:
        return wrong
    from paddock_tui.store.schema_lines import schema_line_here

    text = schema_line_here(files.root, ref.kind) + record_text(values)
    return Step(f"new {ref.kind} {ref.id}", (Create(ref, text),))


def duplicating(files: GarageFiles, ref: Ref, new_id: str) -> Step | InputError:
    """Make the step that copies a record, comments and all, to another id."""
    wrong = _name_trouble(files, Ref(ref.kind, new_id))
    loaded = files.read(ref)
    if wrong is not None:
        return wrong
    if loaded is None or loaded.record is None:
        return InputError(f"{ref} cannot be read", "a record that can be read", "correct its file first")
    copied = patch(loaded.text, _set(loaded.data, ()))
    if not isinstance(copied, Patched):
        return InputError(f"{ref}: {copied.reason}", "a record that can be copied", "copy its file")
    return Step(f"{ref.kind} {ref.id} copied to {new_id}", (Create(Ref(ref.kind, new_id), copied.text),))


def renaming(files: GarageFiles, ref: Ref, new_id: str) -> Step | InputError:
    """Make the step that renames a record and every reference to it; one undo takes all of it back.

    The record keeps the old id: what is written on another laptop still means it.
    """
    wrong = _name_trouble(files, Ref(ref.kind, new_id), ref)
    if wrong is not None:
        return wrong
    changes: list[AnyChange] = []
    if files.path_of(ref) is None:
        return InputError(f"there is no {ref.kind} {ref.id}", "a record that is there", "g shows them all")
    for other in mentioning(files, ref.id):
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
    data = files.data(ref)
    former = [one for one in former_ids(data) if one not in (ref.id, new_id)]
    if data:  # a file that is no TOML can hold no more than its name
        changes.append(Change(ref, tuple(_set(data, (*former, ref.id)))))
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


def _set(data: Mapping[str, Any], former: tuple[str, ...]) -> list[Edit]:
    """List the edits after which a record has these former ids."""
    old, new = data.get(FORMER, MISSING), list(former) or MISSING
    return [Edit((FORMER,), old, new)] if old != new else []


def _name_trouble(files: GarageFiles, ref: Ref, renamed: Ref | None = None) -> InputError | None:
    """Return why a record cannot be called so; one that is `renamed` may have an id back that it had."""
    if not is_id(ref.id):
        return InputError(f'"{ref.id}"', _ID)
    had = [one.id for one in files.former.claims(ref) if one != renamed]
    if had:
        found = f"{ref.id} was the id of {had[0]}, and may still mean it on another laptop"
        return InputError(found, "a name that nothing had", "choose another name")
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
            paths = (path for path in matching(data, pattern) if lookup(data, path) == ref.id)
            edits += [Edit(path, ref.id, new_id) for path in paths]
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
