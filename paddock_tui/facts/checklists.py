"""The checklists as they stand: which apply to an outing, which is at hand, which come before going out."""

import datetime as dt
from collections.abc import Iterator, Mapping
from typing import NamedTuple

import attrs

from paddock_tui.facts.checklist_items import ANSWERED as ANSWERED
from paddock_tui.facts.checklist_items import NOT_APPLICABLE as NOT_APPLICABLE
from paddock_tui.facts.checklist_items import OK as OK
from paddock_tui.facts.checklist_items import OPEN as OPEN
from paddock_tui.facts.checklist_items import TO_FIX as TO_FIX
from paddock_tui.facts.checklist_items import AnsweredIn, ItemAnswers, ItemLook, entry_of
from paddock_tui.facts.checklist_items import ItemState as ItemState
from paddock_tui.facts.checklist_items import fell as fell
from paddock_tui.facts.core import fact
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.past import Along, History, PastSession
from paddock_tui.records.checklist import (
    DAY_STAGES,
    STAGES,
    Checklist,
    ChecklistItem,
)
from paddock_tui.records.common import Check
from paddock_tui.records.day import RidingDay
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Path
from paddock_tui.records.session import Session, is_ridden
from paddock_tui.records.tyres import TyreSet

RACING = ("qualifying", "race", "start practice")
"""The kinds of session that start from a grid."""


@attrs.frozen
class ListState:
    """One list with those of its items that apply, as they stand."""

    id: str
    name: str
    stage: str
    items: tuple[ItemState, ...]

    @property
    def open(self) -> tuple[ItemState, ...]:
        """The items that nobody and nothing answered yet."""
        return tuple(item for item in self.items if item.status == OPEN)

    @property
    def to_fix(self) -> tuple[ItemState, ...]:
        """The items that are to fix."""
        return tuple(item for item in self.items if item.status == TO_FIX)


class Checked(NamedTuple):
    """Every list that applies, in the order of the day, and the answers that stand on none of them."""

    lists: tuple[ListState, ...] = ()
    others: tuple[ItemState, ...] = ()


@fact("the checks of the session", at="session:checks.{subject}.status")
def session_checks(session: Session) -> Mapping[str, Check]:
    """Return the answered items that stand in the session."""
    return session.checks


@fact("the checks of the day", at="day:entries.{subject}.{subject}.checks.{subject}.status")
def day_checks(session: Session, records: Mapping[str, Record]) -> Mapping[str, Check]:
    """Return the answered items that stand in the day, for this rider on this bike."""
    entry = entry_of(session, records)
    return entry.checks


@fact("the checklists")
def checked(
    session: Session,
    session_checks: Mapping[str, Check],
    day_checks: Mapping[str, Check],
    records: Mapping[str, Record],
    checklists: Mapping[str, Checklist],
    earlier: tuple[Session, ...],
    history: History,
    source: Session | None,
) -> Checked:
    """Return every list that applies to the outing, with its items as they stand."""
    place = day_place(session, records.get("day"))
    look = ItemLook(
        session,
        session_checks,
        day_checks,
        records,
        earlier,
        _ANSWERS.of(history),
        source,
        () if isinstance(place, str) else place,
    )
    lists: list[ListState] = []
    ordered = _in_order(checklists)
    for key, found in ordered.lists:
        if found.retired is None and applies(found.stage or "", session, earlier):
            items = look.items(found)
            made = ListState(key, found.name or found.stage or key, found.stage or "", items)
            # The list of a fall earlier in the day is gone once it is gone through.
            if items and (found.stage != "after a fall" or fell(session) or made.open or made.to_fix):
                lists.append(made)
    shown = (set[str](), set[str]())
    for one in lists:
        shown[one.stage in DAY_STAGES].update([item.id for item in one.items])
    return Checked(tuple(lists), tuple(look.others(ordered.items, shown)))


def day_place(session: Session, day: Record | None) -> Path | str:
    """Return where the day keeps the checks of this rider and bike, or why nothing can hold them."""
    if not isinstance(day, RidingDay):
        return "there is no day to save it in: choose the day on the session page"
    if session.rider is None:
        return "nobody is named as the rider: choose the rider on the session page"
    if session.bike is None:
        return "there is no bike: choose the bike on the session page"
    return ("entries", session.rider, session.bike, "checks")


def applies(stage: str, session: Session, earlier: tuple[Session, ...]) -> bool:
    """Return whether a list of this stage is for this outing; what is not known keeps it in."""
    if stage in DAY_STAGES:
        return not (session.kind == "road" and session.day is None)
    if stage == "grid":
        return session.kind is None or session.kind in RACING
    if stage == "wet swap":
        return session.surface is None or COLUMN[session.surface] != "dry"
    if stage == "after a fall":
        return any(fell(one) for one in (*earlier, session))
    return stage in STAGES


class _InOrder(NamedTuple):
    """Checklists in the order of the day, and their items by whether the day holds the answer and their name:
    of several the one of the last list.
    """

    of: Mapping[str, Checklist]
    lists: list[tuple[str, Checklist]]
    items: Mapping[tuple[bool, str], ChecklistItem]


def _in_order(checklists: Mapping[str, Checklist]) -> _InOrder:
    """Put checklists in order, or give them as they were put before: one table is that of all sessions."""
    last = _LAST[0]
    if checklists is last.of:
        return last
    placed = sorted(
        (_PLACES[found.stage], key) for key, found in checklists.items() if found.stage in _PLACES
    )
    lists = [(key, checklists[key]) for _, key in placed]
    items = {(one.stage in DAY_STAGES, name): item for _, one in lists for name, item in one.items.items()}
    _LAST[0] = found = _InOrder(checklists, lists, items)
    return found


_PLACES = {stage: place for place, stage in enumerate(STAGES)}
_LAST = [_InOrder({}, [], {})]


def _answered_again(so_far: ItemAnswers, one: PastSession) -> ItemAnswers:
    """Go on by one session: its answers are the last ones now."""
    found, date = so_far, one.date
    to_fix, fine = AnsweredIn(one, True), AnsweredIn(one, False)
    for name, check in one.session.checks.items():
        if check.status not in _PASSED_OVER:
            found[False, name] = (to_fix if check.status == TO_FIX else fine,)
        elif (False, name) not in found:
            found[False, name] = ()
    # Most answers of a day are told by all its outings: its date is asked for once.
    last, same = None, False
    for name, check in one.entry.checks.items():
        before = found.get((True, name), ())
        if check.status in _PASSED_OVER:
            found[True, name] = before
            continue
        if before and before[0].past is not last:
            last = before[0].past
            same = last.date == date
        held = to_fix if check.status == TO_FIX else fine
        found[True, name] = (held, *(before if same else before[:1])) if before else (held,)
    return found


_PASSED_OVER = (None, NOT_APPLICABLE)


_ANSWERS: Along[ItemAnswers] = Along("answers", {}, _answered_again, dict)


def was_answered(history: History, item: str) -> bool:
    """Return whether an item was ever answered, of a day or of an outing."""
    answers = _ANSWERS.of(history)
    return any(answers.get((in_day, item)) for in_day in (True, False))


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
