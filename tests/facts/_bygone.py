"""Long histories of one bike, and what of them is looked into."""

import datetime as dt
import functools
import tempfile
from collections.abc import Callable, Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any, NamedTuple, cast

import attrs

from paddock_tui.desk import Desk
from paddock_tui.facts.core import FACTS
from paddock_tui.facts.past import History, PastSession
from paddock_tui.facts.situation import Situation
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import Acceptance, Incident, Work
from paddock_tui.records.setup import SetUp
from paddock_tui.records.tyres import TyreSet
from paddock_tui.rules.registered import review
from tests.bench._career import write_career
from tests.sample import SAMPLE

AT_ONCE = frozenset({"id", "date", "rider", "tyres", "ridden", "venue"})
"""What is known of a session without reading its file."""

SESSIONS = 300
"""Of three bikes, so that a third of them are those of one."""

NAMES = ("a career", "a career without figures", "a career of plans", "the sample")

ROUNDS = 15
"""So often the bike of the sample rides its sessions again."""


class Long(NamedTuple):
    """A situation whose history is long."""

    situation: Situation

    @property
    def past(self) -> tuple[PastSession, ...]:
        """What went before."""
        return self.situation.history.past

    def at(self, past: Iterable[Any], session: Session) -> tuple[History, Situation]:
        """Return it with other sessions before, and another one in hand."""
        before = self.situation.history
        history = History(cast("tuple[PastSession, ...]", tuple(past)), before.tyre_sets, before.riders)
        return history, attrs.evolve(self.situation, history=history, session=session)


class Noted:
    """A session that notes that it was looked into."""

    def __init__(self, one: PastSession, into: set[str]) -> None:
        self._one, self._into = one, into

    def __getattr__(self, name: str) -> Any:
        if name not in AT_ONCE:
            self._into.add(self._one.id)
        return getattr(self._one, name)


class NotedSets(Mapping[str, TyreSet]):
    """Tyre sets that note which of them are read."""

    def __init__(self, sets: Mapping[str, TyreSet], read: set[str]) -> None:
        self._sets, self._read = sets, read

    def __getitem__(self, name: str) -> TyreSet:
        found = self._sets[name]
        self._read.add(name)
        return found

    def __contains__(self, name: object) -> bool:
        return name in self._sets

    def __iter__(self) -> Iterator[str]:
        return iter(self._sets)

    def __len__(self) -> int:
        return len(self._sets)


def with_many_sets(long: Long) -> Long:
    """Return it with each tyre set on for three sessions, then a fresh one of the same kind."""
    past, sets = [], {}
    for place, one in enumerate(long.past):
        name = f"{one.tyres}-{place // 3}"
        past.append(attrs.evolve(one, session=attrs.evolve(one.session, tyres=name)))
        held = long.situation.history.tyre_sets.get(one.tyres or "", TyreSet())
        front, rear = (attrs.evolve(tyre, continues=None) for tyre in (held.front, held.rear))
        sets[name] = attrs.evolve(held, front=front, rear=rear)
    history = History(tuple(past), sets, long.situation.history.riders)
    return Long(attrs.evolve(long.situation, history=history))


@functools.cache
def long_ones() -> Mapping[str, Long]:
    """Return the histories by what they are."""
    career = _career()
    of_all = (career, _with(career, _stripped), _with(career, planned), _sample())
    return dict(zip(NAMES, of_all, strict=True))


def _career() -> Long:
    with tempfile.TemporaryDirectory() as folder:
        career = write_career(Path(folder) / "garage", SESSIONS)
        desk = Desk(career.root, lambda: career.at)
        return Long(desk.assembled(Ref("session", career.in_hand)).situation)


def _with(long: Long, made: Callable[[Session], Session]) -> Long:
    """Return it with other sessions before."""
    past = tuple(attrs.evolve(one, session=made(one.session)) for one in long.past)
    before = long.situation.history
    return Long(attrs.evolve(long.situation, history=History(past, before.tyre_sets, before.riders)))


_KEPT = frozenset({"date", "number", "bike", "rider", "day", "tyres", "kind", "ridden_laps", "copied_from"})


def _stripped(session: Session) -> Session:
    """Return a session of somebody who counts laps, and writes down nothing else."""
    held = {field.name: getattr(session, field.name) for field in attrs.fields(Session)}
    kept = {name: value for name, value in held.items() if name in _KEPT}
    return Session(**kept, setup=SetUp(mode=session.setup.mode))


def planned(session: Session) -> Session:
    """Return a session that nobody rode."""
    return attrs.evolve(_stripped(session), ridden_laps=None)


def _sample() -> Long:
    """Return the sample's bike with most sessions, which rides them again and again, a month apart."""
    desk = Desk(SAMPLE, lambda: dt.datetime(2026, 6, 20, 13, 12))
    ref = desk.session_in_hand()
    assert ref is not None
    situation = desk.assembled(ref).situation
    past = tuple(_again(situation.history.past))
    history = History(past, situation.history.tyre_sets, situation.history.riders)
    return Long(attrs.evolve(situation, history=history))


def _again(past: tuple[PastSession, ...]) -> Iterator[PastSession]:
    for back in reversed(range(ROUNDS)):
        for one in past:
            day = one.date - dt.timedelta(days=30 * back) if one.date is not None else None
            session = _eventful(one.session) if one is past[-1] else one.session
            yield attrs.evolve(one, id=f"{one.id}-{back}", session=attrs.evolve(session, date=day))


def _eventful(session: Session) -> Session:
    """Return a session with what its bike never had: starts, a gear that fell out, work once it was back."""
    setup = attrs.evolve(session.setup, controls={**session.setup.controls, "launch": 2})
    noted = (Incident(what="practice starts"), Incident(what="false neutral"), Incident(note="what was that"))
    accepted = {"low-pads": {"front": Acceptance(reason="new ones tonight", by="the rider")}}
    return attrs.evolve(
        session,
        setup=setup,
        incidents={str(number): one for number, one in enumerate(noted, 1)},
        accepted=accepted,
        work={"1": Work(what="axle", at=dt.time(18, 0))},
        parked=dt.time(17, 0),
    )


def ask_all(situation: Situation) -> None:
    """Ask every rule and every fact about all its subjects."""
    review(situation)
    facts = situation.facts()
    for name, one in FACTS.items():
        for subject in facts.subjects(one.per) if one.per is not None else (None,):
            facts.get(name, subject)
