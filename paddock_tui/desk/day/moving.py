"""A rider is moved to another group on the day: one step keeps the group, from which, by whom and when."""

import datetime as dt
import re
from collections.abc import Mapping

from paddock_tui.desk.edits.refusals import refusals
from paddock_tui.entry.numbering import next_number
from paddock_tui.records.edits import MISSING, Change, Edit, Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.store.data import lookup
from paddock_tui.store.garage import GarageFiles

MOVED = re.compile(r"\s*moved\s+(?:to\s+)?(.+?)\s+(?:by\s+)?([^\W\d_]{1,4})\s*", re.IGNORECASE)
"""`moved novice JM`: the group from now on, and the initials of whoever moved the rider."""


def moved_to(text: str) -> tuple[str, str] | None:
    """Return the group and the initials of a line that moves a rider; None where it says something else."""
    found = MOVED.fullmatch(text)
    return (found[1].casefold(), found[2].upper()) if found is not None else None


def moving(files: GarageFiles, session: Ref, group: str, by: str, now: dt.datetime) -> Step | InputError:
    """Make the step that moves the rider of a session to another group of its day."""
    data = files.data(session)
    named, rider, bike = (data.get(key) for key in ("day", "rider", "bike"))
    if not isinstance(named, str) or not isinstance(rider, str) or not isinstance(bike, str):
        return InputError("this session has no day, rider or bike", "all three", "enter them on its page")
    day = Ref("day", named)
    held = files.data(day)
    entry = lookup(held, ("entries", rider, bike))
    known = entry if isinstance(entry, Mapping) else {}
    before = known.get("group", held.get("group"))
    if before == group:
        return InputError(f"{rider} rides with {group} already", "another group")
    number = str(next_number(known, "moves"))
    at = now.time().replace(second=0, microsecond=0, tzinfo=None)
    move: dict[str, Value] = {"from": before} if isinstance(before, str) else {}
    move |= {"to": group, "by": by, "at": at}
    place = ("entries", rider, bike)
    edits = [
        Edit((*place, "group"), known.get("group", MISSING), group),
        Edit((*place, "moves", number), MISSING, move),
    ]
    if not known:
        edits = [Edit(place, MISSING, {"group": group, "moves": {number: move}})]
    against = refusals(files, day, edits)
    if against:
        return against[0]
    way = f"from {before} to {group}" if before else f"to {group}"
    return Step(f"{rider} moved {way} by {by}", (Change(day, tuple(edits)),))
