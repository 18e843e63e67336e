"""A situation: the records that a review looks at, found by following the references of a session."""

import datetime as dt
from collections.abc import Mapping
from typing import Any, cast

import attrs

from paddock_tui.facts.core import ABSENT, UNKNOWN, Facts, of_bike
from paddock_tui.facts.past import ENDS, NOTHING, History, PastSession
from paddock_tui.limits import Limits
from paddock_tui.records.bike import Bike
from paddock_tui.records.checklist import Checklist
from paddock_tui.records.day import RidingDay
from paddock_tui.records.disputes import Dispute
from paddock_tui.records.garage import Garage
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.people import Rider, Venue
from paddock_tui.records.session import Session
from paddock_tui.records.setup import Profile, SetUp
from paddock_tui.records.tyres import TyreSet


@attrs.frozen
class Dangling:
    """A reference that finds no record: the record and path that hold it, and what it names."""

    role: str
    path: Path
    kind: str
    id: str


@attrs.frozen
class Disputed:
    """A fact of one of the records that two laptops changed differently."""

    role: str
    ref: Ref
    dispute: Dispute


@attrs.frozen
class NotUnderstood:
    """A key or a word of one of the records that this program does not know; without a path a whole file."""

    ref: Ref
    path: Path = ()


@attrs.frozen
class Impossible:
    """A figure that cannot be: the role and path at which it stands, and its record as written."""

    role: str
    path: Path
    record: Record


@attrs.frozen
class Situation:
    """Everything a review may look at. A record that is None is not known.

    `earlier` are this rider's sessions on this bike and day before this one, oldest first; `history` holds
    everybody's sessions on this bike before this one, `rider_today` this rider's of the same day before it,
    on any bike; `rider_elsewhere` this rider's of earlier days on other bikes in which something happened.
    `unplaced` are sessions that lack a date, a bike or a rider and may be among these. `checklists` are all
    of the garage by id, retired ones too. `refs` says which record plays which role, so that a finding can
    point at it. The records are without the figures that cannot be; those stand under
    `impossible`.
    """

    garage: Garage = attrs.field(factory=Garage)
    session: Session | None = None
    profile: Profile | None = None
    bike: Bike | None = None
    rider: Rider | None = None
    day: RidingDay | None = None
    venue: Venue | None = None
    tyres: TyreSet | None = None
    source: Session | None = None
    earlier: tuple[Session, ...] = ()
    history: History = NOTHING
    rider_today: tuple[PastSession, ...] = ()
    rider_elsewhere: tuple[PastSession, ...] = ()
    unplaced: tuple[PastSession, ...] = ()
    checklists: Mapping[str, Checklist] = attrs.field(factory=dict)
    dangling: tuple[Dangling, ...] = ()
    disputed: tuple[Disputed, ...] = ()
    not_understood: tuple[NotUnderstood, ...] = ()
    impossible: tuple[Impossible, ...] = ()
    refs: Mapping[str, Ref] = attrs.field(factory=dict)
    now: dt.datetime = attrs.field(kw_only=True)
    going_out: bool = False
    _facts: Facts | None = attrs.field(default=None, init=False, eq=False, repr=False)

    @property
    def setup(self) -> SetUp | None:
        """The set-up in question: of the session, else of the profile."""
        holder = self.session or self.profile
        return holder.setup if holder is not None else None

    @property
    def setup_role(self) -> str:
        """Which record holds the set-up: 'session' or 'profile'."""
        return "session" if self.session is not None else "profile"

    @property
    def limits(self) -> Limits:
        """The limits in force: as declared, or as the owner of the garage set them."""
        return Limits(self.garage.limits)

    def facts(self) -> Facts:
        """Return the facts of this situation: each is computed once, whoever asks for it."""
        if self._facts is None:
            controls = self.bike.controls if self.bike is not None else {}
            adjusters = self.bike.adjusters if self.bike is not None else {}
            facts = Facts(
                self._roots(),
                {"control": controls, "adjuster": adjusters, "end": {end: end for end in ENDS}},
                of_bike(self.bike) if self.bike is not None else None,
            )
            object.__setattr__(self, "_facts", facts)
        return cast(Facts, self._facts)

    def _roots(self) -> dict[str, Any]:
        session = ABSENT if self.session is None else self.session
        roots: dict[str, Any] = {
            "session": session,
            "setup": ABSENT if self.setup is None else self.setup,
            "bike": UNKNOWN if self.bike is None else self.bike,
            "rider": UNKNOWN if self.rider is None else self.rider,
            "dangling": self.dangling,
            "disputed": self.disputed,
            "not_understood": self.not_understood,
            "impossible": self.impossible,
            "now": self.now,
            "refs": self.refs,
            "records": self._records(),
            "earlier": self.earlier,
            "history": self.history,
            "rider_today": self.rider_today,
            "rider_elsewhere": self.rider_elsewhere,
            "unplaced": self.unplaced,
            "source": self.source,
            "checklists": self.checklists,
            "limits": self.limits,
            "garage": self.garage,
        }
        for name, record in (("day", self.day), ("venue", self.venue), ("tyres", self.tyres)):
            roots[name] = record if record is not None else (ABSENT if self.session is None else UNKNOWN)
        if self.session is not None and self.session.kind == "road" and self.session.day is None:
            roots["day"] = roots["venue"] = ABSENT
        return roots

    def _records(self) -> dict[str, Record]:
        found: dict[str, Record | None] = {
            "session": self.session,
            "profile": self.profile,
            "bike": self.bike,
            "rider": self.rider,
            "day": self.day,
            "venue": self.venue,
            "tyres": self.tyres,
        }
        return {role: record for role, record in found.items() if record is not None}
