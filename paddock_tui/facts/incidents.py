"""What happened to this bike and to this rider, and what was done about it since."""

import datetime as dt
from collections.abc import Iterable

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


@fact("what happened to this bike")
def bike_incidents(session: Session, history: History) -> tuple[Happened, ...]:
    """Return everything that happened to this bike, whoever rode it, oldest first."""
    return (*_HAPPENED.of(history), *_own(session))


@fact("what happened to this rider")
def rider_incidents(
    session: Session, history: History, rider_today: tuple[PastSession, ...]
) -> tuple[Happened, ...]:
    """Return everything that happened to this rider, on this bike ever and on any bike today, oldest
    first.
    """
    other = [one for one in rider_today if history.of(one.id) is None]
    past = [one for one in _HAPPENED.of(history) if one.session.rider == session.rider is not None]
    return (*past, *_of(other), *_own(session))


def _of(past: Iterable[PastSession]) -> Iterable[Happened]:
    for one in past:
        ref = Ref("session", one.id)
        for number, incident in _numbered(one.session):
            yield Happened(incident, number, one.session, ref)


def _happened_again(so_far: tuple[Happened, ...], one: PastSession) -> tuple[Happened, ...]:
    return (*so_far, *_of([one])) if one.session.incidents else so_far


_HAPPENED: Along[tuple[Happened, ...]] = Along("incidents", (), _happened_again)


def _own(session: Session) -> Iterable[Happened]:
    return (Happened(incident, number, session) for number, incident in _numbered(session))


def _numbered(session: Session) -> list[tuple[str, Incident]]:
    return sorted(session.incidents.items(), key=lambda one: (len(one[0]), one[0]))
