"""Cases of the rules about the suspension: sag, ends of ranges, legs, damper, height, copies."""

from typing import Any

import attrs

from paddock_tui.records.people import Rider
from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.cases.before import RIDDEN, copied, ridden
from tests.rules.cases.method import LEGS, both_legs, turned
from tests.rules.situations import Change, put, read, without

NO_TOP_OUT = put("bike", "front.top_out_springs", "none")
ROAD = put("session", "kind", "road")
DAMPER = put(
    "bike",
    "adjusters.steering-damper",
    {"end": "steering", "what": "damper", "unit": "click", "range": [0, 18], "counted_from": "closed"},
)
FORK_12 = put("session", "setup.fork_height", "12 mm")
CLEAR_8 = put("bike", "front.highest_clear", "8 mm")
TRAVEL = put("bike", "front.travel", "120 mm")
REAR_TABLES = (put("bike", "rear.top_out_springs", "none"),)
PUSHED_BACK = {"checks": {"travel-marks": {"status": "ok"}}}
WEIGHT = put("rider", "weight", "64 kg")
TOBIN = put("session", "rider", "tobin")


def sag(mm: float, end: str = "front", **more: Any) -> Change:
    """Measure rider sag of one end, without stiction."""
    return put("session", f"sag.{end}.rider", {**lengths(mm), **more})


def measured(mm: float, **more: Any) -> dict[str, Any]:
    """Give rider sag that was measured in an earlier session."""
    return {"sag.front.rider": sag(mm, **more)[2]}


def lengths(mm: float) -> dict[str, str]:
    """Give the three lengths of a sag."""
    return {"extended": "700 mm", "pushed": f"{700 - mm:g} mm", "lifted": f"{700 - mm:g} mm"}


def free(mm: float) -> Change:
    """Measure free sag of the rear."""
    return put("session", "sag.rear.alone", lengths(mm))


def used(mm: str) -> dict[str, Any]:
    """Read the marker on the fork after an outing."""
    return {"front_travel_used": mm}


def dived(mm: str, felt: str = "dives") -> dict[str, Any]:
    """Read it after an outing in which something was felt of it."""
    return {**used(mm), "symptoms": {"1": {"what": felt}}}


def preload(counted_from: str | None, turns: float) -> tuple[Change, Change]:
    """Set front preload, counted from an end."""
    return put("bike", "adjusters.front-preload.counted_from", counted_from), turned("front-preload", turns)


def theirs(weight: str | None = "90 kg", **more: Any) -> dict[str, Any]:
    """Give a set-up that was copied from another rider, whose weight is known."""
    made = copied(TOBIN, **more)
    riders = {"tobin": {"name": "Tobin", **({"weight": weight} if weight else {})}}
    return {**made, "history": knowing(made["history"], riders)}


def knowing(history: Any, riders: dict[str, dict[str, str]]) -> Any:
    """Give the same history with riders in it."""
    found = {name: read("rider", data, Rider) for name, data in riders.items()}
    return attrs.evolve(history, riders=found)


