"""Which checklist is at hand, and which have to be gone through before going out."""

import datetime as dt
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from paddock_tui.facts.checklists import RACING, ListState, fell
from paddock_tui.facts.core import fact
from paddock_tui.records.kinds import Record
from paddock_tui.records.session import Session, is_ridden
from paddock_tui.records.tyres import TyreSet

_MORNING = ("bike, morning", "rider", "paper", "venue")
_WET = ("damp", "wet", "standing water")
_RAIN_TYRES = ("wet", "intermediate")


class AtHand(NamedTuple):
    """The stage at hand, and what says so."""

    stage: str
    why: str


@fact("the lists to go through before going out")
def stages_due(
    session: Session, records: Mapping[str, Record], earlier: tuple[Session, ...], source: Session | None
) -> tuple[str, ...]:
    """Return the stages whose open items are to be answered before this outing.

    Paper is left out: what it asks is asked one by one. So are packing and the night before: nobody goes
    back to them. What the venue wants counts for no ride on the road.
    """
    due = ["bike, morning", "rider", "venue", "before each session"]
    if session.kind == "road":
        due.remove("venue")
    if _wet_swap(session, records.get("tyres"), source):
        due.append("wet swap")
    if session.kind in RACING:
        due.append("grid")
    if any(fell(one) for one in (*earlier, session)):
        due.append("after a fall")
    return tuple(due)


def at_hand(
    lists: tuple[ListState, ...],
    session: Session,
    tyres: Record | None,
    earlier: tuple[Session, ...],
    source: Session | None,
    today: dt.date,
) -> AtHand | None:
    """Return the stage at hand: the first moment of the day whose lists have something open; else None."""
    open_stages = {one.stage for one in lists if one.open}
    moments = _moments(session, tyres, earlier, source, today)
    return next((one for one in moments if one.why and one.stage in open_stages), None)


def _moments(
    session: Session,
    tyres: Record | None,
    earlier: tuple[Session, ...],
    source: Session | None,
    today: dt.date,
) -> Iterator[AtHand]:
    yield AtHand("after a fall", _fall(session, earlier))
    if is_ridden(session):
        yield AtHand("on return", "this session was ridden")
        yield AtHand("end of day", "this session was ridden, nothing is open on return")
        return
    if session.date is not None and today < session.date:
        yield AtHand("packing", "the day is still to come")
        yield AtHand("night before", "the day is still to come")
    if not any(is_ridden(one) for one in earlier):
        yield from (AtHand(stage, "no earlier session of the day was ridden") for stage in _MORNING)
    yield AtHand("wet swap", _wet_swap(session, tyres, source))
    yield AtHand("before each session", "this session is still to come")
    yield AtHand("grid", f"this session is a {session.kind}" if session.kind in RACING else "")
    yield from (AtHand(stage, "left open this morning") for stage in _MORNING)


def _fall(session: Session, earlier: tuple[Session, ...]) -> str:
    if fell(session):
        return "a fall is written down in this session"
    numbers = [one.number for one in earlier if fell(one)]
    return f"a fall is written down in session {numbers[-1]}" if numbers else ""


def _wet_swap(session: Session, tyres: Record | None, source: Session | None) -> str:
    """Say why the wet package is at hand; empty where it is not.

    In the wet it is while other tyres than rain tyres are on; in the damp only once the tyres were
    changed, since many stay on treaded ones there. Common practice, no source.
    """
    if session.surface not in _WET:
        return ""
    if session.surface != "damp" and isinstance(tyres, TyreSet):
        fitted = dict.fromkeys(tyre.kind for tyre in (tyres.front, tyres.rear) if tyre.kind is not None)
        dry = [kind for kind in fitted if kind not in _RAIN_TYRES]
        if dry:
            return f"surface {session.surface}, tyres {' and '.join(dry)}"
    if source is None or source.surface in _WET or None in (source.tyres, session.tyres):
        return ""
    return f"surface {session.surface}, other tyres than before" if source.tyres != session.tyres else ""
