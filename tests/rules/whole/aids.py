"""Whole situations of aids and suspension: bikes that count up, down or do not say; all groups and tracks."""

import datetime as dt

from tests.rules.cases.aids import DAMP, DRYING, NOVICE, WET, all_at, traction
from tests.rules.cases.before import RIDDEN, copied, ridden
from tests.rules.cases.dash import KEEPS, dash, event, shows
from tests.rules.cases.incidents import happened
from tests.rules.cases.method import LEGS, both_legs, turned
from tests.rules.cases.nets import ADVANCED, COLD, RACE, WARMERS
from tests.rules.cases.suspension import CLEAR_8, DAMPER, FORK_12, NO_TOP_OUT, WEIGHT, sag, theirs
from tests.rules.cases.wheels import A_RACE, ARMED, REAR_OFF, SHIFTER, STRONG, braking, noted, starts
from tests.rules.situations import at, counts_down, put, without
from tests.rules.whole.situation import Whole, whole

BARE = (
    (
        "bike",
        (),
        {"name": "no aids", "electronics": "none", "suspension": "none", "tank": {"capacity": "17 l"}},
    ),
    put("session", "setup", {}),
    without("session", "dash"),
)
STANDING = put("session", "surface", "standing water")
AUTOMATIC = put("session", "setup.damping", "automatic")
NO_DIRECTION = tuple(
    without("bike", f"controls.{name}.{key}")
    for name, key in (
        ("traction", "most_help"),
        ("wheelie", "most_help"),
        ("abs", "most_help"),
        ("throttle", "most_help"),
        ("engine-braking", "frees_most"),
    )
)
UNSAID = {
    ("direction-not-known", "traction", "caution"),
    ("direction-not-known", "wheelie", "caution"),
    ("direction-not-known", "abs", "caution"),
    ("direction-not-known", "throttle", "caution"),
    ("freeing-end-not-known", "engine-braking", "caution"),
}

