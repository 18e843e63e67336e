"""The clock of the day in hand: when the bike goes out next, and what is due until then."""

import datetime as dt
from collections.abc import Iterator, Mapping
from typing import Any, Literal

import attrs

from paddock_tui.calc.outing_clock import between
from paddock_tui.desk.day.moments import NIGHT, after, before, in_order
from paddock_tui.desk.lookup import Glance, of_date, on_dates, order
from paddock_tui.facts.race import class_entered, stop_of, tyre_choice_by
from paddock_tui.records.day import RidingDay
from paddock_tui.records.edits import MISSING
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.session import Session
from paddock_tui.records.timetable import group_today, slots_of
from paddock_tui.store.data import lookup
from paddock_tui.store.garage import GarageFiles

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
UNTOLD = ("dress", "change", "tyre choice", "start")
"""Nothing says that these are done: they are not said once their minute has passed."""

_SAID = {"dress": "kit on", "look": "inspect tyres", "change": "decide the change"}


@attrs.frozen
class DueItem:
    """One thing that is due at a moment, and whether it is done."""

    what: str
    at: dt.datetime
    done: bool

    @property
    def said(self) -> str:
        """What is to be done, in the words of a page: `what` is what records call it."""
        return _SAID.get(self.what, self.what)


ClockWord = Literal["out", "grid", "start", "restart", "stopped"]
"""What the clock counts down to; stopped: since when, until somebody knows when it goes on."""


@attrs.frozen
class Countdown:
    """When the bike goes out, the session that says so where there is one, and what is due until then.

    `begun` is when what is out began to count, `flag` when it is flagged off, `laps` how many there are to
    ride, where that is known; `lap_s` is the usual lap where the flag is worked out from that.
    """

    out: dt.datetime
    items: tuple[DueItem, ...]
    session: Ref | None = None
    word: ClockWord = "out"
    flag: dt.datetime | None = None
    laps: int | None = None
    begun: dt.datetime | None = None
    lap_s: float | None = None


def clock_of(files: GarageFiles, in_hand: Ref | None, now: dt.datetime) -> Countdown | None:
    """Make the clock of now; None where nothing more goes out today, or nobody knows when.

    What went out before midnight is still out after it; what goes out soon after midnight counts down
    before it.
    """
    day = dt.timedelta(days=1)
    near = on_dates(files, (now - day).date(), 3)
    here = next((one for one in near if one.ref == in_hand), None)
    if here is None or not _is_now(files, here, now):
        return None
    data = files.data(here.ref)
    last = _last_ridden(files, sorted(near, key=order), here, data)
    if here.ridden:
        found = _next_slot(files, here, now)
        return Countdown(found, _items(files, found, last, {})) if found is not None else None
    went, start = data.get("went_out"), data.get("start")
    if isinstance(went, dt.time):
        return _out(files, here, went, now)
    if not isinstance(start, dt.time):
        return None
    starts = dt.datetime.combine(here.date, start)
    grid = lookup(data, ("race", "grid"))
    out = before(starts, grid) if isinstance(grid, dt.time) else starts
    items = _items(files, out, last, data) + _of_a_race(files, here, starts, out, data)
    return Countdown(
        out,
        tuple(sorted(items, key=lambda one: one.at)),
        here.ref,
        "grid" if isinstance(grid, dt.time) else "out",
        laps=_laps(data),
    )


def _is_now(files: GarageFiles, here: Glance, now: dt.datetime) -> bool:
    """Return whether a session is of today, out since before midnight, or goes out soon after it."""
    if here.date == now.date():
        return True
    data = files.data(here.ref)
    starts = dt.datetime.combine(here.date, here.start)
    if here.date > now.date():
        return isinstance(data.get("start"), dt.time) and not here.ridden and starts - now <= NIGHT
    held = data.get("parked") or data.get("went_out")
    since = after(starts - NIGHT, held) if isinstance(held, dt.time) else None
    return since is not None and now - since <= NIGHT


def _out(files: GarageFiles, here: Glance, went_out: dt.time, now: dt.datetime) -> Countdown:
    """Make the clock of what is out: since when, until the flag, or until it goes on after a stop."""
    data = files.data(here.ref)
    start = data.get("start")
    starts = dt.datetime.combine(here.date, start) if isinstance(start, dt.time) else None
    went = after(starts - NIGHT, went_out) if starts else dt.datetime.combine(here.date, went_out)
    session = _record(files, here.ref)
    stop = stop_of(session) if isinstance(session, Session) else None
    if stop is not None and stop.restart is not None:
        again = after(went, stop.restart)
        due = _items(files, again, None, data, stop.at)
        return Countdown(again, due, here.ref, "restart", laps=stop.laps_left)
    if stop is not None:
        at = after(went, stop.at) if stop.at is not None else went
        return Countdown(at, (), here.ref, "stopped", laps=stop.laps_left)
    if starts is not None and isinstance(lookup(data, ("race", "grid")), dt.time) and now < starts:
        return Countdown(starts, (), here.ref, "start", laps=_laps(data))
    planned = session.planned_time if isinstance(session, Session) else None
    begun = max(starts, went) if starts is not None and data.get("kind") == "race" else starts or went
    flag = begun + dt.timedelta(minutes=planned.to("min")) if planned is not None else None
    return Countdown(went, (), here.ref, flag=flag, laps=_laps(data), begun=begun)


def _on(date: dt.date, time: dt.time) -> dt.datetime:
    return dt.datetime.combine(date, time)


