"""Limits of what stays open: slack, heights, wear, air lost, help lowered, a bike that stood."""

from paddock_tui.limits.core import COMMON, limit

SLACK_UNDER_HOLD = limit(
    "chain-slack-outside-the-book", "hold_under", 5, "mm", "so far under the book is a hold", COMMON, 1, 20
)
SLACK_OVER = limit(
    "chain-slack-outside-the-book", "over", 10, "mm", "so far over the book is serious", COMMON, 2, 40
)
HEIGHT_CAUTION = limit(
    "height-never-ridden",
    "caution_up_to",
    2,
    "mm",
    "past the last height by so little: a caution",
    COMMON,
    0,
    10,
)
STOOD_DAYS = limit(
    "bike-stood-or-workshop", "days", 90, "", "days without a ride after which it stood", COMMON, 14, 730
)
SETTLED = limit(
    "pressure-lost-unanswered", "settled", 0.05, "bar", "two checks within this have settled", COMMON, 0.02, 1
)
LOST_HOLD = limit(
    "pressure-lost-unanswered", "hold_from", 0.30, "bar", "lost at once, from which it holds", COMMON, 0.1, 1
)
WEAR_CLOSE = limit("wear-near-its-limit", "within", 1.0, "mm", "so near to its limit", COMMON, 0.2, 3)
READING_OLD = limit(
    "wear-reading-old", "outings", 8, "", "track outings since, after which a reading is old", COMMON, 2, 40
)
HELP_LEVELS = limit("help-lowered", "levels", 2, "", "levels lowered at once, from", COMMON, 1, 10)
HELP_SHARE = limit("help-lowered", "share", 0.2, "", "share of the range lowered, from", COMMON, 0.05, 1)
RUN_OFFS = limit("run-offs-in-a-day", "times", 3, "", "times off the track in a day", COMMON, 2, 10)
LITTLE_SLEEP = limit("slept-little", "hours", 5, "h", "sleep under this is said", COMMON, 2, 9)