CASES = {
    "rider-sag-out-of-its-window": Cases(
        raising=(
            raises(
                "front",
                "caution",
                NO_TOP_OUT,
                sag(41),
                says="Front rider sag 41 mm: too much for a track (20-40 mm).",
            ),
            raises("front", "caution", NO_TOP_OUT, sag(19), says="too little"),
            raises("front", "serious", NO_TOP_OUT, sag(12)),
            raises("front", "caution", NO_TOP_OUT, sag(48)),
            raises("front", "serious", NO_TOP_OUT, sag(51)),
            raises("front", "caution", NO_TOP_OUT, ROAD, sag(19), says="the road (20-40 mm)"),
            raises("rear", "caution", put("bike", "rear.top_out_springs", "none"), sag(41, "rear")),
            # A technician's figure goes before the table, and serves with top-out springs.
            raises(
                "front",
                "caution",
                put("bike", "front.technician_rider_sag", "40 mm"),
                sag(34),
                says="technician's 40 mm",
            ),
            raises("front", "caution", put("bike", "front.technician_rider_sag", "40 mm"), sag(55)),
            raises(
                "front",
                "caution",
                NO_TOP_OUT,
                put("bike", "front.travel", "200 mm"),
                sag(40),
                says="% of travel",
            ),
            raises("front", "caution", NO_TOP_OUT, **ridden(measured(41))),
            # Preload has no way left: only another spring mends it.
            raises("front", "caution", NO_TOP_OUT, *preload("open", 15), sag(41)),
            raises("front", "caution", NO_TOP_OUT, *preload("closed", 15), sag(19)),
        ),
        silent=(
            silent(NO_TOP_OUT, sag(30)),
            silent(NO_TOP_OUT, sag(40)),
            silent(NO_TOP_OUT, sag(20)),
            silent(sag(30), NO_TOP_OUT, ROAD),
            silent(put("bike", "front.technician_rider_sag", "40 mm"), sag(45)),
            silent(NO_TOP_OUT, put("bike", "front.travel", "200 mm"), sag(50)),
            silent(NO_TOP_OUT, sag(41), RIDDEN),
            # Measured with another preload, on another spring, or with another rider on.
            silent(NO_TOP_OUT, sag(41, preload=5)),
            silent(NO_TOP_OUT, **ridden({**measured(41), "rider": "tobin"})),
            silent(
                NO_TOP_OUT,
                put("session", "setup.front_spring", "9.5 N/mm"),
                **ridden({**measured(41), "setup.front_spring": "9.0 N/mm"}),
            ),
            silent(NO_TOP_OUT, put("session", "sag.front.alone", {"extended": "700 mm"})),
        ),
        missing=(
            lacks("the technician's rider sag, front", sag(40)),
            lacks(
                "the technician's rider sag, front", put("bike", "front.top_out_springs", "fitted"), sag(30)
            ),
            lacks("the kind of session", NO_TOP_OUT, sag(40), without("session", "kind")),
        ),
    ),
    "rear-free-sag-and-spring": Cases(
        raising=(
            raises("rear", "note", *REAR_TABLES, sag(30, "rear"), free(2), says="spring too soft."),
            raises("rear", "note", *REAR_TABLES, sag(30, "rear"), free(21), says="spring too stiff."),
            raises("rear", "note", *REAR_TABLES, sag(45, "rear"), free(2)),
            raises("rear", "note", *REAR_TABLES, sag(18, "rear"), free(21)),
        ),
        silent=(
            silent(*REAR_TABLES, sag(30, "rear"), free(10)),
            # Preload answers these: both sags move together.
            silent(*REAR_TABLES, sag(18, "rear"), free(2)),
            silent(*REAR_TABLES, sag(45, "rear"), free(21)),
            silent(*REAR_TABLES, free(2)),
            silent(*REAR_TABLES, sag(30, "rear"), free(2), RIDDEN),
            silent(NO_TOP_OUT, sag(30), put("session", "sag.front.alone", lengths(2))),
        ),
        missing=(lacks("the technician's rider sag, rear", sag(30, "rear"), free(2)),),
    ),
    "sag-not-as-ridden-before": Cases(
        raising=(
            raises("front", "note", sag(36), **ridden(measured(30)), says="not what you rode, 30 mm"),
            raises("front", "note", sag(24), **ridden(measured(30))),
            raises("front", "note", **ridden(measured(30), measured(36))),
            raises("front", "caution", sag(36), **{**theirs(), **ridden(measured(30))}),
        ),
        silent=(
            silent(sag(35), **ridden(measured(30))),
            silent(sag(36)),
            silent(sag(36), **ridden({**measured(30), "rider": "tobin"})),
            silent(sag(36), RIDDEN, **ridden(measured(30))),
        ),
        missing=(lacks("the bike", sag(36), ("bike", (), None), **ridden(measured(30))),),
    ),
    "travel-used-up": Cases(
        raising=(
            raises("front", "caution", TRAVEL, **ridden(used("110 mm"), dived("118 mm")), says="it dived"),
            raises("front", "caution", TRAVEL, **ridden(PUSHED_BACK, dived("119 mm"))),
            raises(
                "front", "caution", TRAVEL, **ridden(used("110 mm"), dived("120 mm", "harsh on single bumps"))
            ),
        ),
        silent=(
            silent(TRAVEL, **ridden(used("110 mm"), dived("117 mm"))),
            # Nothing felt; a marker that a stand may have pushed; a later ride says otherwise.
            silent(TRAVEL, **ridden(used("110 mm"), used("119 mm"))),
            silent(TRAVEL, **ridden(dived("119 mm"))),
            silent(TRAVEL, **ridden(used("110 mm"), dived("119 mm"), used("112 mm"))),
            silent(TRAVEL, RIDDEN, **ridden(used("110 mm"), dived("119 mm"))),
        ),
        missing=(lacks("the wheel travel, front", **ridden(used("110 mm"), dived("119 mm"))),),
    ),
    "damping-near-its-end": Cases(
        raising=(
            raises(
                "front-rebound",
                "caution",
                turned("front-rebound", 1),
                says="near its end: 1 click (range 0-24).",
            ),
            raises("front-rebound", "caution", turned("front-rebound", 23)),
            raises("front-rebound-left", "caution", *LEGS, *both_legs(0.25)),
        ),
        silent=(
            silent(turned("front-rebound", 3)),
            silent(turned("front-rebound", 21)),
            silent(turned("front-rebound", 1), put("bike", "adjusters.front-rebound.source", "technician")),
            silent(turned("front-rebound", 1), put("bike", "adjusters.front-rebound.source", "manual")),
            silent(turned("front-rebound", 0), put("session", "setup.damping", "automatic")),
            silent(turned("front-preload", 0)),
            silent(*LEGS, *both_legs(0.5)),
        ),
        missing=(
            lacks(
                "the range of front rebound",
                turned("front-rebound", 1),
                without("bike", "adjusters.front-rebound.range"),
            ),
        ),
    ),
    "fork-legs-differ": Cases(
        raising=(
            raises(
                "front-rebound-left",
                "serious",
                *LEGS,
                *both_legs(1.5),
                turned("front-rebound-right", 1.75),
                says="Front rebound left and right differ: 1.5 and 1.75.",
            ),
            raises(
                "front-rebound-left",
                "serious",
                *LEGS,
                *both_legs(1.5),
                without("bike", "adjusters.front-rebound-left.what"),
                without("bike", "adjusters.front-rebound-right.what"),
                turned("front-rebound-left", 2),
            ),
        ),
        silent=(
            silent(*LEGS, *both_legs(1.5)),
            # Another thing in each leg: a fork that splits its duties.
            silent(
                *LEGS,
                *both_legs(1.5),
                put("bike", "adjusters.front-rebound-left.what", "compression"),
                turned("front-rebound-right", 2),
            ),
            silent(*LEGS, *both_legs(1.5), without("session", "setup.adjusters.front-rebound-right")),
            silent(turned("front-rebound", 5)),
        ),
        missing=(lacks("the bike", *LEGS, without("bike")),),
    ),
    "steering-damper-nearly-closed": Cases(
        raising=(
            raises(
                "steering-damper",
                "serious",
                DAMPER,
                turned("steering-damper", 2),
                says="nearly closed: 2 clicks open.",
            ),
            raises("steering-damper", "serious", DAMPER, turned("steering-damper", 0)),
            raises(
                "steering-damper",
                "serious",
                DAMPER,
                put("bike", "adjusters.steering-damper.counted_from", "open"),
                turned("steering-damper", 17),
                says="1 click open",
            ),
        ),
        silent=(
            silent(DAMPER, turned("steering-damper", 3)),
            silent(
                DAMPER,
                put("bike", "adjusters.steering-damper.counted_from", "open"),
                turned("steering-damper", 2),
            ),
            silent(DAMPER),
            silent(turned("front-rebound", 0), put("bike", "adjusters.front-rebound.source", "manual")),
            silent(
                DAMPER, put("bike", "adjusters.steering-damper.unit", "turn"), turned("steering-damper", 1)
            ),
        ),
        missing=(
            lacks(
                "which end steering damper is counted from",
                DAMPER,
                turned("steering-damper", 1),
                without("bike", "adjusters.steering-damper.counted_from"),
            ),
        ),
    ),
    "raised-beyond-what-is-clear": Cases(
        raising=(
            raises("front", "hold", FORK_12, CLEAR_8, says="Fork protrusion 12 mm: clear only up to 8 mm."),
            raises(
                "rear",
                "hold",
                put("session", "setup.rear_height", "9 mm"),
                put("bike", "rear.highest_clear", "6 mm"),
            ),
            # Ridden so before: luck ticks nothing.
            raises("front", "hold", FORK_12, CLEAR_8, **ridden({"setup.fork_height": "12 mm"})),
        ),
        silent=(
            silent(put("session", "setup.fork_height", "8 mm"), CLEAR_8),
            silent(put("session", "setup.fork_height", "0 mm")),
            silent(FORK_12, **ridden({"setup.fork_height": "12 mm"})),
            silent(FORK_12, CLEAR_8, RIDDEN),
            silent(CLEAR_8),
        ),
        missing=(lacks("the highest position of the front checked clear", FORK_12),),
    ),
    "set-up-of-another-rider": Cases(
        raising=(
            raises("rider", "caution", WEIGHT, **theirs(), says="you are 26 kg lighter than Tobin."),
            raises("rider", "caution", put("rider", "weight", "108 kg"), **theirs(), says="18 kg heavier"),
        ),
        silent=(
            silent(WEIGHT, **theirs("74 kg")),
            silent(WEIGHT, **copied()),
            silent(WEIGHT),
            silent(WEIGHT, put("session", "taken_from", "kestrel-dry"), **theirs()),
            silent(
                WEIGHT,
                sag(30),
                sag(30, "rear"),
                NO_TOP_OUT,
                put("bike", "rear.top_out_springs", "none"),
                **theirs(),
            ),
            silent(WEIGHT, RIDDEN, **theirs()),
        ),
        missing=(lacks("the rider", without("rider")),),
    ),
    "set-up-from-another-kind-of-tyre": Cases(
        raising=(
            raises(
                "tyres",
                "caution",
                put("session", "tyres", "june"),
                put("tyres", "rear.kind", "slick"),
                put("session", "warmers", "used"),
                **copied(tyres={"may": {"rear": {"kind": "track-day"}}}),
                says="from track-day tyres to slick",
            ),
        ),
        silent=(
            silent(**copied(tyres={"may": {"rear": {"kind": "track-day"}}})),
            silent(**copied()),
            silent(put("tyres", "rear.kind", "wet"), **copied(tyres={"may": {"rear": {"kind": "slick"}}})),
            # This kind was ridden on this bike before.
            silent(
                put("session", "tyres", "june"),
                put("tyres", "rear.kind", "slick"),
                put("session", "warmers", "used"),
                **copied(
                    put("session", "tyres", "april"),
                    tyres={"may": {"rear": {"kind": "slick"}}, "april": {"rear": {"kind": "track-day"}}},
                ),
            ),
            silent(
                put("session", "taken_from", "kestrel-slick"),
                put("tyres", "rear.kind", "slick"),
                put("session", "warmers", "used"),
                **copied(tyres={"may": {"rear": {"kind": "track-day"}}}),
            ),
        ),
        missing=(lacks("the tyre set", without("tyres")),),
    ),
}
