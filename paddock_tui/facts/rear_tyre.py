"""What takes grip from the rear tyre for now: cold, new, worn."""

from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.facts.past import History
from paddock_tui.facts.tyres import TyreSeen, last_seen, unscrubbed
from paddock_tui.quantities import Quantity
from paddock_tui.records.session import Session
from paddock_tui.records.tyres import Tyre, TyreSet
from paddock_tui.trade.starting_levels import COLD_TRACK_C

WORN_LOOKS = ("flat centre", "cracks", "cord", "split", "below the marks")


@fact("whether the track is cold")
def cold_track(session: Session) -> bool | None:
    """Return whether the track is under 15 C; None where nobody said."""
    if isinstance(session.track, Quantity):
        return session.track.to("C") < COLD_TRACK_C
    return None if session.track is None else session.track == "cold"


@fact("what takes grip from the rear tyre", show=lambda found: f"rear tyre {', '.join(found)}")
def poor_rear(
    session: Session, history: History, tyres: TyreSet, cold_track: bool | None
) -> tuple[str, ...] | Absent:
    """Return what is known to take grip from the rear tyre; absent where nothing is known to.

    A look or a tread that nobody took says nothing: not every tyre is measured. New is what nobody has
    ridden yet.
    """
    rear = tyres.rear
    found = []
    if cold_track and session.warmers != "used":
        found.append("cold")
    if unscrubbed("rear", session, history, tyres) is True:
        found.append("new")
    seen = last_seen("rear", session, history, tyres)
    if _worn(rear) or (isinstance(seen, TyreSeen) and any(word in WORN_LOOKS for word in seen.looks)):
        found.append("worn")
    return tuple(found) or ABSENT


def _worn(tyre: Tyre) -> bool:
    depths = [one.to("mm") for one in (tyre.tread_left, tyre.tread_middle, tyre.tread_right) if one]
    return bool(depths) and tyre.worn_at is not None and min(depths) <= tyre.worn_at.to("mm")
