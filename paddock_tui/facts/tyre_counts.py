"""What the sessions show of one tyre: heat cycles, distance and time on it, on this bike."""

import datetime as dt
import json
from collections.abc import Callable
from typing import NamedTuple

import attrs

from paddock_tui.calc.heat_cycles import HeatCycles, Heating
from paddock_tui.facts.past import (
    ENDS,
    Along,
    Alongs,
    End,
    History,
    PastSession,
    first_set,
    sets_with,
    tyre_of,
)
from paddock_tui.facts.service import hours_ridden
from paddock_tui.quantities import Quantity
from paddock_tui.records.session import Session, is_ridden
from paddock_tui.records.tyres import TyreSet


@attrs.frozen
class TyreCount:
    """Start values of a tyre and what was counted since, over `sessions` of one bike.

    `first` is the set that the tyre was in first, whose start values these are. Of `without_km` and
    `without_hours` sessions nobody knows how far or how long they were. `last` is the last one counted.
    """

    first: str
    cycles_before: int | None
    distance_before: Quantity | None
    sessions: int
    cycles: int
    km: float
    hours: float
    without_km: int
    without_hours: int
    last: str = ""

    @property
    def all_cycles(self) -> int:
        """Heat cycles so far; without a start value those that were counted."""
        return (self.cycles_before or 0) + self.cycles

    @property
    def all_km(self) -> float:
        """Kilometres so far; without a start value those that were counted."""
        return (0.0 if self.distance_before is None else self.distance_before.to("km")) + self.km


def tyre_count(history: History, tyres: str, end: End, fallback: TyreSet | None) -> TyreCount:
    """Count one tyre over a history; one that another set began with is followed to there.

    `fallback` is the set itself, for the start values where the first set is not in the history.
    """
    first = first_set(history, tyres, end)
    begun = tyre_of(history.tyre_sets.get(first, fallback), end)
    counted = _counted(history, tyres, end)
    return TyreCount(
        first,
        begun.cycles_before,
        begun.distance_before,
        counted.sessions,
        counted.cycles.cycles,
        counted.km,
        counted.hours,
        counted.without_km,
        counted.without_hours,
        counted.last,
    )


class _Counted(NamedTuple):
    """What was counted of a tyre over the sessions that it was ridden in; `last` is the id of the last."""

    sessions: int = 0
    cycles: HeatCycles = HeatCycles()
    km: float = 0.0
    hours: float = 0.0
    without_km: int = 0
    without_hours: int = 0
    last: str = ""

    def after(self, one: PastSession) -> "_Counted":
        """Return it with one more session that was ridden."""
        session, km = one.session, one.km
        hours = hours_ridden(session)
        cycles = self.cycles
        if one.date is not None:
            warmed = session.warmers == "used"
            cycles = cycles.after(Heating(one.date, warmed, session.warmers_on, session.parked))
        return _Counted(
            self.sessions + 1,
            cycles,
            self.km + (km or 0.0),
            self.hours + hours,
            self.without_km + (km is None),
            self.without_hours + (hours == 0.0),
            one.id,
        )


_OfSets = dict[str, _Counted]


def _counted_again(so_far: _OfSets, one: PastSession) -> _OfSets:
    if one.tyres is not None and one.ridden:
        so_far[one.tyres] = so_far.get(one.tyres, _Counted()).after(one)
    return so_far


_COUNTED: Along[_OfSets] = Along("ridden-on", {}, _counted_again, dict)
"""What was counted of each tyre set."""


def _counting(sets: str) -> Callable[[_Counted, PastSession], _Counted]:
    """Return what counts the sessions that were ridden on any of some tyre sets as they came."""
    names = frozenset(json.loads(sets))

    def count(so_far: _Counted, one: PastSession) -> _Counted:
        return so_far.after(one) if one.tyres in names and one.ridden else so_far

    return count


_OF_SEVERAL = Alongs("ridden-on-any", _Counted(), _counting)


def _counted(history: History, tyres: str, end: End) -> _Counted:
    of_sets = _COUNTED.of(history)
    ridden = sorted(name for name in sets_with(history, tyres, end) if name in of_sets)
    if len(ridden) > 1:
        # A tyre that went from set to set may have gone back and forth: it is counted as it came.
        return _OF_SEVERAL.of(json.dumps(ridden)).of(history)
    return of_sets[ridden[0]] if ridden else _Counted()


class TreadNow(NamedTuple):
    """The least tread of a tyre, and what it was measured at: its set's file, or an outing."""

    depth: Quantity
    where: str

    def __str__(self) -> str:
        return f"{self.depth} of tread ({self.where})" if self.where else f"{self.depth} of tread"


def tread_now(session: Session, tyres: TyreSet, history: History, end: End) -> TreadNow | None:
    """Return the tread of one tyre as it was last measured, by its own file or in an outing on it.

    Where the file does not say when, the lesser counts. What was measured after the session says nothing.
    """
    tyre = tyre_of(tyres, end)
    depths = [one for one in (tyre.tread_left, tyre.tread_middle, tyre.tread_right) if one is not None]
    least, on = min(depths, key=lambda one: one.to("mm"), default=None), tyre.tread_measured
    in_file = None
    if least is not None and not (on is not None and session.date is not None and on > session.date):
        in_file = TreadNow(least, f"measured {on}" if on is not None else "")
    read = _last_read(session, history, end)
    if read is None or in_file is None:
        return in_file if read is None else read[1]
    if on is None or read[0] is None:
        return min(in_file, read[1], key=lambda one: one.depth.to("mm"))
    return in_file if on > read[0] else read[1]


def _last_read(session: Session, history: History, end: End) -> tuple[dt.date | None, TreadNow] | None:
    """Return the last reading of a tyre's tread in an outing on it, and its date."""
    own = None if is_ridden(session) else _read_in(session, end)
    if own is not None:
        return session.date, TreadNow(own, "measured now")
    if session.tyres is None:
        return None
    last = _READ.of(history).last
    readings = [last.get((end, name)) for name in sets_with(history, session.tyres, end)]
    read = max((one for one in readings if one is not None), key=_place, default=None)
    if read is None:
        return None
    one, depth = read.past, _read_in(read.past.session, end)
    if depth is None:
        return None
    number = f", session {one.session.number}" if one.session.number is not None else ""
    return one.date, TreadNow(depth, f"measured {one.date or one.id}{number}")


class _Read(NamedTuple):
    """A session in which a tyre's tread was read, and how many sessions there were by then."""

    place: int
    past: PastSession


def _place(read: _Read) -> int:
    return read.place


class _Readings(NamedTuple):
    """How many sessions there were, and the last reading of each tyre set's tread by the end and the set."""

    sessions: int
    last: dict[tuple[End, str], _Read]


def _read_again(so_far: _Readings, one: PastSession) -> _Readings:
    place, name = so_far.sessions + 1, one.tyres
    for end in ENDS:
        if name is not None and _read_in(one.session, end) is not None:
            so_far.last[end, name] = _Read(place, one)
    return so_far._replace(sessions=place)


def _own(so_far: _Readings) -> _Readings:
    return _Readings(so_far.sessions, dict(so_far.last))


_READ = Along("tread", _Readings(0, {}), _read_again, _own)


def _read_in(session: Session, end: End) -> Quantity | None:
    return session.front_tread if end == "front" else session.rear_tread
