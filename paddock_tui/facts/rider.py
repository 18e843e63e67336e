"""How the rider is: knocks to the head, feeling unwell, and how spent they are."""

import datetime as dt

import attrs

from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.facts.incidents import Happened
from paddock_tui.facts.past import PastSession
from paddock_tui.records.session import Session


@attrs.frozen
class Spent:
    """How spent the rider is, 1 to 5, and where that was entered: the session looked at, or one before."""

    score: int
    where: str

    def __str__(self) -> str:
        return f"fatigue {self.score} of 5 {self.where}"


@fact("knocks to the head")
def head_contacts(rider_incidents: tuple[Happened, ...]) -> tuple[Happened, ...]:
    """Return what touched the helmet, or after which a concussion is suspected."""
    return tuple(one for one in rider_incidents if one.incident.head_contact or one.incident.concussion)


@fact("falls of which nobody said whether the head touched anything")
def head_not_answered(rider_incidents: tuple[Happened, ...], session: Session) -> tuple[Happened, ...]:
    """Today's falls while moving without an answer about the head."""
    return tuple(
        one
        for one in rider_incidents
        if one.on(session.date)
        and one.incident.what == "fall"
        and one.incident.moving is not False
        and one.incident.head_contact is None
        and not one.incident.concussion
    )


@fact("how spent the rider is", at="session:fatigue", show=str)
def spent(session: Session, rider_today: tuple[PastSession, ...]) -> Spent | Absent:
    """Return the rider's fatigue as entered for this session, else after the last one of the day."""
    if session.fatigue is not None:
        return Spent(session.fatigue, "now")
    for one in reversed(rider_today):
        if one.session.fatigue is not None:
            return Spent(one.session.fatigue, f"in session {one.session.number}")
    return ABSENT


def suspected(one: Happened, day: dt.date | None) -> bool:
    """Return whether a concussion is suspected on its own day: said so, or not answered after a knock."""
    return one.on(day) and one.incident.concussion is not False


def cleared(one: Happened) -> bool:
    """Return whether all three are there: who cleared the rider, when, and another helmet."""
    incident = one.incident
    named = bool((incident.cleared_by or "").strip())
    return named and incident.cleared_at is not None and incident.helmet_replaced is True
