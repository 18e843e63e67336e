"""The checklists as they stand: which apply to an outing, and how each of their items is answered."""

import datetime as dt
import functools
from collections.abc import Iterator, Mapping
from typing import Any, NamedTuple

import attrs

from paddock_tui.facts.core import fact
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.past import Along, History, PastSession
from paddock_tui.records.checklist import (
    ASKED_WITHOUT_A_LIST,
    DAY_STAGES,
    STAGES,
    Checklist,
    ChecklistItem,
    unlisted_item,
)
from paddock_tui.records.common import Check
from paddock_tui.records.day import DayEntry, RidingDay
from paddock_tui.records.fields import specs, value_at
from paddock_tui.records.fields_of_record import Field, field_at
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Path, parse
from paddock_tui.records.session import Session, is_ridden, was_done_back_in
from paddock_tui.records.shapes_of_bike import label_of

RACING = ("qualifying", "race", "start practice")
"""The kinds of session that start from a grid."""

OPEN, OK, TO_FIX, NOT_APPLICABLE, ANSWERED = "open", "ok", "to fix", "not applicable", "answered"

_WORTH_CARRYING = ("hold", "serious", "caution", None)
"""What is to fix stays so in later sessions and on later days; a note does not."""

_NO_CHECK = Check()

_SECTIONS_NAMED = (("pressures",), ("feel",))
"""Sections whose rows are told apart by the section alone: front, rear."""


