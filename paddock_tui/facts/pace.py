"""How quick a rider is at a venue: the usual lap, from laps or from ridden time and counted laps."""

import functools
import statistics

import attrs

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.stint import TimedLap, stint
from paddock_tui.facts.past import History
from paddock_tui.records.session import Session


@attrs.frozen
class UsualLap:
    """A usual lap in s, to a hundredth; whether its laps were timed, and what it rests on, in words."""

    seconds: float
    timed: bool
    where: str


@functools.lru_cache(maxsize=64)
def usual_lap(history: History, rider: str | None, venue: str | None) -> UsualLap | None:
    """Return the usual lap of a rider at a venue; None where nothing tells it. The one place.

    The median clean lap of the last day with laps there, else ridden time over counted laps in the last such
    session. Clean is what a session's own laps count as clean.
    """
    if venue is None:
        return None
    here = [one for one in reversed(history.past) if one.venue == venue and one.session.rider == rider]
    found: list[float] = []
    day = None
    for one in here:
        laps = _clean_s(one.session) if one.may_time else []
        if not laps:
            continue
        if day is not None and one.session.date != day:
            break
        day = one.session.date
        found += laps
    if found and day is not None:
        return UsualLap(round(statistics.median(found), 2), True, f"median clean lap of {day}")
    for one in here:
        session = one.session
        if session.ridden_time is not None and session.ridden_laps:
            seconds = round(session.ridden_time.to("s") / session.ridden_laps, 2)
            return UsualLap(seconds, False, f"ridden time over laps of session {one.id}")
    return None


def _clean_s(session: Session) -> list[float]:
    numbered = [(int(key), lap) for key, lap in session.laps.items() if key.isdigit()]
    try:
        return stint(TimedLap(key, float(lap.seconds), lap.mark) for key, lap in numbered).times_s
    except OutOfRange:
        return []
