"""Whole situations of a rider about to go out: fuel, work, falls, the organiser's day, the way home."""

import datetime as dt

from tests.rules.cases.brakes import lever
from tests.rules.cases.event import FORBIDDEN, LIMIT, LUNCH, TIMER, camera, noise
from tests.rules.cases.fuel import ADDED, LEARNT, MINUTES, TIMED, tank
from tests.rules.cases.incidents import ANY, CLEARED, KNOCK, earlier, happened, today
from tests.rules.cases.road import FIGURES, UP, cold
from tests.rules.cases.work import ON_RAIN, OTHER_TEETH, SLACK, TEETH, done, service, work
from tests.rules.situations import Change, at, put, went_before, without
from tests.rules.whole.situation import Whole, whole

EARLY, LATE = dt.datetime(2026, 5, 16, 9, 0), dt.datetime(2026, 5, 16, 10, 39)

NOTHING_DONE = (without("day", "entries"), without("session", "pressures"), without("session", "dash"))
UNDONE = {
    "not-signed-on",
    "briefing-not-attended",
    "inspection-not-passed",
    "cold-pressures-not-read",
    "dash-not-read",
}
PAPER = {
    ("not-signed-on", "entries", "hold"),
    ("briefing-not-attended", "entries", "hold"),
    ("inspection-not-passed", "entries", "hold"),
}
ROAD = (put("session", "kind", "road"), *FIGURES)
HOME = (*ROAD, cold(**UP))


def kind(word: str) -> Change:
    """Make it another kind of session."""
    return put("session", "kind", word)


