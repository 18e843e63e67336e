"""What a return asks for: its groups, which of them are open, and where the value of each stands."""

from collections.abc import Mapping

from paddock_tui.desk.lookup import glance, on_dates, order
from paddock_tui.entry.numbering import next_number
from paddock_tui.entry.return_rows import SYMPTOMS, ReturnRow, groups
from paddock_tui.records.edits import MISSING, Missing, Value
from paddock_tui.records.paths import Path, Ref
from paddock_tui.store.data import lookup
from paddock_tui.store.garage import GarageFiles

CHANGE = "change: "
"""Begins the note in the next session that says the one change."""


def open_groups(files: GarageFiles, session: Ref) -> tuple[ReturnRow, ...]:
    """List the groups of a session's return, those of its symptoms that are known among them."""
    return groups(known_symptoms(files.data(session)))


def known_symptoms(data: Mapping[str, Value]) -> int:
    """Count the symptoms from the first on without a gap."""
    held = data.get(SYMPTOMS)
    there = held if isinstance(held, Mapping) else {}
    number = 0
    while isinstance(there.get(str(number + 1)), Mapping) and "what" in there[str(number + 1)]:  # type: ignore[operator]
        number += 1
    return number


def first_open(files: GarageFiles, session: Ref, passed: frozenset[str] = frozenset()) -> ReturnRow | None:
    """Return the first group that has no value and was not passed over; None where all are done."""
    known = known_symptoms(files.data(session))
    for group in open_groups(files, session):
        open_ = group.key not in passed and value_of(files, session, group) is MISSING
        if open_ and _is_asked(group, known):
            return group
    return None


def _is_asked(group: ReturnRow, known: int) -> bool:
    """Return whether a group is asked for: one symptom is enough, and its details once it is named."""
    if group.path[0] != SYMPTOMS:
        return True
    return known == 0 if group.path[2] == "what" else int(group.path[1]) <= known


def following(files: GarageFiles, session: Ref, group: ReturnRow) -> ReturnRow | None:
    """Return the group after this one that has no value; None behind the last.

    Of a symptom that is not named nothing more is asked.
    """
    found = open_groups(files, session)
    place = next((number for number, one in enumerate(found) if one.key == group.key), len(found))
    for one in found[place + 1 :]:
        named = lookup(files.data(session), (*one.path[:2], "what")) is not MISSING
        asked = one.path[0] != SYMPTOMS or one.path[2] == "what" or named
        if asked and value_of(files, session, one) is MISSING:
            return one
    return None


def after_this(files: GarageFiles, session: Ref) -> Ref | None:
    """Return the next session on this bike on the same day; None where there is none yet."""
    here = glance(session, files.data(session))
    if here is None:
        return None
    bike = files.data(session).get("bike")
    later = [
        one
        for one in on_dates(files, here.date, 1)
        if not one.ridden and order(one) > order(here) and files.data(one.ref).get("bike") == bike
    ]
    return min(later, key=order).ref if later else None


def place_of(files: GarageFiles, session: Ref, group: ReturnRow) -> tuple[Ref | None, Path]:
    """Return the record and the path of a group's value; no record: the next session is to be made."""
    if not group.of_next:
        return session, group.path
    ref = after_this(files, session)
    if group.reads != "change":
        return ref, group.path
    data = files.data(ref) if ref is not None else {}
    notes = data.get("notes")
    for number, note in notes.items() if isinstance(notes, Mapping) else ():
        if isinstance(note, Mapping) and str(note.get("text", "")).startswith(CHANGE):
            return ref, ("notes", str(number), "text")
    return ref, ("notes", str(next_number(data, "notes")), "text")


def value_of(files: GarageFiles, session: Ref, group: ReturnRow) -> Value | Missing:
    """Return what stands for a group."""
    ref, path = place_of(files, session, group)
    return lookup(files.data(ref), path) if ref is not None else MISSING
