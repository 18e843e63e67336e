"""What a step takes out of the record that kept something open: said before, for it answers nothing."""

from collections.abc import Iterator, Mapping
from typing import Any

from paddock_tui.records.edits import MISSING, Change, Step
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.session import Session
from paddock_tui.store.data import after
from paddock_tui.store.garage import GarageFiles

_OPENS = frozenset({"incidents", "symptoms", "look", "lever", "work", "checks", "fatigue", "ice", "slept"})
"""The tables and values of a session of which an entry opens something by itself."""


def taken_out(files: GarageFiles, step: Step) -> str:
    """Name what was opened by what a step takes out of sessions; empty where it takes out nothing such."""
    return ", ".join(dict.fromkeys(name for change in step.changes for name in _of_change(files, change)))


def asked_before(files: GarageFiles, step: Step, *, ridden: bool) -> str:
    """Return what is asked before a step; empty where no session was ridden and nothing is taken out."""
    out = taken_out(files, step)
    if out:
        return f"takes out: {out}: enter yes, escape no"
    return "this session was ridden: enter changes it all the same, escape leaves it" if ridden else ""


def _of_change(files: GarageFiles, change: object) -> Iterator[str]:
    if not isinstance(change, Change) or change.ref.kind != "session":
        return
    gone = [edit for edit in change.edits if edit.new is MISSING and edit.path[0] in _OPENS]
    if not gone:
        return
    from paddock_tui.rules.short import short_message

    data = files.data(change.ref)
    less: Mapping[str, Any] = data
    for edit in gone:
        less = after(less, edit, lambda _: False)
    before, then = _opened(change.ref, data), _opened(change.ref, less)
    for kind, subject in before.keys() - then.keys():
        path = before[kind, subject]
        if any(edit.path[: len(path) - 1] == path[:-1] or path[0] == "answers" for edit in gone):
            yield short_message(kind, subject)


def _opened(ref: Ref, data: Mapping[str, Any]) -> dict[tuple[str, str], Path]:
    from paddock_tui.facts.opened_alone import opened_alone
    from paddock_tui.records.reading import read_record

    session = read_record("session", data).possible
    return opened_alone(ref.id, session) if isinstance(session, Session) else {}
