"""Sessions as the walk through the record takes them: with tyres, help, day and air of their time."""

import functools
import threading
from collections.abc import Callable, Mapping
from typing import NamedTuple

import attrs

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.outside_pressure import AirObserved
from paddock_tui.calc.starting_levels import Aid, RiderGroup, Surface, starting_help
from paddock_tui.facts.copied import weight_difference
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.outside_pressure import observed_then
from paddock_tui.facts.past import ENDS, History, PastSession, first_set, tyre_of
from paddock_tui.facts.records_later import RecordsLater
from paddock_tui.facts.starting_words import level_tyre
from paddock_tui.facts.unplaced import as_if_of
from paddock_tui.limits import Limits
from paddock_tui.limits.rider import OTHER_RIDERS_WEIGHT
from paddock_tui.matters import AidHelp, Outing
from paddock_tui.matters.days import Days
from paddock_tui.records.bike import Bike
from paddock_tui.records.checklist import Checklist
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.day import RidingDay
from paddock_tui.records.electronics import Control, function_of
from paddock_tui.records.in_force import value_in_force
from paddock_tui.records.kinds import Record
from paddock_tui.records.people import Rider
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp
from paddock_tui.records.tyres import Tyre, TyreSet

_fall_items: list[tuple[Mapping[str, Checklist] | None, frozenset[str]]] = [(None, frozenset())]
"""Those of the table of checklists that was asked for last: one table is that of all sessions."""

_AIDS = {one.value for one in Aid} - {"engine-braking"}


