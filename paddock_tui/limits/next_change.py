"""Limits of the next change: what keeps it back, and how far it goes."""

from typing import Final

from paddock_tui.limits.core import COMMON, limit

NEXT_CHANGE: Final = "next-change"
"""No rule: what is proposed after a session asks these."""

LITTLE_USED = limit(
    NEXT_CHANGE,
    "travel_used_under",
    0.75,
    "",
    "share of the fork's travel under which it used little",
    COMMON,
)
READ_OVER = limit(
    NEXT_CHANGE,
    "travel_read_over",
    0.05,
    "",
    "share of the travel by which a marker may read over it: play, and a ratio that is a mean",
    COMMON,
    high=0.3,
)
KEPT_FREE = limit(
    NEXT_CHANGE,
    "preload_kept_free",
    0.05,
    "",
    "share of a preload adjuster's range left at each end",
    COMMON,
    high=0.4,
)
FEW_SESSIONS = limit(
    NEXT_CHANGE,
    "sessions_to_learn",
    2,
    "",
    "first sessions on a bike, and at a venue, that are for learning it",
    COMMON,
    high=20,
)
GAUGE_ERRS = limit(
    NEXT_CHANGE, "gauge_errs", 0.05, "bar", "so far off its target a hot reading is on it", COMMON, 0.0, 0.2
)
FEWEST_LEFT = limit(
    NEXT_CHANGE,
    "outings_left",
    3,
    "",
    "with fewer outings left none goes into settling what a change did",
    COMMON,
    1,
    20,
)
FAILED_TWICE = limit(
    NEXT_CHANGE,
    "times_failed",
    2,
    "",
    "so often without a gain on such tyres, springs and surface, and it is not offered",
    COMMON,
    1,
    10,
)
