"""Whole stories: two to five sessions, one after the other, and all that is found of the last of them."""

import datetime as dt
from typing import Any

import attrs

from tests.rules.cases.incidents import BEFORE
from tests.rules.cases.work import STEERS, WHOLE
from tests.rules.situations import Change, put, went_before, without

Data = dict[str, Any]
Found = set[tuple[str, str, str]]

RODE: Data = {
    "parked": dt.time(9, 40),
    "ridden_laps": 6,
    "did": "nothing",
    "happened": "nothing",
    "fatigue": 2,
}
YESTERDAY: Data = {"date": dt.date(2026, 5, 15)}
LATER = dt.time(10, 5)


@attrs.frozen
class Story:
    """What was ridden before, oldest first, what the session to come holds, and all that is said of it."""

    name: str
    before: tuple[Data, ...]
    now: tuple[Change, ...]
    found: Found
    verdict: str
    more: Data = attrs.field(factory=dict)


def rode(**values: Any) -> Data:
    """Give a ridden and debriefed session with these values."""
    return {**RODE, **{key.replace("__", "."): value for key, value in values.items()}}


def happened(what: str, **values: Any) -> Data:
    """Give a ridden session in which something happened."""
    return {**RODE, "happened": "noted", "incidents.1": {"what": what, "at": dt.time(9, 35), **values}}


def felt(what: str, **values: Any) -> Data:
    """Give a ridden session in which the bike did something."""
    return {**RODE, "did": "noted", "symptoms.1": {"what": what, **values}}


def story(
    name: str,
    before: list[Data],
    found: Found,
    verdict: str,
    *now: Change,
    **more: Any,
) -> Story:
    """Name a story; it is looked at when going out."""
    history = went_before(*before, **more)
    return Story(name, tuple(before), now, found, verdict, {"history": history, "going_out": True})


ANSWERED = {"found": "worn hose", "done": "new hose", "by": "TM", "test": "dry after ten minutes hot"}
FIXED = {
    "found": "air in it",
    "done": "bled with new fluid",
    "by": "TM",
    "test": "firm, tried at walking pace",
}
HOLD, CARE, NOTHING = "HOLD", "CARE", "NO FINDINGS"
NOVICE = put("rider", "group", "novice")
RACER = put("rider", "group", "race")
ANY_OFF = put("day", "inspection_after_off", True)
TYRES = {"may": {"front": {"kind": "track-day"}, "rear": {"kind": "track-day"}}}

