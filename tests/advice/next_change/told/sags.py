"""Situations of sag and springs, and those in which nothing is changed."""

from tests.advice.next_change.cases import BEFORE, felt, sag
from tests.advice.next_change.told.given import (
    FROM,
    NOVICE,
    RACE,
    SPRING,
    WET,
    adjuster,
    last,
    situation_of,
    turned,
)
from tests.rules.situations import put, went_before, without

SAGS = [
    situation_of(
        "dives with too much sag",
        "sag",
        "CHANGE",
        sag("front", 41.0),
        felt("dives"),
        puts=adjuster("front-preload", 14),
    ),
    situation_of(
        "runs wide with too much sag",
        "sag",
        "CHANGE",
        sag("rear", 42.0),
        felt("runs wide on power"),
        puts=adjuster("rear-preload", 8),
    ),
    situation_of(
        "harsh with too little sag",
        "sag",
        "CHANGE",
        sag("front", 19.0),
        felt("harsh on single bumps"),
        turned(front_preload=12),
        sag("front", 19.0, preload=12),
        puts=adjuster("front-preload", 1),
    ),
    situation_of(
        "a novice's sag too",
        "sag",
        "CHANGE",
        NOVICE,
        sag("rear", 42.0),
        felt("parts ground"),
        puts=adjuster("rear-preload", 8),
    ),
    situation_of("not measured", "sag", "LOOK", without("session", "sag"), felt("dives")),
    situation_of("measured at other preload", "sag", "LOOK", sag("front", 41.0, preload=3), felt("dives")),
    situation_of(
        "measured before the fork moved",
        "sag",
        "LOOK",
        without("session", "sag"),
        felt("dives"),
        put("session", "setup.fork_height", "6 mm"),
        history=last(sag__front__rider=sag("front", 41.0)[2]),
    ),
    situation_of(
        "sag right, so damping", "table", "CHANGE", felt("dives"), puts=adjuster("front-compression", 10)
    ),
    situation_of(
        "top-out springs not known",
        "table",
        "CHANGE",
        without("bike", "front.top_out_springs"),
        sag("front", 41.0),
        felt("dives"),
        puts=adjuster("front-compression", 10),
    ),
    situation_of("at its end, so the spring", "sag", "OWN", *SPRING, felt("dives")),
    situation_of(
        "at its end, free sag missing",
        "sag",
        "LOOK",
        *SPRING,
        felt("dives"),
        without("session", "sag.front.alone"),
    ),
    situation_of(
        "sag right, spring too soft",
        "sag",
        "OWN",
        sag("front", 30.0),
        sag("front", 8.0, "alone"),
        put("bike", "front.spring", "9.0 N/mm"),
        put("bike", "front.technician_free_sag", "20 mm"),
        felt("dives"),
    ),
]

CLEAN = [
    situation_of("nothing felt", "none", "SAME"),
    situation_of("nothing felt, wet", "none", "SAME", WET),
    situation_of("novice felt something", "none", "SAME", NOVICE, felt("harsh on single bumps")),
    situation_of(
        "second session on the bike",
        "none",
        "SAME",
        felt("harsh on single bumps"),
        history=went_before(BEFORE),
    ),
    situation_of(
        "another venue",
        "none",
        "SAME",
        felt("harsh on single bumps"),
        history=went_before(BEFORE, BEFORE, BEFORE, venue="elsewhere"),
    ),
    situation_of(
        "two clean laps",
        "none",
        "SAME",
        felt("harsh on single bumps"),
        put("session", "laps", {"1": "1:45.1", "2": "1:45.2"}),
    ),
    situation_of("differs each lap", "none", "SAME", felt("vague", "overshoots", each_lap="differs")),
    situation_of("arms", "none", "SAME", felt("arms sore")),
    situation_of("racer, new step, nothing felt", "none", "SAME", RACE, FROM, turned(rear_rebound=10)),
    situation_of(
        "a changed pressure is no step", "none", "SAME", FROM, put("session", "setup.front_start", "2.05 bar")
    ),
]
