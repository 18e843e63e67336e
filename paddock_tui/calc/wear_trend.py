"""When a part that wears comes to its limit, from four readings on, and never as a reassurance.

A robust line through the readings since the part was last renewed (Theil and Sen), with the interval of its
slope: the soonest end is what to plan by. Wear goes with weather, track and pace, and a line knows none of
them; a reading is worth more than every line. Fewer than four readings carry no interval, so no figure.
"""

import math
from collections.abc import Sequence

import attrs

from paddock_tui.calc.errors import Inconsistent, within
from paddock_tui.calc.regression import theil_sen
from paddock_tui.calc.wear import WearReading, since_renewed

LEAST_READINGS = 4

COVERS = 0.9
"""What the interval of four readings can cover at most, all pairs together."""


@attrs.frozen
class WearTrend:
    """Loss in mm a session with its interval, and in how many sessions the limit comes: soonest and latest.

    `latest_sessions` is None where the slowest wear that the readings allow never reaches it. `least_mm` is
    what the part may be at by now, at the fastest wear the readings allow.
    """

    mm_per_session: float
    fastest_mm: float
    slowest_mm: float
    soonest_sessions: int
    latest_sessions: int | None
    least_mm: float
    readings: int


def wear_trend(readings: Sequence[WearReading], limit_mm: float, sessions_now: float) -> WearTrend:
    """Return the trend of the parts that are fitted now.

    Raises Inconsistent with fewer than four readings, or where they allow no wear, or no interval.
    """
    limit = within("limit", limit_mm, 0.0, 30.0, "mm")
    for one in readings:
        within("sessions", one.sessions, 0.0, None)
        within("thickness", one.mm, 0.0, 30.0, "mm")
    fitted = since_renewed(sorted(readings, key=lambda one: one.sessions))
    if len(fitted) < LEAST_READINGS:
        raise Inconsistent("trend", f"{len(fitted)} readings of these parts, it takes {LEAST_READINGS}")
    line = theil_sen([one.sessions for one in fitted], [one.mm for one in fitted], COVERS)
    if line.low is None or line.high is None:
        raise Inconsistent("trend", "the readings carry no interval")
    if line.low >= 0.0:
        raise Inconsistent("trend", "no wear shows in the readings")
    last = fitted[-1]
    since = within("sessions since the last reading", sessions_now - last.sessions, 0.0, None)
    fastest, slowest = -line.low, -line.high
    left = last.mm - limit
    latest = _whole(left / slowest - since) if slowest > 0.0 else None
    return WearTrend(
        -line.slope,
        fastest,
        slowest,
        _whole(left / fastest - since),
        latest,
        max(last.mm - fastest * since, 0.0),
        len(fitted),
    )


def _whole(sessions: float) -> int:
    return max(math.floor(sessions + 1e-9), 0)
