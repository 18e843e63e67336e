"""Heat cycles of a tyre: from the air's temperature to working temperature and back, whatever its length.

A session is one cycle even if it was stopped early. Warmers that took the tyre over hot from the session
before keep that cycle going: nothing cooled. Common practice, no source.
"""

import datetime as dt
from typing import Final, NamedTuple

KEPT_WARM_MIN: Final = 15.0
"""Minutes from parking to the warmers within which a tyre is still warm. Common practice, no source."""


class Heating(NamedTuple):
    """One time that a tyre was ridden hot; times None where they are not known."""

    date: dt.date
    warmed: bool = False
    warmers_on: dt.time | None = None
    parked: dt.time | None = None


class HeatCycles(NamedTuple):
    """Cycles of one tyre so far, and the day of its last ride and when it was parked after it."""

    cycles: int = 0
    date: dt.date | None = None
    parked: dt.time | None = None

    def after(self, one: Heating) -> "HeatCycles":
        """Return them with the ride that came next; where in doubt it is one cycle more."""
        return HeatCycles(self.cycles + (not self._kept_warm(one)), one.date, one.parked)

    def _kept_warm(self, one: Heating) -> bool:
        if not one.warmed or self.date != one.date or self.parked is None or one.warmers_on is None:
            return False
        return 0.0 <= _minutes(one.warmers_on) - _minutes(self.parked) <= KEPT_WARM_MIN


def _minutes(at: dt.time) -> float:
    return at.hour * 60.0 + at.minute + at.second / 60.0
