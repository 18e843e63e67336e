"""The day runs late: one step shifts what is still to come, in the timetable and in the sessions."""

import datetime as dt
import re
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from paddock_tui.desk.day.moments import after, in_order
from paddock_tui.desk.edits.refusals import refusals
from paddock_tui.desk.lookup import Glance, glances
from paddock_tui.entry.builtin import LATE
from paddock_tui.records.edits import Change, Edit, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles

_LATE = re.compile(rf"\s*{LATE}\s*(-?\d{{1,3}})\s*(?:min)?\s*", re.IGNORECASE)


def late_minutes(text: str) -> int | None:
    """Return the minutes by which a line says that the day runs late, below zero early; else None."""
    found = _LATE.fullmatch(text)
    return int(found[1]) if found is not None else None


def delaying(files: GarageFiles, day: Ref, minutes: int, now: dt.datetime) -> Step | InputError:
    """Make the step that shifts the rest of a day: lines of the timetable and sessions not ridden yet.

    The rest begins now, or with the first session that should be out already; lunch and stops stay, and so
    does a line that was ridden early: one group is on the track at a time. What is shifted over midnight
    goes on after it, as long as the order of the lines tells that it does.
    """
    if not minutes:
        return InputError("late 0", "minutes, e.g. late 15", "late -5 goes five minutes earlier")
    data = files.data(day)
    slots = tuple(_slots(data))
    if not _goes_on(data.get("date"), slots, now):
        return InputError(f"{day.id} is not today", "the day that runs late", "change its times on its page")
    starts = tuple(_starts(files, day, data.get("date"), now))
    waiting = tuple((one.ref, at) for one, at in starts if not one.ridden)
    over = {at for one, at in starts if one.ridden} - {at for _, at in waiting}
    begins = min((at for _, at in waiting), default=now)
    begins = min(begins, now)
    by = dt.timedelta(minutes=minutes)
    rest = tuple(slot for slot in slots if slot.at >= begins and slot.at not in over)
    edits: dict[Ref, list[Edit]] = {day: [edit for slot in rest for edit in slot.shifted(by)]}
    for ref, at in waiting:
        if at >= begins:
            edits[ref] = list(_moved(at, at + by))
    if not _keeps_order(data.get("date"), slots, rest, by):
        return _leaves(minutes)
    if any((at + by).date() < at.date() for _, at in waiting if at >= begins):
        return _leaves(minutes)
    return _step(files, edits, minutes)


class _Slot(NamedTuple):
    """A line of the timetable: its group, where it stands, the moment it begins, and its end as written."""

    group: str
    path: tuple[str, ...]
    at: dt.datetime
    end: dt.time | None

    def shifted(self, by: dt.timedelta) -> Iterator[Edit]:
        """Give the edits that shift both ends."""
        yield Edit((*self.path, "from"), self.at.time(), (self.at + by).time())
        if self.end is not None:
            end = after(self.at, self.end)
            yield Edit((*self.path, "to"), self.end, (end + by).time())


def _slots(data: Mapping[str, object]) -> Iterator[_Slot]:
    """List the lines of a day's timetable that have a time, each as the moment that its order makes it."""
    table, date = data.get("timetable"), data.get("date")
    if not isinstance(table, Mapping) or type(date) is not dt.date:
        return
    for group, lines in table.items():
        timed = [
            (start, (str(number), slot))
            for number, slot in (lines.items() if isinstance(lines, Mapping) else ())
            if isinstance(slot, Mapping) and isinstance(start := slot.get("from"), dt.time)
        ]
        for at, (number, slot) in in_order(date, timed):
            end = slot.get("to")
            path = ("timetable", str(group), number)
            yield _Slot(str(group), path, at, end if isinstance(end, dt.time) else None)


def _goes_on(date: object, slots: tuple[_Slot, ...], now: dt.datetime) -> bool:
    """Return whether a day is today's, or yesterday's with a line that begins after midnight."""
    if date == now.date():
        return True
    if date != now.date() - dt.timedelta(days=1):
        return False
    return any(slot.at.date() == now.date() for slot in slots)


def _starts(
    files: GarageFiles, day: Ref, date: object, now: dt.datetime
) -> Iterator[tuple[Glance, dt.datetime]]:
    """Give the sessions of a day with the moment at which they start."""
    if type(date) is not dt.date:
        return
    dates = (date, date + dt.timedelta(days=1))
    for one in glances(files, now.year - 1):
        if one.date in dates and files.data(one.ref).get("day") == day.id:
            start = files.data(one.ref).get("start")
            if isinstance(start, dt.time):
                yield one, dt.datetime.combine(one.date, start)


def _moved(old: dt.datetime, new: dt.datetime) -> Iterator[Edit]:
    """Give the edits that move the start of a session; its date goes with it over midnight."""
    yield Edit(("start",), old.time(), new.time())
    if old.date() != new.date():
        yield Edit(("date",), old.date(), new.date())


def _keeps_order(date: object, slots: tuple[_Slot, ...], rest: tuple[_Slot, ...], by: dt.timedelta) -> bool:
    """Return whether the lines as shifted are read as the moments that are meant."""
    if type(date) is not dt.date:
        return False
    for group in dict.fromkeys(slot.group for slot in slots):
        meant = [slot.at + by if slot in rest else slot.at for slot in slots if slot.group == group]
        read = [at for at, _ in in_order(date, [(at.time(), None) for at in meant])]
        if read != meant:
            return False
    return True


def _leaves(minutes: int) -> InputError:
    return InputError(f"{minutes} min would leave the day", "times of today", "type fewer minutes")


def _step(files: GarageFiles, edits: Mapping[Ref, list[Edit]], minutes: int) -> Step | InputError:
    every = [edit for some in edits.values() for edit in some]
    if not every:
        return InputError(
            "nothing of today is still to come", "a session or a timetable to shift", "t, then e types one"
        )
    for ref, some in edits.items():
        against = refusals(files, ref, some)
        if against:
            return against[0]
    lines = sum(1 for edit in every if edit.path[-1] in ("from", "start"))
    way = "later" if minutes > 0 else "earlier"
    changes = tuple(Change(ref, tuple(some)) for ref, some in edits.items() if some)
    return Step(f"{lines} starts go {abs(minutes)} min {way}; stops stay", changes)
