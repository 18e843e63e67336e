"""Limits of tyre pressure."""

from paddock_tui.limits.core import COMMON, limit

_LOW = "starting-pressure-too-low"

OFF_TARGET_CAUTION = limit(
    "hot-pressure-off-its-target", "caution_over", 0.14, "bar", "so far from the hot target", COMMON, 0.03, 1
)
OFF_TARGET_SERIOUS = limit(
    "hot-pressure-off-its-target", "serious_over", 0.34, "bar", "so far from the hot target", COMMON, 0.05, 2
)
UNDER_RANGE = limit(
    "tyre-worked-outside-its-range",
    "below",
    25.0,
    "C",
    "air in the tyre so far below its range",
    COMMON,
    5,
    60,
)
OVER_RANGE = limit(
    "tyre-worked-outside-its-range",
    "above",
    5.0,
    "C",
    "air in the tyre so far above its range",
    COMMON,
    0,
    40,
)
LEAK = limit("pressure-lost", "more_than", 0.14, "bar", "lost since the last check", COMMON, 0.05, 1)
AIR_DRIFT = limit(
    "pressure-lost",
    "air_drifts",
    10.0,
    "hPa",
    "so far the pressure outside may have drifted within a day",
    "paddock practice; 3.5 hPa in three hours is called quickly in marine forecasts",
    0.5,
    60,
)
AIR_WEATHER = limit(
    "pressure-lost",
    "weather_moves",
    30.0,
    "hPa",
    "so far the weather moves the pressure outside, from day to day and from that of the altitude",
    COMMON,
    0.5,
    90,
)
AIR_AT_ODDS = limit(
    "air-pressure-not-of-the-altitude",
    "more_than",
    50.0,
    "hPa",
    "a reading so far from what its altitude usually has is set aside",
    "paddock practice, unpublished; reduced to the sea the air is hardly ever outside 960 to 1060 hPa",
    20,
    150,
)
ROAD_FRONT = limit(
    "road-pressure-on-the-track", "front_from", 2.41, "bar", "cold at the front", COMMON, 1.5, 3.5
)
ROAD_REAR = limit(
    "road-pressure-on-the-track", "rear_from", 2.62, "bar", "cold at the rear", COMMON, 1.5, 3.5
)
BELOW_ROAD = limit(
    "road-home-at-track-pressure", "below", 0.2, "bar", "so far under the road figure", COMMON, 0.05, 1
)
START_FRONT = limit(
    _LOW,
    "front_under",
    1.7,
    "bar",
    "cold at the front, road and track-day tyres",
    COMMON,
    0.7,
    2.5,
)
START_REAR = limit(
    _LOW,
    "rear_under",
    1.5,
    "bar",
    "cold at the rear, road and track-day tyres",
    COMMON,
    0.7,
    2.5,
)
START_SERIOUS_MORE = limit(
    _LOW,
    "serious_more",
    0.3,
    "bar",
    "so much under it again is serious",
    COMMON,
    0.05,
    1,
)
START_OFF_PLAN = limit(
    "starting-pressure-off-the-plan", "more_than", 0.2, "bar", "read so far from the plan", COMMON, 0.05, 1
)
OUTSIDE_WINDOW = limit(
    "start-outside-the-vendors-window",
    "more_than",
    0.05,
    "bar",
    "outside the vendor's window",
    COMMON,
    0.0,
    1,
)