@attrs.frozen
class Outings:
    """Makes outings of the sessions of one history; what is not known of an earlier one is left out."""

    history: History
    records: Mapping[str, Record]
    checklists: Mapping[str, Checklist]
    source: Session | None
    air: AirObserved
    limits: Limits
    fall_items: frozenset[str] = attrs.field(init=False)
    _known: "_Known" = attrs.field(init=False, eq=False, repr=False)

    @fall_items.default
    def _items_after_a_fall(self) -> frozenset[str]:
        of, found = _fall_items[0]
        if of is not self.checklists:
            lists = (one for one in self.checklists.values() if one.stage == "after a fall")
            held = (name for one in lists for name, item in one.items.items() if item.to_fix == "hold")
            found = frozenset(held)
            _fall_items[0] = self.checklists, found
        return found

    @_known.default
    def _known_already(self) -> "_Known":
        return _known_of(self)

    def outing(self, one: PastSession) -> Outing:
        """Return an earlier session as an outing: the same one again while all that it rests on stands."""
        past = self.history.of(one.session.copied_from)
        source = past.session if past is not None else None
        own = None if one.session.tyres in self.history.tyre_sets else self.records.get("tyres")
        outings = self._known.outings
        found = outings.get(id(one))
        if found is None or found[0] is not one or found[1] is not source or found[2] is not own:
            found = (one, source, own, self._made(one, observed_then(one), source, one.day))
            outings[id(one)] = found
        return found[3]

    def by_day(self, begins_at: int = 0) -> Days:
        """Return all earlier sessions, or those from a place on, as outings; of a longer history only what is
        new is made.
        """
        history, own = self.history, self.records.get("tyres")
        days: DaysSoFar | None = history.line.outings.pop(self._known, None)
        if days is None or days.first != begins_at or not days.may_go_on(history, own):
            days = DaysSoFar(own, begins_at)
        for one in history.past[days.end :]:
            days.add(one, self.outing(one), history)
        history.line.outings[self._known] = days
        if len(history.line.outings) > _MOST:
            del history.line.outings[next(iter(history.line.outings))]
        return days.days

    def here(self, one: PastSession) -> Outing:
        """Return the session looked at as an outing."""
        day = self.records.get("day")
        return self._made(one, self.air, self.source, day if isinstance(day, RidingDay) else None)

    def untold(self, one: PastSession, here: Session) -> Outing:
        """Return a session that the record does not place as an outing of this bike and rider."""
        past = self.history.of(one.session.copied_from)
        source = past.session if past is not None else None
        return self._made(as_if_of(one, here), observed_then(one), source, one.day)

    def _made(
        self, one: PastSession, outside: AirObserved, source: Session | None, day: RidingDay | None
    ) -> Outing:
        session = one.session
        same = self._of_session(session, source)
        return Outing(
            one.id,
            session,
            one.entry,
            same.column,
            same.tyres,
            same.fitted,
            theirs=same.theirs,
            helps=same.helps,
            outside=outside,
            day=day,
            fall_items=self._known.fall_items,
            limits=self.limits,
        )

    def _of_session(self, session: Session, source: Session | None) -> "_OfSession":
        """Return what follows from a session alone, and from the one that it was copied from: the same when
        it is looked at and when it is an earlier one.
        """
        own = None if session.tyres in self.history.tyre_sets else self.records.get("tyres")
        known = self._known.of_sessions
        found = known.get(id(session))
        if found is None or found[0] is not session or found[1] is not source or found[2] is not own:
            fitted = {} if session.tyres is None else self._fitted(session.tyres)
            column = COLUMN.get(session.surface or "", "")
            names, theirs = self._names(session, fitted), self._theirs(session, source)
            made = _OfSession(column, names, fitted, theirs, self._helps(session, column, fitted))
            if len(known) >= _LATELY:
                known.clear()
            found = known[id(session)] = session, source, own, made
        return found[3]

    def _fitted(self, name: str) -> Mapping[str, Tyre]:
        own = self.records.get("tyres")
        known = self.history.tyre_sets.get(name)
        found = known if known is not None else own if isinstance(own, TyreSet) else None
        return {} if found is None else {end: tyre_of(found, end) for end in ENDS}

    def _names(self, session: Session, fitted: Mapping[str, Tyre]) -> Mapping[str, str]:
        """Name the tyre at each end by the set it was first in; one that was fitted later is another one.

        Without a tyre set it is the bike's tyre, whichever that was.
        """
        if session.tyres is None:
            return {}
        found: dict[str, str] = {}
        for end in ENDS:
            on = fitted[end].fitted if end in fitted else None
            first = first_set(self.history, session.tyres, end)
            before = on is not None and session.date is not None and session.date < on
            found[end] = f"{first} before {on}" if before else first
        return found

    def _theirs(self, session: Session, source: Session | None) -> str:
        """Say how the rider differs from the one whose set-up was copied, where by more than the limit."""
        if source is None or session.taken_from is not None or source.rider == session.rider:
            return ""
        theirs, own = self._rider(source.rider), self._rider(session.rider)
        found = weight_difference(theirs, own, source.rider or "")
        return str(found) if found is not None and abs(found.kg) > self.limits[OTHER_RIDERS_WEIGHT] else ""

    @property
    def who(self) -> str | None:
        """The rider of the session looked at, whose own record counts for every outing of theirs."""
        here = self.records.get("session")
        return here.rider if isinstance(here, Session) else None

    def _rider(self, name: str | None) -> Rider | None:
        own = self.records.get("rider")
        known = self.history.riders.get(name or "")
        return own if name is not None and self.who == name and isinstance(own, Rider) else known

    def _helps(self, session: Session, column: str, fitted: Mapping[str, Tyre]) -> Mapping[str, AidHelp]:
        bike = self.records.get("bike")
        if not isinstance(bike, Bike) or not column:
            return {}
        rider, setup = self._rider(session.rider), session.setup
        group = rider.group if rider is not None else None
        rear = fitted["rear"].kind if "rear" in fitted else None
        # What is set stays as it is in most sessions, and is the same table then.
        known, key = self._known.helps, (id(setup.controls), setup.mode, group, column, rear)
        held = known.get(key)
        if held is None:
            found: dict[str, AidHelp] = {}
            for name, control in bike.controls.items():
                one = _help(name, control, setup, bike, functools.partial(_start, group, column, rear))
                if one is not None:
                    found[name] = one
            if len(known) >= _LATELY:
                known.clear()
            held = known[key] = setup.controls, found
        return held[1]


