"""Cases of the rules about the swap for the weather: a dry set-up in the wet, a wet one in the dry."""

from typing import Any

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.cases.aids import DAMP, DRYING, NOVICE, WET
from tests.rules.cases.before import RIDDEN, copied, ridden
from tests.rules.cases.method import turned
from tests.rules.situations import Change, at, put, without

STANDING = put("session", "surface", "standing water")
AUTOMATIC = put("session", "setup.damping", "automatic")
ROAD = put("session", "kind", "road")
SHOWERS = put("session", "setup.mode", "showers")
SOFT = at("throttle", "soft")
OPENED = turned("front-rebound", 15)
WET_AIDS: tuple[Change, ...] = (SHOWERS, SOFT, at("traction", 8), at("wheelie", 5), at("engine-braking", 4))
"""Aids that are as wet as the package for an intermediate rider on a wet track, on the usual bike."""

MODELESS = put("bike", "modes", {"open": {"use": "any"}})


def from_dry(*changes: Change, bike: tuple[Change, ...] = ()) -> dict[str, Any]:
    """Give a dry session that this one was copied from."""
    return copied(*changes, bike=bike)


def after_the_wet(*changes: Change) -> dict[str, Any]:
    """Give a wet session with these values that this one was copied from, and a dry one before that."""
    return copied(WET, *changes)


WETTER = ridden({"surface": "wet"})

UNCOUNTED = without("bike", "adjusters.front-rebound.counted_from")

CASES = {
    "dry-set-up-in-the-wet": Cases(
        raising=(
            raises("wet-package", "caution", WET, says="Dry damping for a wet track", **from_dry()),
            raises("wet-package", "caution", STANDING, says="for standing water", **from_dry()),
            raises(
                "wet-package", "caution", WET, *WET_AIDS, says="front rebound 12 clicks out.", **from_dry()
            ),
            # One click is not two; and what was ridden in the dry before serves as well as a copy.
            raises("wet-package", "caution", WET, *WET_AIDS, turned("front-rebound", 13), **from_dry()),
            raises("wet-package", "caution", WET, *WET_AIDS, **ridden({})),
            # What would tell how damping stands is not written down: it may stand as in the dry.
            raises(
                "wet-package", "caution", WET, *WET_AIDS, UNCOUNTED, says="may be as in the dry", **ridden({})
            ),
            raises(
                "wet-package",
                "caution",
                WET,
                *WET_AIDS,
                without("session", "setup.adjusters.front-rebound"),
                **ridden({}),
            ),
            raises("wet-package", "note", WET, *WET_AIDS, NOVICE, at("traction", 10), **from_dry()),
            raises("wet-package", "note", DAMP, says="Dry damping for a damp track", **from_dry()),
            raises("wet-package", "note", DRYING, **from_dry()),
            raises("wet-package", "note", WET, AUTOMATIC, says="Not fully set for the wet", **from_dry()),
            # Without a dry session on record no count is a dry one: what is left are the aids.
            raises("wet-package", "note", WET, says="riding mode, throttle response and 1 more", **WETTER),
            raises("wet-package", "note", WET, *WET_AIDS, at("engine-braking", 3), says="braking", **WETTER),
            # One step more help for a rider who is new to the bike.
            raises("wet-package", "note", WET, *WET_AIDS, says="traction"),
            raises("wet-package", "note", WET, *WET_AIDS, put("session", "setup.mode", "open"), says="mode"),
            raises(
                "wet-package",
                "note",
                WET,
                *WET_AIDS,
                put("bike", "controls.launch", {"kind": "state", "choices": ["off", "armed"]}),
                at("launch", "armed"),
                says="launch",
                **WETTER,
            ),
        ),
        silent=(
            silent(**from_dry()),
            silent(WET, *WET_AIDS, **WETTER),
            silent(WET, *WET_AIDS, AUTOMATIC, **from_dry()),
            silent(WET, *WET_AIDS, turned("front-rebound", 14), **from_dry()),
            silent(WET, *WET_AIDS, turned("front-rebound", 15), **from_dry()),
            silent(WET, *WET_AIDS, turned("front-rebound", 20), at("engine-braking", 5), **from_dry()),
            silent(DAMP, *WET_AIDS, turned("front-rebound", 14), **from_dry()),
            silent(WET, *WET_AIDS, turned("front-rebound", 21), **from_dry(turned("front-rebound", 21))),
            silent(WET, RIDDEN, **from_dry()),
            silent(WET, ROAD, **from_dry()),
        ),
        missing=(
            lacks("the surface", without("session", "surface")),
            lacks("the rider's group", WET, without("rider", "group")),
            lacks("the kind of the rear tyre", WET, without("tyres", "rear.kind")),
            lacks("the tyre set", WET, without("tyres")),
        ),
    ),
    "wet-set-up-in-the-dry": Cases(
        raising=(
            raises("wet-package", "note", SHOWERS, says="riding mode showers"),
            raises("wet-package", "note", SHOWERS, SOFT, **ridden({})),
            raises(
                "wet-package",
                "note",
                SOFT,
                says="throttle response soft, in the dry even",
                **after_the_wet(SOFT),
            ),
            raises(
                "wet-package",
                "note",
                OPENED,
                says="front rebound 15, in the dry 12",
                **after_the_wet(OPENED),
            ),
        ),
        silent=(
            silent(),
            silent(SOFT),
            # A soft map is anybody's choice in the dry: so in the dry before, or not so in the wet.
            silent(SOFT, **from_dry(SOFT)),
            silent(SOFT, **from_dry()),
            silent(SOFT, **after_the_wet(at("throttle", "sharp"))),
            silent(SOFT, **{**after_the_wet(SOFT), **ridden({"setup.controls.throttle": "soft"})}),
            silent(OPENED, **from_dry()),
            silent(OPENED, AUTOMATIC, **after_the_wet(OPENED)),
            # Who rides in the mode for the wet on dry tracks as well has not left it in.
            silent(SHOWERS, **ridden({"setup.mode": "showers"})),
            silent(WET, SHOWERS),
            silent(SHOWERS, ROAD),
            silent(SHOWERS, RIDDEN),
        ),
        missing=(lacks("the surface", SHOWERS, without("session", "surface")),),
    ),
}
