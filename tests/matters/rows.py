"""One row for each kind of matter: what opens it, what closes it, and what keeps it silent."""

import datetime as dt

from paddock_tui import quantities
from paddock_tui.matters import AidHelp
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike, Drive
from paddock_tui.records.day import DayEntry, Noise, PostedLimits, RidingDay
from paddock_tui.records.tyres import Tyre
from tests.matters.row import ANSWER, QUIET, RIDDEN, Row, Table, at, felt, incident
from tests.matters.walk import FIRST

HIT = incident("fall", moving=True, head_contact=True, concussion=False)
PART = at("symptoms.1", ANSWER)
MENDED = at("incidents.1", ANSWER)

WHOLE_JOB: Table = {"work.1.torqued": True, "work.1.pumped": True}


def amount(text: str) -> Quantity:
    found = quantities.parse(text)
    assert isinstance(found, Quantity)
    return found


def cold(front: str, rear: str = "1.90 bar", at: dt.time = dt.time(8, 0)) -> Table:
    """Give a cold reading of both ends, of one gauge, at 20 C."""
    reading = {"front": front, "rear": rear, "temperature": "20 C", "gauge": "round", "at": at}
    return {"pressures.cold": reading}


def sag(end: str) -> Table:
    lengths = {"extended": "520 mm", "pushed": "488 mm", "lifted": "484 mm"}
    return {f"sag.{end}.rider": lengths}


ON_TARGET = Tyre(hot_dry=amount("2.35 bar"), hot_dry_to=amount("2.40 bar"))
HOT: Table = {
    "setup.front_start": "2.10 bar",
    "parked": dt.time(9, 40),
    "pressures.hot.front": "2.60 bar",
    "pressures.hot.at": dt.time(9, 42),
}
BOOK = {"bike": Bike(drive=Drive(slack_least=amount("30 mm"), slack_most=amount("40 mm")))}
_BY_STANCE = Drive(slack_least=amount("30 mm"), slack_most=amount("40 mm"), slack_stance="rear stand")
BOOK_STANCE = {"bike": Bike(drive=_BY_STANCE)}
PADS = {"day": RidingDay(limits=PostedLimits(pads=amount("1.5 mm")))}
LOUD = {
    "day": RidingDay(venue="fen", limits=PostedLimits(noise=amount("100 dB(A)"))),
    "entry": DayEntry(noise=Noise(reading=amount("101 dB(A)"))),
}
OFF_ON_KERB = {"what": "off the track", "where": "kerb"}
MUCH, LITTLE = AidHelp(0.8, 10, 0.5, "8"), AidHelp(0.3, 10, 0.5, "3")

