"""Guards of what is looked at first, and of sag."""

from tests.advice.next_change.cases import felt, sag
from tests.advice.next_change.told.given import (
    Guard,
    adjuster,
    situation_of,
)
from tests.advice.next_change.told.steps import HARSH, SOFTER
from tests.rules.situations import put, without

WHEEL = {"what": "wheel out", "end": "front", "torqued": True, "pumped": True, "rechecked_hot": True}
NEW_TYRES = put("session", "tyres", "other"), put("session", "work.1", WHEEL)

FIRST = [
    Guard(
        "a tyre set new to the bike is ridden once more",
        "Ride on the tyre set other once more",
        situation_of("new tyres, harsh", "first-right", "LOOK", *NEW_TYRES, HARSH),
        situation_of("new tyres, nothing felt", "none", "SAME", *NEW_TYRES),
    ),
    Guard(
        "a wheel that was out is looked at",
        "Look at the wheel that was out: ",
        situation_of(
            "a shake after the wheel was out",
            "first-right",
            "LOOK",
            put("session", "work.1", WHEEL),
            felt("bars wobble"),
        ),
        situation_of(
            "a shake, no wheel out",
            "table",
            "ASK",
            felt("bars wobble"),
            asks="symptoms.1.answer",
        ),
    ),
]

SAG = [
    Guard(
        "one adjuster of preload",
        "the bike's file has no single preload adjuster at the front",
        situation_of(
            "no preload adjuster",
            "table",
            "CHANGE",
            felt("dives"),
            sag("front", 43.0),
            without("bike", "adjusters.front-preload"),
            puts=SOFTER,
        ),
        situation_of(
            "one preload adjuster",
            "sag",
            "CHANGE",
            felt("dives"),
            sag("front", 43.0),
            puts=adjuster("front-preload", 14),
        ),
    ),
    Guard(
        "the last of the range stays free",
        "the last of its range stays free",
        situation_of(
            "preload would be at its end",
            "sag",
            "CHANGE",
            felt("dives"),
            sag("front", 41.0),
            puts=adjuster("front-preload", 14),
        ),
        situation_of(
            "preload stays within",
            "sag",
            "CHANGE",
            felt("dives"),
            sag("front", 40.0),
            put("bike", "front.technician_rider_sag", "33 mm"),
            puts=adjuster("front-preload", 13),
        ),
    ),
    Guard(
        "no table serves over top-out springs",
        "there is no target sag at the front",
        situation_of(
            "top-out springs fitted",
            "table",
            "CHANGE",
            felt("dives"),
            sag("front", 43.0),
            put("bike", "front.top_out_springs", "fitted"),
            puts=SOFTER,
        ),
        situation_of(
            "top-out springs, and a figure",
            "sag",
            "CHANGE",
            felt("dives"),
            sag("front", 43.0),
            put("bike", "front.top_out_springs", "fitted"),
            put("bike", "front.technician_rider_sag", "36 mm"),
            puts=adjuster("front-preload", 13),
        ),
    ),
]
