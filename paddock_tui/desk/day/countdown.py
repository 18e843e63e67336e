"""The clock of the day in hand: when the bike goes out next, and what is due until then."""

import datetime as dt
from collections.abc import Iterator, Mapping
from typing import Any

import attrs

from paddock_tui.desk.files.names import id_of
from paddock_tui.desk.lookup import Glance, glances, order
from paddock_tui.records.day import RidingDay, TimetableSlot
from paddock_tui.records.edits import MISSING
from paddock_tui.records.paths import Path, Ref
from paddock_tui.store.data import lookup
from paddock_tui.store.garage import GarageFiles
from paddock_tui.trade.outing_clock import between

_DONE: Mapping[str, tuple[Path, ...]] = {
    "hot pressures": (("pressures", "hot", "front"), ("pressures", "hot", "rear")),
    "feel": (("feel",),),
    "look": (("look",),),
    "fuel": (("fuel_added",),),
    "dash": (("dash", "read"),),
    "warmers": (("warmers_on",),),
    "warmers off": (("warmers_off",),),
}
"""What says that a thing is done: of the session ridden last for the first three, else of the next one."""

_OF_LAST = ("hot pressures", "feel", "look")
UNTOLD = ("dress", "change")
"""Nothing says that these are done: they are not said once their minute has passed."""


@attrs.frozen
class DueItem:
    """One thing that is due at a time of day, and whether it is done."""

    what: str
    at: dt.time
    done: bool


@attrs.frozen
class Countdown:
    """When the bike goes out, the session that says so where there is one, and what is due until then."""

    out: dt.time
    items: tuple[DueItem, ...]
    session: Ref | None = None


def clock_of(files: GarageFiles, in_hand: Ref | None, now: dt.datetime) -> Countdown | None:
    """Make the clock of today; None where nothing more goes out today, or nobody knows when."""
    today = sorted((one for one in glances(files, now.year) if one.date == now.date()), key=order)
    here = next((one for one in today if one.ref == in_hand), None)
    if here is None:
        return None
    data = files.data(here.ref)
    last = _last_ridden(files, today, data)
    ahead = None if here.ridden else here
    out = data.get("start") if ahead is not None else _next_slot(files, here, now.time())
    if ahead is not None and isinstance(went := data.get("went_out"), dt.time):
        return Countdown(went, (), ahead.ref)
    if not isinstance(out, dt.time):
        return None
    parked = files.data(last.ref).get("parked") if last is not None else None
    data = data if ahead is not None else {}
    due = between(
        _minute(out),
        _minute(parked) if isinstance(parked, dt.time) else None,
        warmers=data.get("warmers") == "used",
    )
    held = files.data(last.ref) if last is not None else {}
    items = tuple(
        DueItem(one.what, _time(one.minute), _is_done(one.what, held, data)) for one in due if one.minute >= 0
    )
    return Countdown(out, items, ahead.ref if ahead is not None else None)


def next_due(clock: Countdown, now: dt.time) -> DueItem | None:
    """Return the first thing that is not done, what cannot be told to be done until its minute."""
    minute = _minute(now)
    for item in clock.items:
        if not item.done and (_minute(item.at) >= minute or item.what not in UNTOLD):
            return item
    return None


def slots_of(day: RidingDay, group: str | None) -> Mapping[str, TimetableSlot]:
    """Return the lines of a group in the timetable, written as the group or as its id."""
    name = group or (next(iter(day.timetable)) if len(day.timetable) == 1 else "")
    return day.timetable.get(name) or day.timetable.get(id_of(name), {})


def _last_ridden(files: GarageFiles, today: list[Glance], data: Mapping[str, Any]) -> Glance | None:
    ridden = [one for one in today if one.ridden and files.data(one.ref).get("bike") == data.get("bike")]
    return ridden[-1] if ridden else None


def _next_slot(files: GarageFiles, here: Glance, now: dt.time) -> dt.time | None:
    """Return the next line of the rider's group in the day's timetable."""
    data = files.data(here.ref)
    loaded = files.read(Ref("day", str(data.get("day"))))
    day = loaded.record if loaded is not None else None
    if not isinstance(day, RidingDay):
        return None
    return next_start(day, str(data.get("rider")), str(data.get("bike")), now)


def next_start(day: RidingDay, rider: str, bike: str, after: dt.time | None) -> dt.time | None:
    """Return the next line of a rider's group in a timetable after a time; the first without one."""
    entry = day.entries.get(rider, {}).get(bike)
    group = (entry.group if entry is not None else None) or day.group
    starts = (slot.from_ for slot in slots_of(day, group).values() if slot.from_ is not None)
    return min((start for start in starts if after is None or start > after), default=None)


def _is_done(what: str, last: Mapping[str, Any], ahead: Mapping[str, Any]) -> bool:
    held = last if what in _OF_LAST else ahead
    places = _DONE.get(what, ())
    return bool(places) and all(lookup(held, place) is not MISSING for place in places)


def _minute(time: dt.time) -> int:
    return time.hour * 60 + time.minute


def _time(minute: int) -> dt.time:
    return dt.time(minute // 60, minute % 60)


def gone_through(clock: Countdown) -> Iterator[DueItem]:
    """List what is due, going out itself last."""
    yield from clock.items
    yield DueItem("out", clock.out, False)
