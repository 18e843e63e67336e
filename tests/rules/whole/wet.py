"""Whole situations of the wet: dry set-ups on all kinds of bikes, wet ones, and the way back."""

from typing import Any

from tests.rules.cases.aids import DAMP, DRYING, NOVICE, WET
from tests.rules.cases.method import LEGS, both_legs, turned
from tests.rules.cases.nets import ADVANCED
from tests.rules.cases.wet import AUTOMATIC, MODELESS, SHOWERS, SOFT, STANDING, WET_AIDS, from_dry
from tests.rules.situations import Change, at, counts_down, put
from tests.rules.whole.aids import BARE
from tests.rules.whole.situation import Whole, whole

DRY_DAMPING = ("dry-set-up-in-the-wet", "wet-package", "caution")

FROM_OPEN = put("bike", "adjusters.front-rebound.counted_from", "open")

COUNTED_LEGS = tuple(
    put("bike", f"adjusters.front-rebound-{leg}.counted_from", "closed") for leg in ("left", "right")
)

FEW: dict[str, Any] = {
    "traction": {"kind": "level", "levels": [1, 3], "most_help": 3, "off": True},
    "abs": {"kind": "choice", "choices": ["off", "track", "road"], "most_help": "road"},
    "engine-braking": {"kind": "level", "levels": [1, 2], "frees_most": 1},
    "pit-limiter": {"kind": "speed", "speeds": ["60 km/h"], "off": True},
}
FEW_LEVELS: tuple[Change, ...] = (
    put("bike", "controls", FEW),
    MODELESS,
    put(
        "session",
        "setup.controls",
        {"traction": 3, "abs": "road", "engine-braking": 1, "pit-limiter": "60 km/h"},
    ),
)

SITUATIONS: list[Whole] = [
    whole("it starts to rain on a dry set-up", {DRY_DAMPING}, WET, **from_dry()),
    whole("the package is taken", set(), WET, *WET_AIDS, turned("front-rebound", 15), **from_dry()),
    whole(
        "a dry set-up on a bike that counts down, rebound counted from open",
        {DRY_DAMPING},
        *counts_down(WET, FROM_OPEN, turned("front-rebound", 13)),
        **from_dry(),
    ),
    whole(
        "the same opened: fewer clicks in",
        set(),
        *counts_down(WET, FROM_OPEN, turned("front-rebound", 9)),
        **from_dry(),
    ),
    whole(
        "opened the wrong way round",
        {DRY_DAMPING},
        *counts_down(WET, FROM_OPEN, turned("front-rebound", 15)),
        **from_dry(),
    ),
    whole("dry damping on a bike with few levels", {DRY_DAMPING}, *FEW_LEVELS, WET, **from_dry()),
    whole("semi-active damping needs nobody's hand", set(), WET, AUTOMATIC, **from_dry()),
    whole("the wet mode is on, damping is not", {DRY_DAMPING}, WET, SHOWERS, SOFT, **from_dry()),
    whole("a bike without anything to set, in the rain", set(), *BARE, WET, going_out=True),
    whole(
        "a novice on a dry set-up with all the help",
        set(),
        WET,
        NOVICE,
        *WET_AIDS,
        at("traction", 10),
        **from_dry(),
    ),
    whole(
        "already wet, and wetter than the package",
        set(),
        WET,
        *WET_AIDS,
        turned("front-rebound", 18),
        **from_dry(),
    ),
    whole("a dry set-up on a drying track", set(), DRYING, **from_dry()),
    whole("a dry set-up on a damp track, advanced", set(), DAMP, ADVANCED, **from_dry()),
    whole(
        "standing water on a dry set-up",
        {DRY_DAMPING, ("standing-water", "surface", "serious")},
        STANDING,
        **from_dry(),
    ),
    whole(
        "both legs in turns stand as in the dry",
        {DRY_DAMPING},
        WET,
        *LEGS,
        *COUNTED_LEGS,
        *both_legs(1.5),
        **from_dry(*both_legs(1.5), bike=LEGS),
    ),
    whole("the wet mode on a track that is dry again", set(), SHOWERS, SOFT, **from_dry()),
]
