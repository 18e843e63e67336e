"""Situations that the table of symptoms answers."""

from tests.advice.next_change.cases import felt
from tests.advice.next_change.told.given import AUTOMATIC, FROM, adjuster, last, several, situation_of
from tests.rules.situations import put, without

TABLES = [
    situation_of(
        "the firmer offset", "table", "CHANGE", *AUTOMATIC, felt("dives"), puts={"offsets.front": 1}
    ),
    situation_of(
        "an offset that counts down",
        "table",
        "CHANGE",
        *AUTOMATIC,
        felt("wallows", "overshoots"),
        puts={"offsets.drive": -1},
    ),
    situation_of(
        "an offset without a direction",
        "table",
        "OWN",
        *AUTOMATIC,
        felt("dives"),
        without("bike", "damping.automatic.offsets.front.firmest"),
    ),
    situation_of(
        "no offset that acts",
        "table",
        "OWN",
        *AUTOMATIC,
        felt("hops", "creeps"),
        without("bike", "damping.automatic.offsets.drive"),
    ),
    situation_of(
        "mode fixes the aid",
        "table",
        "OWN",
        felt("traction cuts without slip", "no"),
        put("bike", "modes.open.fixes", {"traction": 6}),
    ),
    situation_of(
        "asks for the end",
        "table",
        "ASK",
        put("session", "symptoms.1", {"what": "vague"}),
        asks="symptoms.1.end",
    ),
    situation_of("asks the push test", "table", "ASK", felt("wallows"), asks="symptoms.1.answer"),
    situation_of(
        "one change answers two",
        "table",
        "CHANGE",
        several(
            {"what": "harsh on single bumps", "end": "front"},
            {"what": "wallows", "answer": "overshoots"},
            {"what": "kicks", "answer": "overshoots"},
        ),
        puts=adjuster("rear-rebound", 11),
    ),
    situation_of(
        "one question parts three",
        "table",
        "ASK",
        several({"what": "kicks"}, {"what": "wallows"}, {"what": "hops"}),
        asks="symptoms.3.answer",
    ),
    situation_of(
        "its answer is kept",
        "table",
        "CHANGE",
        several({"what": "kicks", "answer": "creeps"}, {"what": "hops"}),
        puts=adjuster("rear-rebound", 14),
    ),
    situation_of(
        "kept over the day",
        "table",
        "CHANGE",
        FROM,
        felt("hops"),
        puts=adjuster("rear-rebound", 14),
        history=last(did="noted", symptoms__1={"what": "kicks", "answer": "creeps"}),
    ),
    situation_of(
        "entry and exit, entry first",
        "table",
        "CHANGE",
        several({"what": "slides on drive"}, {"what": "harsh on single bumps", "end": "front"}),
        puts=adjuster("front-compression", 14),
    ),
    situation_of(
        "less help not in danger",
        "table",
        "LOOK",
        several({"what": "front locks"}, {"what": "traction cuts without slip", "answer": "no"}),
    ),
    situation_of(
        "opposite ways",
        "none",
        "SAME",
        several(
            {"what": "vague", "answer": "overshoots", "end": "front"},
            {"what": "harsh on a series", "answer": "creeps", "end": "front"},
        ),
    ),
    situation_of(
        "own words",
        "own-words",
        "ASK",
        without("session", "did"),
        put("session", "said", "bad headshake out of 4"),
        asks="symptoms.1.what",
    ),
    situation_of("own words answered", "none", "SAME", put("session", "said", "bad headshake out of 4")),
    situation_of(
        "own words that say nothing",
        "none",
        "SAME",
        without("session", "did"),
        put("session", "said", "lovely morning"),
    ),
    situation_of(
        "not counted", "table", "OWN", felt("dives"), without("session", "setup.adjusters.front-compression")
    ),
    situation_of(
        "no direction",
        "table",
        "OWN",
        felt("dives"),
        without("bike", "adjusters.front-compression.counted_from"),
    ),
]
