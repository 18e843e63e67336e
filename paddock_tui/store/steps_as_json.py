"""Steps as plain JSON values and back, for the journal: exact, dates and tables included.

What is read may have been written by anybody: each reference is checked as the kind and id of a record.
"""

import datetime as dt
from collections.abc import Callable, Mapping, Sequence
from typing import Any

from paddock_tui.records.edits import (
    MISSING,
    AnyChange,
    Change,
    Create,
    Edit,
    Missing,
    Raw,
    Rekey,
    Remove,
    Rename,
    Step,
    Value,
)
from paddock_tui.records.ids import is_id
from paddock_tui.records.paths import FOLDERS, GARAGE, Ref

_MOMENTS: dict[str, Callable[[str], object]] = {
    "moment": dt.datetime.fromisoformat,
    "date": dt.date.fromisoformat,
    "time": dt.time.fromisoformat,
}


def dumped(step: Step) -> dict[str, Any]:
    """Write a step as what `json` takes."""
    return {"label": step.label, "changes": [_change(one) for one in step.changes]}


def loaded(given: Any) -> Step:
    """Read a step. Raises KeyError, TypeError or ValueError where it is none."""
    return Step(str(given["label"]), tuple(_change_of(one) for one in given["changes"]))


def _change(change: AnyChange) -> dict[str, Any]:
    about: dict[str, Any] = {"kind": change.ref.kind, "id": change.ref.id}
    match change:
        case Change():
            return {"do": "edit", **about, "edits": [_edit(one) for one in change.edits]}
        case Create():
            return {"do": "create", **about, "text": change.text}
        case Remove():
            return {"do": "remove", **about, "text": change.text}
        case Rename():
            return {"do": "rename", **about, "to": change.to}
        case Rekey():
            return {"do": "rekey", **about, "path": list(change.path), "to": change.to}


def _change_of(given: Any) -> AnyChange:
    ref = checked_ref(given["kind"], given["id"])
    match given["do"]:
        case "edit":
            return Change(ref, tuple(_edit_of(one) for one in given["edits"]))
        case "create":
            return Create(ref, str(given["text"]))
        case "remove":
            return Remove(ref, str(given["text"]))
        case "rename":
            return Rename(ref, checked_ref(ref.kind, given["to"]).id)
        case "rekey":
            return Rekey(ref, tuple(map(str, given["path"])), str(given["to"]))
    raise ValueError("no change of a kind that is known")


def checked_ref(kind: object, name: object) -> Ref:
    """Return the reference to a record. Raises ValueError where kind or id cannot be one."""
    if kind == GARAGE.kind and name == GARAGE.id:
        return GARAGE
    if kind not in FOLDERS or not isinstance(name, str) or not is_id(name):
        raise ValueError("no record has such a kind or id")
    return Ref(str(kind), name)


def _edit(edit: Edit) -> dict[str, Any]:
    made: dict[str, Any] = {"path": list(edit.path)}
    if edit.old is not MISSING:
        made["old"] = _value(edit.old)
    if edit.new is not MISSING:
        made["new"] = _value(edit.new)
    if edit.raw is not None:
        made["raw"] = {"line": edit.raw.line, "put": list(edit.raw.put), "took": list(edit.raw.took)}
    return made


def _edit_of(given: Any) -> Edit:
    raw = given.get("raw")
    exact = Raw(int(raw["line"]), tuple(map(str, raw["put"])), tuple(map(str, raw["took"]))) if raw else None
    return Edit(tuple(map(str, given["path"])), _value_of(given, "old"), _value_of(given, "new"), exact)


def _value(value: Value) -> Any:
    match value:
        case dt.datetime():
            return {"moment": value.isoformat()}
        case dt.date():
            return {"date": value.isoformat()}
        case dt.time():
            return {"time": value.isoformat()}
        case Mapping():
            return {"table": {key: _value(item) for key, item in value.items()}}
        case str() | bool() | int() | float():
            return value
        case Sequence():
            return [_value(item) for item in value]


def _value_of(given: Mapping[str, Any], key: str) -> Value | Missing:
    return _read(given[key]) if key in given else MISSING


def _read(given: Any) -> Any:
    if isinstance(given, list):
        return [_read(item) for item in given]
    if not isinstance(given, dict):
        return given
    ((kind, inside),) = given.items()
    if kind == "table":
        return {str(key): _read(item) for key, item in inside.items()}
    return _MOMENTS[kind](inside)
