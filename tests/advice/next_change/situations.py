"""Situations with a known best answer: what was changed, felt, measured and written, and what comes of it."""

import datetime as dt
from typing import Any

import attrs

from paddock_tui.facts.past import History
from tests.advice.next_change.cases import BEFORE, BIKE, SETUP, TYRES, felt, hot, sag, seen
from tests.rules.situations import Change, Data, put, went_before, without

FROM = put("session", "copied_from", "before-3")
NOVICE, RACE = put("rider", "group", "novice"), put("rider", "group", "race")
WET = put("session", "surface", "wet")


def turned(**values: float) -> Change:
    """Adjusters at other values than usual."""
    named = {name.replace("_", "-"): value for name, value in values.items()}
    return put("session", "setup.adjusters", {**SETUP["adjusters"], **named})


def setup(**values: Any) -> Data:
    """Give the usual set-up with other values, of adjusters and controls by their names."""
    made = {key: dict(one) if isinstance(one, dict) else one for key, one in SETUP.items()}
    for name, value in values.items():
        key = name.replace("_", "-")
        table = next((made[one] for one in ("adjusters", "controls") if key in made[one]), made)
        table[key if key in table else name] = value
    return made


def last(**more: Any) -> History:
    """Give three sessions before, the last of them with other values."""
    return went_before(
        BEFORE, BEFORE, {**BEFORE, **{key.replace("__", "."): one for key, one in more.items()}}
    )


def several(*symptoms: Data) -> Change:
    """Several symptoms of one session."""
    return put("session", "symptoms", {str(place): one for place, one in enumerate(symptoms, 1)})


def accepted(control: str) -> Change:
    """A risk accepted about a control."""
    return put("session", "accepted", {"little-help": {control: {"reason": "dry line", "facts": "dry"}}})


AUTOMATIC: tuple[Change, ...] = (
    put(
        "bike",
        "damping.automatic",
        {
            "kind": "semi-active",
            "closes": {
                name: True for name in BIKE["adjusters"] if "preload" not in name and name != "damper"
            },
            "offsets": {
                "front": {"range": [-4, 4], "firmest": 4},
                "drive": {"range": [-4, 4], "firmest": -4},
            },
        },
    ),
    put("session", "setup.damping", "automatic"),
    put("session", "setup.offsets", {"front": 0, "drive": 0}),
)


@attrs.frozen
class Expected:
    """One situation and its answer: cause, kind, and what is set or asked, each by its path."""

    name: str
    changes: tuple[Change, ...]
    cause: str
    kind: str
    puts: Data = attrs.field(factory=dict)
    asks: str = ""
    history: History | None = None


def _of(name: str, cause: str, kind: str, *changes: Change, **more: Any) -> Expected:
    return Expected(name, changes, cause, kind, **more)


def _adjuster(name: str, value: float) -> Data:
    return {f"adjusters.{name}": value}


def _incident(**values: Any) -> Change:
    return put("session", "incidents.1", values)


_FELL = {"what": "fall", "moving": True, "head_contact": False, "inspected_again": dt.time(11, 30)}
_ASKED_NOT = went_before(BEFORE, BEFORE, {key: one for key, one in BEFORE.items() if key != "did"})
_SPRING: tuple[Change, ...] = (
    turned(front_preload=14),
    sag("front", 43.0, preload=14),
    sag("front", 25.0, "alone", preload=14),
    put("bike", "front.spring", "9.0 N/mm"),
    put("bike", "front.technician_free_sag", "18 mm"),
    put("rider", "weight", "80 kg"),
)

