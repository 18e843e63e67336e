"""The next session: set-up, rider and tyres of the last one on that bike; no weather, no measurements."""

import datetime as dt
from collections.abc import Mapping
from typing import Any

from paddock_tui.desk.files.records import creating
from paddock_tui.desk.sessions.numbers import free_session, next_number
from paddock_tui.quantities import digits_of
from paddock_tui.records.day import RidingDay
from paddock_tui.records.edits import MISSING, Edit, Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import declared
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session, is_ridden
from paddock_tui.records.timetable import group_today, slots_of
from paddock_tui.store.data import after, lookup
from paddock_tui.store.garage import GarageFiles, Loaded
from paddock_tui.store.heads import days_of

_LEFT_OUT_WHEN_GONE = ("rider", "tyres")
"""References that are not carried over once what they refer to is retired, or is not there any more."""


def next_session(
    files: GarageFiles,
    source: Ref,
    now: dt.datetime,
    more: Mapping[str, Value] | None = None,
    *,
    of_its_day: bool = False,
    on: Ref | None = None,
) -> tuple[Ref, Step | InputError]:
    """Make the step that creates the session after another one, copied from it.

    It belongs to the source's day while that is today or still to come; else to the first day record that
    is, as the evening before; without one to the source's day where that was not ridden, else to today. Its
    start is the next one in the timetable of the group in which this rider rides that day. A tyre set that
    was retired meanwhile is not carried over, nor is a value that cannot be read. `more` is what is known
    of it already. Where no day record is to come, a day whose timetable goes
    on after the source is not over, whenever that is typed; `of_its_day`: nor is any other. `on` names the
    day that it is to belong to, whichever comes first.
    """
    loaded = files.read(source)
    held = loaded.record if loaded is not None else None
    if loaded is None or not isinstance(held, Session):
        return source, InputError(
            f"{source} cannot be read", "a session that can be read", "correct its file first"
        )
    named = files.data(on).get("date") if on is not None else None
    date = held.date if of_its_day and held.date is not None else _date(files, held, now.date())
    if type(named) is dt.date:
        date = named
    after_it = held.number or 0 if date == held.date else 0
    number = next_number(files, date, held.bike, after_it)
    ref = free_session(files, date, number, held.bike)
    values: dict[str, Value] = {"date": date, "number": number, "copied_from": source.id}
    values.update(_carried(files, loaded))
    values.update(_going_on(files.data(source), held, same_day=date == held.date))
    day = on if type(named) is dt.date else _day_of(files, date, held)
    _as_planned(values, held)
    if day is not None:
        values["day"] = day.id
        start = _start(files, day, held, date)
        if start is not None:
            values["start"] = start
    values.update(more or {})
    return ref, creating(files, ref, {key: values[key] for key in _first_keys(values)})


def _date(files: GarageFiles, source: Session, today: dt.date) -> dt.date:
    if source.date is None or source.date >= today:
        return source.date or today
    coming = None if source.kind == "road" else _next_day(files, today)
    if coming is not None:
        return coming
    day = _day_of(files, source.date, source)
    goes_on = source.start is not None and day is not None and _start(files, day, source, source.date)
    return source.date if goes_on or not is_ridden(source) else today


def _next_day(files: GarageFiles, today: dt.date) -> dt.date | None:
    """Return the date of the first day record that is today or still to come."""
    return min((date for date, _ in days_of(files, lambda date: date >= today)), default=None)


def _carried(files: GarageFiles, loaded: Loaded) -> dict[str, Value]:
    """Copy what is declared to carry over, as it stands in the source's file; the day is found anew."""
    data = _readable(loaded)
    keys = dict.fromkeys(one.path[0] for one in declared(Session) if one.carry)
    carried: dict[str, Value] = {key: data[key] for key in keys if key in data and key != "day"}
    for kind in _LEFT_OUT_WHEN_GONE:
        named = Ref(kind, str(carried.get(kind)))
        if files.path_of(named) is None or "retired" in files.data(named):
            carried.pop(kind, None)
    return carried


def _going_on(data: Mapping[str, Any], source: Session, *, same_day: bool) -> dict[str, Value]:
    """Carry a riding aim until it is met, and of the day's jobs whose they are, not that they were done."""
    found: dict[str, Value] = {}
    if source.aim is not None and source.aim_met != "yes":
        found |= {key: data[key] for key in ("aim", "aim_by") if key in data}
    jobs = {name: {"who": job.who} for name, job in source.jobs.items() if job.who is not None}
    return found | ({"jobs": jobs} if jobs and same_day else {})


def _as_planned(values: dict[str, Value], source: Session) -> None:
    """Start each end by as much otherwise as was planned on return, where its start is on record."""
    setup = values.get("setup")
    if not isinstance(setup, Mapping):
        return
    moved = dict(setup)
    for end in ("front", "rear"):
        start, by = getattr(source.setup, f"{end}_start"), getattr(source, f"{end}_pressure_change")
        if start is not None and by is not None:
            new = float(start.number) + by.as_difference(start.unit)
            moved[f"{end}_start"] = f"{new:.{digits_of(start.unit)}f} {start.unit}"
    values["setup"] = moved


def _readable(loaded: Loaded) -> Mapping[str, Any]:
    """Return the data of a record without the values that cannot be read."""
    data = loaded.data
    for trouble in loaded.troubles:
        held = lookup(data, trouble.path)
        if held is not MISSING:
            data = after(data, Edit(trouble.path, held, MISSING), lambda _: False)
    return data


def _day_of(files: GarageFiles, date: dt.date, source: Session) -> Ref | None:
    """Return the source's day where it is of that date, else the only one of that date; none on the road."""
    if source.day is not None and files.data(Ref("day", source.day)).get("date") == date:
        return Ref("day", source.day)
    if source.kind == "road":
        return None
    same = [ref for _, ref in days_of(files, lambda one: one == date)]
    return same[0] if len(same) == 1 else None


def _start(files: GarageFiles, ref: Ref, source: Session, date: dt.date) -> dt.time | None:
    """Return the next start of the rider's group that day, after the source's where that is of the day."""
    loaded = files.read(ref)
    day = loaded.record if loaded is not None else None
    if not isinstance(day, RidingDay):
        return None
    slots = slots_of(day, group_today(day, source.rider, source.bike))
    after_it = source.start if source.date == date else None
    starts = (slot.from_ for slot in slots.values() if slot.from_ is not None)
    return min((start for start in starts if after_it is None or start > after_it), default=None)


def _first_keys(values: Mapping[str, Value]) -> list[str]:
    """Put the keys in the order of the declarations."""
    order = [one.path[0] for one in declared(Session)]
    return sorted(values, key=order.index)
