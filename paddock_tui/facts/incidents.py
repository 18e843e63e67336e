"""What happened to this bike and to this rider, and what was done about it since."""

import datetime as dt
from collections.abc import Iterable, Mapping

import attrs

from paddock_tui.facts.core import fact
from paddock_tui.facts.past import History, PastSession
from paddock_tui.records.day import DayEntry, RidingDay
from paddock_tui.records.kinds import Record
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

    @property
    def unanswered(self) -> bool:
        """Whether nobody wrote down what was found and done."""
        return not (self.incident.mended or "").strip()

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
    return (*_of(history.past), *_own(session))


@fact("what happened to this rider")
def rider_incidents(
    session: Session, history: History, rider_today: tuple[PastSession, ...]
) -> tuple[Happened, ...]:
    """Return everything that happened to this rider, on this bike ever and on any bike today, oldest
    first.
    """
    there = {one.id for one in history.past}
    other = [one for one in rider_today if one.id not in there]
    past = [one for one in history.past if one.session.rider == session.rider is not None]
    return (*_of((*past, *other)), *_own(session))


@fact("falls since the last inspection")
def falls_not_inspected(
    bike_incidents: tuple[Happened, ...],
    session: Session,
    history: History,
    records: Mapping[str, Record],
) -> tuple[Happened, ...]:
    """Return the falls after which nobody has inspected the bike: neither then, nor on a later day."""
    days = [one.session.date for one in history.past if one.inspected and one.session.date is not None]
    if session.date is not None and _inspected_today(session, records):
        days.append(session.date)
    last = max(days, default=dt.date.min)
    found: list[Happened] = []
    for one in bike_incidents:
        if one.incident.what != "fall":
            continue
        if one.incident.inspected_again is not None:
            found = []
        elif one.session.date is None or one.session.date >= last:
            found.append(one)
    return tuple(found)


@fact("what the organiser wants inspected again")
def inspected_after(records: Mapping[str, Record]) -> str:
    """Return the organiser's rule on falls: any, moving, or nothing where it is not known."""
    day = records.get("day")
    return (day.inspection_after_fall or "") if isinstance(day, RidingDay) else ""


def _of(past: Iterable[PastSession]) -> Iterable[Happened]:
    for one in past:
        ref = Ref("session", one.id)
        for number, incident in _numbered(one.session):
            yield Happened(incident, number, one.session, ref)


def _own(session: Session) -> Iterable[Happened]:
    return (Happened(incident, number, session) for number, incident in _numbered(session))


def _numbered(session: Session) -> list[tuple[str, Incident]]:
    return sorted(session.incidents.items(), key=lambda one: (len(one[0]), one[0]))


def _inspected_today(session: Session, records: Mapping[str, Record]) -> bool:
    day = records.get("day")
    entries = day.entries if isinstance(day, RidingDay) else {}
    return bool(entries.get(session.rider or "", {}).get(session.bike or "", DayEntry()).inspected)