STOPS = [
    _of("lever to the bar", "stop", "MEND", put("session", "lever", "to the bar"), felt("dives")),
    _of("lever spongy hot", "stop", "MEND", put("session", "lever", "spongy hot")),
    _of("brakes fade", "stop", "MEND", felt("brakes fade")),
    _of("throttle sticks", "stop", "MEND", felt("throttle sticks"), hot("2.70 bar", "2.20 bar")),
    _of("engine cuts out", "stop", "MEND", felt("engine cuts out")),
    _of("clutch slips", "stop", "MEND", felt("clutch slips")),
    _of("jumps out of gear", "stop", "MEND", felt("jumps out of gear")),
    _of("a leak", "stop", "MEND", _incident(what="leak")),
    _of("oil lamp", "stop", "MEND", _incident(what="warning lamp", lamp="oil")),
    _of("fall not inspected", "stop", "MEND", _incident(what="fall", moving=True, head_contact=False)),
    _of("head contact", "stop", "REST", _incident(**{**_FELL, "head_contact": True})),
    _of("fainted", "stop", "REST", _incident(what="unwell", signs=["fainted"])),
    _of("spent", "stop", "REST", put("session", "fatigue", 5), felt("dives")),
    _of("two falls", "stop", "REST", put("session", "incidents", {"1": _FELL, "2": _FELL})),
    _of("one fall, inspected", "none", "SAME", put("session", "incidents", {"1": _FELL})),
    _of(
        "fatigue of three",
        "table",
        "CHANGE",
        put("session", "fatigue", 3),
        felt("dives"),
        puts=_adjuster("front-compression", 10),
    ),
]

DANGERS = [
    _of(
        "shake after more damper",
        "danger",
        "CHANGE",
        FROM,
        turned(damper=8),
        felt("bars wobble"),
        puts=_adjuster("damper", 12),
    ),
    _of(
        "shake after the fork went through",
        "danger",
        "CHANGE",
        FROM,
        put("session", "setup.fork_height", "6 mm"),
        felt("bars wobble"),
        puts={"fork_height": "4 mm"},
    ),
    _of(
        "shake after a block of two",
        "danger",
        "CHANGE",
        FROM,
        put("session", "setup.fork_height", "6 mm"),
        turned(damper=8),
        felt("bars wobble"),
        puts={"fork_height": "4 mm", "adjusters.damper": 12},
    ),
    _of(
        "weave after less rebound",
        "danger",
        "CHANGE",
        FROM,
        turned(rear_rebound=16),
        felt("weaves"),
        puts=_adjuster("rear-rebound", 12),
    ),
    _of(
        "tuck after less preload",
        "danger",
        "CHANGE",
        FROM,
        turned(front_preload=3),
        felt("tucks"),
        puts=_adjuster("front-preload", 6),
    ),
    _of(
        "front locks after compression out",
        "danger",
        "CHANGE",
        FROM,
        turned(front_compression=18),
        felt("front locks"),
        puts=_adjuster("front-compression", 12),
    ),
    _of(
        "rear locks after engine braking",
        "danger",
        "CHANGE",
        FROM,
        put("session", "setup.controls.engine-braking", 1),
        felt("rear locks"),
        puts={"controls.engine-braking": 3},
    ),
    _of(
        "danger before pressures",
        "danger",
        "CHANGE",
        FROM,
        turned(damper=8),
        felt("bars wobble"),
        hot("2.70 bar", "2.20 bar"),
        puts=_adjuster("damper", 12),
    ),
    _of(
        "danger before a first ride differs",
        "danger",
        "CHANGE",
        FROM,
        turned(damper=8),
        felt("bars wobble", each_lap="differs"),
        puts=_adjuster("damper", 12),
    ),
    _of(
        "a novice's shake too",
        "danger",
        "CHANGE",
        NOVICE,
        FROM,
        turned(damper=8),
        felt("bars wobble"),
        puts=_adjuster("damper", 12),
    ),
    _of(
        "session before not answered",
        "danger",
        "ASK",
        FROM,
        turned(damper=8),
        felt("bars wobble"),
        asks="before-3 did",
        history=_ASKED_NOT,
    ),
    _of(
        "shake was there before",
        "table",
        "ASK",
        FROM,
        turned(damper=8),
        felt("vague"),
        history=last(did="noted", symptoms__1={"what": "vague", "end": "front"}),
        asks="symptoms.1.answer",
    ),
    _of(
        "the set-up before had a danger",
        "table",
        "LOOK",
        FROM,
        turned(damper=8),
        felt("bars wobble", "no"),
        history=last(did="noted", symptoms__1={"what": "weaves"}),
    ),
    _of(
        "landing a wheelie named",
        "table",
        "LOOK",
        FROM,
        turned(damper=8),
        felt("bars wobble", "no", cause="landing a wheelie"),
    ),
    _of(
        "other surface before",
        "table",
        "LOOK",
        FROM,
        turned(damper=8),
        felt("bars wobble", "no"),
        history=last(surface="wet"),
    ),
    _of(
        "back would be less help",
        "table",
        "LOOK",
        FROM,
        put("session", "setup.controls.front-abs", 5),
        felt("front locks"),
    ),
    _of(
        "less help stays out of the block",
        "danger",
        "CHANGE",
        FROM,
        turned(front_compression=18),
        put("session", "setup.controls.front-abs", 5),
        felt("front locks"),
        puts=_adjuster("front-compression", 12),
    ),
    _of("nothing was changed", "table", "ASK", FROM, felt("bars wobble"), asks="symptoms.1.answer"),
    _of("damper only after the looks", "table", "LOOK", felt("bars wobble", "no")),
    _of(
        "no damper for a weave",
        "table",
        "CHANGE",
        felt("weaves", "yes"),
        put("session", "setup.adjusters.damper", 4),
        puts=_adjuster("rear-rebound", 11),
    ),
]

