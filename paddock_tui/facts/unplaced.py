"""Sessions that the record does not place: without a date, a bike or a rider they may concern any to come.

What such a session opened may be open, and nobody can tell what came after it: it keeps what it opened,
closes nothing, and is named among what is missing until it is placed.
"""

import datetime as dt
from collections.abc import Iterator

import attrs

from paddock_tui.facts.past import History, PastSession
from paddock_tui.records.fields import specs
from paddock_tui.records.session import Session, is_ridden

PLACED_BY = ("date", "bike", "rider")
"""What a session is placed by in the record of a bike and of a rider, in the order of asking."""

_OF_A_PLAN = frozenset(
    {
        *("date", "number", "copied_from", "taken_from", "planned_laps", "start", "because", "aim", "aim_by"),
        *("jobs", "retired", "notes", "warmers", "warmers_on", "warmers_at", "front_pressure_change"),
        "rear_pressure_change",
    }
)
"""What is written into a session that is only planned, beside what it takes along from the one before."""

_EMPTY = Session()


def lacking(session: Session) -> str:
    """Return the first thing that a session is not placed by; empty where it is placed."""
    return next((key for key in PLACED_BY if getattr(session, key) is None), "")


def is_told(session: Session) -> bool:
    """Return whether anything was written down of an outing that more than plans it."""
    held = (name for name, (_, spec) in specs(Session).items() if not spec.carry and name not in _OF_A_PLAN)
    return is_ridden(session) or any(getattr(session, name) != getattr(_EMPTY, name) for name in held)


def may_concern(one: Session, here: Session) -> bool:
    """Return whether a session that is not placed may be one before another: of its bike or of its rider."""
    if one.date is not None and here.date is not None and one.date > here.date:
        return False
    of_bike = one.bike in (None, here.bike) and not (one.bike is not None and one.date is not None)
    of_rider = one.rider in (None, here.rider) and bool(one.incidents)
    return (of_bike or of_rider) and is_told(one)


def as_if_of(one: PastSession, here: Session) -> PastSession:
    """Return a session that is not placed as one of this bike and of this rider, where it tells none."""
    session = one.session
    placed = attrs.evolve(session, bike=session.bike or here.bike, rider=session.rider or here.rider)
    return attrs.evolve(one, session=placed)


def without_order(history: History, here: Session) -> Iterator[tuple[PastSession, str]]:
    """List the outings of the last day of a bike that lack their number, or share it and lack their start.

    Which of them was the last is not told then, nor what was filled or read after what.
    """
    last = next((one.date for one in reversed(history.ridden) if one.date is not None), None)
    for date in {one for one in (last, here.date) if one is not None}:
        on_it = _on(history, date)
        numbers = [one.session.number for one in on_it] + ([here.number] if here.date == date else [])
        for one in on_it:
            key = _lacks(one.session, numbers) if is_told(one.session) else ""
            if key:
                yield one, key


def _on(history: History, date: dt.date) -> list[PastSession]:
    """List the sessions of a date, one of the last of a history: those before are not gone through."""
    found: list[PastSession] = []
    for one in reversed(history.past):
        if one.date == date:
            found.append(one)
        elif one.date is not None and one.date < date:
            break
    return found[::-1]


def _lacks(session: Session, numbers: list[int | None]) -> str:
    """Return what would tell where a session stands among those of its day; empty where that is told."""
    if session.number is None:
        return "number" if len(numbers) > 1 else ""
    return "start" if session.start is None and numbers.count(session.number) > 1 else ""
