"""Tyre pressures as they were read: cold and hot of each end, how fresh, and what they should be."""

import datetime as dt

import attrs

from paddock_tui.calc.cooling_pressure import Freshness, freshness
from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.outside_pressure import AirMoves, AirObserved, outside_pressure
from paddock_tui.calc.tyre_air_learning import HOT_WITHIN_MIN
from paddock_tui.calc.tyre_pressure import Ambient, gas_temperature_c
from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.past import Along, End, History, PastSession, tyre_of
from paddock_tui.facts.tyre_targets import cold_target_of
from paddock_tui.limits import Limits
from paddock_tui.quantities import Quantity
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import PressureReading
from paddock_tui.records.setup import SetUp
from paddock_tui.records.tyres import TyreSet

FULL_SESSION_MIN = 10.0
"""Minutes on track after which a tyre is as warm as it gets. Common practice, no source."""

FULL_SESSION_LAPS = 4
"""Laps after which a tyre is as warm as it gets. Common practice, no source."""


@attrs.frozen
class PressureRead:
    """A pressure as it was read at one end, what it was then set to, and when and how warm it was."""

    end: End
    pressure: Quantity
    set_to: Quantity | None
    at: dt.time | None
    celsius: float | None

    @property
    def left_at(self) -> Quantity:
        """The pressure that the tyre was left with."""
        return self.set_to or self.pressure

    def __str__(self) -> str:
        return f"{self.end} {self.pressure}"


@attrs.frozen
class Hot(PressureRead):
    """A hot reading, and what it is worth by the time since parking; None where a time is missing."""

    minutes: int | None = None
    fresh: Freshness | None = None

    def __str__(self) -> str:
        return f"{self.end} hot {self.pressure}"


@fact("the cold reading of the {subject}", per="end", show=lambda found: f"{found.end} cold {found.left_at}")
def cold_read(end: End, session: Session) -> PressureRead | Absent:
    """Return the cold reading of one end; absent where it was not read."""
    return read_at(end, session.pressures.get("cold"), session) or ABSENT


@fact("the hot reading of the {subject}", at="session:pressures.hot.{subject}", per="end", show=str)
def hot_read(end: End, session: Session) -> Hot | Absent:
    """Return the hot reading of one end with the minutes since parking; absent where it was not read."""
    reading = session.pressures.get("hot")
    found = read_at(end, reading, session)
    if found is None:
        return ABSENT
    minutes = None
    if session.parked is not None and found.at is not None:
        minutes = (found.at.hour - session.parked.hour) * 60 + found.at.minute - session.parked.minute
    fresh = freshness(float(minutes)) if minutes is not None and minutes >= 0 else None
    return Hot(end, found.pressure, found.set_to, found.at, found.celsius, minutes, fresh)


@attrs.frozen
class Worked:
    """The temperature of the gas by cold and hot reading, and the tyre's working range, in C."""

    gas_c: float
    low_c: float
    high_c: float

    def __str__(self) -> str:
        return f"air inside at {self.gas_c:.0f} C by cold and hot"


@fact("how warm the {subject} got", per="end", show=str)
def worked(
    end: End,
    session: Session,
    tyres: TyreSet,
    cold_read: PressureRead,
    hot_read: Hot,
    on_dry: bool,
    same_air: bool,
    air_observed: AirObserved,
    limits: Limits,
) -> Worked | Absent:
    """Return what a full dry session made of the gas; absent where range, temperature or length is not
    known.
    """
    tyre = tyre_of(tyres, end)
    if tyre.works_from is None or tyre.works_to is None or cold_read.celsius is None:
        return ABSENT
    if hot_read.fresh is not Freshness.HOT or session.warmers == "used" or not _full(session):
        return ABSENT
    try:
        outside = outside_pressure(air_observed, AirMoves.of(limits)).kpa
        gas = gas_temperature_c(
            cold_read.left_at.to("kPa"),
            cold_read.celsius,
            hot_read.pressure.to("kPa"),
            Ambient(outside, outside),
        )
    except (Inconsistent, OutOfRange):
        return ABSENT
    return Worked(gas, tyre.works_from.to("C"), tyre.works_to.to("C"))


