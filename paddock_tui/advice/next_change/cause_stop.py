"""Nobody goes out: the rider, a fall that was not inspected, a part that is a danger."""

from paddock_tui.advice.next_change.given import BEHAVIOURS, Given
from paddock_tui.advice.next_change.words import Kind, Passed, Proposal, Spoken
from paddock_tui.facts.past import PastSession
from paddock_tui.matters import KINDS, Matter
from paddock_tui.matters.severity import HOLD, SERIOUS

LOOKED_AT_FIRST = ("wheel-work-not-checked", "oil-work-not-checked-hot", "chain-slack-not-measured")
"""Work that is to be checked before a change, and no danger that ends the day."""

_RIDER = ("rider", "helmet")


def stop(given: Given) -> Spoken:
    """Say what keeps the rider or the bike from going out at all."""
    found = [one for one in given.matters if _stops(one)]
    if found:
        first = found[0]
        rest = KINDS[first.kind].follows in _RIDER
        text = " ".join(one.message for one in found)
        why = f"{first.why} {first.remedy} Nothing is changed before that."
        return Proposal(Kind.REST if rest else Kind.MEND, "", text, why)
    falls = _falls_today(given)
    if falls > 1:
        text = f"{falls} falls today: the day is over."
        why = (
            "a second fall in a day is a sign that something does not go on; a change of set-up is no answer"
        )
        return Proposal(Kind.REST, "", text, why)
    return Passed("nothing that is on record keeps the rider or the bike from going out")


def _stops(one: Matter) -> bool:
    kind = KINDS[one.kind]
    if one.kind in (*BEHAVIOURS, *LOOKED_AT_FIRST) or kind.theme == "tyres":
        return False
    if kind.theme in ("suspension", "event"):
        return one.severity >= HOLD
    return one.severity >= SERIOUS


def _falls_today(given: Given) -> int:
    """Count this rider's own falls of the day, on any bike, at a standstill left out."""
    session = given.session
    today = [*given.about.situation.rider_today, *given.about.history.past]
    seen: dict[str, PastSession] = {one.id: one for one in today}
    outings = [one.session for one in seen.values() if one.date == session.date is not None]
    mine = [session, *(one for one in outings if one.rider == session.rider)]
    return sum(
        incident.what == "fall" and incident.moving is not False and incident.at_fault is not False
        for one in mine
        for incident in one.incidents.values()
    )
