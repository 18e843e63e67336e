"""Guards of levels, heights and gearing."""

from tests.advice.next_change.cases import felt, seen
from tests.advice.next_change.told.given import (
    NOVICE,
    Guard,
    adjuster,
    last,
    several,
    situation_of,
)
from tests.rules.situations import put, without

LOOSE, CUTS = felt("loose on entry"), felt("traction cuts without slip", "no")
OFF = put("session", "setup.controls.traction", "off")
LEVELS = [
    Guard(
        "an engine brake that is there",
        "the bike has no engine-brake control",
        situation_of(
            "no engine brake",
            "table",
            "CHANGE",
            LOOSE,
            without("bike", "controls.engine-braking"),
            puts=adjuster("rear-rebound", 13),
        ),
        situation_of("an engine brake", "table", "CHANGE", LOOSE, puts={"controls.engine-braking": 4}),
    ),
    Guard(
        "an engine brake whose way is known",
        "it is not known which end of engine braking brakes least",
        situation_of(
            "which end brakes least is not known",
            "table",
            "CHANGE",
            LOOSE,
            without("bike", "controls.engine-braking.frees_most"),
            puts=adjuster("rear-rebound", 13),
        ),
        situation_of("it is known", "table", "CHANGE", LOOSE, puts={"controls.engine-braking": 4}),
    ),
    Guard(
        "a level that the bike has",
        "engine braking is not at one of its levels",
        situation_of(
            "engine braking at a level of another bike",
            "table",
            "CHANGE",
            LOOSE,
            put("session", "setup.controls.engine-braking", 9),
            puts=adjuster("rear-rebound", 13),
        ),
        situation_of(
            "engine braking at one of its own",
            "table",
            "CHANGE",
            LOOSE,
            put("session", "setup.controls.engine-braking", 2),
            puts={"controls.engine-braking": 3},
        ),
    ),
    Guard(
        "an aid that is there",
        "the bike has no traction control",
        situation_of("no traction control", "none", "SAME", CUTS, without("bike", "controls.traction")),
        situation_of("traction control", "table", "CHANGE", CUTS, puts={"controls.traction": 5}),
    ),
    Guard(
        "an aid that is on",
        "traction control is off already",
        situation_of("traction control off", "none", "SAME", CUTS, OFF),
        situation_of("traction control on", "table", "CHANGE", CUTS, puts={"controls.traction": 5}),
    ),
    Guard(
        "no less help while something has a rider down",
        "no help is taken away while a shake, weave, tuck or lock is open",
        situation_of(
            "cuts, and a shake",
            "table",
            "LOOK",
            several(
                {"what": "bars wobble", "answer": "no"},
                {"what": "traction cuts without slip", "answer": "no"},
            ),
        ),
        situation_of("cuts alone", "table", "CHANGE", CUTS, puts={"controls.traction": 5}),
    ),
    Guard(
        "no less help while a weave of the session before is open",
        "no help is taken away while a shake, weave, tuck or lock is open",
        situation_of(
            "cuts, after a weave",
            "table",
            "OWN",
            CUTS,
            history=last(did="noted", symptoms__1={"what": "weaves", "grade": 3}),
        ),
        situation_of(
            "cuts, after a vague front",
            "table",
            "CHANGE",
            CUTS,
            puts={"controls.traction": 5},
            history=last(did="noted", symptoms__1={"what": "vague", "end": "front"}),
        ),
    ),
    Guard(
        "no less help for a novice",
        "Do not turn traction control down for this",
        situation_of("a novice's traction cuts", "none", "SAME", NOVICE, CUTS),
        situation_of("another's traction cuts", "table", "CHANGE", CUTS, puts={"controls.traction": 5}),
    ),
    Guard(
        "a height that is written down",
        "rear ride height is not written down: measure it first",
        situation_of(
            "rear height not known",
            "table",
            "CHANGE",
            felt("will not turn"),
            without("session", "setup.rear_height"),
            puts={"fork_height": "6 mm"},
        ),
        situation_of(
            "rear height known", "table", "CHANGE", felt("will not turn"), puts={"rear_height": "4 mm"}
        ),
    ),
    Guard(
        "never to a height that nobody checked",
        "rear ride height is not checked clear beyond 8 mm: check full bottoming",
        situation_of(
            "rear at its highest",
            "table",
            "CHANGE",
            felt("will not turn"),
            put("session", "setup.rear_height", "7 mm"),
            puts={"fork_height": "6 mm"},
        ),
        situation_of(
            "rear below its highest",
            "table",
            "CHANGE",
            felt("will not turn"),
            put("session", "setup.rear_height", "6 mm"),
            puts={"rear_height": "8 mm"},
        ),
    ),
    Guard(
        "never higher where nobody checked at all",
        "rear ride height is not checked clear beyond where it stands",
        situation_of(
            "no rear height checked",
            "table",
            "CHANGE",
            felt("will not turn"),
            without("bike", "rear.highest_clear"),
            puts={"fork_height": "6 mm"},
        ),
        situation_of(
            "rear height checked", "table", "CHANGE", felt("will not turn"), puts={"rear_height": "4 mm"}
        ),
    ),
    Guard(
        "never below the yoke",
        "fork protrusion has no more range that way",
        situation_of(
            "fork flush", "none", "SAME", felt("twitchy"), put("session", "setup.fork_height", "1 mm")
        ),
        situation_of(
            "fork through",
            "table",
            "CHANGE",
            felt("twitchy"),
            put("session", "setup.fork_height", "2 mm"),
            puts={"fork_height": "0 mm"},
        ),
    ),
    Guard(
        "a sprocket that is written down",
        "the rear sprocket is not written down",
        situation_of(
            "sprocket not known",
            "none",
            "SAME",
            felt("on the limiter"),
            without("session", "setup.rear_sprocket"),
        ),
        situation_of("sprocket known", "table", "CHANGE", felt("on the limiter"), puts={"rear_sprocket": 42}),
    ),
    Guard(
        "a tyre worn flat is no matter of settings",
        "the tyre is worn flat in the middle: no setting cures that",
        situation_of(
            "worn flat, will not turn",
            "table",
            "CHANGE",
            felt("will not turn"),
            seen("rear", "flat centre"),
            puts={"rear_height": "4 mm"},
        ),
        situation_of(
            "round, will not turn", "table", "CHANGE", felt("will not turn"), puts={"rear_height": "4 mm"}
        ),
    ),
]
