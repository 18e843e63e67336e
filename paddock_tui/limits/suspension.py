"""Limits of damping, and of the size of one step."""

from paddock_tui.limits.core import COMMON, limit

END_OF_RANGE = limit(
    "damping-near-its-end",
    "share",
    0.1,
    "",
    "share of a range, one click at least, that counts as the end of it",
    COMMON,
    high=0.4,
)
DAMPER_CLOSED = limit(
    "steering-damper-nearly-closed",
    "clicks",
    2,
    "",
    "clicks open up to which a steering damper counts as nearly closed",
    COMMON,
    high=20,
)
STEP_CLICKS = limit(
    "step-too-large", "clicks", 4, "", "clicks of damping above which a step is large", COMMON, high=50
)
STEP_DAMPING_TURNS = limit(
    "step-too-large",
    "damping_turns",
    0.5,
    "",
    "turns of a damping screw without clicks above which a step is large",
    COMMON,
    high=10,
)
STEP_SHARE = limit(
    "step-too-large", "share", 0.2, "", "share of the range that a large step of damping also exceeds", COMMON
)
STEP_PRELOAD_TURNS = limit(
    "step-too-large", "preload_turns", 2, "", "turns of preload above which a step is large", COMMON, high=20
)
STEP_HEIGHT = limit(
    "height-step-too-large",
    "height",
    5,
    "mm",
    "height of fork or rear above which a step is large",
    COMMON,
    high=50,
)
