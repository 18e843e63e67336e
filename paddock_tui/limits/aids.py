"""Limits of ABS, wheelie, engine braking and maps, and of all aids together."""

from paddock_tui.limits.core import COMMON, limit

NEAR_LEAST = limit(
    "all-aids-near-least",
    "near_least",
    0.25,
    "",
    "help at or under which an aid counts as near its least",
    COMMON,
)
THIN_TOGETHER = limit(
    "nets-thin-together",
    "mean_below",
    0.35,
    "",
    "mean help of traction, wheelie control and front ABS under which they are low together; off is none",
    COMMON,
    high=0.5,
)
FREED_WITHOUT_REAR_ABS = limit(
    "rear-without-abs-and-little-freed",
    "freed_below",
    0.50,
    "",
    "engine braking under this is strong where the rear has no ABS (0 strongest, 1 weakest)",
    COMMON,
)
WET_FREED_SERIOUS = limit(
    "engine-braking-holds-in-the-wet",
    "serious_below",
    0.35,
    "",
    "engine braking under this in the wet is serious (0 strongest, 1 weakest)",
    COMMON,
)
WET_FREED_CAUTION = limit(
    "engine-braking-holds-in-the-wet",
    "caution_below",
    0.55,
    "",
    "engine braking under this in the wet is a caution (0 strongest, 1 weakest)",
    COMMON,
)
WET_SOFTENING = limit(
    "sharp-map-in-the-wet",
    "caution_below",
    0.25,
    "",
    "softening of throttle or power under this in the wet is a caution, for a novice serious",
    COMMON,
)
