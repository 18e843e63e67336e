"""Cases of the rules about how much the aids help: for a novice, on a poor rear tyre, all together, maps."""

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.cases.aids import (
    DAMP,
    NO_END,
    NO_GROUP,
    NO_SURFACE,
    NO_VALUE,
    NOVICE,
    OFF_IS_A_LEVEL,
    ONE_SWITCH,
    THREE_LEVELS,
    WET,
    all_at,
    traction,
)
from tests.rules.cases.before import ridden
from tests.rules.situations import Change, at, counts_down, put, without

ADVANCED = put("rider", "group", "advanced")
RACE = put("rider", "group", "race")
COLD = put("session", "track", "9 C")
COLD_WORD = put("session", "track", "cold")
NO_TRACK = without("session", "track")
WARMERS = put("session", "warmers", "used")
NEW = put("tyres", "rear.scrubbed", False)
WORN = put("tyres", "rear.worn_at", "1.6 mm")
SLIDE = put("bike", "controls.slip-angle", {"function": "slide", "kind": "switch"})
POWER = put("bike", "controls.power", {"kind": "level", "levels": [1, 3], "most_help": 1})
SOFT_ONLY = put(
    "bike", "controls.throttle", {"kind": "choice", "choices": ["full", "soft"], "most_help": "soft"}
)


def tread(mm: str) -> tuple[Change, Change]:
    """Measure the rear tread where it is thinnest."""
    return put("tyres", "rear.tread_middle", mm), put("tyres", "rear.tread_left", "3.0 mm")


