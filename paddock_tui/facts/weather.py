"""The weather as far as somebody measured it, and the light: when it counts as dusk."""

import datetime as dt
from collections.abc import Mapping
from typing import NamedTuple

from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.facts.outing import COLUMN
from paddock_tui.limits import Limits
from paddock_tui.limits.weather import DUSK_SUMMER, DUSK_WINTER
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.day import RidingDay
from paddock_tui.records.kinds import Record
from paddock_tui.records.session import Session
from paddock_tui.records.timetable import group_today, slots_of

SUMMER = range(4, 10)
"""The months of the long days, April to September."""


class Coldest(NamedTuple):
    """The lower of air and track temperature, and which of them it is."""

    celsius: float
    words: str

    def __str__(self) -> str:
        return self.words


@fact("the temperature", at="session:air", show=str)
def coldest(session: Session) -> Coldest | Absent:
    """Return the lower of the temperatures that were measured; absent where none was."""
    known = [("Air", session.air), ("Track", session.track)]
    measured = [(one.to("C"), f"{name} {one}") for name, one in known if isinstance(one, Quantity)]
    return Coldest(*min(measured)) if measured else ABSENT


@fact("the coolant", show=lambda found: f"coolant {found}")
def coolant(records: Mapping[str, Record]) -> str | None:
    """Return what is in the cooling system, None where nobody wrote it."""
    bike = records.get("bike")
    return bike.drive.coolant if isinstance(bike, Bike) else None


class Dusk(NamedTuple):
    """A time that counts as dusk, and from when it does."""

    at: dt.time
    hour: float

    def __str__(self) -> str:
        return f"{self.at:%H:%M}, dusk from {self.hour:g} h"


def dusk_at(date: dt.date, at: dt.time, limits: Limits) -> Dusk | None:
    """Return the dusk that a time of a day falls in; None by daylight."""
    hour = limits[DUSK_SUMMER if date.month in SUMMER else DUSK_WINTER]
    return Dusk(at, hour) if at.hour + at.minute / 60 >= hour else None


@fact("whether it is ridden at dusk", show=str)
def dusk(session: Session, now: dt.datetime, limits: Limits) -> Dusk | Absent:
    """Return the dusk that it goes out in, by its start, else by the clock of its day; absent by daylight."""
    at = session.went_out or session.start
    if session.date is None or (at is None and now.date() != session.date):
        return ABSENT
    return dusk_at(session.date, at or now.time(), limits) or ABSENT


@fact("the tinted visor", at="session:visor", show=lambda found: f"{found} visor")
def tinted_visor(session: Session) -> str | Absent:
    """Return how a visor is tinted; absent for a clear one, or where nobody wrote of one."""
    return session.visor if session.visor in ("tinted", "dark") else ABSENT


@fact("the poor light", show=str)
def poor_light(session: Session, now: dt.datetime, limits: Limits) -> str | Absent:
    """Say what makes the light poor, dusk or rain; absent where neither is known."""
    late = dusk(session, now, limits)
    if isinstance(late, Dusk):
        return f"at dusk ({late})"
    return "in the rain" if COLUMN.get(session.surface or "") == "wet" else ABSENT


def home_at_dusk(session: Session, records: Mapping[str, Record], limits: Limits) -> Dusk | None:
    """Return the dusk that the timetable's end leaves the way home in; None by daylight, or without one."""
    day = records.get("day")
    if not isinstance(day, RidingDay) or session.date is None:
        return None
    slots = slots_of(day, group_today(day, session.rider, session.bike))
    ends = (slot.to or slot.from_ for slot in slots.values())
    last = max((end for end in ends if end is not None), default=None)
    return None if last is None else dusk_at(session.date, last, limits)