@attrs.frozen
class ItemState:
    """One item as it stands for a session.

    `in_day` says which record keeps the answer and `path` where its table stands there, empty where
    nothing can hold it. `said` is what the record says about it. `since` is the number of the earlier
    session in which it was answered, `since_day` its day where that is another one; `to_fix` what "to fix"
    means, None where no list says so. `goes` is how many of it go where, and who brings it.
    """

    id: str
    text: str
    to_fix: str | None
    status: str
    in_day: bool
    path: Path
    check: Check = attrs.field(factory=Check)
    said: str = ""
    since: int | None = None
    since_day: dt.date | None = None
    listed: bool = True
    answered_by: str = ""
    goes: str = ""


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
    entry = _entry(session, records)
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
    look = _Look(
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
    for key, found in _in_order(checklists):
        if found.retired is None and applies(found.stage or "", session, earlier):
            items = tuple(
                look.item(name, item, found) for name, item in found.items.items() if _for(item, session)
            )
            made = ListState(key, found.name or found.stage or key, found.stage or "", items)
            # The list of a fall earlier in the day is gone once it is gone through.
            if items and (found.stage != "after a fall" or fell(session) or made.open or made.to_fix):
                lists.append(made)
    shown = {(item.in_day, item.id) for one in lists for item in one.items}
    return Checked(tuple(lists), tuple(look.others(checklists, shown)))


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


def fell(session: Session) -> bool:
    """Return whether a fall is written down, moving or at a standstill."""
    return any(incident.what == "fall" for incident in session.incidents.values())


def worked_on(session: Session, history: History) -> bool:
    """Return whether work was at the bike since it was last ridden, noted in this session or one before."""
    for one in (session, *(past.session for past in reversed(history.past))):
        ridden = one is not session and is_ridden(one)
        if any(not ridden or was_done_back_in(one, work) for work in one.work.values()):
            return True
        if ridden:
            return False
    return False


def _in_order(checklists: Mapping[str, Checklist]) -> list[tuple[str, Checklist]]:
    placed = [(key, found) for key, found in checklists.items() if found.stage in STAGES]
    return sorted(placed, key=lambda one: (STAGES.index(one[1].stage or ""), one[0]))


def _for(item: ChecklistItem, session: Session) -> bool:
    """Return whether an item is for this kind of session and this surface; what is not known keeps it in."""
    kind = item.kinds is None or session.kind is None or session.kind in item.kinds
    return kind and (item.surfaces is None or session.surface is None or session.surface in item.surfaces)


def _entry(session: Session, records: Mapping[str, Record]) -> DayEntry:
    day = records.get("day")
    entries = day.entries if isinstance(day, RidingDay) else {}
    return entries.get(session.rider or "", {}).get(session.bike or "", DayEntry())


class _Held(NamedTuple):
    """The answer that counts for an item, and the earlier session or day that it stands in."""

    check: Check | None = None
    number: int | None = None
    day: dt.date | None = None
    before: bool = False


_Answers = dict[tuple[bool, str], tuple[tuple[PastSession, Check], ...]]
"""The last answer to each item, by whether it stands in days; of days on the last ones of two dates: one
may not count. Empty where it was only ever passed over.
"""


def _answered_again(so_far: _Answers, one: PastSession) -> _Answers:
    """Go on by one session: its answers are the last ones now."""
    found = so_far
    for in_day, checks in ((False, one.session.checks), (True, one.entry.checks)):
        for name, check in checks.items():
            before = found.get((in_day, name), ())
            if check.status in (None, NOT_APPLICABLE):
                found[in_day, name] = before
            elif not in_day or not before:
                found[in_day, name] = ((one, check),)
            else:
                same = before[0][0].session.date == one.session.date
                found[in_day, name] = ((one, check), *(before if same else before[:1]))
    return found


_ANSWERS: Along[_Answers] = Along("answers", {}, _answered_again, dict)


@functools.lru_cache(maxsize=512)
def _value_named(answered_by: str, in_day: bool) -> tuple[Path, Field | None]:
    """Return the value that a list's item names: its path, and its field where there is one."""
    path = parse(answered_by) or ()
    place = ("day", ("entries", "rider", "bike", *path)) if in_day else ("session", path)
    return path, field_at(*place)


@attrs.frozen
class _Look:
    """What the answers of one outing are read from."""

    session: Session
    own: Mapping[str, Check]
    of_day: Mapping[str, Check]
    records: Mapping[str, Record]
    earlier: tuple[Session, ...]
    answers: _Answers
    source: Session | None
    in_day: Path
    """Where the day keeps its checks; empty where nothing can hold them."""

    def item(self, name: str, item: ChecklistItem, found: Checklist) -> ItemState:
        """Return one item of a list as it stands: as answered, else as the record answers it, else open."""
        in_day = found.stage in DAY_STAGES
        held = self._check(name, in_day, item.to_fix, found.stage == "after a fall")
        check = held.check
        state = ItemState(
            name,
            item.text or label_of(name),
            item.to_fix,
            OPEN if check is None else check.status or OPEN,
            in_day,
            self._path(in_day, name),
            _NO_CHECK if check is None else check,
            since=held.number,
            since_day=held.day,
            answered_by=item.answered_by or "",
            goes=item.goes,
        )
        return self._from_record(state) if item.answered_by and check is None else state

    def others(
        self, checklists: Mapping[str, Checklist], shown: set[tuple[bool, str]]
    ) -> Iterator[ItemState]:
        """Return the answers that no list shown asks for: what is to fix, and what is ok on no list at
        all.
        """
        known = {
            (found.stage in DAY_STAGES, name): item
            for _, found in _in_order(checklists)
            for name, item in found.items.items()
        }
        names = {(True, name) for name in self.of_day} | {(False, name) for name in self.own}
        names |= self.answers.keys()
        for in_day, name in sorted(names - shown):
            item = known.get((in_day, name)) or unlisted_item(name)
            held = self._check(name, in_day, item.to_fix, fall=False)
            check = held.check
            if check is None or (name in ASKED_WITHOUT_A_LIST and check.status == OK):
                continue
            if check.status == NOT_APPLICABLE or (held.before and check.status != TO_FIX):
                continue
            yield ItemState(
                name,
                item.text or label_of(name),
                item.to_fix,
                check.status or OPEN,
                in_day,
                self._path(in_day, name),
                check,
                since=held.number,
                since_day=held.day,
                listed=(in_day, name) in known,
            )

    def _path(self, in_day: bool, name: str) -> Path:
        if not in_day:
            return ("checks", name)
        return (*self.in_day, name) if self.in_day else ()

    def _check(self, name: str, in_day: bool, to_fix: str | None, fall: bool) -> _Held:
        """Find the answer that counts, and the earlier session or day that it was given in.

        What is to fix stays so until it is answered ok, whoever rode since; after a fall every answer given
        since then counts.
        """
        held = (self.of_day if in_day else self.own).get(name)
        open_before = _Held() if fall else self._still_to_fix(name, in_day, to_fix)
        if held is not None and held.status is not None:
            # Not applicable answers nothing that was to fix.
            return open_before if held.status == NOT_APPLICABLE and open_before.check else _Held(held)
        return self._since_the_fall(name) if fall and not in_day else open_before

    def _still_to_fix(self, name: str, in_day: bool, to_fix: str | None) -> _Held:
        if to_fix not in _WORTH_CARRYING:
            return _Held()
        for one, check in self.answers.get((in_day, name), ()):
            session = one.session
            if in_day and session.date == self.session.date and session.rider == self.session.rider:
                continue
            if check.status != TO_FIX:
                return _Held()
            another = session.date != self.session.date
            return _Held(check, None if in_day else session.number, session.date if another else None, True)
        return _Held()

    def _since_the_fall(self, name: str) -> _Held:
        if fell(self.session):
            return _Held()
        for one in reversed(self.earlier):
            check = one.checks.get(name)
            if check is not None and check.status is not None:
                return _Held(check, one.number, None, True)
            if fell(one):
                break
        return _Held()

    def _from_record(self, state: ItemState) -> ItemState:
        """Answer an item from the value that it names; one carried over or a plain no answers nothing."""
        path, field = _value_named(state.answered_by, state.in_day)
        value = value_at(self._holder(state.in_day), path) if field is not None else None
        if field is None or not path:
            return attrs.evolve(state, said=f"no value is called {state.answered_by}")
        if value is None:
            return state
        lead = f"{field.section[-1]} " if field.section[:1] in _SECTIONS_NAMED else ""
        said = f"{lead}{field.label}: {field.shape.show(value)}"
        if value is False:
            return attrs.evolve(state, said=said)
        if not state.in_day and self._carried(path, value):
            return attrs.evolve(state, said=f"carried over, {said}")
        return attrs.evolve(state, status=ANSWERED, said=f"from {said}")

    def _holder(self, in_day: bool) -> Any:
        return _entry(self.session, self.records) if in_day else self.session

    def _carried(self, path: Path, value: object) -> bool:
        """Return whether a value only came along with the set-up of the session that was copied."""
        key = specs(Session).get(path[0])
        if key is None or not key[1].carry or self.session.copied_from is None:
            return False
        return self.source is None or value_at(self.source, path) == value