SITUATIONS: list[Whole] = [
    whole(
        "a novice in the rain on a set-up of a quick dry day",
        {
            ("aid-off-in-the-wet", "traction", "hold"),
            ("front-wheel-without-abs-in-the-wet", "abs", "hold"),
            ("all-aids-near-least", "controls", "serious"),
            ("rear-without-abs-and-little-freed", "abs", "serious"),
            ("sharp-map-in-the-wet", "throttle", "serious"),
        },
        WET,
        NOVICE,
        *all_at("off", "off", 0),
        braking(1),
        at("throttle", "sharp"),
    ),
    whole(
        "the same on a bike that counts down, advanced",
        {
            ("all-aids-near-least", "controls", "serious"),
            ("rear-without-abs-and-little-freed", "abs", "serious"),
            ("sharp-map-in-the-wet", "throttle", "caution"),
        },
        *counts_down(WET, ADVANCED, *all_at("off", "off", "off"), braking(5), at("throttle", "sharp")),
    ),
    whole(
        "the high numbers of a bike that counts down, in the wet",
        {
            ("little-traction-help-in-the-wet", "traction", "serious"),
            ("engine-braking-holds-in-the-wet", "engine-braking", "serious"),
        },
        *counts_down(WET, traction(9), braking(5)),
    ),
    whole("the same numbers on one that counts up", set(), WET, traction(9), at("wheelie", 2), braking(5)),
    whole("nobody knows which end is which", UNSAID, *NO_DIRECTION, WET),
    whole(
        "nobody knows, and the dash is not read",
        UNSAID,
        *NO_DIRECTION,
        without("session", "dash"),
        to_do={"dash-not-read"},
    ),
    whole(
        "a bike without electronics in standing water",
        {("standing-water", "surface", "serious")},
        *BARE,
        STANDING,
        NOVICE,
        going_out=True,
    ),
    whole(
        "a racer on slicks without nets, warm and dry",
        set(),
        RACE,
        *all_at(0, "off", 0),
        at("throttle", "sharp"),
        put("tyres", "rear.kind", "slick"),
        put("tyres", "front.kind", "slick"),
        WARMERS,
    ),
    whole(
        "the same before the sun is up, without warmers",
        {
            ("nets-thin-together", "controls", "serious"),
        },
        RACE,
        COLD,
        *all_at(0, "off", 0),
    ),
    whole(
        "an advanced rider as the table starts, cold with warmers",
        set(),
        ADVANCED,
        COLD,
        WARMERS,
        *all_at(5, 4, 3),
    ),
    whole(
        "an intermediate with the front wheel alone on a drying track",
        {("front-wheel-without-abs", "abs", "serious")},
        DRYING,
        at("abs", 1),
        traction(6),
    ),
    whole(
        "a novice on a strong bike with wheelie control off",
        {
            ("little-traction-help-for-a-novice", "traction", "caution"),
            ("wheelie-off-on-a-strong-bike", "wheelie", "caution"),
        },
        NOVICE,
        STRONG,
        at("wheelie", "off"),
        traction(5),
    ),
    whole(
        "a race start with launch armed and wheelie control off",
        {("wheelie-off-with-launch-armed", "wheelie", "serious")},
        A_RACE,
        RACE,
        STRONG,
        *ARMED,
        at("wheelie", "off"),
    ),
    whole(
        "launch left armed for a wet track day",
        {("launch-armed-where-nobody-starts", "launch", "serious")},
        WET,
        *ARMED,
    ),
    whole(
        "four practice starts on end, in the damp",
        {
            ("starts-too-close-together", "clutch", "serious"),
            ("launch-armed-without-grip", "launch", "caution"),
        },
        put("session", "kind", "start practice"),
        DAMP,
        *ARMED,
        noted(starts(4, dt.time(10, 34))),
    ),
    whole(
        "false neutrals, a lamp and a shifter that does both ways",
        {
            ("quick-downshift-with-false-neutrals", "shifter", "serious"),
            ("aid-lamp-lit", "ABS", "serious"),
        },
        *SHIFTER,
        put(
            "session",
            "incidents",
            {
                "1": {"what": "false neutral", "count": 2, "at": dt.time(9, 40)},
                "2": {"what": "warning lamp", "lamp": "ABS", "at": dt.time(9, 50)},
            },
        ),
    ),
    whole(
        "the dash of a wet day shows another mode and less help",
        {
            ("dash-differs-from-the-plan", "traction", "hold"),
            ("dash-differs-from-the-plan", "engine-braking", "serious"),
            ("dash-in-another-riding-mode", "mode", "hold"),
        },
        WET,
        put("session", "setup.mode", "showers"),
        dash("traction", 7),
        dash("engine-braking", 4),
        shows("open"),
    ),
    whole(
        "a stall on a bike that keeps everything, then a battery that was off",
        {("dash-not-read", "read", "serious")},
        *KEEPS,
        put(
            "session",
            "events",
            {"1": {"what": "stall", "at": dt.time(10, 38)}, "2": {"what": "battery", "at": dt.time(10, 39)}},
        ),
        going_out=True,
    ),
    whole(
        "a stall on a bike that keeps everything", set(), *KEEPS, event("stall"), to_do=set(), going_out=True
    ),
    whole(
        "everything at once is wrong with the suspension",
        {
            ("fork-legs-differ", "front-rebound-left", "serious"),
            ("steering-damper-nearly-closed", "steering-damper", "serious"),
            ("raised-beyond-what-is-clear", "front", "hold"),
            ("rider-sag-out-of-its-window", "front", "serious"),
            ("damping-near-its-end", "rear-rebound", "caution"),
        },
        *LEGS,
        DAMPER,
        *both_legs(1.5),
        turned("front-rebound-right", 2),
        turned("rear-rebound", 1),
        turned("steering-damper", 0),
        FORK_12,
        CLEAR_8,
        NO_TOP_OUT,
        sag(12),
    ),
    whole("automatic damping asks nothing of clicks", set(), AUTOMATIC, turned("front-rebound", 0)),
    whole(
        "the same by hand", {("damping-near-its-end", "front-rebound", "caution")}, turned("front-rebound", 0)
    ),
    whole(
        "all was turned at once after one bad session",
        {
            ("several-changes-at-once", "changes", "caution"),
            ("several-aids-lowered", "aids", "caution"),
            ("step-too-large", "front-rebound", "caution"),
            ("damping-before-sag-and-pressures", "damping", "caution"),
        },
        traction(7),
        at("wheelie", 4),
        turned("front-rebound", 6),
        turned("front-preload", 8),
        **copied(),
    ),
    whole(
        "the same was turned for the rain",
        set(),
        DAMP,
        traction(7),
        at("wheelie", 4),
        turned("front-rebound", 6),
        **copied(),
    ),
    whole(
        "the same, and it was ridden",
        set(),
        traction(7),
        at("wheelie", 4),
        turned("front-rebound", 6),
        RIDDEN,
        **copied(),
    ),
    whole(
        "a set-up of a friend who is a lot heavier",
        {("set-up-of-another-rider", "rider", "caution")},
        WEIGHT,
        **theirs(),
    ),
    whole(
        "the rear tyre is worn, and traction is low for a quick rider",
        {("little-traction-help-on-a-poor-rear-tyre", "traction", "caution")},
        ADVANCED,
        traction(2),
        **ridden({"look.rear.seen": ["flat centre"]}),
    ),
    whole(
        "no ABS at the rear and the engine holds, in standing water",
        {
            ("standing-water", "surface", "serious"),
            ("rear-without-abs-and-little-freed", "abs", "serious"),
        },
        STANDING,
        REAR_OFF,
        at("abs", 2),
        braking(2),
    ),
    whole(
        "nothing is known at all",
        {
            ("surface-not-known", "surface", "caution"),
            ("too-little-known", "bike", "caution"),
            ("too-little-known", "rider", "caution"),
            ("tyre-kind-not-known", "tyres", "caution"),
        },
        without("bike"),
        without("rider"),
        without("tyres"),
        without("session", "surface"),
    ),
    whole(
        "a lamp in the wet is for a novice the aid that is off",
        {("aid-lamp-lit", "traction", "hold")},
        WET,
        NOVICE,
        traction(9),
        happened("warning lamp", lamp="traction"),
    ),
]