SITUATIONS: list[Whole] = [
    whole("all is ready the evening before", set(), to_do=set()),
    whole("all is ready, going out", set(), to_do=set(), going_out=True),
    whole("all is ready, by minutes instead of laps", set(), *MINUTES, history=TIMED, going_out=True),
    whole("nothing is done yet the evening before", set(), *NOTHING_DONE, to_do=UNDONE),
    whole("nothing is done yet an hour and a half before", set(), *NOTHING_DONE, to_do=UNDONE, now=EARLY),
    whole(
        "nothing is done a minute before the start",
        {
            *PAPER,
            ("cold-pressures-not-read", "front", "caution"),
            ("dash-not-read", "read", "serious"),
        },
        *NOTHING_DONE,
        to_do=set(),
        now=LATE,
    ),
    whole(
        "nothing was done, and it was ridden",
        set(),
        *NOTHING_DONE,
        put("session", "parked", dt.time(10, 59)),
        to_do=set(),
        going_out=True,
    ),
    whole("a race with all done", set(), kind("race"), put("rider", "group", "race"), going_out=True),
    whole(
        "a race that is a lap short of its reserve",
        {("fuel-short-at-the-flag", "fuel", "caution")},
        kind("race"),
        ADDED,
        tank(9),
        history=LEARNT,
    ),
    whole("a start practice with all done", set(), kind("start practice"), going_out=True),
    whole(
        "dry before the flag, on a rate that refills taught",
        {("fuel-short-at-the-flag", "fuel", "hold")},
        ADDED,
        tank(6),
        history=LEARNT,
    ),
    whole(
        "dry before the flag, on a rate that nobody has learnt",
        {("fuel-short-at-the-flag", "fuel", "caution")},
        tank(6),
    ),
    whole(
        "other wheels for the rain, nobody torqued them yet",
        set(),
        history=ON_RAIN,
        to_do={"wheel-work-not-checked", "chain-slack-not-measured"},
    ),
    whole(
        "other wheels for the rain, nobody torqued them, going out",
        {
            ("wheel-work-not-checked", "wheels", "hold"),
            ("chain-slack-not-measured", "chain", "serious"),
        },
        history=ON_RAIN,
        going_out=True,
    ),
    whole(
        "other wheels for the rain, torqued and the chain measured",
        set(),
        work("wheel out", torqued=True, pumped=True),
        SLACK,
        history=ON_RAIN,
        going_out=True,
    ),
    whole(
        "calipers off last session, no tick",
        {("wheel-work-not-checked", "wheels", "hold")},
        history=went_before(done("caliper")),
        going_out=True,
    ),
    whole(
        "other sprockets, long before", set(), TEETH, history=OTHER_TEETH, to_do={"chain-slack-not-measured"}
    ),
    whole(
        "other sprockets, ten minutes before",
        {("chain-slack-not-measured", "chain", "serious")},
        TEETH,
        history=OTHER_TEETH,
        now=LATE,
    ),
    whole(
        "oil changed, not looked at hot after the first run",
        {("oil-work-not-checked-hot", "oil", "serious")},
        history=went_before(done("filter", torqued=True)),
    ),
    whole("a soft lever", {("brake-lever-not-firm", "lever", "hold")}, lever("spongy hot")),
    whole(
        "a lever to the bar, old fluid and thin pads",
        {
            ("brake-lever-not-firm", "lever", "hold"),
            ("brake-fluid-old", "brake-fluid", "caution"),
            ("pads-below-the-least", "front", "hold"),
        },
        lever("to the bar"),
        service("brake-fluid", last=dt.date(2024, 5, 1)),
        put("session", "front_pads", "1.9 mm"),
        put("day", "limits.pads", "2.0 mm"),
    ),
    whole(
        "the bike fell over in the paddock",
        {("fall-at-standstill", "bike", "serious")},
        history=went_before(earlier(moving=False)),
    ),
    whole(
        "the bike fell over where any fall is inspected",
        {("fall-not-inspected", "bike", "hold")},
        ANY,
        history=went_before(earlier(moving=False)),
    ),
    whole(
        "a fall while moving, head not hit",
        {("fall-not-inspected", "bike", "hold")},
        history=went_before(earlier(moving=True, head_contact=False)),
    ),
    whole(
        "a fall while moving, the head was hit, nothing answered since",
        {
            ("fall-not-inspected", "bike", "hold"),
            ("concussion-suspected", "rider", "hold"),
            ("helmet-hit", "helmet", "hold"),
        },
        history=went_before(earlier(moving=True, head_contact=True)),
    ),
    whole(
        "a knock on another bike this morning, cleared without another helmet",
        {("helmet-hit", "helmet", "hold")},
        rider_today=today(earlier(**{**KNOCK, **CLEARED, "helmet_replaced": False})),
    ),
    whole(
        "a fall, inspected again, the rider cleared with another helmet",
        set(),
        history=went_before(earlier(**KNOCK, **CLEARED, inspected_again=dt.time(10, 13))),
        going_out=True,
    ),
    whole(
        "two falls today and a tired rider",
        {
            ("fall-not-inspected", "bike", "hold"),
            ("two-falls-in-a-day", "rider", "serious"),
            ("rider-spent", "rider", "serious"),
        },
        happened(moving=True, head_contact=False),
        put("session", "fatigue", 4),
        history=went_before(earlier(moving=True, head_contact=False)),
    ),
    whole(
        "unwell in the heat",
        {("rider-unwell", "rider", "serious")},
        rider_today=today(earlier("unwell")),
    ),
    whole(
        "a leak and the oil lamp",
        {("leak-not-mended", "bike", "hold"), ("engine-lamp-not-mended", "bike", "hold")},
        happened("leak"),
        put("session", "incidents.2", {"what": "warning lamp", "lamp": "oil"}),
    ),
    whole(
        "timing forbidden, timer and helmet camera on",
        {
            ("timer-where-timing-is-forbidden", "lap-timer", "serious"),
            ("camera-not-allowed-so", "camera", "serious"),
        },
        FORBIDDEN,
        TIMER,
        *camera("helmet"),
        going_out=True,
    ),
    whole(
        "too loud",
        {("noise-over-the-limit", "noise", "hold")},
        LIMIT,
        noise("103 dB(A)"),
    ),
    whole("the first laps after lunch are a note", set(), LUNCH),
    whole(
        "a pit limit that the limiter cannot hold",
        {("pit-limiter-over-the-limit", "pit-limiter", "caution")},
        put("day", "limits.pit_lane", "30 km/h"),
    ),
    whole("the road home, pumped up", set(), *HOME, going_out=True),
    whole(
        "the road home at track pressures, ABS off, in the map for the dry track",
        {
            ("road-home-at-track-pressure", "front", "caution"),
            ("road-home-at-track-pressure", "rear", "caution"),
            ("abs-off-on-the-road", "abs", "caution"),
            ("track-mode-on-the-road", "mode", "caution"),
        },
        *ROAD,
        at("abs", 0),
        put("rider", "group", "advanced"),
        put("bike", "modes.open.use", "dry"),
    ),
    whole(
        "the road home without paper, fuel or limiter figure",
        set(),
        *HOME,
        without("day", "entries"),
        without("session", "filled_to_brim"),
        without("session", "setup.controls.pit-limiter"),
        going_out=True,
    ),
]
