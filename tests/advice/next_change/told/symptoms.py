"""Situations of one symptom each, of those that no other situation tells of."""

from tests.advice.next_change.cases import felt, sag
from tests.advice.next_change.told.given import RACE, WET, adjuster, situation_of
from tests.rules.situations import put

SYMPTOMS_ALONE = [
    situation_of(
        "chatters", "table", "CHANGE", felt("chatters", "creeps"), puts=adjuster("front-rebound", 14)
    ),
    situation_of("will not turn", "table", "CHANGE", felt("will not turn"), puts={"rear_height": "4 mm"}),
    situation_of("twitchy", "table", "CHANGE", felt("twitchy"), puts={"fork_height": "2 mm"}),
    situation_of(
        "runs wide off the brake",
        "table",
        "CHANGE",
        felt("runs wide off the brake", "yes"),
        puts=adjuster("front-rebound", 11),
    ),
    situation_of(
        "wheelie cut kills drive",
        "table",
        "CHANGE",
        felt("wheelie cut kills drive", "yes"),
        puts={"controls.wheelie": 3},
    ),
    situation_of("lever pulses", "none", "SAME", felt("lever pulses")),
    situation_of("lever pulses over bumps, racer", "none", "SAME", RACE, felt("lever pulses", "bumps")),
    situation_of(
        "tyre goes off, end not named", "table", "ASK", felt("tyre goes off"), asks="symptoms.1.end"
    ),
    situation_of(
        "tyre goes off at the rear",
        "table",
        "CHANGE",
        felt("tyre goes off", end="rear"),
        puts=adjuster("rear-compression-slow", 13),
    ),
    situation_of(
        "loose in the heat", "table", "CHANGE", felt("loose in the heat"), puts=adjuster("front-rebound", 11)
    ),
    situation_of("stands up, front on its target", "none", "SAME", felt("stands up on the brakes")),
    situation_of(
        "between gears", "table", "CHANGE", felt("between gears", "more"), puts={"rear_sprocket": 44}
    ),
    situation_of("between gears, not said", "table", "ASK", felt("between gears"), asks="symptoms.1.answer"),
    situation_of("on the limiter", "table", "CHANGE", felt("on the limiter"), puts={"rear_sprocket": 42}),
    situation_of("missed shifts", "table", "OWN", felt("missed shifts", "yes")),
    situation_of("no feel in the wet", "none", "SAME", WET, felt("no feel in the wet")),
    situation_of("pulls to one side", "none", "SAME", felt("pulls to one side")),
    situation_of("vibrates", "none", "SAME", felt("vibrates")),
    situation_of("traction lamp with slip", "none", "SAME", felt("traction lamp with slip")),
]

MEASURED = [
    situation_of(
        "hard where the travel ends",
        "none",
        "SAME",
        felt("harsh on single bumps"),
        put("session", "front_travel_used", "119 mm"),
    ),
    situation_of(
        "hard where the travel ends, with too much sag",
        "sag",
        "CHANGE",
        felt("harsh on single bumps"),
        put("session", "front_travel_used", "119 mm"),
        sag("front", 43.0),
        puts=adjuster("front-preload", 14),
    ),
    situation_of(
        "travel to spare says softer",
        "table",
        "CHANGE",
        felt("harsh on single bumps"),
        put("session", "front_travel_used", "80 mm"),
        puts=adjuster("front-compression", 14),
    ),
]
"""Situations in which what was measured has part."""
