"""Cases of the rules about the way home by road."""

import datetime as dt
from typing import Any

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.cases.event import LUNCH
from tests.rules.situations import Change, at, put, went_before, without

RIDDEN = put("session", "parked", dt.time(10, 59))
ROAD = put("session", "kind", "road")
FIGURES = (
    put("bike", "front.road_pressure", "2.50 bar"),
    put("bike", "rear.road_pressure", "2.90 bar"),
)
HOME = (ROAD, *FIGURES)


def cold(**values: str) -> Change:
    """Read both tyres cold."""
    return put("session", "pressures.cold", values)


def tread(end: str, depth: str) -> Change:
    """Measure the tread of one tyre, in the middle."""
    return put("tyres", f"{end}.tread_middle", depth)


UP: dict[str, Any] = {
    "front": "2.10 bar",
    "rear": "1.90 bar",
    "set_to_front": "2.50 bar",
    "set_to_rear": "2.90 bar",
}
STARTS = (
    without("session", "pressures"),
    put("session", "setup.front_start", "2.10 bar"),
    put("session", "setup.rear_start", "2.90 bar"),
)

REAR_SLICK = put("tyres", "rear.kind", "slick")
BY_ROAD = (put("day", "travel", "road"), REAR_SLICK)
AFTER_LUNCH = dt.datetime(2026, 5, 16, 10, 0)

UNTIL_DUSK = put("day", "timetable.all.1", {"from": dt.time(20, 0), "to": dt.time(20, 20)})
LAW = put("garage", "limits.little-tread-for-the-road.serious_below", "1.6 mm")

