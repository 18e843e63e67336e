"""At, below and above the limits of the rules about help, engine braking, launch and shifting."""

import datetime as dt

from tests.rules.cases.aids import NOVICE, WET, traction
from tests.rules.cases.incidents import happened
from tests.rules.cases.nets import ADVANCED, COLD, NEW
from tests.rules.cases.wheels import REAR_OFF, SHIFTER, STRONG, TEN, braking, noted, starts
from tests.rules.limit_rows.aids import FOUR, TEN_DOWN
from tests.rules.limit_rows.aids import TEN as TEN_STEPS
from tests.rules.limit_rows.row import row
from tests.rules.situations import at, put

NOVICE_RULE, POOR, STACK = (
    "little-traction-help-for-a-novice",
    "little-traction-help-on-a-poor-rear-tyre",
    "nets-thin-together",
)
HOLDS, REAR, SHARP = (
    "engine-braking-holds-in-the-wet",
    "rear-without-abs-and-little-freed",
    "sharp-map-in-the-wet",
)
LIFT, STARTS, MISSES = (
    "wheelie-off-on-a-strong-bike",
    "starts-too-close-together",
    "quick-downshift-with-false-neutrals",
)

HOLDING = put("bike", "controls.engine-braking", {"kind": "level", "levels": [0, 20], "frees_most": 20})
FINE = put("bike", "controls.throttle", {"kind": "level", "levels": [0, 8], "most_help": 8})
ON_TEN = put("bike", "controls.wheelie", {"kind": "level", "levels": [0, 10], "most_help": 10, "off": True})
ABS_TEN = put("bike", "controls.abs", {"kind": "level", "levels": [0, 10], "most_help": 10})


def power(written: str) -> tuple[str, tuple[str, ...], str]:
    """Give the bike another peak power."""
    return put("bike", "drive.power", written)


ROWS = [
    # 0.55 of ten steps lies halfway between 5 and 6 and snaps to more help, 6.
    row(NOVICE_RULE, "serious_below", "serious", TEN_STEPS, NOVICE, traction(3)),
    row(NOVICE_RULE, "serious_below", "caution", TEN_STEPS, NOVICE, traction(4)),
    row(NOVICE_RULE, "serious_below", "caution", TEN_STEPS, NOVICE, traction(5)),
    row(NOVICE_RULE, "caution_below", "caution", TEN_STEPS, NOVICE, traction(5)),
    row(NOVICE_RULE, "caution_below", "", TEN_STEPS, NOVICE, traction(6)),
    row(NOVICE_RULE, "caution_below", "", TEN_STEPS, NOVICE, traction(7)),
    row(NOVICE_RULE, "serious_below", "serious", TEN_DOWN, NOVICE, traction(8)),
    row(NOVICE_RULE, "caution_below", "caution", TEN_DOWN, NOVICE, traction(6)),
    row(NOVICE_RULE, "caution_below", "", TEN_DOWN, NOVICE, traction(5)),
    # Four levels are help 0, 1/3, 2/3, 1: 0.40 snaps to 1/3, 0.55 to 2/3.
    row(NOVICE_RULE, "serious_below", "serious", FOUR, NOVICE, traction(1)),
    row(NOVICE_RULE, "serious_below", "caution", FOUR, NOVICE, traction(2)),
    row(NOVICE_RULE, "caution_below", "", FOUR, NOVICE, traction(3)),
    row(POOR, "caution_below", "caution", TEN_STEPS, NEW, traction(3)),
    row(POOR, "caution_below", "", TEN_STEPS, NEW, traction(4)),
    row(POOR, "caution_below", "", TEN_STEPS, NEW, traction(5)),
    # Nine tenths and ten and a half tenths over three nets, and one tenth more.
    row(
        STACK,
        "mean_below",
        "serious",
        TEN_STEPS,
        ON_TEN,
        ABS_TEN,
        NOVICE,
        traction(4),
        at("wheelie", 3),
        at("abs", 3),
    ),
    row(
        STACK,
        "mean_below",
        "",
        TEN_STEPS,
        ON_TEN,
        ABS_TEN,
        NOVICE,
        traction(4),
        at("wheelie", 4),
        at("abs", 3),
    ),
    row(
        STACK,
        "mean_below",
        "",
        COLD,
        ADVANCED,
        TEN_STEPS,
        ON_TEN,
        ABS_TEN,
        traction(7),
        at("wheelie", 0),
        at("abs", 4),
    ),
    row(
        STACK,
        "mean_below",
        "serious",
        COLD,
        ADVANCED,
        TEN_STEPS,
        ON_TEN,
        ABS_TEN,
        traction(7),
        at("wheelie", 0),
        at("abs", 3),
    ),
    # Twenty steps of engine braking: 0.35 is 7, 0.55 is 11, 0.50 is 10.
    row(HOLDS, "serious_below", "serious", WET, HOLDING, braking(6)),
    row(HOLDS, "serious_below", "caution", WET, HOLDING, braking(7)),
    row(HOLDS, "serious_below", "caution", WET, HOLDING, braking(8)),
    row(HOLDS, "caution_below", "caution", WET, HOLDING, braking(10)),
    row(HOLDS, "caution_below", "", WET, HOLDING, braking(11)),
    row(HOLDS, "caution_below", "", WET, HOLDING, braking(12)),
    row(REAR, "freed_below", "serious", WET, HOLDING, REAR_OFF, at("abs", 2), braking(9)),
    row(REAR, "freed_below", "", WET, HOLDING, REAR_OFF, at("abs", 2), braking(10)),
    row(REAR, "freed_below", "", WET, HOLDING, REAR_OFF, at("abs", 2), braking(11)),
    row(SHARP, "caution_below", "caution", WET, FINE, at("throttle", 1)),
    row(SHARP, "caution_below", "", WET, FINE, at("throttle", 2)),
    row(SHARP, "caution_below", "", WET, FINE, at("throttle", 3)),
    row(LIFT, "power_above", "caution", power("90 kW"), at("wheelie", "off")),
    row(LIFT, "power_above", "", power("89.5 kW"), at("wheelie", "off")),
    row(LIFT, "power_above", "", power("89 kW"), at("wheelie", "off")),
    row(LIFT, "power_above", "caution", STRONG, at("wheelie", "off")),
    row(STARTS, "starts", "", noted(starts(2, TEN))),
    row(STARTS, "starts", "serious", noted(starts(3, TEN))),
    row(STARTS, "starts", "serious", noted(starts(4, TEN))),
    row(STARTS, "starts", "serious", noted(starts(2, dt.time(10, 24)), starts(1, TEN))),
    row(STARTS, "starts", "", noted(starts(2, dt.time(10, 23)), starts(1, TEN))),
    row(MISSES, "false_neutrals", "", *SHIFTER, happened("false neutral", count=1)),
    row(MISSES, "false_neutrals", "serious", *SHIFTER, happened("false neutral", count=2)),
    row(MISSES, "false_neutrals", "serious", *SHIFTER, happened("false neutral", count=3)),
]
