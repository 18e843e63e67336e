"""Limits of traction control: by surface, rider and rear tyre."""

from paddock_tui.limits.core import COMMON, limit

WET_SERIOUS = limit(
    "little-traction-help-in-the-wet",
    "serious_below",
    0.35,
    "",
    "traction control under this in the wet is serious",
    COMMON,
)
WET_CAUTION = limit(
    "little-traction-help-in-the-wet",
    "caution_below",
    0.50,
    "",
    "traction control under this in the wet is a caution",
    COMMON,
)
WET_NOVICE = limit(
    "little-traction-help-in-the-wet",
    "novice_below",
    0.60,
    "",
    "a novice's traction control under this in the wet is serious",
    COMMON,
)
DAMP_CAUTION = limit(
    "little-traction-help-in-the-damp",
    "caution_below",
    0.35,
    "",
    "traction control under this in the damp is a caution",
    COMMON,
)
DAMP_NOVICE = limit(
    "little-traction-help-in-the-damp",
    "novice_below",
    0.60,
    "",
    "a novice's traction control under this in the damp is a caution",
    COMMON,
)
NOVICE_SERIOUS = limit(
    "little-traction-help-for-a-novice",
    "serious_below",
    0.40,
    "",
    "a novice's traction control under this in the dry is serious",
    COMMON,
)
NOVICE_CAUTION = limit(
    "little-traction-help-for-a-novice",
    "caution_below",
    0.55,
    "",
    "a novice's traction control under this in the dry is a caution",
    COMMON,
)
POOR_REAR = limit(
    "little-traction-help-on-a-poor-rear-tyre",
    "caution_below",
    0.35,
    "",
    "traction control under this on a cold, new or worn rear tyre is a caution",
    COMMON,
)
