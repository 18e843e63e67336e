"""What an open matter is, and how each kind of it is declared: what opens it, what closes it, its words.

A matter is something that was once written down and that nobody has answered yet. It follows a bike, a
rider, a helmet or a tyre through the sessions, whoever rides, until what closes its kind is on record.
"""

import datetime as dt
from collections.abc import Callable, Iterable, Mapping
from typing import Final, Literal, TypeVar

import attrs

from paddock_tui.calc.outside_pressure import AirObserved
from paddock_tui.limits import Limit, Limits
from paddock_tui.matters.order import STAGE_OF, Place
from paddock_tui.matters.seen import ColdCheck, Seen
from paddock_tui.matters.severity import Severity
from paddock_tui.on_demand import Whole
from paddock_tui.records.answers import MatterAnswer
from paddock_tui.records.bike import Bike
from paddock_tui.records.checklist import Checklist
from paddock_tui.records.day import NO_ENTRY, DayEntry, RidingDay
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.session import Session, is_ridden
from paddock_tui.records.tyres import Tyre

T = TypeVar("T")

Follows = Literal["bike", "rider", "helmet", "tyre", "track"]

TODAY = "*"
"""Stands for the day of the session looked at: where a new reading belongs, not where the old one stands."""

Theme = Literal["head", "brakes", "rider", "tyres", "suspension", "event"]
"""What is looked at first among matters of one severity, as the rules order their findings."""


@attrs.frozen
class AidHelp:
    """How much an aid helps, 0 to 1, in how many steps from least to most, and what the group starts at."""

    help: float
    steps: int
    start: float | None
    shown: str


@attrs.frozen
class Outing:
    """A session in the walk through the record, with what its day says of this rider on this bike.

    `column` is the surface as calculations tell it apart: dry, damp, wet, empty where nobody said. `tyres`
    names for each end the set that its tyre was first in, where that is known, and `fitted` is that tyre.
    `theirs` says whose set-up it was, where that of another rider was copied. `fall_items` are the items of
    the lists for after a fall whose answer "to fix" holds.
    """

    id: str
    session: Session
    entry: DayEntry = NO_ENTRY
    column: str = ""
    tyres: Mapping[str, str] = attrs.field(factory=dict)
    fitted: Mapping[str, Tyre] = attrs.field(factory=dict)
    theirs: str = ""
    helps: Mapping[str, AidHelp] = attrs.field(factory=dict)
    outside: AirObserved = attrs.field(factory=AirObserved)
    day: RidingDay | None = None
    fall_items: frozenset[str] = frozenset()
    limits: Limits = attrs.field(factory=lambda: Limits({}))

    @property
    def ridden(self) -> bool:
        """Whether it was ridden."""
        return is_ridden(self.session)

    @property
    def bike(self) -> str:
        """The bike's id; empty where nobody said."""
        return self.session.bike or ""

    @property
    def racing(self) -> bool:
        """Whether it is ridden to a race's rules."""
        return self.session.kind in ("race", "qualifying") or self.entry.group == "race"

    @property
    def order(self) -> tuple[dt.date, int, dt.time]:
        """Where it stands in the walk; what is not written down comes first."""
        session = self.session
        return session.date or dt.date.min, session.number or 0, session.start or dt.time.min


@attrs.frozen
class Opened:
    """A matter that is open: its kind, whom it follows, and what it was opened by.

    `of` is the session and `path` where the answer belongs. `rider` rode then, on `bike`. `without` counts
    the debriefed sessions since in which it did not come back, `days` the riding days since, `last` the last
    of those; `rides` counts how often the bike was ridden since. `derived` is whether no word of the session
    opened it but a comparison with what went before: sessions made ahead share one. `home` is the record of
    its answer where that is not named after whom it follows. `step` is what had been changed when it came,
    `checks` are the checks made since. `until` is the latest that it can have been where no clock says when,
    `answers` where what answers it stands in time, `since_answers` the debriefed sessions after all of that.
    `early` is when the answer beside it is dated, where that is before it: then it answers nothing.
    `conditions` are the track temperature and the warmers of its outing.
    """

    kind: str
    whom: str
    of: str
    date: dt.date | None
    number: int | None
    at: dt.time | None
    path: Path
    record: str = "session"
    day: str = ""
    subject: str = "bike"
    what: str = ""
    missing: tuple[str, ...] = ()
    grade: int = 0
    count: int = 1
    rider: str = ""
    bike: str = ""
    column: str = ""
    answered: bool = False
    without: int = 0
    days: int = 0
    last: dt.date | None = None
    rides: int = 0
    value: float = 0.0
    cause: str = ""
    derived: bool = False
    home: str = ""
    step: tuple[tuple[str, str, object], ...] = ()
    checks: tuple[ColdCheck, ...] = ()
    until: dt.time | None = None
    answers: tuple[Place, ...] = ()
    since_answers: int = 0
    early: str = ""
    conditions: tuple[object, str] = (None, "")

    @property
    def place(self) -> Place:
        """Where it stands in the order of the record."""
        return Place(self.date, self.number, STAGE_OF[self.path[0]], self.at or self.until)

    @property
    def stamp(self) -> str:
        """When it was opened, in the same words for every session that looks at it."""
        clock = f"{self.at:%H:%M}" if self.at is not None else f"session {self.number}"
        return f"{self.date} {clock}" if self.date is not None else clock


