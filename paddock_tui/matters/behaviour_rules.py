"""When a session says that the bike did not do something: it was ridden long enough, and was asked about."""

from paddock_tui.limits.next_change import TELLING_LAPS, TELLING_MINUTES
from paddock_tui.matters.core import Outing


def debriefed(outing: Outing) -> bool:
    """Return whether what the bike did was answered, after as many laps or minutes as tell something.

    "Nothing written" is never "nothing happened".
    """
    session, limits = outing.session, outing.limits
    asked = session.did is not None or bool(session.symptoms)
    laps = session.lap_count
    minutes = session.ridden_time.to("min") if session.ridden_time is not None else 0.0
    return asked and outing.ridden and (laps >= limits[TELLING_LAPS] or minutes >= limits[TELLING_MINUTES])
