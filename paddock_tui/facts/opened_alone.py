"""What a session opens by itself, whatever was before it."""

from paddock_tui.limits.rider import SPENT
from paddock_tui.matters import KINDS, Outing, registered  # noqa: F401 - all kinds
from paddock_tui.matters.seen import Seen
from paddock_tui.records.paths import Path
from paddock_tui.records.session import Session


def opened_alone(name: str, session: Session) -> dict[tuple[str, str], Path]:
    """Return what a session opens by itself, by kind and subject, with where it is answered."""
    outing = Outing(name, session, column=session.surface or "")
    opens = (one for kind in KINDS.values() for one in kind.opens(outing, Seen()))
    # Every figure of fatigue opens one, and only a spent rider is said.
    said = (one for one in opens if one.kind != "rider-spent" or one.grade >= outing.limits[SPENT])
    return {(one.kind, one.subject): one.path for one in said}
