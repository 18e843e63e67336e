"""No change: the honest answer where nothing was felt, while one learns, or where riding comes first."""

from paddock_tui.advice.next_change.aims import AIMS
from paddock_tui.advice.next_change.cause_table import proposals
from paddock_tui.advice.next_change.given import Given
from paddock_tui.advice.next_change.words import Kind, Proposal

_ASIDE = (Kind.ASK, Kind.CHANGE, Kind.OWN, Kind.LOOK, Kind.MEND, Kind.REST)


def none(given: Given) -> Proposal:
    """Propose the same again, with one thing to ride for."""
    found = [one for one in proposals(given) if one.kind not in _ASIDE]
    if not found:
        why = "nothing was felt that asks for one; one session more on this set-up tells more than a change"
        return Proposal(Kind.SAME, "", "None: same again.", why, aim=AIMS[""])
    first = found[0]
    what = given.felt[0][0].symptom.what or ""
    return Proposal(
        Kind.SAME,
        first.symptom,
        first.text,
        first.why,
        aim=AIMS.get(what, AIMS[""]),
        passed_over=first.passed_over,
    )
