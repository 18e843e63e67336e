"""What was ridden up to now, and which day counts as today, as records of bikes and tyres are looked at."""

import datetime as dt

from paddock_tui.advice.about import About, History, PastSession
from paddock_tui.records.session import is_ridden


def so_far(about: About) -> History:
    """Return the sessions before the one in question, and that one too where it was ridden."""
    found: History | None = about.worked_out.get(so_far)
    if found is None:
        found = about.worked_out[so_far] = _so_far(about)
    return found


def _so_far(about: About) -> History:
    session, venue = about.situation.session, about.situation.venue
    if session is None or not is_ridden(session):
        return about.history
    length = venue.length.to("km") if venue is not None and venue.length is not None else None
    own = PastSession(about.id_of("session") or "", session, about.id_of("venue"), length)
    return about.history.and_then(own)


def day_of(about: About) -> dt.date:
    """Return the session's own day, so that ages read the same in any year; today where there is none."""
    return about.session.date or about.situation.now.date()


def until_words(about: About) -> str:
    """Say up to when was counted."""
    session = about.situation.session
    if session is None:
        return f"counted to {day_of(about)}"
    side = "with" if is_ridden(session) else "before"
    return f"counted to {side} session {about.id_of('session')}"


def counted_words(number: int, last: str) -> str:
    """Write over how many sessions was counted, and which was the last."""
    return count_words(number) + (f", the last {last}" if last else "")


def count_words(number: int, one: str = "session") -> str:
    """Write how many there are of what is called `one`."""
    return f"{number} {one}" if number == 1 else f"{number} {one}s"


__all__ = ["count_words", "day_of", "so_far", "until_words"]
