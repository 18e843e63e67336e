"""The rows about the first session: the track, what the bike shows now, and what the tyres start at."""

import datetime as dt
from collections.abc import Iterator

from paddock_tui.desk.edits.values import bike_of
from paddock_tui.desk.files.records import creating
from paddock_tui.desk.sessions.next_session import next_session
from paddock_tui.desk.sessions.numbers import free_session, next_number
from paddock_tui.desk.start.about import last_session
from paddock_tui.desk.start.ask import Ask, AskResult, asked, held, numbered, picked, texts
from paddock_tui.desk.start.context import Context
from paddock_tui.records.bike import Bike
from paddock_tui.records.common import SURFACE
from paddock_tui.records.day import RidingDay, TimetableSlot
from paddock_tui.records.edits import Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import SET_UP
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.presets_in_use import presets_offered
from paddock_tui.records.session import SESSION_KINDS
from paddock_tui.records.shapes_of_bike import choice_shape, label_of
from paddock_tui.records.timetable import slots_of

SECTION, SHOWS, STARTS = "the session", "what the bike shows now", "what it starts with"
_KINDS = {"track day": "track day", "race meeting": "practice", "test": "practice", "training": "practice"}
_BEFORE: tuple[Path, ...] = (
    ("start",),
    ("kind",),
    ("planned_time",),
    ("planned_laps",),
    ("air",),
    ("warmers",),
)
_STARTS: tuple[Path, ...] = (
    (SET_UP, "front_start"),
    (SET_UP, "rear_start"),
    ("filled_to_brim",),
    ("fuel_added",),
)


def session_asks(context: Context) -> Iterator[Ask]:
    """Ask for the surface, which makes the session, then conditions, and every value of the set-up."""
    about, files, units = context.about, context.files, context.units
    if about.bike is None or about.rider is None:
        return
    yield _surface_ask(context)
    session = about.session
    if session is None:
        return
    for path in _BEFORE:
        offered = _length(context, session) if path == ("planned_time",) else ""
        yield asked(files, units, SECTION, session, path, offered=offered)
    bike = bike_of(files, session)
    if bike is None:
        return
    if bike.modes:
        yield _named(context, session, "mode", tuple(bike.modes))
    for name, control in bike.controls.items():
        words = control.choices or control.speeds or (("on", "off") if control.kind == "switch" else ())
        yield _set_up(context, session, ("controls", name), words)
    yield from _damping_asks(context, session, bike)
    for name in bike.adjusters:
        yield _set_up(context, session, ("adjusters", name))
    for path in _STARTS:
        yield asked(files, units, STARTS, session, path)


def _damping_asks(context: Context, session: Ref, bike: Bike) -> Iterator[Ask]:
    """Ask for the way of damping, where there is more than by hand, and for its preset."""
    if not bike.damping:
        return
    yield _named(context, session, "damping", choice_shape(bike, "damping", None).words())
    presets = presets_offered(bike, held(context.files, session, (SET_UP, "damping")) or None)
    if presets:
        yield _named(context, session, "preset", presets)


def _set_up(context: Context, session: Ref, path: Path, words: tuple[str, ...] = ()) -> Ask:
    how = "as the dash shows it" if path[0] == "controls" else "as counted at the bike"
    place, label = (SET_UP, *path), label_of(path[-1])
    return asked(context.files, context.units, SHOWS, session, place, label=label, how=how, choices=words)


def _named(context: Context, session: Ref, key: str, names: tuple[str, ...]) -> Ask:
    path: Path = (SET_UP, key)

    def answer(text: str) -> AskResult | InputError:
        return texts(context.files, session, [(path, picked(text, names))])

    label = {"mode": "riding mode", "damping": "damping mode", "preset": "preset"}[key]
    value = held(context.files, session, path)
    return Ask(
        f"{session} {key}", SHOWS, label, numbered(names), answer, value, names, "", "words", session, path
    )


def _surface_ask(context: Context) -> Ask:
    files, session, words = context.files, context.about.session, SURFACE.choices

    def answer(text: str) -> AskResult | InputError:
        word = picked(text, words)
        if session is not None:
            return texts(files, session, [(("surface",), word)])
        found = SURFACE.read(word)
        if isinstance(found, InputError):
            return found
        ref, step = _new_session(context, found)
        return AskResult(step, ref) if isinstance(step, Step) else step

    return Ask(
        "surface", SECTION, "surface", numbered(words), answer, held(files, session, ("surface",)), words
    )


def _new_session(context: Context, surface: str) -> tuple[Ref, Step | InputError]:
    """Make the session: as the last one on this bike was set up where there is one, else with nothing set."""
    files, about = context.files, context.about
    last = last_session(files, about.bike)
    named: dict[str, Value] = {
        kind: ref.id for kind in ("rider", "tyres", "day") if (ref := getattr(about, kind)) is not None
    }
    kind = _KINDS.get(held(files, about.day, ("kind",)), "")
    if last is not None:
        return next_session(files, last, _then(context), {"surface": surface, **named})
    assert about.bike is not None
    date = files.data(about.day).get("date", context.now.date()) if about.day else context.now.date()
    number = next_number(files, date, about.bike.id)
    values: dict[str, Value] = {"date": date, "number": number, "bike": about.bike.id}
    if kind in SESSION_KINDS:
        values["kind"] = kind
    values |= {**named, "surface": surface}
    start = _first_start(context)
    if start:
        values["start"] = start
    ref = free_session(files, date, number, about.bike.id)
    return ref, creating(files, ref, values)


def _then(context: Context) -> dt.datetime:
    """Return now, or the morning of the day that the session is for."""
    date = context.files.data(context.about.day).get("date") if context.about.day is not None else None
    later = type(date) is dt.date and date > context.now.date()
    return dt.datetime.combine(date, dt.time()) if later and date is not None else context.now


def _length(context: Context, session: Ref) -> str:
    """Return how long the timetable gives the session; empty where it does not tell."""
    start = context.files.data(session).get("start")
    slots = _slots(context)
    ends = [one.to for one in slots if one.from_ == start and one.to is not None]
    if not ends or not isinstance(start, dt.time):
        return ""
    return f"{(ends[0].hour - start.hour) * 60 + ends[0].minute - start.minute} min"


def _slots(context: Context) -> tuple[TimetableSlot, ...]:
    """Return the times of the group on the day."""
    day = context.about.day
    loaded = context.files.read(day) if day is not None else None
    if loaded is None or not isinstance(loaded.record, RidingDay):
        return ()
    return tuple(slots_of(loaded.record, loaded.record.group).values())


def _first_start(context: Context) -> dt.time | None:
    """Return the first start of the group on the day, of those still to come where it is today."""
    today = held(context.files, context.about.day, ("date",)) == context.now.date().isoformat()
    begun = context.now.time() if today else dt.time()
    starts = (one.from_ for one in _slots(context) if one.from_ is not None and one.from_ >= begun)
    return min(starts, default=None)