FIRST = [
    _of("slick in the wet", "first-right", "LOOK", put("tyres", "front.kind", "slick"), WET, felt("dives")),
    _of(
        "slick in the damp",
        "first-right",
        "LOOK",
        put("tyres", "rear.kind", "slick"),
        put("session", "surface", "damp"),
    ),
    _of("wets in the dry", "first-right", "LOOK", put("tyres", "front.kind", "wet"), felt("vague")),
    _of("tyre split", "first-right", "MEND", seen("front", "split"), felt("dives")),
    _of("nail", "first-right", "MEND", seen("rear", "nail")),
    _of(
        "tread at its limit",
        "first-right",
        "LOOK",
        put("tyres", "rear", {**TYRES["rear"], "tread_middle": "1.0 mm", "worn_at": "1.5 mm"}),
        felt("slides on drive"),
    ),
    _of(
        "bearings to fix",
        "first-right",
        "LOOK",
        put("session", "checks", {"bearings": {"status": "to fix"}}),
        felt("dives"),
    ),
    _of(
        "wheel out unchecked",
        "first-right",
        "LOOK",
        put("session", "work.1", {"what": "wheel out", "end": "front"}),
        felt("dives"),
    ),
    _of(
        "no pressure on a wrong tyre",
        "first-right",
        "LOOK",
        put("tyres", "front.kind", "wet"),
        hot("2.70 bar", "2.20 bar"),
    ),
]

ACCEPTED = [
    _of(
        "traction accepted, slid",
        "accepted",
        "CHANGE",
        accepted("traction"),
        felt("slides on drive"),
        puts={"controls.traction": 7},
    ),
    _of(
        "engine braking accepted, loose",
        "accepted",
        "CHANGE",
        accepted("engine-braking"),
        felt("loose on entry"),
        puts={"controls.engine-braking": 4},
    ),
    _of(
        "front ABS accepted, locked",
        "accepted",
        "CHANGE",
        accepted("front-abs"),
        felt("front locks"),
        puts={"controls.front-abs": 5},
    ),
    _of(
        "wheelie accepted, shook on landing",
        "accepted",
        "CHANGE",
        accepted("wheelie"),
        felt("bars wobble", "no", cause="landing a wheelie"),
        puts={"controls.wheelie": 5},
    ),
    _of(
        "traction off goes on",
        "accepted",
        "CHANGE",
        accepted("traction"),
        felt("slides on drive"),
        put("session", "setup.controls.traction", "off"),
        puts={"controls.traction": 0},
    ),
    _of(
        "accepted is not what was felt",
        "table",
        "CHANGE",
        accepted("wheelie"),
        felt("slides on drive"),
        puts=_adjuster("rear-compression-slow", 14),
    ),
    _of(
        "already at its most",
        "table",
        "CHANGE",
        accepted("traction"),
        felt("slides on drive"),
        put("session", "setup.controls.traction", 10),
        puts=_adjuster("rear-compression-slow", 14),
    ),
    _of(
        "the mode fixes what was accepted",
        "table",
        "CHANGE",
        accepted("traction"),
        felt("slides on drive"),
        put("bike", "modes.open.fixes", {"traction": 6}),
        puts=_adjuster("rear-compression-slow", 14),
    ),
]