STORIES = [
    story("two ordinary outings and the third", [RODE, RODE], set(), NOTHING),
    story("five ordinary outings of two days", [{**RODE, **YESTERDAY}] * 2 + [RODE] * 2, set(), NOTHING),
    story(
        "a leak of yesterday, nobody mended it",
        [{**happened("leak", fluid="oil"), **YESTERDAY}, RODE],
        {("leak-not-mended", "bike", "hold")},
        HOLD,
    ),
    story(
        "a leak that was mended and seen hot",
        [{**happened("leak", fluid="coolant", **ANSWERED), **YESTERDAY}, RODE],
        set(),
        NOTHING,
    ),
    story("an overflow on the way back", [happened("leak", fluid="overflow"), RODE], set(), NOTHING),
    story(
        "a fork that weeps, nothing on the disc",
        [happened("leak", fluid="fork or shock weep", on_tyre=False), RODE],
        {("leak-not-mended", "bike", "serious")},
        CARE,
    ),
    story(
        "a fork that weeps, and nobody looked at the disc",
        [happened("leak", fluid="fork or shock weep")],
        {("leak-not-mended", "bike", "hold")},
        HOLD,
    ),
    story(
        "a lever to the bar, then two outings as if nothing had been",
        [rode(lever="to the bar"), RODE, RODE],
        {("brake-lever-not-firm", "lever", "hold")},
        HOLD,
    ),
    story(
        "a long lever once",
        [RODE, rode(lever="long")],
        {("brake-lever-not-firm", "lever", "caution")},
        CARE,
    ),
    story(
        "a long lever twice",
        [rode(lever="long"), rode(lever="long")],
        {("brake-lever-not-firm", "lever", "serious")},
        CARE,
    ),
    story("a long lever, then firm", [rode(lever="long"), rode(lever="firm")], set(), NOTHING),
    story(
        "brakes that faded, firm again when cold",
        [felt("brakes fade"), rode(lever="firm")],
        {("brakes-fade", "brakes", "hold")},
        HOLD,
    ),
    story("brakes that faded, bled and tried", [felt("brakes fade", **FIXED), RODE], set(), NOTHING),
    story(
        "a weave, shut off for it, one quiet outing since",
        [felt("weaves", grade=2), RODE],
        {("bars-shake-or-weave", "weaves", "serious")},
        CARE,
    ),
    story("a weave, three quiet outings since", [felt("weaves", grade=2), RODE, RODE, RODE], set(), NOTHING),
    story(
        "a weave with a click, the click taken back and quiet since",
        [
            {**RODE, "setup.adjusters.front-rebound": 12},
            {**felt("weaves", grade=2), "setup.adjusters.front-rebound": 4},
            {**RODE, "setup.adjusters.front-rebound": 12},
        ],
        set(),
        NOTHING,
    ),
    story(
        "a tuck on the first laps",
        [felt("tucks", cause="first laps"), RODE],
        set(),
        NOTHING,
    ),
    story(
        "a throttle that stuck, found and tried at both locks",
        [felt("throttle sticks", **{**FIXED, "test": "snaps shut at both locks, engine running"})],
        set(),
        NOTHING,
    ),
    story(
        "an engine cut out by the kill switch",
        [felt("engine cuts out", cause="kill switch"), RODE],
        set(),
        NOTHING,
    ),
    story(
        "another rider's leak on the same bike",
        [{**happened("leak", fluid="oil"), "rider": "tobin"}, RODE],
        {("leak-not-mended", "bike", "hold")},
        HOLD,
    ),
    story(
        "another rider's unwell afternoon is theirs",
        [{**happened("unwell"), "rider": "tobin"}, RODE],
        set(),
        NOTHING,
    ),
    story(
        "unwell yesterday, nobody said how it is today",
        [{**happened("unwell", signs=["heat"]), **YESTERDAY}],
        {("rider-unwell", "rider", "serious")},
        CARE,
        without("session", "checks.rider-fit"),
    ),
    story(
        "unwell yesterday, the rider ticked as fit today",
        [{**happened("unwell", signs=["heat"]), **YESTERDAY}],
        set(),
        NOTHING,
    ),
    story(
        "unwell yesterday, fit today",
        [{**happened("unwell", signs=["heat"]), **YESTERDAY}],
        set(),
        NOTHING,
        put("session", "fatigue", 2),
    ),
    story(
        "thirsty yesterday",
        [{**happened("unwell", signs=["thirst"]), **YESTERDAY}, RODE],
        set(),
        NOTHING,
    ),
    story(
        "axle out this morning, torqued and pumped, ridden, marks not looked at",
        [{**RODE, "work.1": {"what": "axle", "end": "front", **WHOLE}}, RODE],
        {("wheel-work-not-looked-at-again", "wheels", "caution")},
        CARE,
    ),
    story(
        "axle out this morning, marks looked at after the first outing",
        [{**RODE, "work.1": {"what": "axle", "end": "front", "rechecked_hot": True, **WHOLE}}, RODE],
        set(),
        NOTHING,
    ),
    story(
        "yokes out, torqued and pumped, steering not tried",
        [{**RODE, "work.1": {"what": "yokes", **WHOLE}}],
        {("wheel-work-not-checked", "wheels", "hold")},
        HOLD,
    ),
    story(
        "yokes out and everything ticked, marks too",
        [{**RODE, "work.1": {"what": "yokes", "rechecked_hot": True, **STEERS}}],
        set(),
        NOTHING,
    ),
    story(
        "oil changed, secured, ridden, not seen hot",
        [{**RODE, "work.1": {"what": "oil", "torqued": True}}, RODE],
        {("oil-work-not-checked-hot", "oil", "serious")},
        CARE,
    ),
    story(
        "into the gravel where the organiser inspects any off",
        [RODE, happened("off the track", where="gravel")],
        {("off-to-be-inspected", "bike", "hold")},
        HOLD,
        ANY_OFF,
    ),
    story(
        "three run-offs on tarmac in a morning",
        [happened("off the track", where="tarmac")] * 3,
        {("run-offs-in-a-day", "rider", "caution")},
        CARE,
    ),
    story(
        "two run-offs on tarmac in a morning", [happened("off the track", where="tarmac")] * 2, set(), NOTHING
    ),
    story(
        "an ABS lamp before rolling, off after the key",
        [happened("warning lamp", lamp="ABS", lit="before rolling", off_after_key=True), RODE],
        set(),
        NOTHING,
    ),
    story(
        "an ABS lamp while riding, off after the key, not ridden since",
        [happened("warning lamp", lamp="ABS", lit="riding", off_after_key=True)],
        {("aid-lamp-lit", "ABS", "serious")},
        CARE,
    ),
    story(
        "an ABS lamp while riding, off after the key and through an outing",
        [happened("warning lamp", lamp="ABS", lit="riding", off_after_key=True), RODE],
        set(),
        NOTHING,
    ),
    story(
        "other sprockets on two sessions made ahead",
        [
            {**RODE, "setup.rear_sprocket": 44},
            {"setup.rear_sprocket": 45},
        ],
        {("chain-slack-not-measured", "chain", "serious")},
        CARE,
        put("session", "setup.rear_sprocket", 45),
    ),
    story(
        "the fork three millimetres further through than ever ridden",
        [{**RODE, "setup.fork_height": "4 mm"}, {**RODE, "setup.fork_height": "4 mm"}],
        {("height-never-ridden", "front", "hold")},
        HOLD,
        put("session", "setup.fork_height", "7 mm"),
    ),
    story(
        "the fork so far through, ridden so with the matter open, is no baseline",
        [{**RODE, "setup.fork_height": "4 mm"}, {**RODE, "setup.fork_height": "7 mm"}],
        {("height-never-ridden", "front", "hold")},
        HOLD,
        put("session", "setup.fork_height", "7 mm"),
    ),
    story(
        "a bike that stood through the winter",
        [{**RODE, "date": dt.date(2026, 1, 10)}],
        {("bike-stood-or-workshop", "bike", "caution")},
        CARE,
    ),
    story("a bike that was ridden a month before", [{**RODE, "date": BEFORE}], set(), NOTHING),
    story(
        "refused by inspection, shown again",
        [happened("refused by inspection", found="loose pin", shown_to="inspection"), RODE],
        set(),
        NOTHING,
    ),
    story(
        "a helmet dropped and an airbag fired where one is required",
        [
            {
                **happened("helmet dropped"),
                "incidents.2": {"what": "airbag fired", "at": dt.time(9, 36)},
            }
        ],
        {("airbag-fired", "airbag", "hold")},
        HOLD,
        put("day", "airbag", "required"),
    ),
    story(
        "ice in the first session, gone in the second",
        [{**RODE, "ice": True}, {**RODE, "ice": False}],
        set(),
        NOTHING,
    ),
    story(
        "spent after the last outing, twenty minutes ago",
        [{**RODE, "fatigue": 4, "parked": dt.time(10, 20)}],
        {("rider-spent", "rider", "serious")},
        CARE,
    ),
]
