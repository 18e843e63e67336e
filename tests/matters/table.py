"""The table of what stays open, line by line: how bad it is, and what keeps it from crying wolf."""

import datetime as dt
from typing import Any

import attrs

from paddock_tui.records.bike import Bike, BikeEnd
from paddock_tui.records.day import RidingDay
from paddock_tui.records.tyres import Tyre
from tests.matters.row import Table, felt, incident
from tests.matters.rows import (
    BOOK,
    BOOK_STANCE,
    HOT,
    LITTLE,
    LOUD,
    MUCH,
    OFF_ON_KERB,
    ON_TARGET,
    PADS,
    amount,
    cold,
)
from tests.matters.walk import FIRST

SILENT = ""
NEXT_DAY = FIRST + dt.timedelta(days=1)
STEP: Table = {"before": ({"setup.adjusters.front-rebound": 10},)}
TICKED: Table = {"found": "all tight", "done": "bearings, tyre, bolts, mount", "by": "TM"}
WHOLE: Table = {"work.1.torqued": True, "work.1.pumped": True}
ADVANCED, NOVICE, WET = {"group": "advanced"}, {"group": "novice"}, {"surface": "wet"}


@attrs.frozen
class Seen:
    """What is written into the outing that opens it, and how bad that is then; `silent` where nothing is."""

    kind: str
    severity: str
    opens: Table
    more: Table = attrs.field(factory=dict)


def seen(kind: str, severity: str, opens: Table, **more: Any) -> Seen:
    return Seen(kind, severity, opens, more)


def fitted(end: str, **values: Any) -> Table:
    return {"fitted": {end: Tyre(**values)}}


LEVER, THROTTLE, GEARS, LEAK = (
    "brake-lever-not-firm",
    "throttle-or-engine-danger",
    "clutch-or-gearbox",
    "leak-not-mended",
)
SHAKE, LOCK, SLIP, AID = "bars-shake-or-weave", "front-wheel-locked", "tuck-or-rear-lock", "aid-lamp-lit"
FALL, STOOD, OFF, WORK = (
    "fall-not-inspected",
    "fall-at-standstill",
    "off-or-contact-not-looked-over",
    "wheel-work-not-checked",
)
SLACK, CHAIN, HEIGHT, LOST, HOT_OFF = (
    "chain-slack-outside-the-book",
    "chain-slack-not-measured",
    "height-never-ridden",
    "pressure-lost-unanswered",
    "hot-pressure-off-last-time",
)
REPAIRED, STOPPED, NOISE, HELP = (
    "tyre-repaired",
    "stopped-by-officials",
    "noise-over-last-time",
    "help-lowered",
)
AIMED: Table = {"fitted": {"front": ON_TARGET}}
IN_RACE, ON_ROAD = {"kind": "race"}, {"kind": "road"}

