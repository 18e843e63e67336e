"""Answering an item of a checklist: ok, to fix, not applicable, or open again; each is one step."""

import datetime as dt
from collections.abc import Iterable, Mapping

from paddock_tui.desk.edits.values import login
from paddock_tui.facts.checklists import OK, ItemState, day_place
from paddock_tui.records.edits import MISSING, Change, Edit, Step, Value
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.people import Rider
from paddock_tui.records.session import Session
from paddock_tui.store.data import blocked, lookup, same
from paddock_tui.store.garage import GarageFiles

ANSWERS = {"1": "ok", "2": "to fix", "3": "not applicable"}
"""The answers by the key that gives them."""

HOW = {"4": "on paper", "5": "by inspection"}
"""How a whole list was gone through elsewhere, by the key that says so."""

_OURS = ("status", "at", "by")


def answering(
    files: GarageFiles,
    about: Ref,
    item: str,
    status: str | None,
    now: dt.datetime,
    *,
    in_day: bool,
    text: str = "",
    by: str = "",
) -> Step | str:
    """Make the step that answers an item for a session, with the time and who; None opens it again.

    The day's items are kept in the day under this rider and bike, the others in the session. Gives
    the reason in words where nothing can hold the answer. `text` names the item in the label; `by` are the
    initials of whoever looked, where that is not the rider.
    """
    session = _record(files, about)
    if not isinstance(session, Session):
        return f"{about} cannot be read: correct its file first"
    day = Ref("day", session.day) if session.day is not None else None
    holder = about
    path: Path = ("checks", item)
    if in_day:
        place = day_place(session, _record(files, day) if day is not None else None)
        if isinstance(place, str) or day is None:
            return (
                place if isinstance(place, str) else "there is no day to save it in: s, then enter on its day"
            )
        holder, path = day, (*place, item)
    data = files.data(holder)
    if blocked(data, (*path, "status")) is not MISSING:
        return f"{files.name_of(holder)} has a value where the answers stand: edit the file"
    old = lookup(data, path)
    edits = (
        _opening(path, old)
        if status is None
        else _answering(path, old, _answer(files, session, status, now, by))
    )
    before = lookup(data, (*path, "status"))
    words = "open" if before is MISSING else str(before)
    if not edits:
        return f"{text or item} is open already" if status is None else f"{text or item}: {status} already"
    return Step(f"{words} -> {status or 'open'}: {text or item}", (Change(holder, edits),))


def answering_list(
    files: GarageFiles, about: Ref, items: Iterable[ItemState], how: str, by: str, now: dt.datetime
) -> Step | str:
    """Make the one step that answers items that are open: a list was gone through on paper, or by inspection.

    Who did it stands beside each answer, with how: 'IS, on paper'.
    """
    changes: dict[Ref, tuple[Edit, ...]] = {}
    for item in items:
        who = f"{by}, {how}"
        step = answering(files, about, item.id, OK, now, in_day=item.in_day, text=item.text, by=who)
        if not isinstance(step, Step):
            return step
        for change in step.changes:
            if isinstance(change, Change):
                changes[change.ref] = (*changes.get(change.ref, ()), *change.edits)
    made = tuple(Change(ref, edits) for ref, edits in changes.items())
    return (
        Step(f"the list, done {how}", made)
        if made
        else "nothing is open on this list: backspace opens an item again"
    )


def _answer(files: GarageFiles, session: Session, status: str, now: dt.datetime, by: str) -> dict[str, Value]:
    rider = _record(files, Ref("rider", session.rider)) if session.rider is not None else None
    initials = rider.initials if isinstance(rider, Rider) else None
    answer: dict[str, Value] = {"status": status}
    if session.date is None or session.date >= now.date():
        # What is typed on a later day has no time of its own day.
        answer["at"] = now.time().replace(microsecond=0)
    return answer | {"by": by or initials or login()}


def _answering(path: Path, old: object, answer: Mapping[str, Value]) -> tuple[Edit, ...]:
    """Add the table of an answer, or change only those of its lines that differ."""
    if not isinstance(old, Mapping):
        return (Edit(path, MISSING, answer),)
    found = []
    for key, value in answer.items():
        held = old.get(key, MISSING)
        if held is MISSING or not same(held, value):
            found.append(Edit((*path, key), held, value))
    return tuple(found)


def _opening(path: Path, old: object) -> tuple[Edit, ...]:
    """Drop the table of an answer; only its own lines where there is more in it."""
    if not isinstance(old, Mapping):
        return ()
    if set(old) <= set(_OURS):
        return (Edit(path, old, MISSING),)
    return tuple(Edit((*path, key), old[key], MISSING) for key in _OURS if key in old)


def _record(files: GarageFiles, ref: Ref) -> Record | None:
    loaded = files.read(ref)
    return loaded.record if loaded is not None else None
