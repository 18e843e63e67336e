"""Times of day as moments: what goes on after midnight is of the next date, and minutes are real minutes."""

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping
from typing import Any, TypeVar

SlotLine = TypeVar("SlotLine")

NIGHT = dt.timedelta(hours=12)
"""So far from now a time of the day before, or of the day after, may be meant."""


def after(earlier: dt.datetime, time: dt.time) -> dt.datetime:
    """Return the first moment at or after another one at which a clock shows a time."""
    found = dt.datetime.combine(earlier.date(), time)
    return found if found >= earlier else found + dt.timedelta(days=1)


def before(later: dt.datetime, time: dt.time) -> dt.datetime:
    """Return the last moment at or before another one at which a clock shows a time."""
    found = dt.datetime.combine(later.date(), time)
    return found if found <= later else found - dt.timedelta(days=1)


def in_order(
    date: dt.date, lines: Iterable[tuple[dt.time, SlotLine]]
) -> Iterator[tuple[dt.datetime, SlotLine]]:
    """Give the lines of a timetable as moments: one that is half a day earlier than the one before is of
    the next date.
    """
    day, last = date, None
    for time, line in lines:
        found = dt.datetime.combine(day, time)
        if last is not None and last - found > NIGHT:
            day += dt.timedelta(days=1)
            found += dt.timedelta(days=1)
        yield found, line
        last = found


def over_midnight(data: Mapping[str, Any], now: dt.datetime) -> bool:
    """Return whether a session of the day before is still out, or came back within the last hours."""
    date, went, parked = (data.get(key) for key in ("date", "went_out", "parked"))
    if date != now.date() - dt.timedelta(days=1) or not isinstance(went, dt.time):
        return False
    since = dt.datetime.combine(date, went)
    if isinstance(parked, dt.time):
        since, least = after(since, parked), NIGHT / 4
    else:
        least = NIGHT
    return dt.timedelta() <= now - since <= least


def minutes_to(then: dt.datetime, now: dt.datetime) -> int:
    """Count whole minutes from now to a moment of the same clock, below zero since.

    Both are told in the time of this computer, so that an hour that summer time takes or gives counts as it
    passes. What is left of the last minute is not counted.
    """
    span = then.astimezone(dt.UTC) - now.astimezone(dt.UTC)
    return int(span.total_seconds() // 60)
