"""Service, distance and chain: what is counted from the sessions, and what is due by hours, km or months."""

import datetime as dt
from collections.abc import Callable, Iterator
from typing import NamedTuple

import attrs

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.service_due import due_date, hours_to_go, km_to_go
from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.facts.past import Along, Alongs, History, PastSession
from paddock_tui.records.bike import Bike, Service
from paddock_tui.records.session import Session, was_done_back_in
from paddock_tui.records.session_parts import Work
from paddock_tui.records.shapes_of_bike import words_of


@attrs.frozen
class ServiceDue:
    """One item of service with what is left of it: hours, km, and the date it falls due; None: not known.

    `km` is the most that is left: a session whose distance nobody knows takes something off it.
    """

    name: str
    item: Service
    hours: float | None = None
    date: dt.date | None = None
    km: float | None = None
    km_lost: int = 0

    @property
    def is_brake_fluid(self) -> bool:
        """Whether the item is brake fluid, by its name."""
        return {"brake", "fluid"} <= set(self.name.split("-"))

    @property
    def is_oil(self) -> bool:
        """Whether the item is engine oil, by its name."""
        return self.name in ("oil", "engine-oil", "oil-filter")

    @property
    def label(self) -> str:
        """The item's name in words."""
        return words_of(self.name)


@fact("the service items")
def service_items(bike: Bike, session: Session, history: History) -> tuple[ServiceDue, ...]:
    """Return every item of the bike's service with hours left and date due, counted to before this
    session.
    """
    return services_due(bike, history)


def services_due(bike: Bike, history: History) -> tuple[ServiceDue, ...]:
    """Return every item of a bike's service with what is left of it after a history."""
    now = engine_hours(bike, history)
    km, lost = distance_covered(bike, history)
    return tuple(_due(name, item, now, km, lost) for name, item in sorted(bike.service.items()))


def engine_hours(bike: Bike, history: History) -> float | None:
    """Return the engine's hours: the start value and what was ridden since; None without a start value."""
    start = bike.start.hours
    if start is None:
        return None
    return start.to("h") + ridden_since(bike, history).hours


def distance_covered(bike: Bike, history: History) -> tuple[float | None, int]:
    """Return the bike's kilometres, and of how many sessions nobody knows the distance.

    The start value and what was ridden since; None without a start value.
    """
    start = bike.start.kilometres
    if start is None:
        return None, 0
    ridden = ridden_since(bike, history)
    return start.to("km") + ridden.km, ridden.lost


def since_start(bike: Bike, history: History) -> tuple[PastSession, ...]:
    """Return the sessions that are added to a bike's start values: those after their date."""
    return tuple(one for one in history.past if _after(one.date, bike.start.on))


class RiddenSince(NamedTuple):
    """Hours, kilometres, and of how many sessions that were ridden nobody knows these.

    `timeless` sessions, ridden or not, tell no hours; `any_km` are the kilometres of all of them, and of
    `any_lost` these are not known.
    """

    hours: float = 0.0
    km: float = 0.0
    lost: int = 0
    timeless: int = 0
    any_km: float = 0.0
    any_lost: int = 0


def _adding_up(start_on: str) -> Callable[[RiddenSince, PastSession], RiddenSince]:
    """Return what adds up the sessions after a date, one after the other as they come; of all without one."""
    start = dt.date.fromisoformat(start_on) if start_on else None

    def add(so_far: RiddenSince, one: PastSession) -> RiddenSince:
        if not _after(one.date, start):
            return so_far
        hours, km = hours_ridden(one.session), one.km
        return RiddenSince(
            so_far.hours + hours,
            so_far.km + (km or 0.0) if one.ridden else so_far.km,
            so_far.lost + (one.ridden and km is None),
            so_far.timeless + (hours == 0.0),
            so_far.any_km + (km or 0.0),
            so_far.any_lost + (km is None),
        )

    return add


_RIDDEN_SINCE = Alongs("ridden-since", RiddenSince(), _adding_up)


def ridden_since(bike: Bike, history: History) -> RiddenSince:
    """Return what was ridden since the date of a bike's start values."""
    start = bike.start.on
    return _RIDDEN_SINCE.of("" if start is None else start.isoformat()).of(history)


