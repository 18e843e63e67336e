"""Cases of the rules about the aids, on bikes that count up, that count down, and that do not say."""

import datetime as dt

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.situations import Change, at, counts_down, put, without

WET = put("session", "surface", "wet")
DRYING = put("session", "surface", "drying")
DAMP = put("session", "surface", "damp")
NOVICE = put("rider", "group", "novice")

NO_SURFACE = without("session", "surface")
NO_GROUP = without("rider", "group")
NO_VALUE = at("traction", None)
NO_LEVELS = without("bike", "controls.traction.levels")
NO_END = without("bike", "controls.traction.most_help")


def traction(value: int | str) -> Change:
    """Set traction."""
    return at("traction", value)


def all_at(traction_: int | str, wheelie: int | str, abs_: int | str) -> list[Change]:
    """Set every net of the bike."""
    return [at("traction", traction_), at("wheelie", wheelie), at("abs", abs_)]


THREE_LEVELS = put(
    "bike", "controls.traction", {"kind": "level", "levels": [1, 3], "most_help": 3, "off": True}
)
ONE_SWITCH = put("bike", "controls.traction", {"kind": "switch"})
OFF_IS_A_LEVEL = put(
    "bike", "controls.traction", {"kind": "level", "levels": [0, 8], "most_help": 8, "off": 0}
)
WORDS = put(
    "bike", "controls.traction", {"kind": "choice", "choices": ["off", "some", "much"], "most_help": "much"}
)

NO_AIDS = (
    put("bike", "electronics", "none"),
    without("bike", "controls"),
    without("bike", "modes"),
    without("session", "setup.controls"),
    without("session", "setup.mode"),
)

