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
    "mean help of traction, wheelie and front ABS under which they are thin together, off counting as none",
    COMMON,
    high=0.5,
)
FREED_WITHOUT_REAR_ABS = limit(
    "rear-without-abs-and-little-freed",
    "freed_below",
    0.50,
    "",
    "engine braking that frees the rear less than this counts as holding where the rear has no ABS",
    COMMON,
)
WET_FREED_SERIOUS = limit(
    "engine-braking-holds-in-the-wet",
    "serious_below",
    0.35,
    "",
    "engine braking that frees the rear less than this in the wet is serious",
    COMMON,
)
WET_FREED_CAUTION = limit(
    "engine-braking-holds-in-the-wet",
    "caution_below",
    0.55,
    "",
    "engine braking that frees the rear less than this in the wet is a caution",
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
