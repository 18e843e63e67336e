"""Limits of the rider: fatigue, falls, another rider's weight."""

from paddock_tui.limits.core import COMMON, limit

OTHER_RIDERS_WEIGHT = limit(
    "set-up-of-another-rider",
    "weight",
    10,
    "kg",
    "difference in weight over which another rider's set-up does not fit",
    COMMON,
    high=150,
)
FALLS_IN_A_DAY = limit(
    "two-falls-in-a-day", "falls", 2, "", "falls of one's own in a day", "a club's rule", low=1, high=5
)
SPENT = limit(
    "rider-spent",
    "fatigue",
    4,
    "",
    "serious from this fatigue on, 1 fresh to 5 exhausted",
    "paddock practice",
    2,
    5,
)
