"""What the organiser posted, and what was signed and briefed."""

import attrs

from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.day import Entry, RidingDay
from paddock_tui.records.electronics import Control, function_of, speed_of
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp


@attrs.frozen
class Limiter:
    """The pit limiter of the bike: its control, and the speed set (None when off)."""

    name: str
    control: Control
    set_to: Quantity | None


@fact("the posted pit-lane limit", at="day:limits.pit_lane", show=lambda found: f"posted {found}")
def posted_pit_limit(day: RidingDay) -> Quantity | Unknown:
    """The pit-lane limit as posted for the day; the venue's usual one never stands in for it."""
    return day.limits.pit_lane or UNKNOWN


@fact(
    "what the pit limiter is set to",
    at="session:setup.controls.pit-limiter",
    show=lambda found: _limiter(found),
)
def limiter(bike: Bike, setup: SetUp) -> Limiter | Unknown | Absent:
    """The pit limiter and its speed; absent on a bike that has none."""
    for name, control in bike.controls.items():
        if function_of(name, control) == "pit-limiter":
            value = setup.controls.get(name)
            if value is None:
                return UNKNOWN
            speed = speed_of(value)
            return UNKNOWN if speed is None and value != "off" else Limiter(name, control, speed)
    return ABSENT


@fact("the pit limiter", at="session:setup.controls.pit-limiter")
def limiter_without_figure(bike: Bike, setup: SetUp) -> bool | Absent:
    """Whether the bike has a pit limiter whose figure was not written down."""
    for name, control in bike.controls.items():
        if function_of(name, control) == "pit-limiter":
            return name not in setup.controls
    return ABSENT


@fact("the paperwork of this rider and bike", at="day:entries")
def entry(day: RidingDay, session: Session) -> Entry:
    """What was signed, briefed and inspected today for this rider on this bike."""
    return day.entries.get(session.rider or "", {}).get(session.bike or "", Entry())


@fact("whether this is an organised session")
def organised(session: Session) -> bool | Absent:
    """True for everything but a ride on the road."""
    return ABSENT if session.kind == "road" else True


def _limiter(found: Limiter) -> str:
    return f"pit limiter {found.set_to or 'off'}"
