"""Limits of clutch, gearbox and engine."""

from paddock_tui.limits.core import COMMON, limit

FALSE_NEUTRALS = limit(
    "quick-downshift-with-false-neutrals",
    "false_neutrals",
    2,
    "",
    "false neutrals from which shifting down without the clutch is serious",
    COMMON,
    low=1,
    high=20,
)
STARTS_IN_A_ROW = limit(
    "starts-too-close-together",
    "starts",
    3,
    "",
    "hard starts inside ten minutes from which a clutch needs to cool",
    COMMON,
    low=2,
    high=20,
)
STRONG_BIKE = limit(
    "wheelie-off-on-a-strong-bike",
    "power_above",
    89.5,
    "kW",
    "peak power above which wheelie control off is a caution below the advanced group (120 hp)",
    COMMON,
    low=20.0,
    high=300.0,
)
