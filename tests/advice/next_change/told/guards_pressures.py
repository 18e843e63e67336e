"""Guards of pressures, and of what was read."""

import datetime as dt

from tests.advice.next_change.cases import TYRES, felt, hot
from tests.advice.next_change.told.given import (
    Guard,
    situation_of,
)
from tests.advice.next_change.told.steps import SOFTER, TWO_LAPS
from tests.rules.situations import put, without

DIVES = felt("dives")
STANDS_UP = felt("stands up on the brakes")
UNDER = hot("2.30 bar", "2.20 bar")
COLD = {"at": dt.time(9, 0), "front": "2.10 bar", "rear": "1.90 bar", "temperature": "20 C"}
PRESSURES = [
    Guard(
        "a pressure it started at",
        "the cold pressure of the front",
        situation_of(
            "over, neither read cold nor said when parked",
            "pressure",
            "LOOK",
            hot("2.60 bar", "2.20 bar"),
            without("session", "parked"),
            without("session", "pressures.cold"),
        ),
        situation_of(
            "over, not said when parked, but read cold",
            "pressure",
            "LOOK",
            hot("2.60 bar", "2.20 bar"),
            without("session", "parked"),
        ),
    ),
    Guard(
        "pressure moves only toward the hot target",
        "front tyre: no hot target entered: pressure moves only toward the hot target",
        situation_of(
            "stands up, no target",
            "none",
            "SAME",
            STANDS_UP,
            UNDER,
            put("tyres", "front", {"kind": "track-day"}),
        ),
        situation_of(
            "stands up, under", "table", "CHANGE", STANDS_UP, UNDER, puts={"front_start": "2.20 bar"}
        ),
    ),
    Guard(
        "a target of the surface that was written down",
        "the surface was not written down",
        situation_of(
            "stands up, surface not known",
            "none",
            "SAME",
            STANDS_UP,
            UNDER,
            without("session", "surface"),
            put("tyres", "front", {**TYRES["front"], "hot_wet": "2.30 bar"}),
        ),
        situation_of(
            "stands up on a dry track",
            "table",
            "CHANGE",
            STANDS_UP,
            UNDER,
            put("tyres", "front", {**TYRES["front"], "hot_wet": "2.30 bar"}),
            puts={"front_start": "2.20 bar"},
        ),
    ),
    Guard(
        "no more where it stands over",
        "the front tyre stands over its hot target already",
        situation_of("stands up, over", "none", "SAME", STANDS_UP, hot("2.48 bar", "2.20 bar")),
        situation_of(
            "stands up, well under", "table", "CHANGE", STANDS_UP, UNDER, puts={"front_start": "2.20 bar"}
        ),
    ),
    Guard(
        "no step below what a gauge is read to",
        "the front start pressure stands where the calculator puts it, 2.10 bar",
        situation_of(
            "stands up, read 2.05 cold",
            "none",
            "SAME",
            STANDS_UP,
            hot("2.35 bar", "2.20 bar"),
            put("session", "pressures.cold.front", "2.05 bar"),
        ),
        situation_of(
            "stands up, read 2.08 cold",
            "table",
            "CHANGE",
            STANDS_UP,
            hot("2.35 bar", "2.20 bar"),
            put("session", "pressures.cold.front", "2.08 bar"),
            puts={"front_start": "2.15 bar"},
        ),
    ),
    Guard(
        "never the other way than the calculator",
        "the calculator puts the front start pressure at 2.05 bar: the other way",
        situation_of(
            "stands up, read 2.00 cold",
            "none",
            "SAME",
            STANDS_UP,
            hot("2.35 bar", "2.20 bar"),
            put("session", "pressures.cold.front", "2.00 bar"),
        ),
        situation_of(
            "stands up, read as planned",
            "table",
            "CHANGE",
            STANDS_UP,
            hot("2.35 bar", "2.20 bar"),
            put("session", "pressures.cold.front", "2.10 bar"),
            puts={"front_start": "2.15 bar"},
        ),
    ),
    Guard(
        "nothing where it is on its target",
        "the front tyre is on its hot target",
        situation_of("stands up, 0.03 under", "none", "SAME", STANDS_UP, hot("2.37 bar", "2.20 bar")),
        situation_of(
            "stands up, 0.04 under",
            "table",
            "CHANGE",
            STANDS_UP,
            hot("2.36 bar", "2.20 bar"),
            puts={"front_start": "2.15 bar"},
        ),
    ),
    Guard(
        "pressure read hot",
        "the front was read warm, not hot",
        situation_of(
            "over, read warm",
            "none",
            "SAME",
            put("session", "pressures.hot", {"at": dt.time(11, 6), "front": "2.60 bar", "rear": "2.20 bar"}),
        ),
        situation_of(
            "over, read hot",
            "pressure",
            "CHANGE",
            hot("2.60 bar", "2.20 bar"),
            puts={"front_start": "1.95 bar"},
        ),
    ),
    Guard(
        "laps enough to be hot",
        "2 laps: the tyres were not hot yet",
        situation_of(
            "over after two laps",
            "none",
            "SAME",
            hot("2.60 bar", "2.20 bar"),
            put("session", "laps", TWO_LAPS),
        ),
        situation_of(
            "over after three laps",
            "pressure",
            "CHANGE",
            hot("2.60 bar", "2.20 bar"),
            put("session", "laps", {**TWO_LAPS, "3": "1:45.300"}),
            puts={"front_start": "1.95 bar"},
        ),
    ),
    Guard(
        "in nothing's way up to the limit",
        "front pressure 0.14 bar over its hot target: the row of its start says where to set it",
        situation_of("0.14 over, dives", "table", "CHANGE", hot("2.54 bar", "2.20 bar"), DIVES, puts=SOFTER),
        situation_of(
            "0.15 over, dives",
            "pressure",
            "CHANGE",
            hot("2.55 bar", "2.20 bar"),
            DIVES,
            puts={"front_start": "2.00 bar"},
        ),
    ),
    Guard(
        "a time it was parked",
        "when it was parked",
        situation_of(
            "over, not said when parked",
            "pressure",
            "LOOK",
            hot("2.60 bar", "2.20 bar"),
            without("session", "parked"),
        ),
        situation_of(
            "over, said when parked",
            "pressure",
            "CHANGE",
            hot("2.60 bar", "2.20 bar"),
            puts={"front_start": "1.95 bar"},
        ),
    ),
]

USED = put("session", "rear_travel_used", "60 mm")
READ = [
    Guard(
        "travel read where the bike's file tells how far it goes",
        "rear travel used is not weighed: enter its motion ratio in the bike's file",
        situation_of("no motion ratio", "none", "SAME", USED, without("bike", "rear.motion_ratio")),
        situation_of("a motion ratio", "none", "SAME", USED),
    ),
    Guard(
        "travel that can be",
        "which has 120: read the marker again, along fork or shock",
        situation_of(
            "a marker beyond its travel", "none", "SAME", put("session", "front_travel_used", "130 mm")
        ),
        situation_of("a marker at its end", "none", "SAME", put("session", "front_travel_used", "120 mm")),
    ),
]