CASES = {
    "aids-not-set": Cases(
        raising=(
            raises("controls", "caution", NO_VALUE, says="What traction control is set to is not known."),
            raises("controls", "caution", at("abs", None), WET, says="What ABS is set to"),
            raises(
                "controls",
                "caution",
                NO_VALUE,
                at("abs", None),
                says="What ABS and traction control are set to",
            ),
            raises(
                "controls",
                "caution",
                NO_VALUE,
                at("abs", None),
                put("bike", "controls.slide", {"kind": "switch"}),
                says="What ABS, slide control and 1 more are set to",
            ),
            # The riding mode would fix it, and nobody chose the riding mode.
            raises(
                "controls",
                "caution",
                NO_VALUE,
                put("bike", "modes.showers.fixes.traction", 8),
                without("session", "setup.mode"),
            ),
        ),
        silent=(
            silent(),
            silent(traction("off"), at("abs", "off")),
            silent(at("wheelie", None)),
            silent(at("throttle", None)),
            silent(NO_VALUE, without("bike", "controls.traction")),
            silent(
                NO_VALUE,
                put("bike", "modes.showers.fixes.traction", 8),
                put("session", "setup.mode", "showers"),
            ),
            silent(NO_VALUE, put("session", "parked", dt.time(10, 59))),
        ),
        missing=(lacks("the bike", without("bike")),),
    ),
    "aid-off-in-the-wet": Cases(
        raising=(
            raises("traction", "serious", WET, traction("off"), says="Traction control is off in the wet."),
            raises("traction", "serious", put("session", "surface", "standing water"), traction("off")),
            raises("traction", "hold", WET, traction("off"), NOVICE),
            raises("traction", "serious", *counts_down(WET, traction("off"))),
            raises("traction", "serious", OFF_IS_A_LEVEL, WET, traction(0)),
            raises("traction", "serious", ONE_SWITCH, WET, traction("off")),
            raises("traction", "serious", WORDS, WET, traction("off")),
            raises(
                "slip-angle",
                "serious",
                WET,
                put("bike", "controls.slip-angle", {"function": "slide", "kind": "switch"}),
                at("slip-angle", "off"),
                says="Slip angle is off in the wet.",
            ),
        ),
        silent=(
            silent(WET),
            silent(NO_VALUE),
            silent(traction("off")),
            silent(DAMP, traction("off")),
            silent(WET, at("wheelie", "off")),
            silent(WET, without("bike", "controls.traction"), NO_VALUE),
            silent(ONE_SWITCH, WET, traction("on")),
        ),
        missing=(
            lacks("the surface", NO_SURFACE, traction("off")),
            lacks("the rider's group", WET, traction("off"), NO_GROUP),
            lacks("the rider", WET, traction("off"), without("rider")),
            lacks("what traction control is set to", WET, NO_VALUE),
            lacks("which end of traction control helps most", WET, traction("off"), NO_END),
            lacks("the levels of traction control", WET, traction("off"), NO_LEVELS),
        ),
    ),
    "front-wheel-without-abs-in-the-wet": Cases(
        raising=(
            raises("abs", "serious", WET, at("abs", 0)),
            raises("abs", "serious", WET, at("abs", "off")),
            raises("abs", "serious", WET, at("abs", 1)),
            raises("abs", "hold", WET, at("abs", 1), NOVICE),
            raises("abs", "serious", *counts_down(WET, at("abs", "off"))),
            raises(
                "abs",
                "serious",
                WET,
                at("abs", 0),
                without("bike", "controls.abs.levels"),
            ),
        ),
        silent=(
            silent(WET),
            silent(WET, at("abs", 2)),
            silent(at("abs", 0)),
            silent(WET, put("bike", "controls.abs.function", "rear-abs"), at("abs", 0)),
        ),
        missing=(
            lacks("the surface", NO_SURFACE, at("abs", 0)),
            lacks("what ABS is set to", WET, at("abs", None)),
            lacks("the rider's group", WET, at("abs", 0), NO_GROUP),
        ),
    ),
    "little-traction-help-in-the-wet": Cases(
        raising=(
            raises("traction", "serious", WET, traction(3), says="a wet track: 3 (range 0-10)."),
            raises("traction", "caution", WET, traction(4)),
            raises("traction", "serious", WET, traction(5), NOVICE),
            raises(
                "traction",
                "serious",
                *counts_down(WET, traction(8)),
                says="Traction control low for a wet track: 8 (11 = least, 1 = most).",
            ),
            raises("traction", "serious", THREE_LEVELS, WET, traction(1)),
            raises("traction", "serious", THREE_LEVELS, WET, traction(1), NOVICE),
            raises("traction", "serious", put("session", "surface", "standing water"), traction(0)),
            raises("traction", "caution", WORDS, WET, traction("some"), says="a wet track: some."),
        ),
        silent=(
            silent(WET, traction(5)),
            silent(WET, traction(6), NOVICE),
            silent(WET, traction("off")),
            silent(traction(0)),
            silent(DAMP, traction(0)),
            silent(ONE_SWITCH, WET, traction("on")),
            silent(THREE_LEVELS, WET, traction(2)),
            silent(*counts_down(WET, traction(6))),
        ),
        missing=(
            lacks("the surface", NO_SURFACE, traction(0)),
            lacks("the rider's group", WET, traction(0), NO_GROUP),
            lacks("which end of traction control helps most", WET, traction(0), NO_END),
            lacks("what traction control is set to", WET, NO_VALUE),
            lacks("how much help traction control gives", WET, traction(99)),
        ),
    ),
    "little-traction-help-in-the-damp": Cases(
        raising=(
            raises("traction", "caution", DAMP, traction(3), says="Traction control low"),
            raises(
                "traction", "caution", DAMP, traction("off"), says="Traction control is off on a damp track."
            ),
            raises("traction", "caution", DRYING, traction(0), says="a drying track"),
            raises("traction", "caution", DAMP, traction(5), NOVICE),
            raises("traction", "caution", *counts_down(DAMP, traction(8)), says="8 (11 = least, 1 = most)"),
            raises("traction", "caution", THREE_LEVELS, DAMP, traction(1)),
        ),
        silent=(
            silent(DAMP, traction(4)),
            silent(DAMP, traction(6), NOVICE),
            silent(traction("off")),
            silent(WET, traction(0)),
            silent(THREE_LEVELS, DAMP, traction(2)),
            silent(*counts_down(DAMP, traction(7))),
        ),
        missing=(
            lacks("the surface", NO_SURFACE, traction(0)),
            lacks("the rider's group", DAMP, traction(0), NO_GROUP),
            lacks("which end of traction control helps most", DAMP, traction(0), NO_END),
            lacks("what traction control is set to", DAMP, NO_VALUE),
        ),
    ),
    "all-aids-near-least": Cases(
        raising=(
            raises("controls", "serious", WET, *all_at(3, 2, 2), says="least help on a wet track."),
            raises("controls", "caution", DAMP, *all_at("off", "off", 1), says="least help on a damp track."),
            raises("controls", "serious", NOVICE, *all_at(2, 2, 2), says="least help for a novice."),
            raises("controls", "serious", *counts_down(WET, *all_at(10, 6, 4))),
            raises("controls", "serious", ONE_SWITCH, WET, *all_at("off", "off", 1)),
            # The riding mode, not the record, says what is in force.
            raises(
                "controls",
                "serious",
                WET,
                *all_at(9, 1, 1),
                put("bike", "modes.open.fixes", {"traction": 1}),
            ),
            # What cannot be told of other controls does not matter to the nets.
            raises("controls", "serious", WET, *all_at(1, 1, 1), at("throttle", None)),
        ),
        silent=(
            silent(WET, *all_at(4, 1, 1)),
            silent(*all_at("off", "off", 0)),
            silent(WET, *all_at(1, 1, 3)),
            silent(ONE_SWITCH, WET, *all_at("on", "off", 1)),
            silent(
                WET, *all_at(1, 1, 1), without("bike", "controls.wheelie"), without("bike", "controls.abs")
            ),
        ),
        missing=(
            lacks("the surface", NO_SURFACE, *all_at(1, 1, 1)),
            lacks("the rider's group", WET, *all_at(1, 1, 1), NO_GROUP),
            lacks("what wheelie control is set to", WET, *all_at(1, 1, 1), at("wheelie", None)),
            lacks("which end of traction control helps most", WET, *all_at(1, 1, 1), NO_END),
        ),
    ),
    "direction-not-known": Cases(
        raising=(
            raises(
                "traction", "caution", NO_END, says="Which end of traction control helps most is not known."
            ),
            raises(
                "traction",
                "caution",
                NO_LEVELS,
                says="The levels of traction control",
            ),
            raises("throttle", "caution", without("bike", "controls.throttle.most_help")),
            raises("abs", "caution", without("bike", "controls.abs.most_help"), says="Which end of ABS"),
            # Which end frees the rear says nothing about which end helps.
            raises("traction", "caution", NO_END, put("bike", "controls.traction.frees_most", 10)),
        ),
        silent=(
            silent(),
            silent(*counts_down()),
            silent(without("bike", "controls.engine-braking.frees_most")),
            silent(NO_VALUE),
            silent(ONE_SWITCH, traction("on")),
            silent(NO_END, put("bike", "controls.traction.levels", [4, 4]), traction(4)),
        ),
        missing=(
            lacks("what traction control is set to", NO_END, NO_VALUE),
            lacks("the riding mode", NO_END, without("session", "setup.mode")),
        ),
    ),
    "freeing-end-not-known": Cases(
        raising=(
            raises(
                "engine-braking",
                "caution",
                without("bike", "controls.engine-braking.frees_most"),
                says="Which end of engine braking brakes least is not known.",
            ),
            raises(
                "engine-braking",
                "caution",
                without("bike", "controls.engine-braking.frees_most"),
                put("bike", "controls.engine-braking.most_help", 5),
            ),
            raises("engine-braking", "caution", without("bike", "controls.engine-braking.levels")),
        ),
        silent=(
            silent(),
            silent(*counts_down()),
            silent(NO_END),
            silent(
                without("bike", "controls.engine-braking"),
                at("engine-braking", None),
            ),
        ),
        missing=(
            lacks(
                "what engine braking is set to",
                without("bike", "controls.engine-braking.frees_most"),
                at("engine-braking", None),
            ),
        ),
    ),
}
