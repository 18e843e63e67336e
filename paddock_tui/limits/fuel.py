"""Limits of fuel."""

from paddock_tui.limits.core import COMMON, limit

_RULE = "fuel-short-at-the-flag"

HOLD_BELOW = limit(
    _RULE,
    "hold_below",
    1.0,
    "l",
    "hold below this left at the flag, on a learnt rate",
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
RESERVE_SHARE = limit(_RULE, "share", 0.15, "", "reserve as a share of the litres needed", COMMON, 0, 0.5)
