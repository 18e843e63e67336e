"""What takes grip from the rear tyre for now: cold, new, worn."""

from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.facts.past import History
from paddock_tui.facts.tyres import TyreSeen, last_seen, track_in_c, unscrubbed
from paddock_tui.limits import Limits
from paddock_tui.limits.tyres import COLD_TRACK
from paddock_tui.records.session import Session
from paddock_tui.records.tyres import Tyre, TyreSet

WORN_LOOKS = ("flat centre", "cracks", "cord", "split", "below the marks")


@fact("whether the track is cold")
def cold_track(session: Session, limits: Limits) -> bool | None:
    """Return whether the track counts as cold; None where nobody said."""
    return None if session.track is None else track_in_c(session.track, limits) < limits[COLD_TRACK]


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
    if _worn(rear, session) or (
        isinstance(seen, TyreSeen) and any(word in WORN_LOOKS for word in seen.looks)
    ):
        found.append("worn")
    return tuple(found) or ABSENT


def _worn(tyre: Tyre, session: Session) -> bool:
    """Return whether the tread is at its limit; one measured after the session says nothing of it."""
    if session.date is not None and tyre.tread_measured is not None and tyre.tread_measured > session.date:
        return False
    depths = [one.to("mm") for one in (tyre.tread_left, tyre.tread_middle, tyre.tread_right) if one]
    return bool(depths) and tyre.worn_at is not None and min(depths) <= tyre.worn_at.to("mm")
