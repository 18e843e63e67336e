"""Stories about the verdict: ordinary days of many kinds, and days on which each theme has its say."""

import datetime as dt

from paddock_tui.facts.situation import NotUnderstood
from paddock_tui.records.paths import Ref
from tests.rules.cases.aids import NO_AIDS
from tests.rules.cases.brakes import lever
from tests.rules.cases.event import LIMIT, noise
from tests.rules.cases.fuel import ENTERED, LEARNT, tank
from tests.rules.cases.road import FIGURES, UP, cold
from tests.rules.cases.work import SLACK, work
from tests.rules.situations import Change, at, counts_down, put, without
from tests.rules.stories.story import QUIET, Story, clean, group, hot, last, story, surface

BEFORE_THE_START = dt.datetime(2026, 5, 16, 10, 31)
TRACK_SLICKS = (
    put("tyres", "front.kind", "slick"),
    put("tyres", "rear.kind", "slick"),
    put("session", "warmers", "used"),
    put("session", "warmers_on", dt.time(9, 30)),
)
RAIN_TYRES = (put("tyres", "front.kind", "wet"), put("tyres", "rear.kind", "wet"))
RAIN_SET_UP = (
    surface("wet"),
    put("session", "setup.mode", "showers"),
    put("session", "setup.controls.throttle", "soft"),
    at("traction", 10),
    at("wheelie", 6),
    at("engine-braking", 5),
    put("session", "checks.tread-over-marks", {"status": "ok"}),
)
TORQUED = (work("wheel out", torqued=True, pumped=True), SLACK)
ROAD = (
    put("session", "kind", "road"),
    *FIGURES,
    cold(**UP),
    put("session", "checks.road-ready", {"status": "ok"}),
    put("session", "checks.tread-over-marks", {"status": "ok"}),
)
RACING = (
    put("session", "kind", "race"),
    group("race"),
    put("session", "checks.declared", {"status": "ok"}),
    put("session", "checks.race-paper", {"status": "ok"}),
)
NOVICE_READ = (group("novice"), put("day", "passing", "on the straights only; behind the instructor"))


def measured(end: str, millimetres: float) -> Change:
    """Measure rider sag at one end."""
    pushed = f"{600 - millimetres:g} mm"
    return put("session", f"sag.{end}.rider", {"extended": "600 mm", "pushed": pushed, "lifted": pushed})


CLEAN = [
    clean("the first outing on record, everything looked at", before=()),
    clean("the third outing of a dry day"),
    clean("hot pressures read and on no target yet", before=(QUIET, {**QUIET, **hot()})),
    clean("advanced without ABS, dry", group("advanced"), at("abs", "off")),
    clean("a racer on slicks from warmers", *RACING, *TRACK_SLICKS),
    clean("a novice behind the instructor in rain", *NOVICE_READ, *RAIN_SET_UP, *RAIN_TYRES),
    clean("a novice in the dry with the help of the table", *NOVICE_READ, at("traction", 7)),
    clean(
        "wet to dry at noon, other wheels torqued and the chain measured",
        *TORQUED,
        before=(QUIET, {**QUIET, "surface": "wet", "tyres": "rain"}),
    ),
    clean(
        "a stock bike of which only the levels are known",
        without("bike", "adjusters"),
        without("session", "setup.adjusters"),
    ),
    clean("a bike without electronics, raced", *NO_AIDS, *RACING),
    clean("a bike that counts down", *counts_down()),
    clean("in the van both ways", put("day", "travel", "van")),
    clean("two riders, one bike", before=(QUIET, {**QUIET, "rider": "tobin"})),
    clean(
        "pressures bled hot after the last outing",
        before=last(
            pressures__hot={
                "front": "2.55 bar",
                "rear": "2.30 bar",
                "at": dt.time(9, 31),
                "set_to_front": "2.40 bar",
                "set_to_rear": "2.10 bar",
            }
        ),
    ),
    clean("a cold dry morning on track-day tyres", put("session", "track", "12 C")),
    clean("the road home with everything up", *ROAD),
    clean("sag in the middle of the window", measured("front", 30), measured("rear", 30)),
    clean("sag at the edge of the window", measured("front", 35), measured("rear", 25)),
    clean("damping three clicks from its end", put("session", "setup.adjusters.front-rebound", 3)),
    clean("fuel with just the reserve left", tank(8.4), ENTERED),
    clean("three decibels and more under the limit", LIMIT, noise("98 dB(A)")),
    clean(
        "pads a little over what the organiser asks",
        put("session", "front_pads", "3.4 mm"),
        put("session", "rear_pads", "3.4 mm"),
        put("day", "limits.pads", "2.0 mm"),
    ),
    clean(
        "a run over the kerb, tarmac beyond it",
        before=last(
            incidents__1={"what": "off the track", "where": "tarmac", "at": dt.time(9, 20)}, happened="noted"
        ),
    ),
    clean("a little tired in the afternoon", put("session", "fatigue", 3)),
]

