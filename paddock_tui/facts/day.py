"""What the organiser posted, and what was signed and briefed."""

import attrs

from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.day import DayEntry, RidingDay
from paddock_tui.records.electronics import Control, function_of, speed_of
from paddock_tui.records.in_force import value_in_force
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes_of_bike import is_off


@attrs.frozen
class Limiter:
    """The pit limiter of the bike: its control, and the speed set (None when off)."""

    name: str
    control: Control
    set_to: Quantity | None


@fact("the posted pit-lane limit", at="day:limits.pit_lane", show=lambda found: f"posted {found}")
def posted_pit_limit(day: RidingDay) -> Quantity | Unknown:
    """Return the pit-lane limit as posted for the day; the venue's usual one never stands in for it."""
    return day.limits.pit_lane or UNKNOWN


@fact(
    "what the pit limiter is set to",
    at="session:setup.controls.pit-limiter",
    show=lambda found: _limiter(found),
)
def limiter(bike: Bike, setup: SetUp) -> Limiter | Unknown | Absent:
    """Return the pit limiter and its speed; absent on a bike that has none."""
    found = _limiter_of(bike, setup)
    if found is None:
        return ABSENT
    name, control, value = found
    if value is not None and is_off(control, value):
        return Limiter(name, control, None)
    speed = speed_of(value) if value is not None else None
    return UNKNOWN if speed is None else Limiter(name, control, speed)


@fact("the pit limiter", at="session:setup.controls.pit-limiter")
def limiter_without_figure(bike: Bike, setup: SetUp) -> bool | Absent:
    """Return whether the bike has a pit limiter whose figure was not written down."""
    found = _limiter_of(bike, setup)
    return ABSENT if found is None else found[2] is None


@fact("the paperwork of this rider and bike", at="day:entries")
def entry(day: RidingDay, session: Session) -> DayEntry:
    """Return what was signed, briefed and inspected today for this rider on this bike."""
    return day.entry_of(session.rider, session.bike)


@fact("whether this is an organised session")
def organised(session: Session) -> bool | Absent:
    """Return True for everything but a ride on the road."""
    return ABSENT if session.kind == "road" else True


def _limiter_of(bike: Bike, setup: SetUp) -> tuple[str, Control, Setting | None] | None:
    """Find the pit limiter and the value in force, riding mode included."""
    for name, control in sorted(bike.controls.items()):
        if function_of(name, control) == "pit-limiter":
            return name, control, value_in_force(name, setup, bike)
    return None


def _limiter(found: Limiter) -> str:
    return f"pit limiter {found.set_to or 'off'}"
