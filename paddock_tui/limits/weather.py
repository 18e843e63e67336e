"""Limits of weather: frost, cold, and a change of it."""

from paddock_tui.limits.core import COMMON, limit

FROST = limit("frost-near", "below", 3.0, "C", "frost is near at and below this", COMMON, -10, 10)
HEATERS_LIT = limit(
    "fumes-in-a-closed-space", "below", 8.0, "C", "heaters are lit at and below this", COMMON, -10, 20
)
MOVED_SINCE_SET = limit(
    "weather-moved-since-set",
    "more_than",
    8.0,
    "K",
    "change of the air since the pressures were set",
    COMMON,
    2,
    30,
)
DUSK_SUMMER = limit(
    "dusk-on-the-road", "summer", 20.0, "h", "hour of dusk, April to September", COMMON, 0, 24
)
DUSK_WINTER = limit("dusk-on-the-road", "winter", 17.0, "h", "hour of dusk, October to March", COMMON, 0, 24)
