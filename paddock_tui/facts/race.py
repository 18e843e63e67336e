"""A race meeting: the class as it was entered, the stops of an outing, and what a restart still asks."""

import datetime as dt
from collections.abc import Mapping
from typing import NamedTuple

from paddock_tui.facts.checklists import RACING
from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.quantities import Quantity
from paddock_tui.records.day import DayEntry, RidingDay
from paddock_tui.records.ids import id_of
from paddock_tui.records.kinds import Record
from paddock_tui.records.race import STOPS, Event, RaceClass
from paddock_tui.records.session import Session


class Stop(NamedTuple):
    """The last stop of an outing that is not over: what it was, when, and what is left to ride."""

    what: str
    at: dt.time | None
    laps_ridden: int | None
    restart: dt.time | None
    laps_left: int | None

    def __str__(self) -> str:
        at = f" {self.at:%H:%M}" if self.at is not None else ""
        left = f", {self.laps_left} laps left" if self.laps_left is not None else ""
        again = f", goes on {self.restart:%H:%M}" if self.restart is not None else ""
        return f"{self.what}{at}{left}{again}"


class CountedTyres(NamedTuple):
    """Tyres that count for this rider and bike, and how many the class lets be used."""

    used: int
    most: int

    def __str__(self) -> str:
        return f"{self.used} of {self.most} tyres counted"


class Weight(NamedTuple):
    """What the scale showed after the flag, and the least of the class."""

    weighed: Quantity
    least: Quantity

    @property
    def under_kg(self) -> float:
        """Kilograms under the least weight; below zero where it is over."""
        return self.least.to("kg") - self.weighed.to("kg")

    def __str__(self) -> str:
        return f"weighed {self.weighed}, least {self.least}"


def stop_of(session: Session) -> Stop | None:
    """Return the stop that an outing waits in: the last one since it went out, while it is not back."""
    if session.went_out is None or session.parked is not None:
        return None
    found = [one for one in session.events.values() if _stops(one, session.went_out)]
    if not found:
        return None
    last = max(found, key=lambda one: one.at or dt.time.max)
    return Stop(last.what or "", last.at, last.laps_ridden, last.restart, last.laps_left)


def _stops(event: Event, went_out: dt.time) -> bool:
    return event.what in STOPS and (event.at is None or event.at >= went_out)


def class_of(day: RidingDay | None, entry: DayEntry) -> RaceClass | None:
    """Return the class that a rider and bike are entered in; the only one where none is named."""
    if day is None or not day.classes:
        return None
    name = entry.race_class
    if name is None:
        return next(iter(day.classes.values())) if len(day.classes) == 1 else None
    return day.classes.get(name) or day.classes.get(id_of(name))


def class_entered(session: Session, day: object) -> RaceClass | None:
    """Return the rules of the class that a session is ridden in; None where nobody entered any."""
    if not isinstance(day, RidingDay):
        return None
    entry = day.entry_of(session.rider, session.bike)
    return class_of(day, entry)


def tyre_choice_by(session: Session, entered: RaceClass | None) -> dt.datetime | None:
    """Return until when tyres may be changed: the session's own time, else the class's minutes."""
    if session.kind != "race" or session.date is None or session.start is None:
        return None
    starts = dt.datetime.combine(session.date, session.start)
    own = session.race.tyre_choice
    if own is not None:
        at = dt.datetime.combine(session.date, own)
        return at if at <= starts else at - dt.timedelta(days=1)
    before = entered.tyre_choice if entered is not None else None
    return None if before is None else starts - dt.timedelta(minutes=before.to("min"))


def red_flags(session: Session) -> int:
    """Count the red flags of an outing after which it goes on: each is ridden in and out once more."""
    flags = [one for one in session.events.values() if one.what == "red flag"]
    return sum(1 for one in flags if one.restart is not None or one.laps_left is not None)


def part_distance(session: Session) -> int | None:
    """Return the laps of an outing that goes on after a stop, with those ridden before it; None elsewhere.

    Where nobody counted the laps before it, the whole plan is taken for them, so that it errs toward more.
    """
    again = [one for one in session.events.values() if one.what in STOPS and one.laps_left is not None]
    if not again:
        return None
    last = max(again, key=lambda one: one.at or dt.time.max)
    before = last.laps_ridden if last.laps_ridden is not None else session.planned_laps
    return None if before is None else before + (last.laps_left or 0)


def laps_around_the_race(session: Session, entered: RaceClass | None) -> tuple[int, int]:
    """Return warm-up and slow-down laps: the session's own, else the class's, else one warm-up lap of a race.

    A warm-up lap is ridden before each restart as well.
    """
    if session.kind != "race":
        return 0, 0
    warm_up, slow_down = session.race.warm_up_laps, session.race.slow_down_laps
    if warm_up is None:
        warm_up = entered.warm_up_laps if entered is not None else None
    if slow_down is None:
        slow_down = entered.slow_down_laps if entered is not None else None
    return 1 if warm_up is None else warm_up, slow_down or 0


@fact("the rules of the class, as entered", at="day:classes")
def entered_class(session: Session, records: Mapping[str, Record]) -> RaceClass | Absent:
    """Return the rules of the class; absent where nobody entered any: none is built in."""
    if session.kind not in RACING:
        return ABSENT
    return class_entered(session, records.get("day")) or ABSENT


@fact("the stop that the outing waits in", at="session:events", show=str)
def stopped(session: Session) -> Stop | Absent:
    """Return the stop; absent while nothing stopped it."""
    return stop_of(session) or ABSENT


@fact("the tyres that count", at="day:entries", show=str)
def tyre_count(entry: DayEntry, entered_class: RaceClass) -> CountedTyres | Absent:
    """Return the tyres counted; absent where the class counts none."""
    if entered_class.tyres is None:
        return ABSENT
    return CountedTyres(len(entry.marked), entered_class.tyres)


@fact("the weight after the flag", at="session:race.weighed", show=str)
def weight_after(session: Session, entered_class: RaceClass) -> Weight | Absent:
    """Return the weight; absent without a least one or a reading: bikes are not weighed by this program."""
    least, weighed = entered_class.least_weight, session.race.weighed
    return ABSENT if least is None or weighed is None else Weight(weighed, least)


@fact(
    "until when tyres may be changed",
    at="session:race.tyre_choice",
    show=lambda found: f"tyre choice {found:%H:%M}",
)
def tyre_choice_ends(session: Session, records: Mapping[str, Record]) -> dt.datetime | Absent:
    """Return until when tyres may be changed before a race; absent where nobody entered it."""
    return tyre_choice_by(session, class_entered(session, records.get("day"))) or ABSENT


@fact("when a wheel was out", at="session:work")
def wheels_out(session: Session) -> tuple[tuple[str, dt.datetime], ...] | Unknown:
    """Return the number and time of each work on a wheel; not known where one has no time."""
    out = [(number, one.at) for number, one in session.work.items() if one.what == "wheel out"]
    if not out:
        return ()
    if session.date is None or any(at is None for _, at in out):
        return UNKNOWN
    date = session.date
    return tuple((number, dt.datetime.combine(date, at)) for number, at in out if at is not None)


@fact("whether it starts from a grid", at="session:kind")
def from_a_grid(session: Session) -> bool | Absent:
    """Return True for a race; absent otherwise, so that nothing of a grid is asked there."""
    return True if session.kind == "race" else ABSENT