PRESSURES = [
    _of(
        "front far over",
        "pressure",
        "CHANGE",
        hot("2.60 bar", "2.20 bar"),
        felt("dives"),
        puts={"front_start": "1.95 bar"},
    ),
    _of(
        "both far over",
        "pressure",
        "CHANGE",
        hot("2.60 bar", "2.40 bar"),
        puts={"front_start": "1.95 bar", "rear_start": "1.75 bar"},
    ),
    _of("rear far under", "pressure", "CHANGE", hot("2.40 bar", "2.05 bar"), puts={"rear_start": "2.05 bar"}),
    _of(
        "a novice's too",
        "pressure",
        "CHANGE",
        NOVICE,
        hot("2.60 bar", "2.20 bar"),
        puts={"front_start": "1.95 bar"},
    ),
    _of(
        "0.14 over is said beside",
        "table",
        "CHANGE",
        hot("2.54 bar", "2.20 bar"),
        felt("dives"),
        puts=_adjuster("front-compression", 10),
    ),
    _of("0.06 over is said beside", "none", "SAME", hot("2.46 bar", "2.20 bar")),
    _of(
        "read warm",
        "none",
        "SAME",
        put("session", "pressures.hot", {"at": dt.time(11, 6), "front": "2.60 bar", "rear": "2.20 bar"}),
    ),
    _of(
        "two laps",
        "none",
        "SAME",
        hot("2.60 bar", "2.20 bar"),
        put("session", "laps", {"1": "1:45.100", "2": "1:45.200"}),
    ),
    _of(
        "no target",
        "table",
        "CHANGE",
        hot("2.60 bar", "2.20 bar"),
        put("tyres", "", {"front": {"kind": "track-day"}, "rear": {"kind": "track-day"}}),
        felt("dives"),
        puts=_adjuster("front-compression", 10),
    ),
    _of("no air temperature", "pressure", "LOOK", hot("2.60 bar", "2.20 bar"), without("session", "air")),
    _of(
        "no time of the reading",
        "pressure",
        "LOOK",
        put("session", "pressures.hot", {"front": "2.60 bar", "rear": "2.20 bar"}),
    ),
]

UNDO = [
    _of(
        "harsh after compression in",
        "undo",
        "CHANGE",
        FROM,
        turned(front_compression=8),
        felt("harsh on single bumps"),
        puts=_adjuster("front-compression", 12),
    ),
    _of(
        "skips after engine braking",
        "undo",
        "CHANGE",
        FROM,
        put("session", "setup.controls.engine-braking", 1),
        felt("skips on the brakes"),
        puts={"controls.engine-braking": 3},
    ),
    _of(
        "not where it was there before",
        "table",
        "CHANGE",
        FROM,
        turned(front_compression=8),
        felt("harsh on single bumps"),
        puts=_adjuster("front-compression", 10),
        history=last(did="noted", symptoms__1={"what": "harsh on single bumps", "end": "front"}),
    ),
    _of(
        "not with the track 16 warmer",
        "table",
        "CHANGE",
        FROM,
        turned(front_compression=8),
        felt("harsh on single bumps"),
        puts=_adjuster("front-compression", 10),
        history=last(track="8 C"),
    ),
    _of(
        "not to less help",
        "table",
        "CHANGE",
        FROM,
        put("session", "setup.controls.traction", 8),
        felt("slides on drive"),
        puts=_adjuster("rear-compression-slow", 14),
    ),
    _of(
        "not where each lap differs",
        "none",
        "SAME",
        FROM,
        turned(front_compression=8),
        felt("harsh on single bumps", each_lap="differs"),
    ),
    _of(
        "asks what was there before",
        "undo",
        "ASK",
        FROM,
        turned(front_compression=8),
        felt("harsh on single bumps"),
        asks="before-3 did",
        history=_ASKED_NOT,
    ),
    _of(
        "a new spring is no step",
        "table",
        "CHANGE",
        FROM,
        put("session", "setup.front_spring", "9.5 N/mm"),
        put("session", "work.1", {"what": "suspension"}),
        felt("harsh on single bumps"),
        puts=_adjuster("front-compression", 14),
    ),
    _of(
        "pressure after undo",
        "pressure",
        "CHANGE",
        FROM,
        turned(front_compression=8),
        felt("harsh on single bumps"),
        hot("2.60 bar", "2.20 bar"),
        puts={"front_start": "1.95 bar"},
    ),
    _of(
        "no change felt twice",
        "base",
        "CHANGE",
        FROM,
        turned(front_compression=14),
        felt("no change felt"),
        puts=_adjuster("front-compression", 12),
        history=last(
            copied_from="before-2",
            did="noted",
            symptoms__1={"what": "no change felt"},
            setup=setup(front_compression=13),
        ),
    ),
    _of("no change felt once", "none", "SAME", FROM, turned(front_compression=14), felt("no change felt")),
]

