"""Limits of rider sag."""

from paddock_tui.limits.core import Limit, limit

RULE = "rider-sag-out-of-its-window"
SOURCE = "suspension technicians' published windows, which differ by some mm; no single source"


def _mm(name: str, value: float, meaning: str) -> Limit:
    return limit(RULE, name, value, "mm", meaning, SOURCE, high=400.0)


def _percent(name: str, value: float, meaning: str) -> Limit:
    return limit(RULE, name, value, "%", meaning, SOURCE, high=100.0)


TRACK = (
    _mm("track_least", 20.0, "rider sag under this on a track is a caution"),
    _mm("track_most", 40.0, "rider sag over this on a track is a caution"),
)
ROAD = (
    _mm("road_least", 20.0, "rider sag under this on the road is a caution"),
    _mm("road_most", 40.0, "rider sag over this on the road is a caution"),
)
TRACK_LONG = (
    _percent("track_least_percent", 23.0, "the same in percent of long travel, on a track"),
    _percent("track_most_percent", 30.0, "the same in percent of long travel, on a track"),
)
ROAD_LONG = (
    _percent("road_least_percent", 28.0, "the same in percent of long travel, on the road"),
    _percent("road_most_percent", 35.0, "the same in percent of long travel, on the road"),
)
LONG_TRAVEL = _mm("long_travel", 150.0, "wheel travel over this is judged in percent")
OUTER = (
    _mm("serious_under", 15.0, "rider sag under this is serious"),
    _mm("serious_over", 50.0, "rider sag over this is serious, where travel is not long"),
)
AGREES = _mm("technician_within", 5.0, "a sag this near the technician's figure agrees with it")

FREE_RULE = "rear-free-sag-and-spring"
FREE_SOURCE = "suspension technicians' rule of thumb, unpublished"
FREE_LEAST = limit(
    FREE_RULE,
    "free_least",
    3.0,
    "mm",
    "rear free sag under this, rider sag right: soft",
    FREE_SOURCE,
    high=99.0,
)
FREE_MOST = limit(
    FREE_RULE,
    "free_most",
    20.0,
    "mm",
    "rear free sag over this, rider sag right: stiff",
    FREE_SOURCE,
    high=99.0,
)

RIDDEN_RULE = "sag-not-as-ridden-before"
RIDDEN_APART = limit(
    RIDDEN_RULE, "apart", 6.0, "mm", "rider sag so far from your last one is said", FREE_SOURCE, high=99.0
)

TRAVEL_RULE = "travel-used-up"
TRAVEL_LEFT = limit(
    TRAVEL_RULE, "left", 2.0, "mm", "travel left up to this is a caution", FREE_SOURCE, high=99.0
)
