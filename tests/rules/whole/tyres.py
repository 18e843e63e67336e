"""Whole situations about tyres and pressures: surfaces, kinds, cold, warmers, pressures before and after."""

import datetime as dt

from tests.rules.cases.pressures import COLD_AT_20, NAIL, RIDDEN, TARGETS, UNREAD, cold, hot
from tests.rules.cases.tyres import (
    INTER,
    SLICKS,
    TREADED,
    USED,
    WETS,
    both,
    ends,
    made,
    on,
    seen,
    soaked,
    track,
)
from tests.rules.situations import BIKE_DOWN, at, put, without
from tests.rules.whole.situation import Whole, whole

RACE = put("rider", "group", "race")
NOVICE = put("rider", "group", "novice")
HIGH = (at("traction", 10), at("wheelie", 6), at("abs", 4), at("engine-braking", 5), at("throttle", "soft"))
NO_AIDS = (
    ("bike", (), {"name": "old", "electronics": "none", "suspension": "listed"}),
    put("session", "setup", {}),
)

SITUATIONS: list[Whole] = [
    whole("slicks, dry and warm, warmers soaked", set(), SLICKS, *soaked(60), RACE, track("30 C")),
    whole(
        "slicks, dry and warm, no warmers", {("race-tyres-without-heat", "warmers", "caution")}, SLICKS, RACE
    ),
    whole(
        "slicks, cold track, no warmers",
        {("race-tyres-without-heat", "warmers", "serious")},
        SLICKS,
        RACE,
        track("11 C"),
    ),
    whole("race treads, warm, no warmers: a note", set(), TREADED, RACE, track("26 C")),
    whole(
        "slicks in the wet, all aids high", {("slicks-in-the-wet", "front", "hold")}, SLICKS, on("wet"), *HIGH
    ),
    whole(
        "slicks on a drying line, all aids high",
        {("race-tyres-off-a-dry-track", "front", "serious")},
        SLICKS,
        on("drying"),
        *HIGH,
    ),
    whole(
        "race treads in standing water, all aids high",
        {("standing-water", "surface", "serious"), ("race-tyres-off-a-dry-track", "front", "serious")},
        TREADED,
        on("standing water"),
        *HIGH,
    ),
    whole("wets in the wet, all aids high", set(), WETS, on("wet"), *HIGH),
    whole("wets while it dries", {("rain-tyres-in-the-dry", "front", "caution")}, WETS, on("drying"), *HIGH),
    whole("wets on a dry track", {("rain-tyres-in-the-dry", "front", "serious")}, WETS),
    whole("intermediates in the damp, all aids high", set(), INTER, on("damp"), *HIGH),
    whole(
        "intermediates in standing water",
        {("standing-water", "surface", "serious"), ("intermediates-out-of-their-range", "front", "serious")},
        INTER,
        on("standing water"),
        *HIGH,
    ),
    whole("road tyres, cold dry morning, a novice", set(), both("road"), NOVICE, track("8 C"), *HIGH[:3]),
    whole("an old bike without aids in the wet on road tyres", set(), *NO_AIDS, both("road"), on("wet")),
    whole(
        "a new rear on a wet track",
        {("tyre-not-scrubbed-in", "rear", "serious")},
        on("wet"),
        put("tyres", "rear.scrubbed", False),
        *HIGH,
    ),
    whole(
        "cord on the rear, and nobody changed it",
        {("tyre-finished", "rear", "hold")},
        seen("rear", "cord"),
    ),
    whole(
        "an old wet at one end, a track-day tyre at the other",
        {("tyres-of-two-worlds", "tyres", "caution"), ("tyre-old", "front", "caution")},
        ends("wet", "track-day"),
        made("2019"),
        on("wet"),
        *HIGH,
    ),
    whole("a nail in the front", {("pressure-lost", "front", "serious")}, COLD_AT_20, **NAIL),
    whole(
        "road pressures on a track day",
        {("road-pressure-on-the-track", end, "caution") for end in ("front", "rear")},
        cold("2.50 bar", "2.90 bar"),
    ),
    whole("no hot pressures last time", set(), **UNREAD),
    whole(
        "back from the track, front far over its target, read at once",
        {("hot-pressure-off-its-target", "front", "serious")},
        TARGETS,
        *hot("2.80 bar", "2.40 bar"),
    ),
    whole("back from the track, on target", set(), TARGETS, *hot("2.42 bar", "2.38 bar")),
    whole(
        "nothing known of the tyres on a bike that counts down",
        {("tyre-kind-not-known", "tyres", "caution")},
        ("bike", (), BIKE_DOWN),
        at("traction", 3),
        at("wheelie", 2),
        at("abs", 1),
        without("tyres"),
        put("session", "warmers", None),
    ),
    whole(
        "ridden, warmers used, all in order",
        set(),
        SLICKS,
        USED,
        RIDDEN,
        put("session", "warmers_off", dt.time(10, 39)),
    ),
]