CASES = {
    "little-traction-help-for-a-novice": Cases(
        raising=(
            raises("traction", "serious", NOVICE, traction(3), says="for a novice: 3 (range 0-10)."),
            raises("traction", "caution", NOVICE, traction(5)),
            raises(
                "traction", "serious", NOVICE, traction("off"), says="Traction control is off for a novice."
            ),
            raises("traction", "serious", *counts_down(NOVICE, traction(8)), says="8 (11 = least, 1 = most)"),
            raises("traction", "serious", THREE_LEVELS, NOVICE, traction(1)),
            raises("traction", "serious", OFF_IS_A_LEVEL, NOVICE, traction(0)),
            raises("slip-angle", "serious", NOVICE, SLIDE, at("slip-angle", "off")),
            # What is serious in the dry is no less so in the damp.
            raises("traction", "serious", NOVICE, DAMP, traction("off")),
        ),
        silent=(
            silent(NOVICE, traction(6)),
            silent(traction("off")),
            silent(NOVICE, WET, traction(0)),
            silent(NOVICE, DAMP, traction(5)),
            silent(ONE_SWITCH, NOVICE, traction("on")),
            silent(NOVICE, without("bike", "controls.traction"), NO_VALUE),
            silent(*counts_down(NOVICE, traction(5))),
        ),
        missing=(
            lacks("the rider's group", traction(0), NO_GROUP),
            lacks("the surface", NOVICE, traction(0), NO_SURFACE),
            lacks("what traction control is set to", NOVICE, NO_VALUE),
            lacks("which end of traction control helps most", NOVICE, NO_END),
        ),
    ),
    "little-traction-help-on-a-poor-rear-tyre": Cases(
        raising=(
            raises("traction", "caution", NEW, traction(3), says="on a new rear tyre: 3 (range 0-10)."),
            raises("traction", "caution", COLD, ADVANCED, traction("off"), says="on a cold rear tyre: off."),
            raises("traction", "caution", COLD_WORD, RACE, traction(2)),
            raises("traction", "caution", WORN, *tread("1.6 mm"), traction(0), says="a worn rear tyre"),
            raises("traction", "caution", put("session", "look.rear.seen", ["flat centre"]), traction(1)),
            raises(
                "traction",
                "caution",
                traction(1),
                **ridden({"look.rear.seen": ["cord", "fine balls"]}),
            ),
            raises(
                "traction", "caution", *counts_down(NEW, COLD, traction(9)), says="a cold and new rear tyre"
            ),
        ),
        silent=(
            silent(ADVANCED, traction(0)),
            silent(NEW, traction(4)),
            silent(COLD, WARMERS, traction(0)),
            silent(NEW, DAMP, traction(0)),
            silent(NEW, NOVICE, traction(3)),
            silent(NEW, traction(3), **ridden({})),
            silent(WORN, *tread("1.7 mm"), traction(0)),
            silent(RACE, NO_TRACK, traction("off")),
            silent(put("session", "look.rear.seen", ["fine balls"]), traction(0)),
            # A later look at the same tyre says more than an earlier one.
            silent(
                put("session", "look.rear.seen", ["fine balls"]),
                traction(0),
                **ridden({"look.rear.seen": ["cord"]}),
            ),
            silent(traction(0), **ridden({"tyres": "april", "look.rear.seen": ["cord"]})),
            silent(NEW, SLIDE, at("slip-angle", "off")),
        ),
        missing=(
            lacks("the rider's group", NEW, traction(0), NO_GROUP),
            lacks("the surface", NEW, traction(0), NO_SURFACE),
            lacks("which end of traction control helps most", NEW, traction(0), NO_END),
        ),
    ),
    "nets-thin-together": Cases(
        raising=(
            raises("controls", "serious", NOVICE, *all_at(1, 3, 2), says="for a novice: on average 28 %"),
            raises("controls", "serious", WET, *all_at(0, 3, 2)),
            # Slide control is no net of its own: it watches the same wheel as traction.
            raises("controls", "serious", NOVICE, *all_at(1, 3, 2), SLIDE, at("slip-angle", "on")),
            raises("controls", "serious", COLD, ADVANCED, *all_at(3, "off", 0), says="a cold track without"),
            raises("controls", "serious", *counts_down(NOVICE, *all_at(10, 4, 3))),
            # Off counts as none, and so does ABS at a level that leaves the front wheel.
            raises(
                "controls",
                "serious",
                COLD,
                RACE,
                *all_at(3, 4, 3),
                put("bike", "controls.abs.effects", {"3": {"front": "off"}}),
            ),
            raises(
                "controls",
                "serious",
                NOVICE,
                at("abs", 3),
                at("wheelie", 1),
                without("bike", "controls.traction"),
                NO_VALUE,
            ),
        ),
        silent=(
            silent(RACE, *all_at(0, "off", 0)),
            silent(COLD, WARMERS, *all_at(0, "off", 0)),
            silent(NOVICE, *all_at(4, 3, 3)),
            silent(NOVICE, NO_TRACK),
            silent(DAMP, ADVANCED, *all_at(3, 2, 2)),
            silent(WET, *all_at(0, 6, 2)),
            # One net alone is no stack.
            silent(NOVICE, traction(0), without("bike", "controls.wheelie"), without("bike", "controls.abs")),
            # Where every one of them is near its least, one finding says so.
            silent(WET, *all_at(0, 1, 1)),
        ),
        missing=(
            lacks("what wheelie control is set to", NOVICE, *all_at(1, 1, 1), at("wheelie", None)),
            lacks("which end of traction control helps most", NOVICE, *all_at(1, 1, 1), NO_END),
            lacks("what makes low aids matter", RACE, *all_at(1, 1, 1), NO_TRACK),
            lacks("the surface", *all_at(1, 1, 1), NO_SURFACE),
            lacks("the rider's group", *all_at(1, 1, 1), NO_GROUP),
        ),
    ),
    "sharp-map-in-the-wet": Cases(
        raising=(
            raises(
                "throttle",
                "caution",
                WET,
                at("throttle", "sharp"),
                says="Throttle response is sharp for a wet track: sharp.",
            ),
            raises("throttle", "serious", WET, NOVICE, at("throttle", "sharp")),
            raises(
                "power",
                "caution",
                WET,
                POWER,
                at("power", 3),
                says="Power mode is sharp for a wet track: 3 (3 = least, 1 = most).",
            ),
            raises("throttle", "caution", *counts_down(WET, at("throttle", "sharp"))),
        ),
        silent=(
            silent(WET),
            silent(at("throttle", "sharp"), NOVICE),
            silent(DAMP, at("throttle", "sharp")),
            silent(WET, put("session", "setup.mode", "showers"), at("throttle", "sharp")),
            silent(WET, POWER, at("power", 2)),
            # A quarter of a scale of two lies nearest to its least.
            silent(WET, SOFT_ONLY, at("throttle", "full")),
        ),
        missing=(
            lacks("the surface", at("throttle", "sharp"), NO_SURFACE),
            lacks("the rider's group", WET, at("throttle", "sharp"), NO_GROUP),
            lacks(
                "which end of throttle response helps most",
                WET,
                without("bike", "controls.throttle.most_help"),
            ),
            lacks("what throttle response is set to", WET, at("throttle", None)),
        ),
    ),
}
