"""Heat cycles of a tyre: from the air's temperature to working temperature and back, whatever its length.

A session is one cycle even if it was stopped early. Warmers that took the tyre over hot from the session
before keep that cycle going: nothing cooled. Common practice, no source.
"""

import datetime as dt
from collections.abc import Iterable
from typing import Final, NamedTuple

KEPT_WARM_MIN: Final = 15.0
"""Minutes from parking to the warmers within which a tyre is still warm. Common practice, no source."""


class Heating(NamedTuple):
    """One time that a tyre was ridden hot; times None where they are not known."""

    date: dt.date
    warmed: bool = False
    warmers_on: dt.time | None = None
    parked: dt.time | None = None


def heat_cycles(ridden: Iterable[Heating]) -> int:
    """Count the cycles of one tyre over what it was ridden, oldest first; where in doubt it is one more."""
    count = 0
    before: Heating | None = None
    for one in ridden:
        if before is None or not _kept_warm(before, one):
            count += 1
        before = one
    return count


def _kept_warm(before: Heating, after: Heating) -> bool:
    if not after.warmed or before.date != after.date or before.parked is None or after.warmers_on is None:
        return False
    return 0.0 <= _minutes(after.warmers_on) - _minutes(before.parked) <= KEPT_WARM_MIN


def _minutes(at: dt.time) -> float:
    return at.hour * 60.0 + at.minute + at.second / 60.0
