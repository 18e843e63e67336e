"""Situations in which something is put right, or help goes back, before any setting."""

from tests.advice.next_change.cases import TYRES, felt, hot, seen
from tests.advice.next_change.told.given import WET, accepted, adjuster, situation_of
from tests.rules.situations import put

FIRST = [
    situation_of(
        "slick in the wet", "first-right", "LOOK", put("tyres", "front.kind", "slick"), WET, felt("dives")
    ),
    situation_of(
        "slick in the damp",
        "first-right",
        "LOOK",
        put("tyres", "rear.kind", "slick"),
        put("session", "surface", "damp"),
    ),
    situation_of("wets in the dry", "first-right", "LOOK", put("tyres", "front.kind", "wet"), felt("vague")),
    situation_of("tyre split", "first-right", "MEND", seen("front", "split"), felt("dives")),
    situation_of("nail", "first-right", "MEND", seen("rear", "nail")),
    situation_of(
        "tread at its limit",
        "first-right",
        "LOOK",
        put("tyres", "rear", {**TYRES["rear"], "tread_middle": "1.0 mm", "worn_at": "1.5 mm"}),
        felt("slides on drive"),
    ),
    situation_of(
        "bearings to fix",
        "first-right",
        "LOOK",
        put("session", "checks", {"bearings": {"status": "to fix"}}),
        felt("dives"),
    ),
    situation_of(
        "wheel out unchecked",
        "first-right",
        "LOOK",
        put("session", "work.1", {"what": "wheel out", "end": "front"}),
        felt("dives"),
    ),
    situation_of(
        "no pressure on a wrong tyre",
        "first-right",
        "LOOK",
        put("tyres", "front.kind", "wet"),
        hot("2.70 bar", "2.20 bar"),
    ),
]

ACCEPTED = [
    situation_of(
        "traction accepted, slid",
        "accepted",
        "CHANGE",
        accepted("traction"),
        felt("slides on drive"),
        puts={"controls.traction": 7},
    ),
    situation_of(
        "two accepted, traction first",
        "accepted",
        "CHANGE",
        put(
            "session",
            "accepted",
            {"little-help": {name: {"reason": "dry", "facts": "dry"} for name in ("throttle", "traction")}},
        ),
        felt("slides on drive"),
        puts={"controls.traction": 7},
    ),
    situation_of(
        "engine braking accepted, loose",
        "accepted",
        "CHANGE",
        accepted("engine-braking"),
        felt("loose on entry"),
        puts={"controls.engine-braking": 4},
    ),
    situation_of(
        "front ABS accepted, locked",
        "accepted",
        "CHANGE",
        accepted("front-abs"),
        felt("front locks"),
        puts={"controls.front-abs": 5},
    ),
    situation_of(
        "wheelie accepted, shook on landing",
        "accepted",
        "CHANGE",
        accepted("wheelie"),
        felt("bars wobble", "no", cause="landing a wheelie"),
        puts={"controls.wheelie": 5},
    ),
    situation_of(
        "traction control off goes on",
        "accepted",
        "CHANGE",
        accepted("traction"),
        felt("slides on drive"),
        put("session", "setup.controls.traction", "off"),
        puts={"controls.traction": 0},
    ),
    situation_of(
        "accepted is not what was felt",
        "table",
        "CHANGE",
        accepted("wheelie"),
        felt("slides on drive"),
        puts=adjuster("rear-compression-slow", 14),
    ),
    situation_of(
        "already at its most",
        "table",
        "CHANGE",
        accepted("traction"),
        felt("slides on drive"),
        put("session", "setup.controls.traction", 10),
        puts=adjuster("rear-compression-slow", 14),
    ),
    situation_of(
        "the mode fixes what was accepted",
        "table",
        "CHANGE",
        accepted("traction"),
        felt("slides on drive"),
        put("bike", "modes.open.fixes", {"traction": 6}),
        puts=adjuster("rear-compression-slow", 14),
    ),
]
