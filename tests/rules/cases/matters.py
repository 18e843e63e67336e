"""Cases of what stays open until it is answered: what the bike did, what officials said, a tyre's look."""

import datetime as dt
from typing import Any

from tests.rules.case import Cases, raises, silent
from tests.rules.cases.incidents import BEFORE, CLEARED, KNOCK, earlier, happened
from tests.rules.situations import Change, put, went_before

RIDDEN: dict[str, Any] = {"parked": dt.time(9, 59), "ridden_laps": 6}
QUIET: dict[str, Any] = {**RIDDEN, "did": "nothing"}
ANSWER = {"found": "worn part", "done": "replaced", "by": "TM", "test": "tried at walking pace"}
RACER = put("rider", "group", "race")
WET = put("session", "surface", "wet")
SHUT_OFF, NEARLY_DOWN = {"grade": 2}, {"grade": 3}


def felt(what: str, **values: Any) -> dict[str, Any]:
    """Give an earlier ridden session in which the bike did this."""
    return {**RIDDEN, "symptoms.1": {"what": what, **values}}


def looked(end: str, *seen: str, **values: Any) -> Change:
    """Look at a tyre."""
    return put("session", f"look.{end}", {"seen": list(seen), **values})


def _part(what: str, subject: str, severity: str) -> Cases:
    """Cases of a symptom that is a part's: ridden sessions and days leave it open."""
    return Cases(
        raising=(
            raises(subject, severity, history=went_before(felt(what)), says="16 May"),
            raises(subject, severity, put("session", "symptoms.1", {"what": what})),
            raises(subject, severity, history=went_before({**felt(what), "date": BEFORE}, RIDDEN)),
            raises(subject, severity, history=went_before(felt(what, found="worn part"))),
        ),
        silent=(silent(), silent(history=went_before(felt(what, **ANSWER)))),
        asks=True,
    )


OLD = (
    {**earlier("leak", day=BEFORE, fluid="fork or shock weep", on_tyre=False)},
    {**felt("tucks", grade=1), "date": BEFORE},
    {**felt("rear locks", grade=1), "date": BEFORE},
    {**RIDDEN, "date": BEFORE, "incidents.1": {"what": "warning lamp", "lamp": "other"}},
)
"""A fork that weeps, a tuck, a rear that locked and a lamp, before anybody was asked what became of it."""

THROUGH = put("garage", "before", {"on": BEFORE, "by": "IS"})

FALSE_NEUTRAL = earlier("false neutral")

