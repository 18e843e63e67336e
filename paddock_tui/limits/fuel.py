"""Limits of fuel."""

from paddock_tui.limits.core import COMMON, limit

_RULE = "fuel-short-at-the-flag"

HOLD_BELOW = limit(
    _RULE,
    "hold_below",
    0.0,
    "l",
    "less than this left at the flag counts as run out",
    COMMON,
    0,
    5,
)
RESERVE = limit(
    _RULE,
    "reserve",
    2.0,
    "l",
    "reserve at the flag where the rider sets none",
    COMMON,
    0,
    10,
)
SPARING = limit(
    _RULE,
    "sparing",
    0.85,
    "",
    "share of an entered rate at which running out is a hold all the same",
    COMMON,
    0.5,
    1.0,
)
RESERVE_SHARE = limit(_RULE, "share", 0.15, "", "reserve as a share of the litres needed", COMMON, 0, 0.5)
