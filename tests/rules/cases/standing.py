"""Cases of what stays open by comparison: heights, slack, air, wear, help, and a bike that stood."""

import datetime as dt
from typing import Any

import attrs

from paddock_tui import quantities
from paddock_tui.facts.past import History
from paddock_tui.quantities import Quantity
from paddock_tui.records.day import DayEntry, Noise, PostedLimits, RidingDay
from paddock_tui.records.people import Rider
from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.cases.incidents import BEFORE, earlier, happened
from tests.rules.situations import Change, at, put, went_before, without

RIDDEN: dict[str, Any] = {"parked": dt.time(9, 40), "ridden_laps": 6}
QUIET: dict[str, Any] = {**RIDDEN, "did": "nothing"}
RACE, ROAD = put("session", "kind", "race"), put("session", "kind", "road")
FORK_4 = went_before({**RIDDEN, "setup.fork_height": "4 mm"})
BOOK = (put("bike", "drive.slack_least", "30 mm"), put("bike", "drive.slack_most", "40 mm"))
STANCE = put("bike", "drive.slack_stance", "rear stand")
INSPECTED = put("day", "inspection_after_off", True)
OFF = {"what": "off the track", "where": "kerb"}
THRICE = tuple(put("session", f"incidents.{number}", OFF) for number in (1, 2, 3))
YESTERDAY = dt.date(2026, 5, 15)
PADS_15 = put("day", "limits.pads", "1.5 mm")
TARGET = {"front": {"kind": "track-day", "hot_dry": "2.35 bar"}, "rear": {"kind": "track-day"}}


def fork(millimetres: str) -> Change:
    """Set the fork height."""
    return put("session", "setup.fork_height", millimetres)


def slack(millimetres: float, stance: str = "rear stand") -> tuple[Change, ...]:
    """Measure the chain slack."""
    return put("session", "chain_slack", f"{millimetres:g} mm"), put("session", "chain_slack_stance", stance)


def reading(front: str, at_: dt.time = dt.time(8, 0), **more: Any) -> dict[str, Any]:
    """Give a cold reading with everything that a comparison wants."""
    return {"front": front, "rear": "1.90 bar", "temperature": "20 C", "gauge": "round", "at": at_, **more}


def lost(*fronts: str, today: str = "2.00 bar") -> dict[str, Any]:
    """Give cold readings of the days before, and of today."""
    days = [
        {
            **RIDDEN,
            "date": YESTERDAY - dt.timedelta(days=len(fronts) - 1 - place),
            "pressures.cold": reading(one),
        }
        for place, one in enumerate(fronts)
    ]
    return {"history": went_before(*days, {"pressures.cold": reading(today)}, tyres={"may": TARGET})}


def hot(front: str, at_: dt.time = dt.time(9, 42), **more: Any) -> dict[str, Any]:
    """Give a hot reading of the session before, with the start that is planned again."""
    read = {"front": front, "at": at_}
    one = {**RIDDEN, "setup.front_start": "2.10 bar", "pressures.hot": read, **more}
    return {"history": went_before(one, tyres={"may": TARGET})}


SAME_START = put("session", "setup.front_start", "2.10 bar")


def measured(times: int, **more: Any) -> dict[str, Any]:
    """Give a reading of the front pads and so many track outings since, its own among them."""
    return {"history": went_before({**RIDDEN, "front_pads": "4 mm", **more}, *[RIDDEN] * (times - 1))}


def loud(read: str, venue: str = "alderfen") -> dict[str, Any]:
    """Give a day a month before on which the bike was measured."""
    past = went_before({**RIDDEN, "date": BEFORE, "day": "2026-04-18"}).past
    day = RidingDay(venue=venue, limits=PostedLimits(noise=_amount("100 dB(A)")))
    entry = DayEntry(noise=Noise(reading=_amount(read)))
    made = attrs.evolve(past[0], day=day, entry=entry, venue=venue)
    return {"history": History((made,))}


def _amount(text: str) -> Quantity:
    found = quantities.parse(text)
    assert isinstance(found, Quantity)
    return found


HERE = put("day", "venue", "alderfen")


def borrowed(kg: str, *more: dict[str, Any]) -> dict[str, Any]:
    """Give a session copied from another rider's, with their weight, and what was ridden since."""
    made = went_before({**RIDDEN, "rider": "wim"}, {**RIDDEN, "copied_from": "before-1"}, *more)
    return {"history": attrs.evolve(made, riders={"wim": Rider(name="Wim", weight=_amount(kg))})}


WEIGHT = put("rider", "weight", "70 kg")
LENGTHS = {"extended": "520 mm", "pushed": "488 mm", "lifted": "484 mm"}
MEASURED = {**RIDDEN, "sag": {"front": {"rider": LENGTHS}, "rear": {"rider": LENGTHS}}}
LESS = at("traction", 3)