def _laps(data: Mapping[str, Any]) -> int | None:
    planned = data.get("planned_laps")
    return planned if isinstance(planned, int) else None


def by_pace(clock: Countdown, usual_s: float | None) -> Countdown:
    """Return the clock with the flag worked out from planned laps and the usual lap, if only they tell it."""
    laps, begun = clock.laps, clock.begun
    if clock.word != "out" or clock.flag is not None or laps is None or begun is None or not usual_s:
        return clock
    return attrs.evolve(clock, flag=begun + dt.timedelta(seconds=laps * usual_s), lap_s=usual_s)


def _items(
    files: GarageFiles,
    out: dt.datetime,
    last: Glance | None,
    data: Mapping[str, Any],
    stopped: dt.time | None = None,
) -> tuple[DueItem, ...]:
    """List what is due before going out; after a stop what was done before it has to be done again."""
    held = files.data(last.ref) if last is not None else {}
    parked = held.get("parked")
    midnight = dt.datetime.combine(out.date(), dt.time())
    back = before(out, parked) if isinstance(parked, dt.time) else None
    due = between(
        _minutes(out - midnight),
        _minutes(back - midnight) if back is not None else None,
        warmers=data.get("warmers") == "used",
    )
    if stopped is not None:
        due = tuple(one for one in due if one.what in ("warmers off", "dash"))
    return tuple(
        DueItem(
            one.what, midnight + dt.timedelta(minutes=one.minute), _is_done(one.what, held, data, stopped)
        )
        for one in due
    )


def _of_a_race(
    files: GarageFiles, here: Glance, starts: dt.datetime, out: dt.datetime, data: Mapping[str, Any]
) -> tuple[DueItem, ...]:
    """List until when the tyres may be changed, and the start where the grid comes first."""
    session = _record(files, here.ref)
    day = _record(files, Ref("day", str(data.get("day"))))
    by = tyre_choice_by(session, class_entered(session, day)) if isinstance(session, Session) else None
    found = (("tyre choice", by), ("start", starts if out != starts else None))
    return tuple(DueItem(what, at, False) for what, at in found if at is not None)


def next_due(clock: Countdown, now: dt.datetime) -> DueItem | None:
    """Return the first thing that is not done, what cannot be told to be done until its minute."""
    minute = now.replace(second=0, microsecond=0)
    for item in clock.items:
        if not item.done and (item.at >= minute or item.what not in UNTOLD):
            return item
    return None


def _record(files: GarageFiles, ref: Ref) -> object:
    loaded = files.read(ref)
    return loaded.possible if loaded is not None else None


def _last_ridden(
    files: GarageFiles, near: list[Glance], here: Glance, data: Mapping[str, Any]
) -> Glance | None:
    """Return this bike's last session ridden on the date of another one, or in the night before it."""
    same = [one for one in near if one.ridden and files.data(one.ref).get("bike") == data.get("bike")]
    mine = [one for one in same if one.date == here.date or order(one) <= order(here)]
    ridden = [one for one in mine if one.date == here.date or _late(files, one, here)]
    return ridden[-1] if ridden else None


def _late(files: GarageFiles, one: Glance, here: Glance) -> bool:
    parked = files.data(one.ref).get("parked")
    if not isinstance(parked, dt.time):
        return False
    starts = dt.datetime.combine(here.date, here.start)
    return starts - before(starts, parked) <= NIGHT / 4 and starts - _on(one.date, one.start) <= NIGHT


def _next_slot(files: GarageFiles, here: Glance, now: dt.datetime) -> dt.datetime | None:
    """Return the next line of the rider's group in the day's timetable."""
    data = files.data(here.ref)
    day = _record(files, Ref("day", str(data.get("day"))))
    if not isinstance(day, RidingDay):
        return None
    return next_start(files, day, here.date, str(data.get("rider")), str(data.get("bike")), now)


def ridden_until(files: GarageFiles, date: dt.date, rider: str, bike: str) -> dt.datetime | None:
    """Return the latest planned start of what a rider has ridden on a bike on a date; None before any."""
    rows = (files.rows.of(ref) for _, ref in of_date(files, date))
    mine = (row for row in rows if row is not None and (row.rider, row.bike) == (rider, bike))
    return max((dt.datetime.combine(date, row.start) for row in mine if row.ridden), default=None)


def next_start(
    files: GarageFiles, day: RidingDay, date: dt.date, rider: str, bike: str, now: dt.datetime
) -> dt.datetime | None:
    """Return the next line of a rider's group in a timetable that is to come and not ridden yet.

    Who went out early and is back before the planned start has ridden that line.
    """
    since = max(now, ridden_until(files, date, rider, bike) or now)
    slots = slots_of(day, group_today(day, rider, bike))
    times = [(slot.from_, None) for slot in slots.values() if slot.from_ is not None]
    return min((at for at, _ in in_order(date, times) if at > since), default=None)


def _is_done(what: str, last: Mapping[str, Any], ahead: Mapping[str, Any], stopped: dt.time | None) -> bool:
    held = last if what in _OF_LAST else ahead
    found = [lookup(held, place) for place in _DONE.get(what, ())]
    if stopped is not None and not all(isinstance(one, dt.time) and one > stopped for one in found):
        return False
    return bool(found) and all(one is not MISSING for one in found)


def _minutes(span: dt.timedelta) -> int:
    return int(span.total_seconds() // 60)


def gone_through(clock: Countdown) -> Iterator[DueItem]:
    """List what is due in order, going out itself among it."""
    yield from sorted((*clock.items, DueItem(clock.word, clock.out, False)), key=lambda one: one.at)
