"""The day runs late: one step shifts what is still to come, in the timetable and in the sessions."""

import datetime as dt
import re
from collections.abc import Iterator, Mapping

from paddock_tui.desk.edits.refusals import refusals
from paddock_tui.desk.lookup import glances
from paddock_tui.entry.builtin import LATE
from paddock_tui.records.edits import Change, Edit, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.store.data import lookup
from paddock_tui.store.garage import GarageFiles

_LATE = re.compile(rf"\s*{LATE}\s*(-?\d{{1,3}})\s*(?:min)?\s*", re.IGNORECASE)


def late_minutes(text: str) -> int | None:
    """Return the minutes by which a line says that the day runs late, below zero early; else None."""
    found = _LATE.fullmatch(text)
    return int(found[1]) if found is not None else None


def delaying(files: GarageFiles, day: Ref, minutes: int, now: dt.datetime) -> Step | InputError:
    """Make the step that shifts the rest of a day: lines of the timetable and sessions not ridden yet.

    The rest begins now, or with the first session that should be out already; lunch and stops stay.
    """
    if not minutes:
        return InputError("late 0", "minutes, such as late 15", "late -5 goes five minutes earlier")
    data = files.data(day)
    date = data.get("date")
    if date != now.date():
        return InputError(f"{day.id} is not today", "the day that runs late", "change its times on its page")
    waiting = [
        one
        for one in glances(files, now.year)
        if one.date == date and not one.ridden and files.data(one.ref).get("day") == day.id
    ]
    begins = min((one.start for one in waiting if one.start != dt.time(0, 0)), default=now.time())
    begins = min(begins, now.time())
    edits: dict[Ref, list[Edit]] = {day: []}
    for path in _times(data):
        edits[day].append(Edit(path, *_shifted(lookup(data, path), minutes)))
    edits[day] = [edit for edit in edits[day] if _is_rest(data, edit, begins)]
    for one in waiting:
        start = files.data(one.ref).get("start")
        if isinstance(start, dt.time) and start >= begins:
            edits[one.ref] = [Edit(("start",), *_shifted(start, minutes))]
    return _step(files, edits, minutes)


def _step(files: GarageFiles, edits: Mapping[Ref, list[Edit]], minutes: int) -> Step | InputError:
    every = [edit for some in edits.values() for edit in some]
    if not every:
        return InputError(
            "nothing of today is still to come", "a session or a timetable to shift", "t, then e types one"
        )
    if any(edit.new == edit.old for edit in every):
        return InputError(f"{minutes} min would leave the day", "times of today", "type fewer minutes")
    for ref, some in edits.items():
        against = refusals(files, ref, some)
        if against:
            return against[0]
    lines = sum(1 for edit in every if edit.path[-1] in ("from", "start"))
    way = "later" if minutes > 0 else "earlier"
    changes = tuple(Change(ref, tuple(some)) for ref, some in edits.items() if some)
    return Step(f"{lines} starts go {abs(minutes)} min {way}; stops stay", changes)


def _times(data: Mapping[str, object]) -> Iterator[tuple[str, ...]]:
    """List the paths of the times in a day's timetable."""
    table = data.get("timetable")
    for group, slots in table.items() if isinstance(table, Mapping) else ():
        for number, slot in slots.items() if isinstance(slots, Mapping) else ():
            for key in ("from", "to"):
                if isinstance(slot, Mapping) and isinstance(slot.get(key), dt.time):
                    yield "timetable", str(group), str(number), key


def _is_rest(data: Mapping[str, object], edit: Edit, begins: dt.time) -> bool:
    """Return whether a time belongs to a line that starts no earlier than the rest of the day."""
    start = lookup(data, (*edit.path[:-1], "from"))
    return isinstance(start, dt.time) and start >= begins


def _shifted(old: object, minutes: int) -> tuple[dt.time, dt.time]:
    """Return a time and the time so many minutes later; itself where that is another day."""
    if not isinstance(old, dt.time):
        raise TypeError(old)
    then = dt.datetime.combine(dt.date(2000, 1, 2), old) + dt.timedelta(minutes=minutes)
    return old, then.time() if then.date() == dt.date(2000, 1, 2) else old
