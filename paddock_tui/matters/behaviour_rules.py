"""When a session says that the bike did not do something: it was ridden long enough, and was asked about."""

from paddock_tui.limits.next_change import TELLING_LAPS, TELLING_MINUTES
from paddock_tui.matters.core import Outing


def debriefed(outing: Outing) -> bool:
    """Return whether what the bike did was answered, after as many laps or minutes as tell something.

    "Nothing written" is never "nothing happened".
    """
    session, limits = outing.session, outing.limits
    asked = session.did is not None or bool(session.symptoms)
    laps = laps_of(outing)
    minutes = session.ridden_time.to("min") if session.ridden_time is not None else 0.0
    return asked and outing.ridden and (laps >= limits[TELLING_LAPS] or minutes >= limits[TELLING_MINUTES])


def laps_of(outing: Outing) -> int:
    """Return the laps ridden, as counted, else those that were timed."""
    session = outing.session
    return session.ridden_laps if session.ridden_laps is not None else len(session.laps)
