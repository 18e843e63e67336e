"""Rules about the rider: head, health and how spent they are."""

from paddock_tui.facts.incidents import Happened
from paddock_tui.facts.rider import Spent, cleared, suspected
from paddock_tui.limits import Limits
from paddock_tui.limits.rider import SPENT
from paddock_tui.records.session import Session
from paddock_tui.rules.core import HEAD, HOLD, RIDER, SERIOUS, RaisedFinding, Remedy, Result, rule

_HEAD = "suspected concussion ends the day, a helmet that was hit is out of service: common practice"


@rule("concussion-suspected", HOLD, source=_HEAD, at="session:incidents", rank=HEAD)
def concussion_suspected(head_contacts: tuple[Happened, ...], session: Session) -> Result:
    """The head was hit today, and a concussion is suspected or not answered: nothing mends that today."""
    today = [one for one in head_contacts if suspected(one, session.date)]
    if not today:
        return None
    one = today[-1]
    said = one.incident.concussion
    words = "suspected" if said else "not answered"
    return RaisedFinding(
        message=f"Head hit {one.when}, concussion {words}: no riding today.",
        why="Blank counts as suspected. Signs come late, a second knock can kill; nothing mends it today.",
        remedy=Remedy(
            "Stay off the bike for the rest of the day, be with somebody, see a doctor. Only a doctor or the "
            "medical post can say that there is none."
        ),
        subject="rider",
        path=one.path("concussion"),
        ref=one.ref,
        facts=f"head hit {one.stamp}; concussion {words}",
    )


@rule("head-hit-not-cleared", HOLD, source=_HEAD, at="session:incidents", rank=HEAD)
def head_hit_not_cleared(head_contacts: tuple[Happened, ...], session: Session) -> Result:
    """The head was hit, and not all three are there: who cleared the rider, when, and another helmet."""
    waiting = [one for one in head_contacts if not suspected(one, session.date) and not cleared(one)]
    if not waiting:
        return None
    one = waiting[-1]
    gaps = _gaps(one)
    return RaisedFinding(
        message=f"Head hit {one.when}: {gaps[0][1]}{' and more' if len(gaps) > 1 else ''} missing.",
        why=f"It takes all three: who cleared the rider, when, another helmet. Missing: {_listed(gaps)}.",
        remedy=Remedy(
            "Be seen by a doctor or the medical post and enter who and when; put on another helmet: one "
            "that was hit protects once."
        ),
        subject="rider",
        path=one.path(gaps[0][0]),
        ref=one.ref,
        facts=f"head hit {one.stamp}; missing: {_listed(gaps)}",
    )


@rule("head-contact-not-answered", SERIOUS, source=_HEAD, at="session:incidents", rank=HEAD)
def head_contact_not_answered(head_not_answered: tuple[Happened, ...]) -> Result:
    """A fall while moving, and nobody wrote down whether the head touched anything."""
    if not head_not_answered:
        return None
    one = head_not_answered[-1]
    return RaisedFinding(
        message=f"Fall {one.when}: did the head touch anything? Nobody said.",
        why="A knock is easily missed after a fall; scratches on the helmet say more than memory does.",
        remedy=Remedy("Look the helmet over, ask whoever saw it, go to the medical post, and enter it."),
        subject="rider",
        path=one.path("head_contact"),
        ref=one.ref,
        facts=f"fall {one.stamp}; head contact not answered",
    )


@rule("rider-unwell", SERIOUS, at="session:incidents", rank=RIDER)
def rider_unwell(rider_incidents: tuple[Happened, ...], session: Session) -> Result:
    """The rider was unwell today, and nobody qualified has looked at them since."""
    ill = [
        one
        for one in rider_incidents
        if one.incident.what == "unwell"
        and one.on(session.date)
        and not ((one.incident.cleared_by or "").strip() and one.incident.cleared_at)
    ]
    if not ill:
        return None
    one = ill[-1]
    return RaisedFinding(
        message=f"Unwell {one.when}, and nobody qualified has looked since.",
        why="Heat, thirst and sickness slow a rider down long before they feel it.",
        remedy=Remedy("Out of the leathers, shade, drink; go to the medical post and enter who said what."),
        subject="rider",
        path=one.path("cleared_by"),
        ref=one.ref,
        facts=f"unwell {one.stamp}; not looked at since",
    )


@rule("rider-spent", SERIOUS, at="session:fatigue", when=("to_come",), limits=(SPENT,), rank=RIDER)
def rider_spent(spent: Spent, limits: Limits) -> Result:
    """The rider is spent: late falls come from tired heads."""
    if spent.score < limits[SPENT]:
        return None
    return RaisedFinding(
        message=f"Fatigue {spent.score} of 5 {spent.where}: sit this one out, or rest first.",
        why="Most falls late in the day come from tired heads and arms, not from the bike.",
        remedy=Remedy("Drink, eat, lie down; skip this session, and enter how it is before the next one."),
        subject="rider",
    )


def _gaps(one: Happened) -> list[tuple[str, str]]:
    incident = one.incident
    gaps = []
    if not (incident.cleared_by or "").strip():
        gaps.append(("cleared_by", "who cleared you"))
    if incident.cleared_at is None:
        gaps.append(("cleared_at", "when you were cleared"))
    if incident.helmet_replaced is not True:
        gaps.append(("helmet_replaced", "another helmet"))
    return gaps


def _listed(gaps: list[tuple[str, str]]) -> str:
    return ", ".join(words for _, words in gaps)