TOLD = [
    story(
        "nobody looked round the bike since the last outing",
        "NOT YET",
        set(),
        without("session", "checks.walked-round"),
    ),
    story(
        "nobody said what happened in the last outing",
        "NOT YET",
        set(),
        before=(QUIET, {key: value for key, value in QUIET.items() if key != "happened"}),
    ),
    story(
        "the surface is not known",
        "CARE",
        {("surface-not-known", "surface", "caution")},
        without("session", "surface"),
    ),
    story(
        "the pressures were not read, the evening before", "NOT YET", set(), without("session", "pressures")
    ),
    story(
        "the pressures were not read, nine minutes before the start",
        "CARE",
        {("cold-pressures-not-read", "front", "caution")},
        without("session", "pressures"),
        now=BEFORE_THE_START,
    ),
    story("no paper yet, the evening before", "NOT YET", set(), without("day", "entries")),
    story(
        "no paper, nine minutes before the start",
        "HOLD",
        {
            ("not-signed-on", "entries", "hold"),
            ("briefing-not-attended", "entries", "hold"),
            ("inspection-not-passed", "entries", "hold"),
        },
        without("day", "entries"),
        now=BEFORE_THE_START,
    ),
    story(
        "wheels out for the rain and not torqued, the evening before",
        "NOT YET",
        set(),
        before=(QUIET, {**QUIET, "surface": "wet", "tyres": "rain"}),
    ),
    story(
        "pounds typed as bar",
        "HOLD",
        {("impossible-figure", "pressures.cold.front", "hold")},
        put("session", "pressures.cold.front", "31 bar"),
    ),
    story(
        "a track of 120 degrees",
        "CARE",
        {("impossible-figure", "track", "caution")},
        put("session", "track", "120 C"),
    ),
    story(
        "fuel runs dry on a rate that refills taught",
        "HOLD",
        {("fuel-short-at-the-flag", "fuel", "hold")},
        tank(6),
        put("session", "fuel_added", "6.4 l"),
        history=LEARNT,
    ),
    story(
        "fuel runs dry on the entered rate",
        "CARE",
        {("fuel-short-at-the-flag", "fuel", "serious")},
        tank(6),
        ENTERED,
    ),
    story(
        "a novice in the wet without ABS at the front",
        "HOLD",
        {("front-wheel-without-abs-in-the-wet", "abs", "hold")},
        *NOVICE_READ,
        *RAIN_SET_UP,
        *RAIN_TYRES,
        at("abs", 1),
    ),
    story(
        "traction at three of ten in the wet",
        "CARE",
        {
            ("little-traction-help-in-the-wet", "traction", "serious"),
            ("dry-set-up-in-the-wet", "wet-package", "caution"),
        },
        *RAIN_SET_UP,
        put("session", "setup.mode", "open"),
        *RAIN_TYRES,
        at("traction", 3),
    ),
    story(
        "slicks in the wet",
        "HOLD",
        {("slicks-in-the-wet", "front", "hold"), ("dry-set-up-in-the-wet", "wet-package", "caution")},
        *RAIN_SET_UP,
        *TRACK_SLICKS,
    ),
    story(
        "the lever came to the bar in the last outing",
        "HOLD",
        {("brake-lever-not-firm", "lever", "hold")},
        before=last(lever="to the bar"),
    ),
    story(
        "the lever is spongy now", "HOLD", {("brake-lever-not-firm", "lever", "hold")}, lever("spongy hot")
    ),
    story(
        "a leak that nobody answered, two outings ago",
        "HOLD",
        {("leak-not-mended", "bike", "hold")},
        before=({**QUIET, "incidents.1": {"what": "leak", "at": dt.time(9, 0)}, "happened": "noted"}, QUIET),
    ),
    story(
        "a fall this morning, not inspected again",
        "HOLD",
        {("fall-not-inspected", "bike", "hold")},
        before=last(
            happened="noted",
            incidents__1={"what": "fall", "moving": True, "head_contact": False, "at": dt.time(9, 20)},
        ),
    ),
    story(
        "the head was hit on Saturday, and no doctor since",
        "HOLD",
        {
            ("fall-not-inspected", "bike", "hold"),
            ("concussion-suspected", "rider", "hold"),
            ("helmet-hit", "helmet", "hold"),
        },
        before=last(
            happened="noted",
            incidents__1={"what": "fall", "moving": True, "head_contact": True, "at": dt.time(9, 20)},
        ),
    ),
    story(
        "cord seen after the last outing",
        "HOLD",
        {("tyre-finished", "rear", "hold")},
        before=last(look__rear__seen=["cord"]),
    ),
    story(
        "tread at the set's own limit, in the damp",
        "HOLD",
        {("tread-at-its-limit", "rear", "hold")},
        surface("damp"),
        at("traction", 8),
        put("tyres", "rear.worn_at", "1.6 mm"),
        put("tyres", "rear.tread_middle", "1.5 mm"),
        put("session", "checks.tread-over-marks", {"status": "ok"}),
    ),
    story("a spent rider", "CARE", {("rider-spent", "rider", "serious")}, put("session", "fatigue", 4)),
    story(
        "slicks on the road home",
        "HOLD",
        {("tyre-not-for-the-road", "front", "hold"), ("tyre-not-for-the-road", "rear", "hold")},
        *ROAD,
        put("tyres", "front.kind", "slick"),
        put("tyres", "rear.kind", "slick"),
    ),
    story(
        "a third click of four is nowhere near an end",
        "NO FINDINGS",
        set(),
        put("bike", "adjusters.front-rebound.range", [1, 4]),
        put("session", "setup.adjusters.front-rebound", 2),
    ),
    story(
        "a word that this program does not know",
        "NOT YET",
        set(),
        not_understood=(NotUnderstood(Ref("session", "2026-05-16-3-kestrel"), ("surface_grip",)),),
    ),
    story(
        "a session of tomorrow whose bike file has a key of a newer program",
        "NOT YET",
        set(),
        not_understood=(NotUnderstood(Ref("bike", "kestrel"), ("controls", "traction", "recall")),),
    ),
    story(
        "the direction of traction control is not known",
        "CARE",
        {("direction-not-known", "traction", "caution")},
        without("bike", "controls.traction.most_help"),
    ),
    story(
        "an intermediate without ABS at the front in the dry",
        "CARE",
        {("front-wheel-without-abs", "abs", "caution")},
        at("abs", 1),
        before=({**QUIET, "setup.controls.abs": 1}, {**QUIET, "setup.controls.abs": 1}),
    ),
    story(
        "the rear of a novice without ABS on a cold track",
        "CARE",
        {("rear-wheel-without-abs", "abs", "serious")},
        *NOVICE_READ,
        at("traction", 8),
        put("session", "track", "12 C"),
        put("bike", "controls.abs.effects", {"3": {"rear": "off"}}),
        at("abs", 3),
    ),
    story(
        "the last lap on an own rate: under the reserve only",
        "CARE",
        {("fuel-short-at-the-flag", "fuel", "caution")},
        tank(8),
        ENTERED,
    ),
]

STORIES: list[Story] = [*CLEAN, *TOLD]
