"""What an essential is: one thing that has to be known before nothing found may be said."""

import datetime as dt
from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Final, Literal, TypeAlias, TypeVar

import attrs

from paddock_tui.facts.checklists import RACING
from paddock_tui.facts.core import ABSENT, Absent
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.past import Along, History, PastSession
from paddock_tui.limits import Limits
from paddock_tui.records.bike import Bike
from paddock_tui.records.common import Check
from paddock_tui.records.day import DayEntry, RidingDay
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.people import Rider, Venue
from paddock_tui.records.session import Session
from paddock_tui.records.tyres import TyreSet

Column = Literal["road", "novice", "intermediate", "advanced", "race"]
"""Who is asked what: on the road, else by group; an unknown group is asked what a novice is."""

TRACK: Final[tuple[Column, ...]] = ("novice", "intermediate", "advanced", "race")
ALL: Final[tuple[Column, ...]] = ("road", *TRACK)

KNOWN: Final = True
"""What an essential gives where it is answered."""

Known = TypeVar("Known")
What = TypeVar("What")

WALKED_ROUND = "walked-round"
"""The tick of one walk round the bike: lever, rear brake, both tyres, leaks."""


@attrs.frozen
class Open:
    """What is not answered: in words, and where it is answered.

    `path` is a value of the record that plays `role`, or of `ref` where that is another one. Where `tick`
    names a check, one key answers it, in the day where `in_day`, else in the session; where `says` is the
    text of a value, one key enters it.
    """

    label: str
    role: str = ""
    path: Path = ()
    ref: Ref | None = None
    tick: str = ""
    in_day: bool = False
    says: str = ""


EssentialAnswer: TypeAlias = Literal[True] | Absent | Open


@attrs.frozen
class Around:
    """What the essentials of a session to come are told from."""

    session: Session
    records: Mapping[str, Record]
    refs: Mapping[str, Ref]
    history: History
    rider_today: tuple[PastSession, ...] = ()
    limits: Limits = attrs.field(factory=lambda: Limits({}))

    def _known(self, role: str, kind: type[Known]) -> Known | None:
        found = self.records.get(role)
        return found if isinstance(found, kind) else None

    @property
    def bike(self) -> Bike | None:
        """The bike, where it is known."""
        return self._known("bike", Bike)

    @property
    def rider(self) -> Rider | None:
        """The rider, where known."""
        return self._known("rider", Rider)

    @property
    def day(self) -> RidingDay | None:
        """The day, where there is one."""
        return self._known("day", RidingDay)

    @property
    def venue(self) -> Venue | None:
        """The venue, where it is known."""
        return self._known("venue", Venue)

    @property
    def tyres(self) -> TyreSet | None:
        """The tyre set, where it is known."""
        return self._known("tyres", TyreSet)

    @property
    def entry(self) -> DayEntry:
        """What the day holds of this rider on this bike."""
        session = self.session
        return self.day.entry_of(session.rider, session.bike) if self.day is not None else DayEntry()

    @property
    def keeps_in_day(self) -> bool:
        """Whether the day can hold what is ticked for the day."""
        return self.day is not None and None not in (self.session.rider, self.session.bike)

    @property
    def asked_as(self) -> Column:
        """The column of the outing."""
        if self.session.kind == "road":
            return "road"
        group = self.rider.group if self.rider is not None else None
        if group == "race" or self.session.kind in RACING:
            return "race"
        return "advanced" if group == "advanced" else "intermediate" if group == "intermediate" else "novice"

    @property
    def surface(self) -> str:
        """The surface as it is judged, empty while it is not known."""
        return COLUMN.get(self.session.surface or "", "")

    @property
    def ridden(self) -> tuple[PastSession, ...]:
        """The earlier outings of this bike, oldest first."""
        return self.history.ridden

    def of_today(self) -> Iterator[PastSession]:
        """List the earlier sessions of this bike on the day of the session."""
        today = self.session.date
        if today is not None:
            yield from (one for one in self._since(today) if one.date == today)

    @property
    def first_of_the_day(self) -> bool:
        """Whether nobody rode this bike yet on the day of the session."""
        return not any(one.ridden for one in self.of_today())

    def within(self, days: int) -> Iterator[PastSession]:
        """List the earlier sessions of this bike of this and the riding days before, `days` in all."""
        today, first = self.session.date, self._first_of(days)
        if today is not None and first is not None:
            yield from (one for one in self._since(first) if (one.date or dt.date.max) <= today)

    def _first_of(self, days: int) -> dt.date | None:
        """Return the first of so many riding days of this bike, of which the session's is the last."""
        first, seen = self.session.date, 1
        if first is None:
            return None
        for one in reversed(self.ridden):
            date = one.date
            if date is not None and date < first:
                if seen == days:
                    break
                first, seen = date, seen + 1
        return first

    def _was_within(self, days: int, names: Iterable[What], last: Mapping[What, dt.date]) -> bool:
        """Return whether one of these things, of which it is known when it last was, was on these days."""
        today, first = self.session.date, self._first_of(days)
        if today is None or first is None:
            return False
        return any(first <= last[name] <= today for name in names if name in last)

    def _since(self, first: dt.date) -> list[PastSession]:
        """List the earlier sessions of this bike from a day on; they stand in the order of their days."""
        found: list[PastSession] = []
        for one in reversed(self.history.past):
            date = one.date
            if date is not None and date < first:
                break
            if date is not None:
                found.append(one)
        return found[::-1]

    def ticked(self, *names: str) -> bool:
        """Return whether one of these items is ok in this session."""
        return _ok(self.session.checks, names)

    def ticked_today(self, *names: str) -> bool:
        """Return whether one of these items is ok in this session, this day or an earlier session of it."""
        return self.ticked(*names) or _ok(self.entry.checks, names) or _any(self.of_today(), names)

    def ticked_within(self, days: int, *names: str) -> bool:
        """Return whether one of these items was ok on one of so many riding days, this one included."""
        return self.ticked_today(*names) or self._was_within(days, names, _LAST_OK.of(self.history))

    def ticked_ever(self, *names: str) -> bool:
        """Return whether one of these items was ever ok on this bike."""
        return self.ticked_today(*names) or not _LAST_OK.of(self.history).keys().isdisjoint(names)

    def measured_within(self, days: int, both: "BothEnds") -> bool:
        """Return whether both ends were measured in one session of so many riding days, this one included."""
        last = _LAST_MEASURED.of(self.history)
        return _is_measured(self.session, both) or self._was_within(days, (both,), last)


