"""The items of checklists: how each is answered by the outing, its day and what went before.

Most answers of a day are the same for all its outings: what was made of an item is given again while the
answer, and the value that answers it, are the very same.
"""

import datetime as dt
import functools
from collections.abc import Iterator, Mapping
from typing import Any, NamedTuple

import attrs

from paddock_tui.facts.past import PastSession
from paddock_tui.records.checklist import (
    ASKED_WITHOUT_A_LIST,
    DAY_STAGES,
    Checklist,
    ChecklistItem,
    unlisted_item,
)
from paddock_tui.records.common import Check
from paddock_tui.records.day import NO_ENTRY, DayEntry, RidingDay
from paddock_tui.records.fields import specs, value_at
from paddock_tui.records.fields_of_record import Field, field_at
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Path, parse
from paddock_tui.records.session import Session
from paddock_tui.records.shapes_of_bike import label_of

OPEN, OK, TO_FIX, NOT_APPLICABLE, ANSWERED = "open", "ok", "to fix", "not applicable", "answered"


_WORTH_CARRYING = ("hold", "serious", "caution", None)
"""What is to fix stays so in later sessions and on later days; a note does not."""

_NO_CHECK = Check()

_DECIDED = (OK, TO_FIX)
"""What counts whatever was answered before."""


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

    def saying(self, said: str, status: str | None = None) -> "ItemState":
        """Return the same with what the record says about it, in a status where it has another."""
        return ItemState(
            self.id,
            self.text,
            self.to_fix,
            status or self.status,
            self.in_day,
            self.path,
            self.check,
            said,
            self.since,
            self.since_day,
            self.listed,
            self.answered_by,
            self.goes,
        )


def fell(session: Session) -> bool:
    """Return whether a fall is written down, moving or at a standstill."""
    return any(incident.what == "fall" for incident in session.incidents.values())


def _for(item: ChecklistItem, session: Session) -> bool:
    """Return whether an item is for this kind of session and this surface; what is not known keeps it in."""
    kind = item.kinds is None or session.kind is None or session.kind in item.kinds
    return kind and (item.surfaces is None or session.surface is None or session.surface in item.surfaces)


def entry_of(session: Session, records: Mapping[str, Record]) -> DayEntry:
    """Return what the day of a session holds of its rider on its bike."""
    day = records.get("day")
    return day.entry_of(session.rider, session.bike) if isinstance(day, RidingDay) else NO_ENTRY


class _Held(NamedTuple):
    """The answer that counts for an item, and the earlier session or day that it stands in."""

    check: Check | None = None
    number: int | None = None
    day: dt.date | None = None
    before: bool = False


_NOT_HELD = _Held()


class AnsweredIn(NamedTuple):
    """A session in which, or in whose day, an item was answered, and whether it is to fix since."""

    past: PastSession
    to_fix: bool


ItemAnswers = dict[tuple[bool, str], tuple[AnsweredIn, ...]]
"""The last answer to each item, by whether it stands in days; of days on the last ones of two dates: one
may not count. Empty where it was only ever passed over.
"""


@functools.lru_cache(maxsize=512)
def _value_named(answered_by: str, in_day: bool) -> tuple[Path, Field | None]:
    """Return the value that a list's item names: its path, and its field where there is one."""
    path = parse(answered_by) or ()
    place = ("day", ("entries", "rider", "bike", *path)) if in_day else ("session", path)
    return path, field_at(*place)


@attrs.define(eq=False)
class _Prepared:
    """An item of a list where its answers stand in one place: what is the same for all outings, and the
    states that it was last in.
    """

    name: str
    item: ChecklistItem
    text: str
    path: Path
    goes: str
    in_day: bool
    fall: bool
    is_for_all: bool
    is_plain: bool
    """Whether it is answered by a check alone, and by none that was given since a fall."""
    named: tuple[Path, Field | None]
    last: ItemState | None = None
    answered: "_Answered | None" = None


