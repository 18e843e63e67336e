"""At, below and above the limits of the rules about the aids."""

from tests.rules.limit_rows.row import row
from tests.rules.situations import Change, at, put

WET, DAMP = put("session", "surface", "wet"), put("session", "surface", "damp")
NOVICE = put("rider", "group", "novice")


def levels(low: int, high: int, most: int) -> Change:
    """Give the bike other levels of traction, so that thresholds snap elsewhere."""
    return put(
        "bike", "controls.traction", {"kind": "level", "levels": [low, high], "most_help": most, "off": True}
    )


TEN, TEN_DOWN, FOUR, THREE = levels(0, 10, 10), levels(1, 11, 1), levels(1, 4, 4), levels(1, 3, 3)

WET_RULE, DAMP_RULE, STACK = (
    "little-traction-help-in-the-wet",
    "little-traction-help-in-the-damp",
    "all-aids-near-least",
)

ROWS = [
    # 0.35 of ten steps lies halfway between 3 and 4 and snaps to more help, 4.
    row(WET_RULE, "serious_below", "serious", TEN, WET, at("traction", 3)),
    row(WET_RULE, "serious_below", "caution", TEN, WET, at("traction", 4)),
    row(WET_RULE, "caution_below", "caution", TEN, WET, at("traction", 4)),
    row(WET_RULE, "caution_below", "", TEN, WET, at("traction", 5)),
    row(WET_RULE, "caution_below", "", TEN, WET, at("traction", 6)),
    row(WET_RULE, "novice_below", "serious", TEN, WET, NOVICE, at("traction", 5)),
    row(WET_RULE, "novice_below", "", TEN, WET, NOVICE, at("traction", 6)),
    row(WET_RULE, "novice_below", "", TEN, WET, NOVICE, at("traction", 7)),
    # The same bike counting down from 11 to 1: 11 is no help at all, 1 the most.
    row(WET_RULE, "serious_below", "serious", TEN_DOWN, WET, at("traction", 8)),
    row(WET_RULE, "serious_below", "caution", TEN_DOWN, WET, at("traction", 7)),
    row(WET_RULE, "caution_below", "", TEN_DOWN, WET, at("traction", 6)),
    row(WET_RULE, "novice_below", "serious", TEN_DOWN, WET, NOVICE, at("traction", 6)),
    row(WET_RULE, "novice_below", "", TEN_DOWN, WET, NOVICE, at("traction", 5)),
    # Four levels are help 0, 1/3, 2/3, 1: 0.35 snaps to 1/3, 0.5 and 0.6 to 2/3.
    row(WET_RULE, "serious_below", "serious", FOUR, WET, at("traction", 1)),
    row(WET_RULE, "serious_below", "caution", FOUR, WET, at("traction", 2)),
    row(WET_RULE, "caution_below", "", FOUR, WET, at("traction", 3)),
    row(WET_RULE, "novice_below", "serious", FOUR, WET, NOVICE, at("traction", 2)),
    row(WET_RULE, "novice_below", "", FOUR, WET, NOVICE, at("traction", 3)),
    # Three levels are help 0, 0.5, 1: all three limits snap to 0.5.
    row(WET_RULE, "serious_below", "serious", THREE, WET, at("traction", 1)),
    row(WET_RULE, "caution_below", "", THREE, WET, at("traction", 2)),
    row(WET_RULE, "novice_below", "", THREE, WET, NOVICE, at("traction", 2)),
    row(DAMP_RULE, "caution_below", "caution", TEN, DAMP, at("traction", 3)),
    row(DAMP_RULE, "caution_below", "", TEN, DAMP, at("traction", 4)),
    row(DAMP_RULE, "caution_below", "", TEN, DAMP, at("traction", 5)),
    row(DAMP_RULE, "caution_below", "caution", FOUR, DAMP, at("traction", 1)),
    row(DAMP_RULE, "caution_below", "", FOUR, DAMP, at("traction", 2)),
    row(DAMP_RULE, "novice_below", "caution", TEN, DAMP, NOVICE, at("traction", 5)),
    row(DAMP_RULE, "novice_below", "", TEN, DAMP, NOVICE, at("traction", 6)),
    row(DAMP_RULE, "novice_below", "", TEN, DAMP, NOVICE, at("traction", 7)),
    # 0.25 of ten steps snaps to 3.
    row(STACK, "near_least", "serious", TEN, WET, at("wheelie", 1), at("abs", 1), at("traction", 2)),
    row(STACK, "near_least", "serious", TEN, WET, at("wheelie", 1), at("abs", 1), at("traction", 3)),
    row(STACK, "near_least", "", TEN, WET, at("wheelie", 1), at("abs", 1), at("traction", 4)),
    row(STACK, "near_least", "serious", FOUR, WET, at("wheelie", 1), at("abs", 1), at("traction", 2)),
    row(STACK, "near_least", "", FOUR, WET, at("wheelie", 1), at("abs", 1), at("traction", 3)),
]
