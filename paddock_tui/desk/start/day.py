"""The rows about the day: where, when, in which group and at which times, and what is posted."""

import datetime as dt
import re
from collections.abc import Iterator, Mapping
from typing import Any

from paddock_tui.desk.day.timetable import EXAMPLE, read_times, timetabling
from paddock_tui.desk.files.records import creating
from paddock_tui.desk.start.about import listed
from paddock_tui.desk.start.ask import Ask, AskResult, asked, held, picked, texts
from paddock_tui.desk.start.context import Context
from paddock_tui.desk.start.people import record_ask
from paddock_tui.records.common import GROUP
from paddock_tui.records.day import RidingDay
from paddock_tui.records.edits import Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.timetable import slots_of

SECTION = "venue and day"
_DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
_HOW_DATE = "today, tomorrow, sat, 20 (the next 20th) or 2026-06-20"
_POSTED: tuple[tuple[Path, str, str], ...] = (
    (("limits", "noise"), "noise limit", "as posted, dB(A)"),
    (("limits", "pit_lane"), "pit-lane limit", "as posted, in your speed"),
)


def day_asks(context: Context) -> Iterator[Ask]:
    """Ask where and when, the group and its times, and the limits as posted."""
    about, files, units = context.about, context.files, context.units
    yield record_ask(context, "venue", about.venue, SECTION, "what the venue is called", "venue")
    if about.venue is None:
        return
    length = "of one lap, for fuel and gearing"
    yield asked(files, units, SECTION, about.venue, ("length",), how=length)
    yield _date_ask(context, about.venue)
    if about.day is None:
        return
    day = about.day
    last = _last_day(context, day)
    yield _group_ask(context, day)
    kind = held(files, last, ("kind",))
    yield asked(files, units, SECTION, day, ("kind",), label="kind of day", offered=kind)
    yield _times_ask(context, day, last)
    yield asked(files, units, SECTION, day, ("timing",), offered=held(files, last, ("timing",)))
    for path, label, how in _POSTED:
        usual = (
            f"; on {last.id[:10]} it was {held(files, last, path)}"
            if last and held(files, last, path)
            else ""
        )
        yield asked(files, units, SECTION, day, path, label=label, how=how + usual)
    yield asked(files, units, SECTION, day, ("travel",), label="the bike goes home by")


def _date_ask(context: Context, venue: Ref) -> Ask:
    files, day = context.files, context.about.day

    def answer(text: str) -> AskResult | InputError:
        date = read_date(text, context.now.date())
        if date is None:
            return InputError(f'"{text.strip()}"', "a date", _HOW_DATE)
        ref = Ref("day", f"{date.isoformat()}-{venue.id}")
        if files.path_of(ref) is not None:
            return AskResult(None, ref)
        values: dict[str, Value] = {"date": date, "venue": venue.id}
        group = held(files, context.about.rider, ("group",))
        if group:
            values["group"] = group
        step = creating(files, ref, values)
        return AskResult(step, ref) if isinstance(step, Step) else step

    value = held(files, day, ("date",))
    return Ask("date", SECTION, "date", _HOW_DATE, answer, value, (), "today")


def read_date(text: str, today: dt.date) -> dt.date | None:
    """Read a date as it is said on the evening before: today, a weekday, a day of the month, or in full."""
    typed = text.strip().casefold()
    if typed in ("today", "tomorrow"):
        return today + dt.timedelta(days=typed == "tomorrow")
    coming = [today + dt.timedelta(days=ahead) for ahead in range(62)]
    if len(typed) >= 3 and typed[:3] in _DAYS:
        return next(day for day in coming if day.weekday() == _DAYS.index(typed[:3]))
    if re.fullmatch(r"\d{1,2}", typed):
        return next((day for day in coming if day.day == int(typed)), None)
    try:
        return dt.date.fromisoformat(typed)
    except ValueError:
        return None


def _group_ask(context: Context, day: Ref) -> Ask:
    files, words = context.files, GROUP.choices

    def answer(text: str) -> AskResult | InputError:
        return texts(files, day, [(("group",), picked(text, words))])

    how = "as the organiser calls it; its times are the ones that count"
    return Ask("day group", SECTION, "group on the day", how, answer, held(files, day, ("group",)), words)


def _times_ask(context: Context, day: Ref, last: Ref | None) -> Ask:
    files = context.files
    record = _day(context, day)
    group = held(files, day, ("group",))
    spans = _spans(record, group)

    def answer(text: str) -> AskResult | InputError:
        if record is None:
            return InputError(f"{day.id} cannot be read", "a day that can be read", "fix its file first")
        times = read_times(text, record, group)
        step = timetabling(files, day, times) if not isinstance(times, InputError) else times
        return AskResult(step) if isinstance(step, Step) else step

    offered = " ".join(_spans(_day(context, last), group)) if last is not None else ""
    how = f"in one line: {EXAMPLE}, or 9:00-9:20 10:00-10:20"
    return Ask("times", SECTION, "its times", how, answer, ", ".join(spans), (), offered)


def _spans(day: RidingDay | None, group: str) -> list[str]:
    slots = slots_of(day, group) if day is not None else {}
    return [f"{one.from_:%H:%M}-{one.to:%H:%M}" for one in slots.values() if one.from_ and one.to]


def _day(context: Context, ref: Ref | None) -> RidingDay | None:
    loaded = context.files.read(ref) if ref is not None else None
    return loaded.record if loaded is not None and isinstance(loaded.record, RidingDay) else None


def _last_day(context: Context, day: Ref) -> Ref | None:
    """Return the last day before this one at the same venue."""
    data = context.files.data(day)

    def is_before(held: Mapping[str, Any]) -> bool:
        then, here = held.get("date"), data.get("date")
        if type(then) is not dt.date or type(here) is not dt.date:
            return False
        return then < here and held.get("venue") == data.get("venue")

    before = [one for one in listed(context.files, "day") if is_before(context.files.data(one))]
    return max(before, key=lambda one: one.id, default=None)
