"""Limits of noise."""

from paddock_tui.limits.core import limit

NEAR_LIMIT = limit(
    "noise-near-the-limit",
    "within",
    2,
    "dB(A)",
    "so near under the posted limit is a caution",
    "paddock practice, unpublished",
    low=0,
    high=10,
)