CASES = {
    "bike-stood-or-workshop": Cases(
        raising=(
            raises(
                "bike",
                "caution",
                history=went_before({**RIDDEN, "date": dt.date(2026, 2, 14)}),
                going_out=True,
                says="stood 91 days",
            ),
            raises("bike", "caution", put("session", "work.1", {"what": "workshop"}), going_out=True),
        ),
        silent=(
            silent(going_out=True),
            silent(history=went_before({**RIDDEN, "date": dt.date(2026, 2, 15)}), going_out=True),
        ),
        asks=True,
    ),
    "height-never-ridden": Cases(
        raising=(
            raises("front", "hold", fork("7 mm"), history=FORK_4, going_out=True, says="by 3.0 mm"),
            raises("front", "caution", fork("6 mm"), history=FORK_4, going_out=True),
            raises(
                "rear",
                "hold",
                put("session", "setup.rear_height", "2 mm"),
                history=went_before({**RIDDEN, "setup.rear_height": "6 mm"}),
                going_out=True,
            ),
        ),
        silent=(
            silent(fork("7 mm"), going_out=True),
            silent(fork("4 mm"), history=FORK_4, going_out=True),
            silent(fork("7 mm"), put("bike", "front.highest_clear", "8 mm"), history=FORK_4, going_out=True),
        ),
        asks=True,
    ),
    "chain-slack-outside-the-book": Cases(
        raising=(
            raises("chain", "serious", *BOOK, *slack(25), says="5 mm under"),
            raises("chain", "hold", *BOOK, *slack(24)),
            raises("chain", "serious", *BOOK, *slack(51), says="11 mm over"),
            raises("chain", "hold", *BOOK, STANCE, *slack(20)),
        ),
        silent=(
            silent(),
            silent(*slack(20)),
            silent(*BOOK, *slack(30)),
            silent(*BOOK, STANCE, *slack(45)),
            silent(*BOOK, STANCE, *slack(20, "side stand")),
        ),
        missing=(lacks("the bike", without("bike")),),
    ),
    "chain-slack-measured-otherwise": Cases(
        raising=(
            raises(
                "chain",
                "note",
                *BOOK,
                STANCE,
                *slack(20, "side stand"),
                going_out=True,
                says="on the rear stand",
            ),
        ),
        silent=(silent(), silent(*BOOK, *slack(20, "side stand")), silent(*BOOK, STANCE, *slack(20))),
        missing=(lacks("the bike", without("bike")),),
    ),
    "ice-on-the-track": Cases(
        raising=(
            raises("bike", "hold", put("session", "ice", True)),
            raises("bike", "hold", history=went_before({"ice": True})),
        ),
        silent=(
            silent(),
            silent(put("session", "ice", False), history=went_before({"ice": True})),
            silent(history=went_before({"ice": True, "date": BEFORE})),
        ),
        asks=True,
    ),
    "noise-over-last-time": Cases(
        raising=(
            raises("bike", "hold", HERE, **loud("101 dB(A)")),
            raises("bike", "note", HERE, **loud("101 dB(A)", "quernstone")),
        ),
        silent=(
            silent(HERE, **loud("99 dB(A)")),
            silent(HERE, put("day", "entries.ines.kestrel.noise.reading", "98 dB(A)"), **loud("101 dB(A)")),
        ),
        asks=True,
    ),
    "off-to-be-inspected": Cases(
        raising=(
            raises("bike", "hold", INSPECTED, happened("off the track", where="grass")),
            raises("bike", "hold", INSPECTED, happened("contact")),
        ),
        silent=(
            silent(happened("off the track", where="grass")),
            silent(INSPECTED, happened("off the track", where="kerb")),
            silent(INSPECTED, happened("contact", inspected_again=dt.time(10, 13))),
        ),
        asks=True,
    ),
    "run-offs-in-a-day": Cases(
        raising=(
            raises("rider", "caution", *THRICE),
            raises(
                "rider",
                "caution",
                THRICE[0],
                history=went_before(earlier("off the track"), earlier("off the track")),
            ),
        ),
        silent=(
            silent(*THRICE[:2]),
            silent(THRICE[0], history=went_before(*[earlier("off the track", day=BEFORE)] * 3)),
        ),
        asks=True,
    ),
    "slept-little": Cases(
        raising=(raises("rider", "note", put("session", "slept", "4.5 h")),),
        silent=(silent(), silent(put("session", "slept", "5 h")), silent(put("session", "slept", "6 h"))),
        asks=True,
    ),
    "helmet-dropped": Cases(
        raising=(
            raises("helmet", "note", happened("helmet dropped")),
            raises("helmet", "note", history=went_before(earlier("helmet dropped", day=BEFORE))),
        ),
        silent=(silent(happened("helmet dropped", found="looked at in the shop: whole")),),
        asks=True,
    ),
    "tyre-repaired": Cases(
        raising=(
            raises("rear", "hold", put("tyres", "rear.repair", "string plug")),
            raises("rear", "hold", put("tyres", "rear.repair", "side wall")),
            raises("rear", "serious", put("tyres", "rear.repair", "inside")),
            raises("front", "hold", RACE, put("tyres", "front.repair", "inside")),
            raises("front", "note", ROAD, put("tyres", "front.repair", "inside")),
            raises("front", "serious", ROAD, put("tyres", "front.repair", "string plug")),
        ),
        silent=(silent(), silent(put("tyres", "rear.repair", "none"))),
        asks=True,
    ),
    "pressure-lost-unanswered": Cases(
        raising=(
            raises("front", "serious", **lost("2.20 bar"), says="lost 0.20 bar"),
            raises("front", "hold", **lost("2.30 bar")),
            raises("front", "hold", **lost("2.40 bar", "2.20 bar")),
        ),
        silent=(
            silent(),
            silent(**lost("2.10 bar")),
            silent(history=went_before({"pressures.cold": reading("2.00 bar")}, tyres={"may": TARGET})),
        ),
        asks=True,
    ),
    "hot-pressure-off-last-time": Cases(
        raising=(
            raises("front", "caution", SAME_START, **hot("2.55 bar")),
            raises("front", "serious", SAME_START, **hot("2.75 bar")),
            raises("front", "caution", SAME_START, **hot("2.15 bar"), says="under"),
            raises("front", "note", SAME_START, **hot("2.55 bar", dt.time(9, 46))),
        ),
        silent=(
            silent(SAME_START),
            silent(SAME_START, **hot("2.45 bar")),
            silent(put("session", "setup.front_start", "2.00 bar"), **hot("2.55 bar")),
            silent(SAME_START, put("session", "surface", "damp"), **hot("2.55 bar")),
        ),
        missing=(lacks("the surface", without("session", "surface")),),
    ),
    "wear-near-its-limit": Cases(
        raising=(
            raises("front-pads", "caution", PADS_15, put("session", "front_pads", "2.5 mm")),
            raises(
                "rear-tread",
                "caution",
                put("tyres", "rear.worn_at", "1.2 mm"),
                put("session", "rear_tread", "2 mm"),
            ),
            raises(
                "chain",
                "serious",
                put("bike", "drive.chain_longest", "321.5 mm"),
                put("session", "chain_length", "321.5 mm"),
            ),
            raises(
                "chain",
                "caution",
                put("bike", "drive.chain_longest", "321.5 mm"),
                history=went_before({**RIDDEN, "chain_length": "320.6 mm"}),
            ),
        ),
        silent=(
            silent(put("session", "front_pads", "2.5 mm")),
            silent(PADS_15, put("session", "front_pads", "2.6 mm")),
            silent(
                PADS_15, put("session", "front_pads", "4 mm"), history=went_before({"front_pads": "2 mm"})
            ),
        ),
        missing=(lacks("the bike", without("bike")),),
    ),
    "wear-reading-old": Cases(
        raising=(raises("front-pads", "note", **measured(9), going_out=True),),
        silent=(
            silent(),
            silent(**measured(8)),
            silent(put("session", "front_pads", "4 mm"), **measured(9), going_out=True),
            silent(ROAD, **measured(9), going_out=True),
        ),
        asks=True,
    ),
    "help-lowered": Cases(
        raising=(
            raises("traction", "caution", LESS, history=went_before(RIDDEN), says="80 % to 30 %"),
            raises("traction", "note", LESS, put("rider", "group", "advanced"), history=went_before(RIDDEN)),
            raises("traction", "caution", at("traction", "off"), history=went_before(RIDDEN)),
        ),
        silent=(
            silent(),
            silent(LESS),
            silent(at("traction", 7), history=went_before(RIDDEN)),
            silent(LESS, history=went_before({**RIDDEN, "setup.controls.traction": 3}, RIDDEN)),
            silent(LESS, history=went_before({**RIDDEN, "surface": "wet"})),
        ),
        missing=(lacks("the bike", without("bike")), lacks("the surface", without("session", "surface"))),
    ),
    "sag-not-measured-for-this-rider": Cases(
        raising=(raises("rider", "caution", WEIGHT, **borrowed("84 kg"), says="14 kg lighter"),),
        silent=(
            silent(),
            silent(WEIGHT, **borrowed("75 kg")),
            silent(WEIGHT, **borrowed("84 kg", MEASURED)),
            silent(**borrowed("84 kg")),
        ),
        asks=True,
    ),
}