_Last: TypeAlias = Mapping[What, dt.date]
"""On which day each thing last was; the first of all days where that is not known."""


def _again(so_far: _Last[What], names: Iterable[What], one: PastSession) -> _Last[What]:
    date = one.date or dt.date.min
    found = {name: date for name in names if name not in so_far or so_far[name] < date}
    return {**so_far, **found} if found else so_far


def _ok_again(so_far: _Last[str], one: PastSession) -> _Last[str]:
    checks = (*one.session.checks.items(), *one.entry.checks.items())
    return _again(so_far, [name for name, check in checks if check.status == "ok"], one)


_LAST_OK: Along[_Last[str]] = Along("last-ok", {}, _ok_again)

BothEnds = tuple[str, str]
"""The values of a session for both ends."""

PADS: Final[BothEnds] = ("front_pads", "rear_pads")
TREAD: Final[BothEnds] = ("front_tread", "rear_tread")


def _is_measured(session: Session, both: BothEnds) -> bool:
    return all(getattr(session, name) is not None for name in both)


def _measured_again(so_far: _Last[BothEnds], one: PastSession) -> _Last[BothEnds]:
    return _again(so_far, [both for both in (PADS, TREAD) if _is_measured(one.session, both)], one)


_LAST_MEASURED: Along[_Last[BothEnds]] = Along("last-measured", {}, _measured_again)


def _any(sessions: Iterable[PastSession], names: tuple[str, ...]) -> bool:
    return any(_ok(one.session.checks, names) or _ok(one.entry.checks, names) for one in sessions)


def _ok(checks: Mapping[str, Check], names: tuple[str, ...]) -> bool:
    return any(checks[name].status == "ok" for name in names if name in checks)


@attrs.frozen
class Essential:
    """A registered essential: its id, who is asked for it, and the rules that speak of the same."""

    id: str
    asked_of: tuple[Column, ...]
    answer: Callable[[Around], EssentialAnswer]
    rules: tuple[str, ...] = ()


ESSENTIALS: dict[str, Essential] = {}
"""Every essential, in the order in which the first one missing is named."""

F = TypeVar("F", bound=Callable[[Around], EssentialAnswer])


def essential(
    essential_id: str, asked_of: tuple[Column, ...], *, rules: tuple[str, ...] = ()
) -> Callable[[F], F]:
    """Register a function as an essential; `rules` name the to-dos that ask for the same."""

    def register(function: F) -> F:
        if essential_id in ESSENTIALS:
            raise ValueError(f"two essentials are called {essential_id}")
        ESSENTIALS[essential_id] = Essential(essential_id, asked_of, function, rules)
        return function

    return register


@attrs.frozen
class MissingEssential:
    """An essential that is not known: what, where it is answered, and the rules that ask for the same."""

    id: str
    label: str
    role: str = ""
    path: Path = ()
    ref: Ref | None = None
    tick: str = ""
    in_day: bool = False
    says: str = ""
    rules: tuple[str, ...] = ()


def missing_of(around: Around) -> Iterator[MissingEssential]:
    """List the essentials of an outing that are not known, in the order in which they are named."""
    column = around.asked_as
    for one in ESSENTIALS.values():
        found = one.answer(around) if column in one.asked_of else ABSENT
        if isinstance(found, Open):
            ref = found.ref or around.refs.get(found.role)
            asked = attrs.asdict(found, recurse=False) | {"ref": ref}
            yield MissingEssential(id=one.id, rules=one.rules, **asked)


def to_tick(around: Around, name: str, label: str, *, in_day: bool = False) -> Open:
    """Name what one key answers: in the day where that can hold it, else in the session."""
    if in_day and around.keeps_in_day:
        path = ("entries", around.session.rider or "", around.session.bike or "", "checks", name, "status")
        return Open(label, "day", path, tick=name, in_day=True)
    return Open(label, "session", ("checks", name, "status"), tick=name)
