"""A clock that was set to another time, so that a garage is seen as on another day."""

import datetime as dt
from collections.abc import Callable

import attrs


@attrs.frozen
class SetClock:
    """A clock that was set to another time, and goes on from there."""

    ahead: dt.timedelta

    def __call__(self) -> dt.datetime:
        """Return the time that it is by this clock."""
        return dt.datetime.now() + self.ahead


def set_date(now: Callable[[], dt.datetime]) -> dt.date | None:
    """Return the date of a clock that was set to another day; None of one that shows today."""
    if not isinstance(now, SetClock):
        return None
    date = now().date()
    return date if date != dt.date.today() else None