SAGS = [
    _of(
        "dives with too much sag",
        "sag",
        "CHANGE",
        sag("front", 38.0),
        felt("dives"),
        puts=_adjuster("front-preload", 14),
    ),
    _of(
        "runs wide with too much sag",
        "sag",
        "CHANGE",
        sag("rear", 39.0),
        felt("runs wide on power"),
        puts=_adjuster("rear-preload", 7),
    ),
    _of(
        "harsh with too little sag",
        "sag",
        "CHANGE",
        sag("front", 22.0),
        felt("harsh on single bumps"),
        turned(front_preload=12),
        sag("front", 22.0, preload=12),
        puts=_adjuster("front-preload", 4),
    ),
    _of(
        "a novice's sag too",
        "sag",
        "CHANGE",
        NOVICE,
        sag("rear", 39.0),
        felt("parts ground"),
        puts=_adjuster("rear-preload", 7),
    ),
    _of("not measured", "sag", "LOOK", without("session", "sag"), felt("dives")),
    _of("measured at other preload", "sag", "LOOK", sag("front", 38.0, preload=3), felt("dives")),
    _of(
        "measured before the fork moved",
        "sag",
        "LOOK",
        without("session", "sag"),
        felt("dives"),
        put("session", "setup.fork_height", "6 mm"),
        history=last(sag__front__rider=sag("front", 38.0)[2]),
    ),
    _of("sag right, so damping", "table", "CHANGE", felt("dives"), puts=_adjuster("front-compression", 10)),
    _of(
        "top-out springs not known",
        "table",
        "CHANGE",
        without("bike", "front.top_out_springs"),
        sag("front", 38.0),
        felt("dives"),
        puts=_adjuster("front-compression", 10),
    ),
    _of("at its end, so the spring", "sag", "OWN", *_SPRING, felt("dives")),
    _of(
        "at its end, free sag missing",
        "sag",
        "LOOK",
        *_SPRING,
        felt("dives"),
        without("session", "sag.front.alone"),
    ),
    _of(
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

TABLES = [
    _of("the firmer offset", "table", "CHANGE", *AUTOMATIC, felt("dives"), puts={"offsets.front": 1}),
    _of(
        "an offset that counts down",
        "table",
        "CHANGE",
        *AUTOMATIC,
        felt("wallows", "overshoots"),
        puts={"offsets.drive": -1},
    ),
    _of(
        "an offset without a direction",
        "table",
        "OWN",
        *AUTOMATIC,
        felt("dives"),
        without("bike", "damping.automatic.offsets.front.firmest"),
    ),
    _of(
        "no offset that acts",
        "table",
        "OWN",
        *AUTOMATIC,
        felt("hops", "creeps"),
        without("bike", "damping.automatic.offsets.drive"),
    ),
    _of(
        "mode fixes the aid",
        "table",
        "OWN",
        felt("traction cuts without slip", "no"),
        put("bike", "modes.open.fixes", {"traction": 6}),
    ),
    _of(
        "asks for the end",
        "table",
        "ASK",
        put("session", "symptoms.1", {"what": "vague"}),
        asks="symptoms.1.end",
    ),
    _of("asks the push test", "table", "ASK", felt("wallows"), asks="symptoms.1.answer"),
    _of(
        "one change answers two",
        "table",
        "CHANGE",
        several(
            {"what": "harsh on single bumps", "end": "front"},
            {"what": "wallows", "answer": "overshoots"},
            {"what": "kicks", "answer": "overshoots"},
        ),
        puts=_adjuster("rear-rebound", 11),
    ),
    _of(
        "one question parts three",
        "table",
        "ASK",
        several({"what": "kicks"}, {"what": "wallows"}, {"what": "hops"}),
        asks="symptoms.3.answer",
    ),
    _of(
        "its answer is kept",
        "table",
        "CHANGE",
        several({"what": "kicks", "answer": "creeps"}, {"what": "hops"}),
        puts=_adjuster("rear-rebound", 14),
    ),
    _of(
        "kept over the day",
        "table",
        "CHANGE",
        FROM,
        felt("hops"),
        puts=_adjuster("rear-rebound", 14),
        history=last(did="noted", symptoms__1={"what": "kicks", "answer": "creeps"}),
    ),
    _of(
        "entry and exit, entry first",
        "table",
        "CHANGE",
        several({"what": "slides on drive"}, {"what": "harsh on single bumps", "end": "front"}),
        puts=_adjuster("front-compression", 14),
    ),
    _of(
        "less help not in danger",
        "table",
        "LOOK",
        several({"what": "front locks"}, {"what": "traction cuts without slip", "answer": "no"}),
    ),
    _of(
        "opposite ways",
        "none",
        "SAME",
        several(
            {"what": "vague", "answer": "overshoots", "end": "front"},
            {"what": "harsh on a series", "answer": "creeps", "end": "front"},
        ),
    ),
    _of(
        "own words",
        "own-words",
        "ASK",
        without("session", "did"),
        put("session", "said", "bad headshake out of 4"),
        asks="symptoms.1.what",
    ),
    _of("own words answered", "none", "SAME", put("session", "said", "bad headshake out of 4")),
    _of(
        "own words that say nothing",
        "none",
        "SAME",
        without("session", "did"),
        put("session", "said", "lovely morning"),
    ),
    _of(
        "not counted", "table", "OWN", felt("dives"), without("session", "setup.adjusters.front-compression")
    ),
    _of(
        "no direction",
        "table",
        "OWN",
        felt("dives"),
        without("bike", "adjusters.front-compression.counted_from"),
    ),
]

CLEAN = [
    _of("nothing felt", "none", "SAME"),
    _of("nothing felt, wet", "none", "SAME", WET),
    _of("novice felt something", "none", "SAME", NOVICE, felt("harsh on single bumps")),
    _of(
        "second session on the bike",
        "none",
        "SAME",
        felt("harsh on single bumps"),
        history=went_before(BEFORE),
    ),
    _of(
        "another venue",
        "none",
        "SAME",
        felt("harsh on single bumps"),
        history=went_before(BEFORE, BEFORE, BEFORE, venue="elsewhere"),
    ),
    _of(
        "two clean laps",
        "none",
        "SAME",
        felt("harsh on single bumps"),
        put("session", "laps", {"1": "1:45.1", "2": "1:45.2"}),
    ),
    _of("differs each lap", "none", "SAME", felt("vague", "overshoots", each_lap="differs")),
    _of("arms", "none", "SAME", felt("arms sore")),
    _of("racer, new step, nothing felt", "none", "SAME", RACE, FROM, turned(rear_rebound=10)),
    _of(
        "a changed pressure is no step", "none", "SAME", FROM, put("session", "setup.front_start", "2.05 bar")
    ),
]

SITUATIONS = [*STOPS, *DANGERS, *FIRST, *ACCEPTED, *PRESSURES, *UNDO, *SAGS, *TABLES, *CLEAN]
