"""When a session says that the bike did not do something: it was ridden long enough, and was asked about."""

from paddock_tui.matters.core import Outing

LEAST_LAPS = 3
LEAST_MINUTES = 10.0


def debriefed(outing: Outing) -> bool:
    """Return whether what the bike did was answered, after at least three laps or ten minutes.

    "Nothing written" is never "nothing happened".
    """
    session = outing.session
    asked = session.did is not None or bool(session.symptoms)
    laps = laps_of(outing)
    minutes = session.ridden_time.to("min") if session.ridden_time is not None else 0.0
    return asked and outing.ridden and (laps >= LEAST_LAPS or minutes >= LEAST_MINUTES)


def laps_of(outing: Outing) -> int:
    """Return the laps ridden, as counted, else those that were timed."""
    session = outing.session
    return session.ridden_laps if session.ridden_laps is not None else len(session.laps)
