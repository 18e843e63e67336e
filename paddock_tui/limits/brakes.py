"""Limits of pads and fluid."""

from paddock_tui.limits.core import limit

LEAST_PAD = limit(
    "pads-below-the-least",
    "millimetres",
    1.5,
    "mm",
    "least brake pad thickness where the organiser posts none",
    "common among organisers",
    low=0.5,
    high=5,
)
FLUID_MONTHS = limit(
    "brake-fluid-old",
    "months",
    12,
    "months",
    "age of brake fluid where the bike's file gives no interval",
    "fluid makers' and organisers' lists: yearly at least",
    low=1,
    high=60,
)
