"""The brakes as last felt and measured: the lever, and the pads at each end."""

import bisect
import datetime as dt
from collections.abc import Mapping
from typing import NamedTuple

import attrs

from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.facts.past import ENDS, Along, End, History, PastSession
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.day import RidingDay
from paddock_tui.records.kinds import Record
from paddock_tui.records.session import Session


@attrs.frozen
class PadLeft:
    """The thinnest pad of one end as last measured, and where that was entered."""

    end: End
    left: Quantity
    where: str

    def __str__(self) -> str:
        return f"{self.end} pads {self.left} {self.where}"


@attrs.frozen
class LeastPad:
    """The least pad thickness that counts, and who says so; without a posted one the limit's."""

    posted: Quantity | None

    def __str__(self) -> str:
        return f"organiser's least {self.posted}" if self.posted is not None else "no least posted"


@fact("the pads at the {subject}", at="session:{subject}_pads", per="end", show=str)
def pads_left(end: End, session: Session, history: History) -> PadLeft | Absent:
    """Return the thinnest pad as measured for this session, else in the last one where it was."""
    own = _pads(session, end)
    if own is not None:
        return PadLeft(end, own, "now")
    one = _MEASURED.of(history).last.get(end)
    before = _pads(one.session, end) if one is not None else None
    return PadLeft(end, before, f"in session {one.id}") if one is not None and before is not None else ABSENT


class _Run(NamedTuple):
    """Readings of the same in mm, one after each ridden session: the first was on a date, after so many such
    sessions, and the last after so many.
    """

    mm: float
    on: dt.date
    first: int
    last: int


class _Pads(NamedTuple):
    """How often the bike was ridden; of each end, in which session its pads were measured last, and what
    was read of those fitted by then and just before.
    """

    ridden: int
    last: Mapping[End, PastSession]
    read: Mapping[End, tuple[_Run, ...]]


_BEFORE = 5
"""Runs of readings of earlier pads that are kept beside those of the new ones: the latest are shown."""


def _measured_again(so_far: _Pads, one: PastSession) -> _Pads:
    # One without a date is counted by nobody who counts from a day on.
    counts = one.ridden and one.date is not None
    ridden = so_far.ridden + counts
    new = {end: pads for end in ENDS if (pads := _pads(one.session, end)) is not None}
    last = {**so_far.last, **dict.fromkeys(new, one)} if new else so_far.last
    read = so_far.read
    if one.date is not None:
        for end, pads in new.items():
            read = {**read, end: _and_then(read.get(end, ()), pads.to("mm"), one.date, ridden, counts)}
    return _Pads(ridden, last, read)


def _and_then(
    before: tuple[_Run, ...], mm: float, on: dt.date, ridden: int, counts: bool
) -> tuple[_Run, ...]:
    """Return what was read with one more reading, of a session that was ridden where it `counts`."""
    newest = before[-1] if before else None
    if newest is not None and counts and newest.mm == mm and newest.last == ridden - 1:
        return (*before[:-1], newest._replace(last=ridden))
    if newest is not None and mm > newest.mm:
        # What is known of wear is loaded where pads seem to be new.
        from paddock_tui.calc.wear import RENEWED_MM

        before = before[-_BEFORE:] if mm - newest.mm > RENEWED_MM else before
    return (*before, _Run(mm, on, ridden, ridden))


_MEASURED: Along[_Pads] = Along("pads", _Pads(0, {}, {}), _measured_again)


def pads_since_start(bike: Bike, end: End, history: History) -> tuple[list[tuple[int, float]], int]:
    """Return what was read of one end's pads in mm, each after how often the bike had been ridden since the
    date of its start values, beginning with these; and how often that is by now.

    Of pads that were renewed meanwhile only the last readings are told.
    """
    found, since = _MEASURED.of(history), bike.start.on
    earlier = 0
    if since is not None:
        earlier = bisect.bisect_right(history.ridden, since, key=lambda one: one.date or dt.date.max)
    start = (bike.front if end == "front" else bike.rear).pads_start
    read = [(0, start.to("mm"))] if start is not None else []
    for run in found.read.get(end, ()):
        # All but the first of a run were ridden themselves: their number tells which are of later days.
        first = run.first if since is None or run.on > since else earlier + 1
        read += [(at - earlier, run.mm) for at in range(first, run.last + 1)]
    return read, found.ridden - earlier


@fact("the organiser's least pad thickness", at="day:limits.pads", show=str)
def least_pad(records: Mapping[str, Record], session: Session) -> LeastPad:
    """Return what the organiser posted, where there is one."""
    day = records.get("day")
    return LeastPad(day.limits.pads if isinstance(day, RidingDay) else None)


def _pads(session: Session, end: End) -> Quantity | None:
    return session.front_pads if end == "front" else session.rear_pads