class _Answered(NamedTuple):
    """What was made of the value that answers an item, which is in this state without it."""

    value: object
    carried: bool
    state: ItemState
    found: ItemState

    def is_of(self, value: object, state: ItemState, *, carried: bool) -> bool:
        """Return whether it was made of the very same."""
        return self.value is value and self.state is state and self.carried == carried


_MOST = 200
"""So many lists are prepared, each for every rider and bike whose answers stand in a place of their own."""

_PREPARED: dict[tuple[int, Path], tuple[Checklist, tuple[_Prepared, ...]]] = {}


def _prepared(found: Checklist, day: Path) -> tuple[_Prepared, ...]:
    """Return the items of a list; `day` is where the day keeps its checks."""
    in_day = found.stage in DAY_STAGES
    place = (id(found), day if in_day else ())
    held = _PREPARED.get(place)
    if held is None:
        if len(_PREPARED) >= _MOST:
            _PREPARED.clear()
        items = tuple(_prepare(name, item, found, in_day, day) for name, item in found.items.items())
        # The list is held with them: another can't be taken for it.
        held = _PREPARED[place] = found, items
    return held[1]


def _prepare(name: str, item: ChecklistItem, found: Checklist, in_day: bool, day: Path) -> _Prepared:
    text, path = item.text or label_of(name), _path(day, in_day, name)
    fall = found.stage == "after a fall"
    for_all = item.kinds is None and item.surfaces is None
    named = _value_named(item.answered_by, in_day) if item.answered_by else ((), None)
    plain = not fall and not item.answered_by
    return _Prepared(name, item, text, path, item.goes, in_day, fall, for_all, plain, named)


def _path(day: Path, in_day: bool, name: str) -> Path:
    if not in_day:
        return ("checks", name)
    return (*day, name) if day else ()


def _answered(state: ItemState, field: Field, value: object, carried: bool) -> ItemState:
    """Say what answers an item, or why that answers nothing."""
    lead = f"{field.section[-1]} " if field.section[:1] in _SECTIONS_NAMED else ""
    said = f"{lead}{field.label}: {field.shape.show(value)}"
    if value is False:
        return state.saying(said)
    return state.saying(f"carried over, {said}") if carried else state.saying(f"from {said}", ANSWERED)