TABLE: dict[str, tuple[Seen, ...]] = {
    "lever to the bar, spongy hot, fade": (
        seen(LEVER, "hold", {"lever": "to the bar"}),
        seen(LEVER, "hold", {"lever": "spongy hot"}),
        seen("brakes-fade", "hold", felt("brakes fade")),
        seen(LEVER, "caution", {"lever": "long"}),
        seen(LEVER, SILENT, {"lever": "firm"}),
    ),
    "throttle sticks, engine cuts out": (
        seen(THROTTLE, "hold", felt("throttle sticks")),
        seen(THROTTLE, SILENT, felt("engine cuts out", cause="empty tank")),
    ),
    "clutch slips, jumps out of gear": (
        seen(GEARS, "serious", felt("clutch slips")),
        seen(GEARS, "serious", felt("jumps out of gear")),
        seen(GEARS, "note", incident("false neutral")),
    ),
    "leak": (
        seen(LEAK, "hold", incident("leak", fluid="oil")),
        seen(LEAK, "serious", incident("leak", fluid="fork or shock weep", on_tyre=False)),
        seen(LEAK, "hold", incident("leak", fluid="fork or shock weep", on_tyre=True)),
        seen(LEAK, SILENT, incident("leak", fluid="dew")),
    ),
    "lamp oil, temperature": (
        seen("engine-lamp-not-mended", "hold", incident("warning lamp", lamp="oil")),
        seen("lamp-not-explained", "serious", incident("warning lamp")),
    ),
    "lamp ABS, traction, engine": (
        seen(AID, "serious", incident("warning lamp", lamp="engine")),
        seen(AID, "hold", incident("warning lamp", lamp="ABS"), now=NOVICE, then=WET),
        seen(AID, SILENT, incident("warning lamp", lamp="ABS", lit="before rolling", off_after_key=True)),
    ),
    "bars shake, weave": (
        seen(SHAKE, "hold", felt("weaves", grade=3)),
        seen(SHAKE, "serious", felt("weaves", grade=3, **TICKED)),
        seen(SHAKE, "serious", felt("weaves", grade=2)),
        seen(SHAKE, "serious", felt("weaves")),
        seen(SHAKE, "caution", felt("weaves", grade=1)),
        seen(SHAKE, "note", felt("weaves", grade=1), now=ADVANCED),
        seen(SHAKE, "note", felt("weaves", grade=3, cause="gust")),
        seen(SHAKE, "note", felt("weaves", grade=3), then={"rider": "tobin"}),
    ),
    "front locks": (
        seen(LOCK, "serious", felt("front locks", grade=1)),
        seen(LOCK, "note", felt("front locks", cause="cold tyre")),
    ),
    "front tucks, rear locks": (
        seen(SLIP, "serious", {**felt("tucks", grade=1), "setup.adjusters.front-rebound": 6}, **STEP),
        seen(SLIP, "serious", felt("tucks", grade=2)),
        seen(SLIP, "caution", felt("tucks", grade=1)),
        seen(SLIP, "note", felt("rear locks", grade=1), now=ADVANCED),
        seen(SLIP, "serious", felt("tucks", grade=1), now=NOVICE, then=WET),
        seen(SLIP, "note", felt("tucks", cause="first laps")),
    ),
    "fall moving, standstill": (
        seen(FALL, "hold", incident("fall", moving=True)),
        seen(FALL, "hold", incident("fall")),
        seen(STOOD, "serious", incident("fall", moving=False)),
        seen(FALL, SILENT, incident("fall", moving=False)),
    ),
    "off, contact": (
        seen(OFF, "hold", incident("off the track", where="gravel")),
        seen(OFF, "hold", incident("contact")),
        seen(
            "off-to-be-inspected",
            "hold",
            incident("off the track", where="grass"),
            now={"day": RidingDay(inspection_after_off=True)},
        ),
        seen(OFF, "note", incident("off the track", where="kerb")),
        seen(
            "run-offs-in-a-day",
            "caution",
            {"incidents.1": OFF_ON_KERB, "incidents.2": OFF_ON_KERB, "incidents.3": OFF_ON_KERB},
        ),
        seen("run-offs-in-a-day", SILENT, {"incidents.1": OFF_ON_KERB, "incidents.2": OFF_ON_KERB}),
    ),
    "head contact, helmet": (
        seen("concussion-suspected", "hold", incident("fall", head_contact=True)),
        seen("head-hit-not-cleared", "hold", incident("fall", head_contact=True), then={"date": NEXT_DAY}),
        seen("helmet-hit", "hold", incident("fall", head_contact=True)),
        seen("head-contact-not-answered", "serious", incident("fall", moving=True)),
        seen("helmet-dropped", "note", incident("helmet dropped")),
        seen("helmet-hit", SILENT, incident("helmet dropped")),
    ),
    "unwell": (
        seen("rider-unwell", "serious", incident("unwell", signs=["headache"])),
        seen("rider-unwell", "hold", incident("unwell", signs=["fainted"])),
        seen("rider-unwell", "note", incident("unwell", signs=["thirst"])),
        seen("slept-little", "note", {"slept": "4.5 h"}),
        seen("slept-little", SILENT, {"slept": "6 h"}),
    ),
    "spent": (
        seen("rider-spent", "serious", {"fatigue": 4}),
        seen("rider-spent", SILENT, {"fatigue": 3}),
    ),
    "to fix": (
        seen("checklist-item-to-fix", "caution", {"checks.horn.status": "to fix"}),
        seen("checklist-item-to-fix", SILENT, {"checks.horn.status": "not applicable"}),
    ),
    "wheel, axle, caliper, pads, yokes out": (
        seen(WORK, "hold", {"work.1.what": "axle"}),
        seen(WORK, "hold", {"work.1.what": "yokes", **WHOLE}),
        seen(WORK, "hold", {"work.1.what": "axle", **WHOLE, **IN_RACE}),
        seen(WORK, SILENT, {"work.1.what": "axle", **WHOLE, "work.1.checked_by": "tyre fitter", **IN_RACE}),
        seen(WORK, SILENT, {"work.1.what": "axle", **WHOLE}),
    ),
    "its re-check": (
        seen("wheel-work-not-looked-at-again", "caution", {"work.1.what": "caliper", **WHOLE}),
        seen(
            "wheel-work-not-looked-at-again",
            SILENT,
            {"work.1.what": "caliper", **WHOLE, "work.1.rechecked_hot": True},
        ),
    ),
    "oil, filter, plug": (
        seen("oil-work-not-secured", "hold", {"work.1.what": "plug"}),
        seen("oil-work-not-checked-hot", "serious", {"work.1.what": "filter", "work.1.torqued": True}),
        seen("oil-work-not-checked-hot", SILENT, {"work.1.what": "plug", "work.1.rechecked_hot": True}),
    ),
    "slack not measured": (
        seen(CHAIN, "serious", {"work.1.what": "sprocket"}),
        seen(CHAIN, "serious", {"setup.rear_height": "5 mm"}, before=({"setup.rear_height": "2 mm"},)),
        seen(CHAIN, SILENT, {"setup.rear_height": "4 mm"}, before=({"setup.rear_height": "2 mm"},)),
        seen(CHAIN, SILENT, {"setup.fork_height": "9 mm"}, before=({"setup.fork_height": "2 mm"},)),
        seen(CHAIN, SILENT, {"work.1.what": "wheel out", "work.1.end": "front", **WHOLE}),
    ),
    "slack under book": (
        seen(SLACK, "serious", {"chain_slack": "25 mm"}, now=BOOK),
        seen(SLACK, "hold", {"chain_slack": "24 mm"}, now=BOOK),
        seen(SLACK, "serious", {"chain_slack": "51 mm"}, now=BOOK),
        seen(SLACK, SILENT, {"chain_slack": "50 mm"}, now=BOOK),
        seen(SLACK, SILENT, {"chain_slack": "22 mm", "chain_slack_stance": "side stand"}, now=BOOK_STANCE),
        seen(
            "chain-slack-measured-otherwise",
            "note",
            {"chain_slack": "22 mm", "chain_slack_stance": "side stand"},
            now=BOOK_STANCE,
        ),
    ),
    "fork further through, rear lower, taller tyre": (
        seen(HEIGHT, "hold", {"setup.fork_height": "7 mm"}, before=({"setup.fork_height": "4 mm"},)),
        seen(HEIGHT, "caution", {"setup.fork_height": "6 mm"}, before=({"setup.fork_height": "4 mm"},)),
        seen(HEIGHT, "hold", {"setup.rear_height": "1 mm"}, before=({"setup.rear_height": "5 mm"},)),
        seen(
            HEIGHT,
            "hold",
            {},
            before=({},),
            before_extra=fitted("rear", circumference=amount("1980 mm")),
            extra=fitted("rear", circumference=amount("2000 mm")),
        ),
        seen(HEIGHT, SILENT, {"setup.fork_height": "7 mm"}),
        seen(
            HEIGHT,
            SILENT,
            {"setup.fork_height": "7 mm"},
            before=({"setup.fork_height": "4 mm"},),
            now={"bike": Bike(front=BikeEnd(highest_clear=amount("8 mm")))},
        ),
    ),
    "cord, split, bubble, nail, under marks": (
        *(
            seen("tyre-finished", "hold", {"look.rear.seen": [look]})
            for look in ("cord", "split", "bubble", "nail", "below the marks")
        ),
        *(
            seen("tyre-finished", SILENT, {"look.rear.seen": [look]})
            for look in ("cold tear", "hot tear", "blueing")
        ),
    ),
    "cut; repair": (
        seen("tyre-cut", "caution", {"look.rear.seen": ["cut"]}),
        seen(
            "tyre-cut", SILENT, {"look.rear.seen": ["cut"], "look.rear.found": "tread", "look.rear.by": "TM"}
        ),
        seen(REPAIRED, "serious", {}, extra=fitted("rear", repair="inside"), now={"group": "novice"}),
        seen(REPAIRED, "hold", {}, extra=fitted("rear", repair="string plug"), now={"group": "novice"}),
        seen(REPAIRED, "hold", {}, extra=fitted("rear", repair="inside"), now={"group": "race"}),
        seen(REPAIRED, "serious", ON_ROAD, extra=fitted("rear", repair="side wall")),
        seen(REPAIRED, "note", ON_ROAD, extra=fitted("rear", repair="inside")),
    ),
    "pressure lost": (
        seen(LOST, "serious", cold("2.00 bar"), before=(cold("2.20 bar"),)),
        seen(LOST, "hold", cold("1.90 bar"), before=(cold("2.20 bar"),)),
        seen(LOST, SILENT, cold("2.10 bar"), before=(cold("2.20 bar"),)),
        seen(
            LOST, SILENT, {**cold("2.00 bar"), "pressures.cold.gauge": "another"}, before=(cold("2.20 bar"),)
        ),
        seen(
            LOST,
            SILENT,
            cold("2.00 bar"),
            before=({**cold("2.20 bar"), "pressures.hot.set_to_front": "2.2 bar"},),
        ),
    ),
    "hot off target": (
        seen(
            HOT_OFF,
            "caution",
            {**HOT, "pressures.hot.front": "2.55 bar"},
            extra=AIMED,
        ),
        seen(
            HOT_OFF,
            "serious",
            {**HOT, "pressures.hot.front": "2.80 bar"},
            extra=AIMED,
        ),
        seen(
            HOT_OFF,
            SILENT,
            {**HOT, "pressures.hot.front": "2.54 bar"},
            extra=AIMED,
        ),
        seen(
            HOT_OFF,
            "note",
            {**HOT, "pressures.hot.at": dt.time(9, 46)},
            extra=AIMED,
        ),
        *(
            seen(HOT_OFF, SILENT, {**HOT, **was}, extra=AIMED, then=now)
            for was, now in (
                ({}, {"setup.front_start": "2.00 bar"}),
                ({}, {"surface": "damp"}),
                ({"track": "20 C"}, {"track": "29 C"}),
                ({"warmers": "none"}, {"warmers": "used"}),
            )
        ),
    ),
    "pads, tread, chain": (
        seen("wear-near-its-limit", "caution", {"front_pads": "2.5 mm"}, now=PADS),
        seen("wear-near-its-limit", SILENT, {"front_pads": "2.6 mm"}, now=PADS),
        seen("wear-reading-old", "note", {"front_pads": "4.0 mm"}, rides=8),
        seen("wear-reading-old", SILENT, {"front_pads": "4.0 mm"}, rides=7),
    ),
    "help lowered": (
        *(
            seen(
                HELP,
                severity,
                {},
                before=({},),
                before_extra={"helps": {"traction": MUCH}},
                extra={"helps": {"traction": LITTLE}},
                now={"group": group},
            )
            for group, severity in (("novice", "caution"), ("intermediate", "caution"), ("race", "note"))
        ),
        seen(
            HELP,
            SILENT,
            {"surface": "wet"},
            before=({},),
            before_extra={"helps": {"traction": MUCH}},
            extra={"helps": {"traction": LITTLE}},
        ),
    ),
    "from another rider, bike, tyre kind": (
        seen("sag-not-measured-for-this-rider", "caution", {}, extra={"theirs": "12 kg lighter than Wim"}),
        seen("sag-not-measured-for-this-rider", SILENT, {}),
    ),
    "black flag, refused": (
        seen(STOPPED, "hold", incident("black flag")),
        seen(STOPPED, "hold", incident("refused by inspection")),
        seen(STOPPED, "note", incident("black flag", at_fault=True)),
    ),
    "mend by, noise over": (
        seen("mend-by-a-date", "serious", incident("mend by", due=FIRST)),
        seen("mend-by-a-date", "note", incident("mend by", due=FIRST + dt.timedelta(days=9))),
        seen(
            NOISE,
            "note",
            {"day": "2026-05-16"},
            extra=LOUD,
            then={"date": NEXT_DAY},
            now={"day": RidingDay(venue="elsewhere")},
        ),
    ),
    "airbag fired": (
        seen("airbag-fired", "serious", incident("airbag fired")),
        seen("airbag-fired", "hold", incident("airbag fired"), now={"day": RidingDay(airbag="required")}),
        seen("airbag-fired", SILENT, {}),
    ),
    "stood over 90 days, from a workshop": (
        seen("bike-stood-or-workshop", "caution", {}, before=({},), days=91),
        seen("bike-stood-or-workshop", SILENT, {}, before=({},), days=90),
        seen("bike-stood-or-workshop", "caution", {"work.1.what": "workshop"}),
    ),
    "ice": (
        seen("ice-on-the-track", "hold", {"ice": True}),
        seen("ice-on-the-track", SILENT, {"ice": False}),
    ),
}
"""Each line of the table, with what of it is told and how bad it is; the empty word is its guard at work."""
