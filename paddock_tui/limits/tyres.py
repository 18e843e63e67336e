"""Limits of tyres: track warmth, warmers, age and tread."""

from paddock_tui.limits.core import COMMON, limit

TREAD_SERIOUS = limit(
    "little-tread-for-the-road",
    "serious_below",
    1.0,
    "mm",
    "serious below this tread; a hold once you enter what the law asks",
    COMMON,
    0.5,
    4,
)
TREAD_CAUTION = limit(
    "little-tread-for-the-road",
    "caution_below",
    1.6,
    "mm",
    "caution below this tread",
    COMMON,
    0.5,
    4,
)
OLD = limit("tyre-old", "years", 5.0, "years", "age from which a tyre counts as old", COMMON, 1, 15)
SOON_OLD = limit("tyre-old", "race_years", 3.0, "years", "age for slicks and rain tyres", COMMON, 1, 15)
COLD_TRACK = limit(
    "race-tyres-without-heat", "cold_below", 15.0, "C", "a track under this is cold", COMMON, 5, 30
)
WARM_TRACK = limit(
    "race-tyres-without-heat",
    "warm_over",
    20.0,
    "C",
    "a track over this is warm for race treads",
    COMMON,
    10,
    40,
)
SOAK = limit(
    "warmers-on-too-short",
    "least",
    45.0,
    "min",
    "time on the warmers until the carcass is hot",
    COMMON,
    10,
    120,
)
OFF_WARMERS = limit(
    "off-the-warmers-too-long", "most", 3.0, "min", "from the warmers to the track", COMMON, 1, 30
)
ROAD_WARMER = limit("warmers-too-hot", "road_over", 60.0, "C", "too hot for a road tyre", COMMON, 40, 100)
ANY_WARMER = limit("warmers-too-hot", "any_over", 95.0, "C", "too hot for any tyre", COMMON, 70, 120)
