"""Situations of hot pressures, and of steps that are taken back."""

import datetime as dt

from tests.advice.next_change.cases import felt, hot
from tests.advice.next_change.told.given import (
    ASKED_NOT,
    FROM,
    NOVICE,
    adjuster,
    last,
    setup,
    situation_of,
    turned,
)
from tests.rules.situations import put, without

PRESSURES = [
    situation_of(
        "front far over",
        "pressure",
        "CHANGE",
        hot("2.60 bar", "2.20 bar"),
        felt("dives"),
        puts={"front_start": "1.95 bar"},
    ),
    situation_of(
        "both far over",
        "pressure",
        "CHANGE",
        hot("2.60 bar", "2.40 bar"),
        puts={"front_start": "1.95 bar", "rear_start": "1.75 bar"},
    ),
    situation_of(
        "rear far under", "pressure", "CHANGE", hot("2.40 bar", "2.05 bar"), puts={"rear_start": "2.05 bar"}
    ),
    situation_of(
        "a novice's too",
        "pressure",
        "CHANGE",
        NOVICE,
        hot("2.60 bar", "2.20 bar"),
        puts={"front_start": "1.95 bar"},
    ),
    situation_of(
        "0.14 over is said beside",
        "table",
        "CHANGE",
        hot("2.54 bar", "2.20 bar"),
        felt("dives"),
        puts=adjuster("front-compression", 10),
    ),
    situation_of("0.06 over is said beside", "none", "SAME", hot("2.46 bar", "2.20 bar")),
    situation_of(
        "read warm",
        "none",
        "SAME",
        put("session", "pressures.hot", {"at": dt.time(11, 6), "front": "2.60 bar", "rear": "2.20 bar"}),
    ),
    situation_of(
        "two laps",
        "none",
        "SAME",
        hot("2.60 bar", "2.20 bar"),
        put("session", "laps", {"1": "1:45.100", "2": "1:45.200"}),
    ),
    situation_of(
        "no target",
        "table",
        "CHANGE",
        hot("2.60 bar", "2.20 bar"),
        put("tyres", "", {"front": {"kind": "track-day"}, "rear": {"kind": "track-day"}}),
        felt("dives"),
        puts=adjuster("front-compression", 10),
    ),
    situation_of(
        "no air temperature", "pressure", "LOOK", hot("2.60 bar", "2.20 bar"), without("session", "air")
    ),
    situation_of(
        "no time of the reading",
        "pressure",
        "LOOK",
        put("session", "pressures.hot", {"front": "2.60 bar", "rear": "2.20 bar"}),
    ),
]

UNDO = [
    situation_of(
        "harsh after compression in",
        "undo",
        "CHANGE",
        FROM,
        turned(front_compression=8),
        felt("harsh on single bumps"),
        puts=adjuster("front-compression", 12),
    ),
    situation_of(
        "skips after engine braking",
        "undo",
        "CHANGE",
        FROM,
        put("session", "setup.controls.engine-braking", 1),
        felt("skips on the brakes"),
        puts={"controls.engine-braking": 3},
    ),
    situation_of(
        "not where it was there before",
        "table",
        "CHANGE",
        FROM,
        turned(front_compression=8),
        felt("harsh on single bumps"),
        puts=adjuster("front-compression", 10),
        history=last(did="noted", symptoms__1={"what": "harsh on single bumps", "end": "front"}),
    ),
    situation_of(
        "not with the track 16 warmer",
        "table",
        "CHANGE",
        FROM,
        turned(front_compression=8),
        felt("harsh on single bumps"),
        puts=adjuster("front-compression", 10),
        history=last(track="8 C"),
    ),
    situation_of(
        "not to less help",
        "table",
        "CHANGE",
        FROM,
        put("session", "setup.controls.traction", 8),
        felt("slides on drive"),
        puts=adjuster("rear-compression-slow", 14),
    ),
    situation_of(
        "not where each lap differs",
        "none",
        "SAME",
        FROM,
        turned(front_compression=8),
        felt("harsh on single bumps", each_lap="differs"),
    ),
    situation_of(
        "asks what was there before",
        "undo",
        "ASK",
        FROM,
        turned(front_compression=8),
        felt("harsh on single bumps"),
        asks="before-3 did",
        history=ASKED_NOT,
    ),
    situation_of(
        "a new spring is no step",
        "table",
        "CHANGE",
        FROM,
        put("session", "setup.front_spring", "9.5 N/mm"),
        put("session", "work.1", {"what": "suspension"}),
        felt("harsh on single bumps"),
        puts=adjuster("front-compression", 14),
    ),
    situation_of(
        "pressure after undo",
        "pressure",
        "CHANGE",
        FROM,
        turned(front_compression=8),
        felt("harsh on single bumps"),
        hot("2.60 bar", "2.20 bar"),
        puts={"front_start": "1.95 bar"},
    ),
    situation_of(
        "no change felt twice",
        "base",
        "CHANGE",
        FROM,
        turned(front_compression=14),
        felt("no change felt"),
        puts=adjuster("front-compression", 12),
        history=last(
            copied_from="before-2",
            did="noted",
            symptoms__1={"what": "no change felt"},
            setup=setup(front_compression=13),
        ),
    ),
    situation_of(
        "no change felt once", "none", "SAME", FROM, turned(front_compression=14), felt("no change felt")
    ),
]
