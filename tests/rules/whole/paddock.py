"""Whole situations that a coach would shout about, and ones that only sound bad."""

import datetime as dt

from tests.rules.cases.aids import NOVICE, WET, all_at
from tests.rules.cases.nets import RACE
from tests.rules.cases.road import HOME, UP, cold
from tests.rules.cases.starting import PLAN
from tests.rules.cases.tyres import SLICKS, USED
from tests.rules.situations import at, put, without
from tests.rules.whole.situation import Whole, whole

SITUATIONS: list[Whole] = [
    whole(
        "tyres that are all but flat, and nobody planned it so",
        {
            ("starting-pressure-too-low", "front", "serious"),
            ("starting-pressure-too-low", "rear", "serious"),
        },
        *PLAN,
        cold(front="1.2 bar", rear="1.1 bar"),
    ),
    whole(
        "the gauge says another thing than the plan",
        {("starting-pressure-off-the-plan", "front", "caution")},
        *PLAN,
        cold(front="1.8 bar", rear="1.9 bar"),
    ),
    whole(
        "nobody wrote down what the aids are set to, going out",
        {("aids-not-set", "controls", "caution"), ("pit-limiter-figure-missing", "pit-limiter", "caution")},
        put("session", "setup.controls", {}),
        going_out=True,
    ),
    whole(
        "home by road with ABS off",
        {("abs-off-on-the-road", "abs", "caution")},
        *HOME,
        cold(**UP),
        at("abs", 0),
    ),
    whole(
        "home by road in the rain with ABS off, a novice",
        {
            ("front-wheel-without-abs-in-the-wet", "abs", "hold"),
            ("abs-off-on-the-road", "abs", "serious"),
        },
        *HOME,
        cold(**UP),
        at("abs", 0),
        at("engine-braking", 4),
        WET,
        NOVICE,
    ),
    whole(
        "a race on slicks off the warmers, nobody measured the track",
        set(),
        *(put("session", "kind", "race"), RACE),
        SLICKS,
        USED,
        without("session", "track"),
        cold(front="2.1 bar", rear="1.4 bar"),
        going_out=True,
    ),
    whole(
        "a wet session that a novice rode with nothing on",
        set(),
        *all_at("off", "off", 0),
        WET,
        NOVICE,
        at("engine-braking", 1),
        at("throttle", "sharp"),
        put("session", "parked", dt.time(10, 59)),
    ),
]