def hours_ridden(session: Session) -> float:
    """Hours of one session: the ridden time, else its laps, else from going out to parking, else none."""
    if session.ridden_time is not None:
        return session.ridden_time.to("h")
    if session.laps:
        return sum(float(lap.seconds) for lap in session.laps.values()) / 3600.0
    out, back = session.went_out, session.parked
    if out is None or back is None or back <= out:
        return 0.0
    minutes = (back.hour - out.hour) * 60 + back.minute - out.minute
    return minutes / 60.0


def _after(day: dt.date | None, start: dt.date | None) -> bool:
    return day is not None and (start is None or day > start)


def _due(name: str, item: Service, now_h: float | None, now_km: float | None, lost: int) -> ServiceDue:
    hours = date = km = None
    try:
        if now_km is not None and item.every_distance is not None and item.last_distance is not None:
            km = km_to_go(item.every_distance.to("km"), item.last_distance.to("km"), now_km)
        if now_h is not None and item.every_hours is not None and item.last_hours is not None:
            hours = hours_to_go(item.every_hours.to("h"), item.last_hours.to("h"), now_h)
        if item.every is not None and item.last is not None:
            date = due_date(item.last, item.every.to("months"))
    except (OutOfRange, ValueError, OverflowError):
        pass
    return ServiceDue(name, item, hours, date, km, lost if km is not None else 0)


@fact("the shift pattern, changed since the bike was ridden", at="bike:drive.shift_pattern", show=str)
def shift_pattern_changed(session: Session, bike: Bike, history: History) -> str | Absent:
    """Say which way the gears go since work on it with which nobody rode yet; absent without such work."""
    if not any(work.what == "shift pattern" for work in _not_ridden_with(session, history)):
        return ABSENT
    return bike.drive.shift_pattern or "not written down"


def _not_ridden_with(session: Session, history: History) -> Iterator[Work]:
    """List the work since the bike was last ridden, and what was done after that outing came back."""
    yield from session.work.values()
    for one in reversed(_WORKED_ON.of(history)):
        yield from _still_to_ride(one)


def worked_on(session: Session, history: History) -> bool:
    """Return whether work was at the bike since it was last ridden, noted in this session or one before."""
    return bool(session.work or _WORKED_ON.of(history))


def _still_to_ride(one: PastSession) -> list[Work]:
    """Return the work noted in a session that it was not ridden with."""
    session = one.session
    return [work for work in session.work.values() if not one.ridden or was_done_back_in(session, work)]


def _worked_again(so_far: tuple[PastSession, ...], one: PastSession) -> tuple[PastSession, ...]:
    before = () if one.ridden else so_far
    return (*before, one) if _still_to_ride(one) else before


_WORKED_ON: Along[tuple[PastSession, ...]] = Along("worked-on", (), _worked_again)
"""The sessions with work on the bike that nobody rode with yet."""


_Km = dict[str, dict[float, int]]


def _ridden_there(so_far: _Km, one: PastSession) -> _Km:
    if one.venue is None or not one.ridden or one.km is None:
        return so_far
    there = so_far.get(one.venue, {})
    so_far[one.venue] = {**there, one.km: there.get(one.km, 0) + 1}
    return so_far


_KM: Along[_Km] = Along("km-at", {}, _ridden_there, dict)
"""How many sessions at each venue were so many kilometres."""


def km_ridden_at(history: History, venue: str) -> list[float]:
    """List the kilometres of every session at a venue of which they are known, the fewest first."""
    found = _KM.of(history).get(venue, {})
    return [km for km in sorted(found) for _ in range(found[km])]


class ChainMeasured(NamedTuple):
    """The session in which the chain's slack was measured last, and how many were ridden from it on.

    No session, and all that were ridden, where it never was.
    """

    past: PastSession | None = None
    ridden: int = 0


def _measured_again(so_far: ChainMeasured, one: PastSession) -> ChainMeasured:
    if one.session.chain_slack is not None:
        return ChainMeasured(one, int(one.ridden))
    return so_far._replace(ridden=so_far.ridden + one.ridden) if one.ridden else so_far


_CHAIN: Along[ChainMeasured] = Along("chain-slack", ChainMeasured(), _measured_again)


def chain_measured(history: History) -> ChainMeasured:
    """Return when the chain's slack was measured last."""
    return _CHAIN.of(history)
