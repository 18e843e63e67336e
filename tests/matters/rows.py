"""One row for each kind of matter: what opens it, what closes it, and what keeps it silent."""

import datetime as dt
from typing import Any

import attrs

Table = dict[str, Any]

RIDDEN: Table = {"parked": dt.time(17, 0), "ridden_laps": 6}
QUIET: Table = {**RIDDEN, "did": "nothing", "happened": "nothing"}
ANSWER: Table = {"found": "worn part", "done": "replaced", "by": "TM", "test": "tried at walking pace"}


@attrs.frozen
class Row:
    """`opens` is written into a session. `beside` are values that close it where it stands, each whole.

    `later` are sessions after it that together close it, in their order. `answer` is an answer in the file of
    `record`. `silent` is what opens it not at all. `days` is whether it outlives its day. `only_to_come` is
    whether a ridden session is not told of it.
    """

    kind: str
    opens: Table
    beside: Table = attrs.field(factory=dict)
    later: tuple[Table, ...] = ()
    record: str = ""
    silent: tuple[Table, ...] = ()
    days: bool = True


def incident(what: str, **values: Any) -> Table:
    return {"incidents.1.what": what, "incidents.1.at": dt.time(16, 40)} | {
        f"incidents.1.{key}": value for key, value in values.items()
    }


def felt(what: str, **values: Any) -> Table:
    return {"symptoms.1.what": what} | {f"symptoms.1.{key}": value for key, value in values.items()}


def at(table: str, values: Table) -> Table:
    return {f"{table}.{key}": value for key, value in values.items()}


HIT = incident("fall", moving=True, head_contact=True, concussion=False)
PART = at("symptoms.1", ANSWER)
MENDED = at("incidents.1", ANSWER)

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
        days=False,
    ),
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
    Row("wheel-work-not-checked", {"work.1.what": "caliper"}, {"work.1.torqued": True}),
    Row(
        "wheel-work-not-checked",
        {"work.1.what": "wheel out"},
        later=({"work.1.what": "wheel out", "work.1.torqued": True},),
    ),
    Row("oil-work-not-checked-hot", {"work.1.what": "filter"}, {"work.1.rechecked_hot": True}),
    Row(
        "chain-slack-not-measured",
        {"work.1.what": "chain"},
        {"chain_slack": "32 mm"},
        silent=({"work.1.what": "wheel out", "work.1.end": "front", "work.1.torqued": True},),
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
    Row("mend-by-a-date", incident("mend by"), {"incidents.1.done": "new pads"}),
    Row("airbag-fired", incident("airbag fired"), {"incidents.1.done": "new cartridge"}),
)