@attrs.frozen
class ItemLook:
    """What the answers of one outing are read from."""

    session: Session
    own: Mapping[str, Check]
    of_day: Mapping[str, Check]
    records: Mapping[str, Record]
    earlier: tuple[Session, ...]
    answers: ItemAnswers
    source: Session | None
    in_day: Path
    """Where the day keeps its checks; empty where nothing can hold them."""

    def items(self, found: Checklist) -> tuple[ItemState, ...]:
        """Return the items of a list that are for the outing, as they stand."""
        session, in_day, states = self.session, found.stage in DAY_STAGES, list[ItemState]()
        answers = self.of_day if in_day else self.own
        for one in _prepared(found, self.in_day):
            if one.is_for_all or _for(one.item, session):
                last, check = one.last, answers.get(one.name, _NO_CHECK)
                # Most stand as in the outing before: answered in its day or with the same words, or never.
                if (
                    last is not None
                    and last.check is check
                    and last.since is None
                    and last.since_day is None
                    and (
                        check.status in _DECIDED
                        or (check is _NO_CHECK and one.is_plain and not self.answers.get((in_day, one.name)))
                    )
                ):
                    states.append(last)
                else:
                    states.append(self._state(one))
        return tuple(states)

    def _state(self, of: _Prepared) -> ItemState:
        """Return one item as it stands: as answered, else as the record answers it, else open."""
        check, number, day, _ = self._check(of.name, of.in_day, of.item.to_fix, of.fall)
        state, given = of.last, _NO_CHECK if check is None else check
        if state is None or state.check is not given or state.since != number or state.since_day != day:
            state = of.last = ItemState(
                of.name,
                of.text,
                of.item.to_fix,
                OPEN if check is None else check.status or OPEN,
                of.in_day,
                of.path,
                given,
                since=number,
                since_day=day,
                answered_by=of.item.answered_by or "",
                goes=of.goes,
            )
        return self._from_record(of, state) if of.item.answered_by and check is None else state

    def others(
        self, items: Mapping[tuple[bool, str], ChecklistItem], shown: tuple[set[str], set[str]]
    ) -> Iterator[ItemState]:
        """Return the answers that no list shown asks for: what is to fix, and what is ok on no list at
        all. `items` are those of all lists; `shown` names those that stand in the session, and in the day.
        """
        in_session, in_days = shown
        names = {one for one in self.answers if one[1] not in shown[one[0]]}
        names |= {(True, name) for name in self.of_day.keys() - in_days}
        names |= {(False, name) for name in self.own.keys() - in_session}
        for in_day, name in sorted(names):
            listed = items.get((in_day, name))
            item = listed or unlisted_item(name)
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
                _path(self.in_day, in_day, name),
                check,
                since=held.number,
                since_day=held.day,
                listed=listed is not None,
            )

    def _check(self, name: str, in_day: bool, to_fix: str | None, fall: bool) -> _Held:
        """Find the answer that counts, and the earlier session or day that it was given in.

        What is to fix stays so until it is answered ok, whoever rode since; after a fall every answer given
        since then counts.
        """
        held = (self.of_day if in_day else self.own).get(name)
        answered = held is not None and held.status is not None
        if held is not None and answered and held.status != NOT_APPLICABLE:
            return _Held(held)
        open_before = _NOT_HELD if fall else self._still_to_fix(name, in_day, to_fix)
        if answered:
            # Not applicable answers nothing that was to fix.
            return open_before if open_before.check else _Held(held)
        return self._since_the_fall(name) if fall and not in_day else open_before

    def _still_to_fix(self, name: str, in_day: bool, to_fix: str | None) -> _Held:
        if to_fix not in _WORTH_CARRYING:
            return _NOT_HELD
        for one, is_to_fix in self.answers.get((in_day, name), ()):
            if in_day and one.date == self.session.date and one.rider == self.session.rider:
                continue
            if not is_to_fix:
                return _NOT_HELD
            check = (one.entry if in_day else one.session).checks[name]
            number = None if in_day else one.session.number
            return _Held(check, number, one.date if one.date != self.session.date else None, True)
        return _NOT_HELD

    def _since_the_fall(self, name: str) -> _Held:
        if fell(self.session):
            return _NOT_HELD
        for one in reversed(self.earlier):
            check = one.checks.get(name)
            if check is not None and check.status is not None:
                return _Held(check, one.number, None, True)
            if fell(one):
                break
        return _NOT_HELD

    def _from_record(self, of: _Prepared, state: ItemState) -> ItemState:
        """Answer an item from the value that it names; one carried over or a plain no answers nothing."""
        path, field = of.named
        value = value_at(self._holder(of.in_day), path) if field is not None else None
        if field is None or not path:
            return state.saying(f"no value is called {state.answered_by}")
        if value is None:
            return state
        carried = not of.in_day and value is not False and self._carried(path, value)
        before = of.answered
        if (
            before is None
            or before.value is not value
            or before.state is not state
            or before.carried != carried
        ):
            before = of.answered = _Answered(value, carried, state, _answered(state, field, value, carried))
        return before.found

    def _holder(self, in_day: bool) -> Any:
        return entry_of(self.session, self.records) if in_day else self.session

    def _carried(self, path: Path, value: object) -> bool:
        """Return whether a value only came along with the set-up of the session that was copied."""
        key = specs(Session).get(path[0])
        if key is None or not key[1].carry or self.session.copied_from is None:
            return False
        return self.source is None or value_at(self.source, path) == value
