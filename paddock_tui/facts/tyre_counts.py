"""What the sessions show of one tyre: heat cycles, distance and time on it, on this bike."""

import datetime as dt
import functools
from collections.abc import Iterable, Iterator
from typing import NamedTuple

import attrs

from paddock_tui.calc.heat_cycles import Heating, heat_cycles
from paddock_tui.facts.past import ENDS, Along, End, History, PastSession, first_set, tyre_of
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
    ridden = _ridden_on(history, first, end)
    hours = [hours_ridden(one.session) for one in ridden]
    return TyreCount(
        first,
        begun.cycles_before,
        begun.distance_before,
        len(ridden),
        heat_cycles(_heatings(one.session for one in ridden)),
        sum(one.km or 0.0 for one in ridden),
        sum(hours),
        sum(one.km is None for one in ridden),
        sum(one == 0.0 for one in hours),
        ridden[-1].id if ridden else "",
    )


@functools.lru_cache(maxsize=64)
def _ridden_on(history: History, first: str, end: End) -> tuple[PastSession, ...]:
    # One whose file is not there goes on from none.
    goes_on = (name for name in history.tyre_sets if first_set(history, name, end) == first)
    return history.ridden_on((first, *goes_on))


def _heatings(sessions: Iterable[Session]) -> Iterator[Heating]:
    for one in sessions:
        if one.date is not None:
            yield Heating(one.date, one.warmers == "used", one.warmers_on, one.parked)


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
    this = first_set(history, session.tyres, end)
    readings = _READ.of(history).last.items()
    on_it = [read for (at, name), read in readings if at == end and first_set(history, name, end) == this]
    if not on_it:
        return None
    _, one, depth = max(on_it, key=_place)
    number = f", session {one.session.number}" if one.session.number is not None else ""
    return one.session.date, TreadNow(depth, f"measured {one.session.date or one.id}{number}")


class _Read(NamedTuple):
    """A reading of a tyre's tread, its session, and how many sessions there were by then."""

    place: int
    past: PastSession
    depth: Quantity


def _place(read: _Read) -> int:
    return read.place


class _Readings(NamedTuple):
    """How many sessions there were, and the last reading of each tyre set's tread by the end and the set."""

    sessions: int
    last: dict[tuple[End, str], _Read]


def _read_again(so_far: _Readings, one: PastSession) -> _Readings:
    place, name = so_far.sessions + 1, one.session.tyres
    for end in ENDS:
        depth = _read_in(one.session, end)
        if name is not None and depth is not None:
            so_far.last[end, name] = _Read(place, one, depth)
    return so_far._replace(sessions=place)


_READ = Along(
    "tread", _Readings(0, {}), _read_again, lambda so_far: _Readings(so_far.sessions, dict(so_far.last))
)


def _read_in(session: Session, end: End) -> Quantity | None:
    return session.front_tread if end == "front" else session.rear_tread
