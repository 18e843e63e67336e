"""Whether facts and rules join: what a parameter names has to be there, and under that name."""

import datetime as dt
from collections.abc import Iterable, Mapping
from typing import Any, Final

from paddock_tui.facts.core import FACTS, PerSubject
from paddock_tui.facts.past import End, History, PastSession
from paddock_tui.facts.situation import Dangling, Disputed, Impossible, NotUnderstood
from paddock_tui.limits import Limits
from paddock_tui.records.bike import Bike
from paddock_tui.records.checklist import Checklist
from paddock_tui.records.day import RidingDay
from paddock_tui.records.electronics import Control
from paddock_tui.records.garage import Garage
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider, Venue
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp
from paddock_tui.records.suspension import Adjuster
from paddock_tui.records.tyres import TyreSet

ROOTS: Final[Mapping[str, Any]] = {
    "bike": Bike,
    "checklists": Mapping[str, Checklist],
    "dangling": tuple[Dangling, ...],
    "disputed": tuple[Disputed, ...],
    "day": RidingDay,
    "earlier": tuple[Session, ...],
    "garage": Garage,
    "history": History,
    "impossible": tuple[Impossible, ...],
    "limits": Limits,
    "not_understood": tuple[NotUnderstood, ...],
    "now": dt.datetime,
    "records": Mapping[str, Record],
    "refs": Mapping[str, Ref],
    "rider": Rider,
    "rider_elsewhere": tuple[PastSession, ...],
    "rider_today": tuple[PastSession, ...],
    "session": Session,
    "setup": SetUp,
    "source": Session | None,
    "tyres": TyreSet,
    "unplaced": tuple[PastSession, ...],
    "venue": Venue,
}
"""What a situation gives by itself, by name, with its type."""

SUBJECTS: Final[Mapping[str, Any]] = {"subject": str, "control": Control, "adjuster": Adjuster, "end": End}
"""What is given where a fact or a rule is asked about one control, adjuster or end, with its type."""

KEYS: Final[Mapping[PerSubject, Any]] = {"control": str, "adjuster": str, "end": End}
"""The type of the keys of a mapping that gathers a fact about each."""


def check_needs(kind: str, name: str, needs: Iterable[str], gathers: Iterable[str] = ()) -> None:
    """Raise NameError where a need of a fact or a rule is neither given nor a fact; asked at import.

    What it gathers has to be one of its needs, and a fact about each subject.
    """
    needed = tuple(needs)
    known = {*FACTS, *ROOTS, *SUBJECTS}
    for need in needed:
        if need not in known:
            raise NameError(f"the {kind} {name} needs {need}: no fact has this name{_near(need, known)}")
    for one in gathers:
        if one not in needed or one not in FACTS or FACTS[one].per is None:
            raise NameError(f"the {kind} {name} gathers {one}: no fact about each that it needs")


def _near(name: str, known: Iterable[str]) -> str:
    from difflib import get_close_matches

    near = get_close_matches(name, sorted(known), 1)
    return f"; is it {near[0]}?" if near else ""