CASES = {
    "brakes-fade": _part("brakes fade", "brakes", "hold"),
    "throttle-or-engine-danger": Cases(
        raising=(
            *_part("throttle sticks", "throttle-sticks", "hold").raising,
            *_part("engine cuts out", "engine-cuts-out", "hold").raising,
        ),
        silent=(
            silent(history=went_before(felt("throttle sticks", **ANSWER))),
            silent(history=went_before(felt("engine cuts out", cause="kill switch"))),
        ),
        asks=True,
    ),
    "clutch-or-gearbox": Cases(
        raising=(
            *_part("clutch slips", "clutch-slips", "serious").raising,
            *_part("jumps out of gear", "jumps-out-of-gear", "serious").raising,
            raises("false-neutral", "note", history=went_before(FALSE_NEUTRAL)),
        ),
        silent=(
            silent(history=went_before(felt("clutch slips", **ANSWER))),
            silent(history=went_before(felt("clutch slips"), QUIET)),
        ),
        asks=True,
    ),
    "bars-shake-or-weave": Cases(
        raising=(
            raises("bars-wobble", "serious", history=went_before(felt("bars wobble"))),
            raises("weaves", "hold", history=went_before(felt("weaves", **NEARLY_DOWN))),
            raises("weaves", "serious", history=went_before(felt("weaves", **NEARLY_DOWN, **ANSWER))),
            raises("weaves", "caution", history=went_before(felt("weaves", grade=1))),
            raises("weaves", "note", RACER, history=went_before(felt("weaves", grade=1))),
            raises("weaves", "note", history=went_before(felt("weaves", cause="crest"))),
            raises(
                "weaves", "note", history=went_before({**felt("weaves", **NEARLY_DOWN), "rider": "tobin"})
            ),
        ),
        silent=(silent(), silent(history=went_before(felt("weaves"), QUIET, QUIET, QUIET))),
        asks=True,
    ),
    "front-wheel-locked": Cases(
        raising=(
            raises("front-locks", "serious", history=went_before(felt("front locks"))),
            raises("front-locks", "serious", history=went_before(felt("front locks", grade=1), QUIET, QUIET)),
            raises("front-locks", "note", history=went_before(felt("front locks", cause="first laps"))),
        ),
        silent=(
            silent(),
            silent(history=went_before(felt("front locks", **ANSWER), QUIET)),
            silent(history=went_before(felt("front locks"), QUIET, QUIET, QUIET)),
        ),
        asks=True,
    ),
    "tuck-or-rear-lock": Cases(
        raising=(
            raises("tucks", "serious", history=went_before(felt("tucks"))),
            raises("rear-locks", "caution", history=went_before(felt("rear locks", grade=1))),
            raises("rear-locks", "note", RACER, history=went_before(felt("rear locks", grade=1))),
            raises("rear-locks", "caution", RACER, WET, history=went_before(felt("rear locks", grade=1))),
            raises("tucks", "serious", history=went_before(felt("tucks", grade=1), felt("tucks", grade=1))),
            raises("tucks", "note", history=went_before(felt("tucks", cause="first laps"))),
        ),
        silent=(silent(), silent(history=went_before(felt("tucks"), QUIET, QUIET, QUIET))),
        asks=True,
    ),
    "off-or-contact-not-looked-over": Cases(
        raising=(
            raises("bike", "hold", happened("off the track"), going_out=True),
            raises("bike", "hold", history=went_before(earlier("contact", where="gravel")), going_out=True),
            raises("bike", "hold", happened("off the track", found="nothing"), going_out=True),
            raises("bike", "note", happened("off the track", where="kerb"), going_out=True),
        ),
        silent=(
            silent(going_out=True),
            silent(happened("off the track", found="nothing bent", by="TM"), going_out=True),
            silent(happened("contact", inspected_again=dt.time(10, 13)), going_out=True),
            silent(history=went_before(earlier("contact", day=BEFORE)), going_out=True),
        ),
        asks=True,
    ),
    "helmet-hit": Cases(
        raising=(
            raises("helmet", "hold", happened(**{**KNOCK, **CLEARED, "helmet_replaced": False})),
            raises("helmet", "hold", happened(head_contact=True)),
            raises("helmet", "hold", history=went_before(earlier(day=BEFORE, **KNOCK))),
        ),
        silent=(
            silent(happened(**KNOCK, **CLEARED)),
            silent(history=went_before({**earlier(**KNOCK), "rider": "tobin"})),
        ),
        asks=True,
    ),
    "stopped-by-officials": Cases(
        raising=(
            raises("bike", "hold", happened("black flag")),
            raises("bike", "hold", happened("refused by inspection", found="loose pad pin")),
            raises("bike", "hold", history=went_before(earlier("black flag", day=BEFORE))),
            raises("bike", "note", happened("black flag", at_fault=True)),
        ),
        silent=(silent(happened("black flag", found="oil at the sump", shown_to="inspection")),),
        asks=True,
    ),
    "mend-by-a-date": Cases(
        raising=(
            raises("bike", "serious", happened("mend by", due=dt.date(2026, 5, 16))),
            raises("bike", "serious", happened("mend by")),
            raises("bike", "note", happened("mend by", due=dt.date(2026, 6, 20))),
        ),
        silent=(silent(happened("mend by", due=dt.date(2026, 5, 16), done="new pads")),),
        asks=True,
    ),
    "airbag-fired": Cases(
        raising=(
            raises("airbag", "serious", happened("airbag fired")),
            raises("airbag", "serious", history=went_before(earlier("airbag fired", day=BEFORE))),
        ),
        silent=(silent(happened("airbag fired", done="new cartridge, self-test passed")),),
        asks=True,
    ),
    "tyre-cut": Cases(
        raising=(
            raises("rear", "caution", looked("rear", "cut")),
            raises("front", "caution", history=went_before({"look.front": {"seen": ["cut"]}}, RIDDEN)),
        ),
        silent=(
            silent(looked("rear", "cut", found="tread only", by="tyre fitter, paddock")),
            silent(history=went_before({"look.rear": {"seen": ["cut"]}, "tyres": "others"})),
        ),
        asks=True,
    ),
    "open-from-before": Cases(
        raising=(
            raises("before", "serious", history=went_before(*OLD), says="4 from before: r."),
            raises("before", "serious", history=went_before(*OLD, {**RIDDEN, "did": "nothing"})),
            raises("before", "serious", history=went_before(*OLD[1:]), says="3 from before: r."),
        ),
        silent=(
            silent(),
            # A few are said one by one.
            silent(history=went_before(*OLD[2:])),
            silent(history=went_before({**RIDDEN, "did": "nothing", "date": BEFORE}, *OLD)),
            silent(THROUGH, history=went_before(*OLD)),
            silent(put("session", "parked", dt.time(10, 59)), history=went_before(*OLD)),
        ),
        asks=True,
    ),
}
