"""Limits of the next change: what keeps it back, how far it goes, and when an outing tells something.

What matters, the change log and last time read of the same outings is asked of these too.
"""

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
    NEXT_CHANGE,
    "gauge_errs",
    0.05,
    "bar",
    "a hot reading no further off its target speaks for no change by itself",
    COMMON,
    0.0,
    0.2,
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
LIKE_TRACK = limit(
    NEXT_CHANGE,
    "like_track",
    8.0,
    "C",
    "track temperatures no further apart count as the same: last time, the change log, what a step did",
    COMMON,
    1,
    30,
)
NEAR_TARGET = limit(
    NEXT_CHANGE,
    "near_target",
    0.03,
    "bar",
    "a hot reading no further off its target is on it, whatever was felt",
    COMMON,
    0.0,
    0.2,
)
START_STEP = limit(
    NEXT_CHANGE,
    "start_step",
    0.02,
    "bar",
    "a starting pressure is moved by no less: so far a gauge is read",
    COMMON,
    0.005,
    0.1,
)
HOT_LAPS = limit(NEXT_CHANGE, "laps_until_hot", 3, "", "laps after which the tyres are hot", COMMON, 1, 20)
TELLING_LAPS = limit(
    NEXT_CHANGE, "laps_that_tell", 3, "", "laps after which an outing tells what the bike does", COMMON, 1, 20
)
TELLING_MINUTES = limit(
    NEXT_CHANGE, "minutes_that_tell", 10, "min", "the same in ridden time, where it is known", COMMON, 2, 60
)
