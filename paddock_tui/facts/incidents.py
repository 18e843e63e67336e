"""What happened to this bike and to this rider, what was done about it since, what was said of corners."""

import datetime as dt
import itertools
from collections.abc import Iterable, Iterator
from typing import NamedTuple

import attrs

from paddock_tui.facts.core import fact
from paddock_tui.facts.past import Along, History, PastSession
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import Incident


@attrs.frozen
class Happened:
    """An incident with the session it stands in; `ref` is None where that is the one looked at."""

    incident: Incident
    number: str
    session: Session
    ref: Ref | None = None

    def path(self, key: str) -> Path:
        """Return where one of its values stands in its session."""
        return ("incidents", self.number, key)

    @property
    def when(self) -> str:
        """Say when it happened: the clock, else the session; the day where it is not that of the session."""
        at, session = self.incident.at, self.session
        words = f"{at:%H:%M}" if at is not None else f"session {session.number}"
        return words if self.ref is None or session.date is None else f"{session.date:%d %b} {words}"

    @property
    def stamp(self) -> str:
        """Say when it happened in the same words for every session that looks at it."""
        day, at = self.session.date, self.incident.at
        clock = f"{at:%H:%M}" if at is not None else f"session {self.session.number}, {self.number}"
        return f"{day} {clock}" if day is not None else clock

    def on(self, day: dt.date | None) -> bool:
        """Return whether it happened on a day."""
        return day is not None and self.session.date == day


@fact("what happened to this bike on the day")
def bike_incidents(session: Session, history: History) -> tuple[Happened, ...]:
    """Return what happened to this bike on the day of the session, whoever rode it, oldest first."""
    return (*_of(_of_the_day(session, history)), *_own(session))


@fact("what happened to this rider on the day")
def rider_incidents(
    session: Session, history: History, rider_today: tuple[PastSession, ...]
) -> tuple[Happened, ...]:
    """Return everything that happened to this rider on the day of the session, on any bike, oldest first."""
    other = [one for one in rider_today if history.of(one.id) is None]
    past = [one for one in _of_the_day(session, history) if one.rider == session.rider is not None]
    return (*_of(past), *_of(other), *_own(session))


def false_neutrals_noted(session: Session, history: History) -> list[Happened]:
    """Return the false neutrals of this bike on its last day that has any; of the day itself where it has."""
    own = [one for one in _own(session) if one.incident.what == FALSE_NEUTRAL]
    before = _FALSE_NEUTRALS.of(history)
    every = (*(one.date for one in before), *(session.date for _ in own))
    days = [day for day in every if day is not None]
    last = session.date if session.date in days else max(days, default=None)
    noted = _of(one for one in before if one.date == last)
    of_it = [one for one in noted if one.incident.what == FALSE_NEUTRAL]
    return of_it + (own if session.date == last else [])


FALSE_NEUTRAL = "false neutral"


def _of(past: Iterable[PastSession]) -> Iterable[Happened]:
    for one in past:
        ref = Ref("session", one.id)
        for number, incident in _numbered(one.session):
            yield Happened(incident, number, one.session, ref)


def _of_the_day(session: Session, history: History) -> list[PastSession]:
    if session.date is None:
        return []
    # They are in their order, and none of them comes after the session.
    of_it = itertools.takewhile(lambda one: one.date == session.date, reversed(_HAPPENED.of(history)))
    return [*of_it][::-1]


_Sessions = tuple[PastSession, ...]


def _happened_again(so_far: _Sessions, one: PastSession) -> _Sessions:
    return (*so_far, one) if one.session.incidents else so_far


_HAPPENED: Along[_Sessions] = Along("incidents", (), _happened_again)
"""The sessions in which anything happened."""


def _false_neutral_again(so_far: _Sessions, one: PastSession) -> _Sessions:
    noted = any(held.what == FALSE_NEUTRAL for held in one.session.incidents.values())
    return (*so_far, one) if noted else so_far


_FALSE_NEUTRALS: Along[_Sessions] = Along("false-neutrals", (), _false_neutral_again)


def _own(session: Session) -> Iterable[Happened]:
    return (Happened(incident, number, session) for number, incident in _numbered(session))


def _numbered(session: Session) -> list[tuple[str, Incident]]:
    return sorted(session.incidents.items(), key=lambda one: (len(one[0]), one[0]))


_Here = tuple[str | None, str | None]
"""Venue and rider."""


class _Placed(NamedTuple):
    """A session, and how many there were by then."""

    place: int
    past: PastSession


class _Corners(NamedTuple):
    """How many sessions there were, the last with words for each corner, and all in which one was felt."""

    sessions: int
    said: dict[tuple[_Here, str], _Placed]
    felt: dict[_Here, tuple[_Placed, ...]]


def _corner_again(so_far: _Corners, one: PastSession) -> _Corners:
    place, here = so_far.sessions + 1, (one.venue, one.rider)
    for number in one.session.corner_words:
        so_far.said[here, number] = _Placed(place, one)
    if any(symptom.corner for symptom in one.session.symptoms.values()):
        so_far.felt[here] = (*so_far.felt.get(here, ()), _Placed(place, one))
    return so_far._replace(sessions=place)


def _own_corners(so_far: _Corners) -> _Corners:
    return _Corners(so_far.sessions, dict(so_far.said), dict(so_far.felt))


_CORNERS = Along("corners", _Corners(0, {}, {}), _corner_again, _own_corners)


def with_corner(history: History, venue: str | None, rider: str | None, number: str) -> Iterator[PastSession]:
    """Give a rider's sessions at a venue in which a corner had words, or any was felt, the last one first.

    Of those with words for this corner only the last one is given.
    """
    found, here = _CORNERS.of(history), (venue, rider)
    said = found.said.get((here, number))
    those = [*found.felt.get(here, ()), *filter(None, (said,))]
    yield from (one.past for one in sorted(those, key=_place, reverse=True))


def _place(one: _Placed) -> int:
    return one.place
