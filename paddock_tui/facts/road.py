"""A ride on the road: pressures, tread, aids and riding mode as they leave the gate."""

import datetime as dt
from collections.abc import Mapping
from typing import NamedTuple

from paddock_tui.facts.controls import Mapped, ShownControl
from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.facts.event import stop_before
from paddock_tui.facts.past import ENDS, End, History, PastSession, tyre_of
from paddock_tui.facts.tyre_counts import tread_now
from paddock_tui.facts.tyre_targets import cold_target_of
from paddock_tui.facts.weather import home_at_dusk
from paddock_tui.limits import Limits
from paddock_tui.limits.tyres import TREAD_SERIOUS
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.day import RidingDay
from paddock_tui.records.electronics import Control, Effect, function_of
from paddock_tui.records.kinds import Record
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import PressureReading
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes_of_bike import is_off
from paddock_tui.records.tyres import TyreSet

TRACK_ONLY = ("slick", "wet", "intermediate")
"""Kinds of tyre that are not made for the road."""

ORDER = ("leaving", "warmers", "cold")
"""The readings before a ride, the last one first."""


class Leaving(NamedTuple):
    """The pressure that one tyre leaves with, and where it stands."""

    end: End
    pressure: Quantity
    read: bool

    def __str__(self) -> str:
        return f"{self.end} {self.pressure} {'as read' if self.read else 'as the set-up says'}"


@fact("whether it is a ride on the road")
def on_the_road(session: Session) -> bool | Absent:
    """Return True for a ride on the road, absent for everything else."""
    return True if session.kind == "road" else ABSENT


@fact(
    "the pressure that the {subject} leaves with", at="session:pressures.cold.{subject}", per="end", show=str
)
def leaving_with(end: End, session: Session, setup: SetUp) -> Leaving | Absent:
    """Return the last reading before the ride, or what it was set to; else what the set-up says."""
    for name in ORDER:
        found = _read(session.pressures.get(name), end)
        if found is not None:
            return Leaving(end, found, read=True)
    start = cold_target_of(setup, end)
    return ABSENT if start is None else Leaving(end, start, read=False)


@fact(
    "the road pressure of the {subject}",
    at="bike:{subject}.road_pressure",
    per="end",
    show=lambda found: f"road {found}",
)
def road_pressure(end: End, bike: Bike) -> Quantity | Unknown:
    """Return the manual's figure for the road."""
    found = bike.front.road_pressure if end == "front" else bike.rear.road_pressure
    return found or UNKNOWN


@fact("the tread left at the {subject}", per="end", show=lambda found: f"{found} tread left")
def least_tread(end: End, session: Session, tyres: TyreSet, history: History) -> Quantity | Absent:
    """Return the least depth as last measured, in the tyre's file or in an outing; absent where none was."""
    found = tread_now(session, tyres, history, end)
    return ABSENT if found is None else found.depth


@fact(
    "the kind of the {subject} tyre", at="tyres:{subject}.kind", per="end", show=lambda found: f"{found} tyre"
)
def tyre_kind_at(end: End, tyres: TyreSet) -> str | Unknown:
    """Return what the tyre is made for."""
    return tyre_of(tyres, end).kind or UNKNOWN


@fact("the wheels that {subject} watches", per="control")
def wheels_watched(subject: str, control: Control) -> tuple[str, ...] | Absent:
    """Return the wheels that a control of ABS is for; absent for a control that is no ABS."""
    function = function_of(subject, control)
    if function not in ("front-abs", "rear-abs", "abs"):
        return ABSENT
    return ("front", "rear") if function == "abs" else (function.partition("-")[0],)


@fact("the wheels that {subject} leaves without ABS", per="control")
def wheels_left(
    control: Control, wheels_watched: tuple[str, ...], in_force: ShownControl, effect_in_force: Effect
) -> tuple[str, ...]:
    """Return the wheels without ABS at this level."""
    wheels = wheels_watched
    if is_off(control, in_force.value):
        return wheels
    return tuple(wheel for wheel in wheels if getattr(effect_in_force, wheel) == "off")


@fact("what the riding mode is for", show=lambda found: f"riding mode for {found}")
def mode_made_for(mode_in_use: Mapped) -> str | Absent:
    """Return what the riding mode in use is made for; absent where its file does not say."""
    return mode_in_use.mode.use or ABSENT


def _read(reading: PressureReading | None, end: End) -> Quantity | None:
    if reading is None:
        return None
    if end == "front":
        return reading.set_to_front or reading.front
    return reading.set_to_rear or reading.rear


@fact("when the way home by road can still be changed", show=str)
def home_by_road(
    session: Session,
    records: Mapping[str, Record],
    rider_today: tuple[PastSession, ...],
    now: dt.datetime,
) -> str | Absent:
    """Say when it is, the evening before or after lunch, where the bike goes home on its wheels; else absent.

    Nothing is asked where nobody said how it gets home.
    """
    day = records.get("day")
    if not isinstance(day, RidingDay) or session.kind == "road" or session.date is None:
        return ABSENT
    own = day.entry_of(session.rider, session.bike)
    if (own.travel or day.travel) != "road":
        return ABSENT
    if now.date() < session.date:
        return "the evening before"
    return ABSENT if stop_before(session, records, rider_today) is ABSENT else "after the break"


@fact("what is not for the road home")
def unfit_for_home(
    tyres: TyreSet, session: Session, history: History, records: Mapping[str, Record], limits: Limits
) -> tuple[str, ...]:
    """Name the tyres that are made for a track only, or under what the garage entered of the law, and dusk
    where the timetable ends in it.
    """
    found: list[str] = []
    for end in ENDS:
        kind, left = tyre_of(tyres, end).kind, least_tread(end, session, tyres, history)
        if kind in TRACK_ONLY:
            found.append(f"{end} tyre ({kind})")
        elif isinstance(left, Quantity) and limits.overridden(TREAD_SERIOUS):
            under = left.to("mm") < limits[TREAD_SERIOUS]
            found += [f"{end} tyre ({left} of tread)"] if under else []
    late = home_at_dusk(session, records, limits)
    found += [f"dusk ({late.at:%H:%M})"] if late is not None else []
    return tuple(found)
