"""Wear from readings: how much a session takes, and how many sessions are left to a least thickness."""

import itertools
import operator
import statistics
from collections import Counter
from collections.abc import Iterable, Sequence
from typing import Final

import attrs

from paddock_tui.calc.errors import within

RENEWED_MM: Final = 0.5
"""A reading that is thicker than the last by more than this was taken of new parts. Common practice."""


@attrs.frozen
class WearReading:
    """A thickness in mm after so many sessions."""

    sessions: float
    mm: float


@attrs.frozen
class Wear:
    """Loss in mm a session, the last reading, and how many readings of these parts there are."""

    mm_per_session: float
    last: WearReading
    readings: int


def wear(readings: Sequence[WearReading]) -> Wear | None:
    """Return rate of wear of the parts that are fitted now; None with fewer than two readings or no loss.

    The rate is the median slope of all pairs of readings (Theil and Sen), so that one misread gauge does not
    carry it; it starts anew where a reading is thicker than the one before by more than half a millimetre.
    """
    # There may be as many as there were sessions, of few thicknesses: each of these is looked at once.
    for one in readings:
        within("sessions", one.sessions, 0.0, None)
    for mm in dict.fromkeys([one.mm for one in readings]):
        within("thickness", mm, 0.0, 30.0, "mm")
    fitted = since_renewed(sorted(readings, key=operator.attrgetter("sessions")))
    if _mostly_alike(fitted):
        # All pairs of so many are not gone through for nothing.
        return None
    slopes = [
        (first.mm - second.mm) / (second.sessions - first.sessions)
        for first, second in itertools.combinations(fitted, 2)
        if second.sessions > first.sessions
    ]
    rate = statistics.median(slopes) if slopes else 0.0
    return Wear(rate, fitted[-1], len(fitted)) if rate > 0.0 else None


def _mostly_alike(readings: Sequence[WearReading]) -> bool:
    """Return whether most pairs of readings that are sessions apart tell no loss: then the median is none."""
    apart = len(readings) * (len(readings) - 1) // 2 - _pairs([one.sessions for one in readings])
    alike = _pairs([one.mm for one in readings]) - _pairs([(one.sessions, one.mm) for one in readings])
    return 2 * alike > apart


def _pairs(of: Iterable[object]) -> int:
    """Return how many pairs of these are the same."""
    return sum([count * (count - 1) // 2 for count in Counter(of).values()])


def since_renewed(readings: Sequence[WearReading]) -> tuple[WearReading, ...]:
    """Return the readings, oldest first, that were taken since the parts were last renewed."""
    start = 0
    for place in range(1, len(readings)):
        if readings[place].mm - readings[place - 1].mm > RENEWED_MM:
            start = place
    return tuple(readings[start:])
