"""How quick a rider is at a venue: the usual lap, from laps or from ridden time and counted laps."""

import functools
import statistics

from paddock_tui.facts.past import History


@functools.lru_cache(maxsize=64)
def usual_lap_s(history: History, rider: str | None, venue: str | None) -> tuple[float, str] | None:
    """Median clean lap in s of this rider and venue on the last day with laps, and which day; or None."""
    found: list[float] = []
    day = None
    for one in reversed(history.past):
        session = one.session
        clean = [float(lap.seconds) for lap in session.laps.values() if not lap.mark]
        if not (clean and one.may_time) or session.rider != rider or one.venue != venue or venue is None:
            continue
        if day is not None and session.date != day:
            break
        day = session.date
        found += clean
    return (statistics.median(found), str(day)) if found and day is not None else None


@functools.lru_cache(maxsize=64)
def pace_s(history: History, rider: str | None, venue: str | None) -> tuple[float, str] | None:
    """Seconds a lap by ridden time and counted laps, in the last such session here, and which; or None."""
    for one in reversed(history.past):
        session = one.session
        if venue is None or one.venue != venue or session.rider != rider:
            continue
        if session.ridden_time is not None and session.ridden_laps:
            return session.ridden_time.to("s") / session.ridden_laps, one.id
    return None