@attrs.frozen
class Present:
    """The session that is looked at: what the severity and the words of a matter may depend on.

    What was written down up to `before` was gone through and answered together, but for what holds.
    """

    id: str
    session: Session
    group: str = ""
    column: str = ""
    tyres: Mapping[str, str] = attrs.field(factory=dict)
    inspected_after: str = ""
    fitted: Mapping[str, Tyre] = attrs.field(factory=dict)
    checklists: Mapping[str, Checklist] = attrs.field(factory=dict)
    fall_list: str = ""
    torques: str = ""
    bike: Bike | None = None
    day: RidingDay | None = None
    before: dt.date | None = None
    limits: Limits = attrs.field(factory=lambda: Limits({}))

    def here(self, one: Opened) -> bool:
        """Return whether a matter was opened by this very session."""
        return one.of == self.id

    def today(self, one: Opened) -> bool:
        """Return whether a matter was opened on the day of this session; one without a day may have been."""
        return one.date in (None, self.session.date)

    def when(self, one: Opened) -> str:
        """Say when it was opened: the clock, else the session; with the day where that is another one."""
        words = f"{one.at:%H:%M}" if one.at is not None else f"session {one.number}"
        return words if self.here(one) or one.date is None else f"{one.date:%d %b} {words}"


@attrs.frozen
class Matter:
    """An open matter as one session sees it."""

    kind: str
    subject: str
    severity: Severity
    message: str
    why: str
    remedy: str
    facts: str
    ref: Ref | None
    path: Path
    since: dt.date | None
    quoted: tuple[str, ...] = ()


@attrs.frozen
class Said:
    """What is said of a matter: its severity now, and the words."""

    severity: Severity
    message: str
    why: str
    remedy: str
    facts: str
    quoted: tuple[str, ...] = ()


def _never(_one: Opened, _outing: Outing) -> bool:
    return False


def _as_it_was(one: Opened, _outing: Outing) -> Opened:
    return one


@attrs.frozen
class MatterKind:
    """One kind of matter. `id` is the id of the rule that says it.

    `opens` names what an outing leaves open; `closes` says whether a later outing closes it, for which
    `carried` may count first; `says` gives its words now, None where a guard keeps it silent. `closed_by`
    and `guard` say both in words. `least` is the least severity that it starts from. `todo` is what is to
    be done until it is due. `afterwards` is whether a ridden session is still told. `wants` is
    what an answer in a file of its own has to hold, `needs` the facts without which it is not judged.
    """

    id: str
    follows: Follows
    least: Severity
    theme: Theme
    closed_by: str
    opens: Callable[[Outing, Seen], Iterable[Opened]]
    says: Callable[[Opened, Present], Said | None]
    closes: Callable[[Opened, Outing], bool] = _never
    carried: Callable[[Opened, Outing], Opened] = _as_it_was
    guard: str = ""
    at: str = "session:incidents"
    source: str = "paddock practice, unpublished"
    todo: str = ""
    afterwards: bool = True
    limits: tuple[Limit, ...] = ()
    wants: tuple[str, ...] = ("found", "done", "by")
    needs: tuple[str, ...] = ()


KINDS: Final[dict[str, MatterKind]] = {}

COMPLETE = Whole("kinds of matters", "paddock_tui.matters.registered")


def declare(kind: MatterKind) -> MatterKind:
    """Register a kind of matter."""
    if kind.id in KINDS:
        raise ValueError(f"two kinds of matter are called {kind.id}")
    KINDS[kind.id] = kind
    return kind


def opened(kind: str, whom: str | None, outing: Outing, path: Path, **more: object) -> Opened:
    """Open a matter from an outing; `more` are further values of it."""
    session = outing.session
    given = {
        "at": None,
        "rider": session.rider or "",
        "bike": session.bike or "",
        "column": outing.column,
        **more,
    }
    return Opened(kind, whom or "", outing.id, session.date, session.number, path=path, **given)  # type: ignore[arg-type]


def still_missing(answer: MatterAnswer, *wanted: str) -> tuple[str, ...]:
    """Return which of the values wanted are not in an answer; blanks count as missing."""
    return tuple(key for key in wanted if not _there(getattr(answer, key)))


def _there(value: object) -> bool:
    return bool(value.strip()) if isinstance(value, str) else value is not None


def numbered(table: Mapping[str, T]) -> list[tuple[str, T]]:
    """List a table of plain numbers in their order."""
    return sorted(table.items(), key=lambda one: (len(one[0]), one[0]))