class DaysSoFar:
    """The outings of the beginning of a line of sessions from a place on, day by day."""

    def __init__(self, own: Record | None, first: int = 0) -> None:
        self._own, self.first = own, first
        self._rests_on_own = False
        self._not_before: dict[str, PastSession | None] = {}
        """Sessions that one was copied from and that are not before it: elsewhere, later, or nowhere."""
        self.made: list[Outing] = []
        self.days = Days()

    @property
    def end(self) -> int:
        """How many sessions of the line there are before the next."""
        return self.first + len(self.made)

    def may_go_on(self, history: History, own: Record | None) -> bool:
        """Return whether these are outings of this history; forget those that come after it."""
        if self._rests_on_own and self._own is not own:
            return False
        if any(history.of(name) is not found for name, found in self._not_before.items()):
            return False
        if len(history.past) < self.first:
            return False
        self._forget(len(history.past))
        return True

    def branch(self, at: int | None) -> "DaysSoFar":
        """Return these, or so many of them, to go on from by themselves."""
        other = DaysSoFar(self._own, self.first)
        other._rests_on_own, other._not_before = self._rests_on_own, dict(self._not_before)
        other.made, other.days = list(self.made), self.days.copy()
        if at is not None:
            other._forget(at)
        return other

    def _forget(self, at: int) -> None:
        kept = max(at - self.first, 0)
        for one in self.made[kept:]:
            self.days.remove(one)
        del self.made[kept:]

    def add(self, one: PastSession, outing: Outing, history: History) -> None:
        """Add the next session of a history."""
        tyres, copied = one.session.tyres, one.session.copied_from
        if tyres is not None and tyres not in history.tyre_sets:
            self._rests_on_own = True
        if copied is not None and history.before(copied, self.end) is None:
            self._not_before[copied] = history.of(copied)
        self.made.append(outing)
        self.days.add(outing)


class _OfSession(NamedTuple):
    """What an outing holds that its day and what is read of the air have no part in."""

    column: str
    tyres: Mapping[str, str]
    fitted: Mapping[str, Tyre]
    theirs: str
    helps: Mapping[str, AidHelp]


_LATELY = 32
"""Sessions of which that is remembered, and makings of help."""


class _Known:
    """What was made of one bike, riders, lists and limits.

    Outings stand by the identity of their session, with that session, the one it was copied from, and the
    tyre set looked at where its own is not known.
    """

    def __init__(self, fall_items: frozenset[str]) -> None:
        self.fall_items = fall_items
        self.outings: dict[int, tuple[PastSession, Session | None, Record | None, Outing]] = {}
        self.helps: dict[tuple[object, ...], tuple[object, Mapping[str, AidHelp]]] = {}
        """By the table of what is set, with it, and by all else that they rest on."""
        self.of_sessions: dict[int, tuple[Session, Session | None, Record | None, _OfSession]] = {}


_MOST = 4
"""Makings that are remembered: of the bike looked at, of the one in hand, and what is tried beside them."""

_made_before: list[tuple[Outings, _Known]] = []
_lock = threading.Lock()


def _known_of(wanted: Outings) -> _Known:
    """Return the outings that were made before of the same bike, riders, lists and limits."""
    with _lock:
        at = next((at for at, (one, _) in enumerate(_made_before) if _rests_on_the_same(one, wanted)), None)
        found = _made_before.pop(at) if at is not None else (wanted, _Known(wanted.fall_items))
        _made_before.insert(0, found)
        del _made_before[_MOST:]
    return found[1]


def _rests_on_the_same(one: Outings, other: Outings) -> bool:
    return (
        all(one.records.get(role) is other.records.get(role) for role in ("bike", "rider"))
        and _same_records(one.history.tyre_sets, other.history.tyre_sets)
        and _same_records(one.history.riders, other.history.riders)
        and one.who == other.who
        and one.fall_items == other.fall_items
        and one.limits == other.limits
    )


def _same_records(one: Mapping[str, object], other: Mapping[str, object]) -> bool:
    """Return whether two tables hold the very same records."""
    if one is other:
        return True
    if isinstance(one, RecordsLater) and isinstance(other, RecordsLater):
        return one.holds_as(other)
    return len(one) == len(other) and all(other.get(name) is held for name, held in one.items())


def _help(
    name: str, control: Control, setup: SetUp, bike: Bike, start: Callable[[str], float | None]
) -> AidHelp | None:
    value, function = value_in_force(name, setup, bike), function_of(name, control)
    if value is None or function not in _AIDS:
        return None
    levels = levels_of(name, control)
    scale = levels.help_if_known() if levels is not None else None
    if scale is None:
        return None
    try:
        helps = scale.help_of(value)
    except (Inconsistent, OutOfRange):
        return None
    return AidHelp(helps, len(scale.on) - 1, start(function), str(value))


def _start(group: str | None, column: str, tyre: str | None, function: str) -> float | None:
    """Return the help that a group starts at; None where one of these is not known."""
    if group is None or tyre is None:
        return None
    return starting_help(RiderGroup(group), Surface(column), level_tyre(tyre), Aid(function))