@attrs.frozen
class StartPressure:
    """The cold pressure that one end goes out with, and where it stands."""

    end: End
    pressure: Quantity
    read: bool

    def __str__(self) -> str:
        return f"{self.end} {self.pressure}"


@fact("what the {subject} goes out with", per="end", show=str)
def goes_out_with(end: End, session: Session, setup: SetUp) -> StartPressure | Absent:
    """Return what the cold reading left in it, else the starting pressure of the set-up; absent without
    either.
    """
    read = read_at(end, session.pressures.get("cold"), session)
    if read is not None:
        return StartPressure(end, read.left_at, read=True)
    start = cold_target_of(setup, end)
    return ABSENT if start is None else StartPressure(end, start, read=False)


@fact("the last session without a hot reading", show=lambda found: f"session {found}")
def last_without_hot(session: Session, history: History) -> str | Absent:
    """Return the last session ridden on these tyres, where its hot pressures were not written down."""
    one = _OFF_THE_ROAD.of(history)
    if one is None or session.kind == "road" or session.tyres is None or one.tyres != session.tyres:
        return ABSENT
    hot = one.session.pressures.get("hot")
    return one.id if hot is None or (hot.front is None and hot.rear is None) else ABSENT


def _off_the_road(so_far: PastSession | None, one: PastSession) -> PastSession | None:
    return one if one.ridden and one.session.kind != "road" else so_far


_OFF_THE_ROAD: Along[PastSession | None] = Along("off-the-road", None, _off_the_road)
"""The last session that was ridden, but for those on the road."""


_HotDays = dict[tuple[str, str], tuple[dt.date, ...]]


def _hot_there(so_far: _HotDays, one: PastSession) -> _HotDays:
    column, hot = COLUMN.get(one.session.surface or ""), one.session.pressures.get("hot")
    if one.venue is None or one.date is None or column is None or hot is None:
        return so_far
    days, minutes = so_far.get((one.venue, column), ()), minutes_after_parking(one.session, hot)
    read = hot.front is not None or hot.rear is not None
    if read and days[-1:] != (one.date,) and minutes is not None and minutes <= HOT_WITHIN_MIN:
        so_far[one.venue, column] = (*days, one.date)
    return so_far


_HOT_DAYS: Along[_HotDays] = Along("hot-days", {}, _hot_there, dict)


def days_with_hot(history: History, venue: str, column: str) -> tuple[dt.date, ...]:
    """Return the days at a venue on which a tyre was read soon after parking, on a dry, damp or wet track."""
    return _HOT_DAYS.of(history).get((venue, column), ())


def minutes_after_parking(session: Session, reading: PressureReading) -> float | None:
    """Return the minutes from parking to a reading; None where one of the times is not known."""
    if session.parked is None or reading.at is None:
        return None
    parked, at = (one.hour * 60 + one.minute + one.second / 60 for one in (session.parked, reading.at))
    return at - parked if at >= parked else None


def read_at(end: End, reading: PressureReading | None, session: Session) -> PressureRead | None:
    """Return one end of a reading; without a temperature of its own the air's counts. None: not read."""
    if reading is None:
        return None
    pressure, set_to = (
        (reading.front, reading.set_to_front) if end == "front" else (reading.rear, reading.set_to_rear)
    )
    if pressure is None:
        return None
    air = session.air.to("C") if isinstance(session.air, Quantity) else None
    celsius = reading.temperature.to("C") if reading.temperature is not None else air
    return PressureRead(end, pressure, set_to, reading.at, celsius)


def _full(session: Session) -> bool:
    if session.ridden_time is not None:
        return session.ridden_time.to("min") >= FULL_SESSION_MIN
    return session.lap_count >= FULL_SESSION_LAPS