ROWS = (
    Row("leak-not-mended", incident("leak"), MENDED),
    Row("leak-not-mended", incident("leak"), {"incidents.1.mended": "overflow only, dry when hot"}),
    Row("engine-lamp-not-mended", incident("warning lamp", lamp="oil"), MENDED),
    Row("lamp-not-explained", incident("warning lamp"), MENDED),
    Row("aid-lamp-lit", incident("warning lamp", lamp="ABS"), MENDED),
    Row("brake-lever-not-firm", {"lever": "to the bar"}, record="bike"),
    Row("brake-lever-not-firm", {"lever": "spongy hot"}, record="bike"),
    Row("brake-lever-not-firm", {"lever": "long"}, later=({"lever": "firm"},)),
    Row("brakes-fade", felt("brakes fade"), PART),
    Row("throttle-or-engine-danger", felt("throttle sticks"), PART),
    Row(
        "throttle-or-engine-danger",
        felt("engine cuts out"),
        PART,
        silent=tuple(
            felt("engine cuts out", cause=cause) for cause in ("limiter", "kill switch", "empty tank")
        ),
    ),
    Row("clutch-or-gearbox", felt("clutch slips"), PART),
    Row("clutch-or-gearbox", felt("jumps out of gear"), later=(QUIET,)),
    Row("bars-shake-or-weave", felt("bars wobble"), later=(QUIET, QUIET, QUIET)),
    Row("bars-shake-or-weave", felt("weaves", grade=3, **ANSWER), later=(QUIET,)),
    Row("front-wheel-locked", felt("front locks"), later=(QUIET, QUIET, QUIET)),
    Row("tuck-or-rear-lock", felt("tucks"), later=(QUIET, QUIET, QUIET)),
    Row("tuck-or-rear-lock", felt("rear locks", **ANSWER), later=(QUIET,)),
    Row(
        "fall-not-inspected",
        incident("fall", moving=True),
        {"incidents.1.inspected_again": dt.time(16, 55)},
        silent=(incident("fall", moving=False),),
    ),
    Row(
        "fall-at-standstill",
        incident("fall", moving=False),
        {"incidents.1.inspected_again": dt.time(16, 55)},
    ),
    Row(
        "off-or-contact-not-looked-over",
        incident("off the track", where="gravel"),
        at("incidents.1", {"found": "nothing bent", "by": "TM"}),
    ),
    Row("off-or-contact-not-looked-over", incident("contact"), MENDED),
    Row(
        "concussion-suspected",
        incident("fall", moving=True, head_contact=True),
        {"incidents.1.concussion": False},
        days=False,
    ),
    Row(
        "head-hit-not-cleared",
        HIT,
        at("incidents.1", {"cleared_by": "medical post", "cleared_at": dt.time(16, 58)}),
    ),
    Row("helmet-hit", HIT, {"incidents.1.helmet_replaced": True}),
    Row("helmet-hit", HIT, record="rider"),
    Row(
        "head-contact-not-answered",
        incident("fall", moving=True),
        {"incidents.1.head_contact": False},
        days=False,
    ),
    Row(
        "rider-unwell",
        incident("unwell"),
        at("incidents.1", {"cleared_by": "medical post", "cleared_at": dt.time(16, 58)}),
    ),
    Row("rider-unwell", incident("unwell"), later=({"checks.rider-fit.status": "ok"},), at_once=False),
    Row(
        "rider-unwell",
        incident("unwell", signs=["fainted"]),
        at("incidents.1", {"cleared_by": "medical post", "cleared_at": dt.time(16, 58)}),
    ),
    Row(
        "rider-spent",
        {"fatigue": 4},
        later=({"fatigue": 3, "start": dt.time(18, 0)},),
        silent=({"fatigue": 3},),
        days=False,
    ),
    Row(
        "checklist-item-to-fix",
        {"checks.horn.status": "to fix"},
        later=({"checks.horn.status": "ok"},),
        silent=({"checks.horn.status": "not applicable"},),
    ),
    Row("wheel-work-not-checked", {"work.1.what": "caliper"}, WHOLE_JOB),
    Row("wheel-work-not-checked", {"work.1.what": "yokes"}, {**WHOLE_JOB, "work.1.steering_free": True}),
    Row("wheel-work-not-checked", {"work.1.what": "pads", "work.1.torqued": True}, {"work.1.pumped": True}),
    Row(
        "wheel-work-not-checked",
        {"work.1.what": "wheel out"},
        later=({"work.1.what": "wheel out", **WHOLE_JOB},),
    ),
    Row(
        "wheel-work-not-looked-at-again",
        {"work.1.what": "caliper", **WHOLE_JOB},
        {"work.1.rechecked_hot": True},
        silent=({"work.1.what": "chain", **WHOLE_JOB},),
    ),
    Row("oil-work-not-secured", {"work.1.what": "plug"}, {"work.1.torqued": True}),
    Row("oil-work-not-checked-hot", {"work.1.what": "filter"}, {"work.1.rechecked_hot": True}),
    Row(
        "chain-slack-not-measured",
        {"work.1.what": "chain"},
        {"chain_slack": "32 mm"},
        silent=({"work.1.what": "wheel out", "work.1.end": "front", **WHOLE_JOB},),
    ),
    Row("chain-slack-not-measured", {"work.1.what": "sprocket"}, later=({"chain_slack": "32 mm"},)),
    Row("tyre-finished", {"look.rear.seen": ["cord"]}, later=({"tyres": "others"},)),
    Row("tyre-finished", {"look.front.seen": ["nail"]}, silent=({"look.front.seen": ["cold tear"]},)),
    Row("tyre-cut", {"look.rear.seen": ["cut"]}, at("look.rear", {"found": "tread only", "by": "fitter"})),
    Row(
        "stopped-by-officials",
        incident("black flag"),
        at("incidents.1", {"found": "oil at the sump", "shown_to": "inspection"}),
    ),
    Row(
        "stopped-by-officials",
        incident("refused by inspection"),
        at("incidents.1", {"found": "pin", "shown_to": "TM"}),
    ),
    Row(
        "leak-not-mended",
        incident("leak", fluid="fork or shock weep"),
        MENDED,
        silent=tuple(incident("leak", fluid=fluid) for fluid in ("overflow", "lube", "dew")),
    ),
    Row(
        "aid-lamp-lit",
        incident("warning lamp", lamp="traction", off_after_key=True, lit="riding"),
        later=(RIDDEN,),
        then=(),
        silent=(
            incident("warning lamp", lamp="ABS", off_after_key=True, lit="before rolling"),
            incident("warning lamp", lamp="ABS", off_after_key=True, lit="wheel spun on the stand"),
        ),
        until_ridden=True,
    ),
    Row(
        "bars-shake-or-weave",
        felt("weaves"),
        later=({**QUIET, "because.adjusters.front-rebound.why": "weaves"},),
    ),
    Row(
        "tuck-or-rear-lock",
        {**felt("tucks"), "setup.adjusters.front-rebound": 6},
        later=({**QUIET, "setup.adjusters.front-rebound": 10},),
        before=({"setup.adjusters.front-rebound": 10},),
    ),
    Row(
        "off-to-be-inspected",
        incident("off the track", where="grass"),
        {"incidents.1.inspected_again": dt.time(16, 55)},
        silent=(incident("off the track", where="kerb"),),
        now={"day": RidingDay(inspection_after_off=True)},
    ),
    Row(
        "run-offs-in-a-day",
        {"incidents.1": OFF_ON_KERB, "incidents.2": OFF_ON_KERB, "incidents.3": OFF_ON_KERB},
        silent=({"incidents.1": OFF_ON_KERB, "incidents.2": OFF_ON_KERB},),
        days=False,
    ),
    Row("slept-little", {"slept": "4.5 h"}, silent=({"slept": "5 h"}, {"slept": "6 h"}), days=False),
    Row(
        "helmet-dropped",
        incident("helmet dropped"),
        {"incidents.1.found": "looked at in the shop, whole"},
    ),
    Row("ice-on-the-track", {"ice": True}, later=({"ice": False},), silent=({"ice": False},), days=False),
    Row(
        "chain-slack-outside-the-book",
        {"chain_slack": "22 mm"},
        later=({"chain_slack": "34 mm"},),
        silent=tuple({"chain_slack": f"{mm} mm"} for mm in (30, 40, 50)),
        now=BOOK,
    ),
    Row(
        "chain-slack-measured-otherwise",
        {"chain_slack": "34 mm", "chain_slack_stance": "side stand"},
        later=({"chain_slack": "34 mm", "chain_slack_stance": "rear stand"},),
        silent=({"chain_slack": "34 mm", "chain_slack_stance": "rear stand"},),
        now=BOOK_STANCE,
    ),
    Row(
        "chain-slack-outside-the-book",
        {"chain_slack": "22 mm", "chain_slack_stance": "rear stand"},
        later=({"chain_slack": "34 mm", "chain_slack_stance": "rear stand"},),
        silent=({"chain_slack": "22 mm", "chain_slack_stance": "side stand"},),
        now=BOOK_STANCE,
    ),
    Row(
        "tyre-repaired",
        {},
        later=({"tyres": "others"},),
        extra={"fitted": {"rear": Tyre(repair="string plug")}},
    ),
    Row(
        "noise-over-last-time",
        {"day": "2026-05-16"},
        extra=LOUD,
        here=False,
        at_once=False,
    ),
    Row(
        "bike-stood-or-workshop",
        {},
        record="bike",
        before=({},),
        before_date=FIRST - dt.timedelta(days=91),
    ),
    Row("bike-stood-or-workshop", {"work.1.what": "workshop"}, record="bike"),
    Row(
        "bike-stood-or-workshop",
        {"work.1.what": "workshop"},
        at("work.1", {"done": "brakes, tyres, chain, battery gone through", "by": "TM"}),
    ),
    Row(
        "height-never-ridden",
        {"setup.fork_height": "7 mm"},
        later=({"setup.fork_height": "4 mm"},),
        record="bike",
        silent=({"setup.fork_height": "4 mm"}, {"setup.fork_height": "2 mm"}),
        before=({"setup.fork_height": "4 mm"},),
    ),
    Row(
        "height-never-ridden",
        {"setup.rear_height": "1 mm"},
        record="bike",
        silent=({"setup.rear_height": "5 mm"},),
        before=({"setup.rear_height": "2 mm"},),
    ),
    Row(
        "pressure-lost-unanswered",
        cold("2.00 bar"),
        later=(cold("2.00 bar", at=dt.time(10, 0)), cold("1.98 bar", at=dt.time(22, 30))),
        record="tyres",
        silent=(cold("2.10 bar"), {**cold("2.00 bar"), "pressures.cold.gauge": "another"}),
        before=(cold("2.20 bar"),),
        here=False,
    ),
    Row(
        "hot-pressure-off-last-time",
        HOT,
        later=({"pressures.hot.front": "2.38 bar"},),
        silent=(
            {**HOT, "pressures.hot.front": "2.50 bar"},
            {**HOT, "pressures.hot.set_to_front": "2.38 bar"},
        ),
        extra={"fitted": {"front": ON_TARGET}},
        here=False,
        keeps={"setup.front_start": "2.10 bar"},
    ),
    Row(
        "wear-near-its-limit",
        {"front_pads": "2.0 mm"},
        later=({"front_pads": "4.5 mm"},),
        silent=({"front_pads": "2.6 mm"},),
        now=PADS,
    ),
    Row(
        "wear-reading-old",
        {"front_pads": "4.0 mm"},
        later=({"front_pads": "4.0 mm"},),
        then=(RIDDEN,) * 8,
        here=False,
    ),
    Row(
        "help-lowered",
        {},
        later=(QUIET,),
        before=({},),
        before_extra={"helps": {"traction": MUCH}},
        extra={"helps": {"traction": LITTLE}},
    ),
    Row(
        "sag-not-measured-for-this-rider",
        {},
        later=(sag("front"), sag("rear")),
        extra={"theirs": "12 kg lighter than Wim"},
        here=False,
    ),
    Row("mend-by-a-date", incident("mend by"), {"incidents.1.done": "new pads"}),
    Row("airbag-fired", incident("airbag fired"), {"incidents.1.done": "new cartridge"}),
)
