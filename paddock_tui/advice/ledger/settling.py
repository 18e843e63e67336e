"""How a change would be settled: so many more outings, in their order, only where that is worth them."""

import datetime as dt

from paddock_tui.advice.ledger.entries import LedgerEntry
from paddock_tui.calc.outings_to_tell import outings_to_tell
from paddock_tui.calc.session_comparison import FEWEST
from paddock_tui.facts.past import History, PastSession
from paddock_tui.limits import Limits
from paddock_tui.limits.next_change import FEWEST_LEFT
from paddock_tui.records.day import RidingDay
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import DANGERS
from paddock_tui.records.timetable import group_today, slots_of

KEEP = "keep what you like, cause not known"
_TOLD = ("helped", "made it worse")


def outings_left(day: RidingDay | None, session: Session, now: dt.datetime) -> int | None:
    """Count the starts of a group's timetable still to come today; None where nobody knows.

    `session` is the last one that was ridden: of another day nothing is left. What has started is gone,
    ridden or not.
    """
    if day is None or session.date != now.date():
        return None
    slots = slots_of(day, group_today(day, session.rider, session.bike))
    if not slots:
        return None
    ridden_at = session.parked or session.went_out or session.start
    gone = max(now.time(), ridden_at) if ridden_at is not None else now.time()
    return sum(slot.from_ is not None and slot.from_ > gone for slot in slots.values())


def outings_left_of(history: History, entry: LedgerEntry, now: dt.datetime) -> int | None:
    """Count the outings left of a change's own day, where that is today; None where nobody knows."""
    session = entry.session.session
    if session.date != now.date():
        return None
    ridden = [
        one for one in history.past if one.date == session.date and one.rider == session.rider and one.ridden
    ]
    last: PastSession | None = ridden[-1] if ridden else None
    return outings_left(last.day, last.session, now) if last is not None else None


def to_settle(entry: LedgerEntry, left: int | None, laps: int, limits: Limits) -> str:
    """Say which outings would tell what a change did; empty where it is told, or nothing may be tried.

    `laps` are the clean laps of an outing. Nothing is ridden again, or gone back into, for the sake of
    knowing, that brought a danger; with few outings left none is spent.
    """
    judgement = entry.judgement
    if left is None or left < limits[FEWEST_LEFT] or judgement is None or judgement.verdict in _TOLD:
        return ""
    if (
        entry.others
        or entry.source is None
        or _danger(entry.source.session)
        or _danger(entry.session.session)
    ):
        return ""
    if judgement.gain_s is None:
        timed = all(one.may_time for one in (entry.source, entry.session)) and laps >= FEWEST
        return "" if timed or judgement.steps != (0, 0) else f"{KEEP}: no laps are timed to tell it by"
    order = outings_to_tell(judgement, laps, left, limits[FEWEST_LEFT])
    if order:
        return f"{len(order)} of the {left} outings left, {', then '.join(order)}"
    return f"{KEEP}: the {left} outings left cannot tell it"


def _danger(session: Session) -> bool:
    return any(one.what in DANGERS for one in session.symptoms.values())