CASES = {
    "road-home-at-track-pressure": Cases(
        raising=(
            raises("front", "caution", *HOME, says="2.10 bar; the road figure is 2.50 bar"),
            raises("rear", "caution", *HOME),
            raises("rear", "caution", *HOME, cold(front="2.5 bar", rear="2.6 bar")),
            raises("front", "caution", *HOME, *STARTS),
        ),
        silent=(
            silent(*FIGURES),
            silent(*HOME, cold(**UP)),
            silent(*HOME, cold(front="2.40 bar", rear="2.80 bar")),
            silent(*HOME, RIDDEN),
            silent(*HOME, without("session", "pressures")),
        ),
        missing=(
            lacks("the road pressure of the front", ROAD),
            lacks("the road pressure of the rear", ROAD, FIGURES[0], cold(**UP)),
        ),
    ),
    "little-tread-for-the-road": Cases(
        raising=(
            raises("front", "serious", *HOME, tread("front", "0.9 mm")),
            raises("front", "hold", *HOME, LAW, tread("front", "1.5 mm")),
            raises("rear", "serious", *HOME, history=went_before({"rear_tread": "0.9 mm"})),
            raises(
                "rear", "caution", *HOME, tread("rear", "1.5 mm"), put("tyres", "rear.tread_left", "3 mm")
            ),
        ),
        silent=(
            silent(*HOME),
            silent(*HOME, tread("rear", "1.6 mm")),
            silent(tread("rear", "0.5 mm")),
            silent(*HOME, tread("rear", "0.5 mm"), RIDDEN),
        ),
        missing=(lacks("the tyre set", *HOME, without("tyres")),),
    ),
    "tyre-not-for-the-road": Cases(
        raising=tuple(
            raises(end, "hold", *HOME, put("tyres", f"{end}.kind", kind))
            for end, kind in (("front", "slick"), ("rear", "wet"), ("rear", "intermediate"))
        ),
        silent=(
            silent(*HOME),
            silent(put("tyres", "rear.kind", "slick")),
            silent(*HOME, put("tyres", "rear.kind", "race-treaded")),
        ),
        missing=(
            lacks("the tyre set", *HOME, without("tyres")),
            lacks("the kind of the rear tyre", *HOME, without("tyres", "rear.kind")),
        ),
    ),
    "abs-off-on-the-road": Cases(
        raising=(
            raises("abs", "caution", *HOME, at("abs", 0), says="front and rear without ABS"),
            raises("abs", "caution", *HOME, at("abs", 1), says="leaves the front"),
            raises("abs", "serious", *HOME, put("session", "surface", "wet"), at("abs", 0)),
            raises("abs", "serious", *HOME, without("session", "surface"), at("abs", 0)),
        ),
        silent=(
            silent(*HOME),
            silent(at("abs", 0)),
            silent(*HOME, at("abs", 0), RIDDEN),
            silent(*HOME, at("traction", None), at("throttle", None)),
        ),
        missing=(lacks("what ABS is set to", *HOME, without("session", "setup.controls.abs")),),
    ),
    "track-mode-on-the-road": Cases(
        raising=(raises("mode", "caution", *HOME, put("bike", "modes.open.use", "dry")),),
        silent=(
            silent(*HOME),
            silent(*HOME, put("bike", "modes.open.use", "road")),
            silent(*HOME, without("bike", "modes.open.use")),
            silent(put("bike", "modes.open.use", "dry")),
        ),
        missing=(lacks("the riding mode", *HOME, without("session", "setup.mode")),),
    ),
    "traction-off-on-the-road": Cases(
        raising=(
            raises("traction", "caution", *HOME, at("traction", "off"), says="traction control is off"),
            raises("traction", "caution", *HOME, at("traction", "off"), without("session", "surface")),
        ),
        silent=(
            silent(*HOME),
            silent(*HOME, at("traction", 0)),
            silent(at("traction", "off")),
            silent(*HOME, at("traction", "off"), RIDDEN),
            silent(*HOME, at("traction", "off"), put("session", "surface", "wet")),
        ),
        missing=(lacks("what traction control is set to", *HOME, at("traction", None)),),
    ),
    "road-home-ahead": Cases(
        raising=(
            raises(
                "road-home",
                "caution",
                put("day", "travel", "road"),
                LAW,
                tread("front", "1.5 mm"),
                says="front tyre (1.5 mm of tread)",
            ),
            raises("road-home", "caution", *BY_ROAD, says="rear tyre (slick)"),
            raises(
                "road-home",
                "caution",
                REAR_SLICK,
                put("day", "entries.ines.kestrel.travel", "road"),
            ),
            raises("road-home", "caution", *BY_ROAD, LUNCH, now=AFTER_LUNCH),
            raises("road-home", "caution", put("day", "travel", "road"), UNTIL_DUSK, says="dusk (20:20)"),
        ),
        silent=(
            silent(REAR_SLICK),
            silent(put("day", "travel", "road")),
            silent(put("day", "travel", "road"), tread("front", "1.5 mm")),
            silent(put("day", "travel", "road"), LAW, tread("front", "1.6 mm")),
            silent(*BY_ROAD, now=AFTER_LUNCH),
            silent(*BY_ROAD, put("day", "entries.ines.kestrel.travel", "van")),
            silent(*BY_ROAD, put("session", "kind", "road")),
            silent(*BY_ROAD, RIDDEN),
            silent(UNTIL_DUSK),
        ),
        missing=(lacks("the tyre set", put("day", "travel", "road"), without("tyres")),),
    ),
    "dusk-on-the-road": Cases(
        raising=(
            raises("dusk", "caution", *HOME, put("session", "start", dt.time(20, 10)), says="20:10"),
            raises("dusk", "caution", *HOME, put("session", "went_out", dt.time(21, 0))),
            raises(
                "dusk",
                "caution",
                *HOME,
                without("session", "start"),
                now=dt.datetime(2026, 5, 16, 20, 30),
                says="20:30",
            ),
            raises(
                "dusk",
                "caution",
                *HOME,
                put("session", "date", dt.date(2026, 11, 7)),
                put("session", "start", dt.time(17, 5)),
            ),
        ),
        silent=(
            silent(*HOME),
            silent(put("session", "start", dt.time(20, 10))),
            silent(*HOME, put("session", "start", dt.time(17, 5))),
            silent(*HOME, without("session", "start")),
            silent(*HOME, put("session", "start", dt.time(20, 10)), RIDDEN),
        ),
        asks=True,
    ),
}
