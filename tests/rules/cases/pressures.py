"""Cases of the rules about tyre pressures: cold, hot, late, off target, lost, for the road."""

import datetime as dt
from typing import Any

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.situations import Change, put, went_before, without

RIDDEN = put("session", "parked", dt.time(11, 0))
TARGETS = put(
    "tyres",
    "",
    {end: {"kind": "track-day", "hot_dry": "2.40 bar", "hot_wet": "2.20 bar"} for end in ("front", "rear")},
)
RANGED = put(
    "tyres",
    "",
    {end: {"kind": "slick", "works_from": "70 C", "works_to": "90 C"} for end in ("front", "rear")},
)
LONG = put("session", "ridden_time", "18 min")


def cold(front: str = "2.10 bar", rear: str = "1.90 bar", **more: Any) -> Change:
    """Read the tyres cold."""
    return put("session", "pressures.cold", {"front": front, "rear": rear, **more})


def hot(front: str = "2.40 bar", rear: str = "2.40 bar", after: int = 2, **more: Any) -> tuple[Change, ...]:
    """Read the tyres hot, so many minutes after parking at 11:00."""
    reading = {"at": dt.time(11, after), "front": front, "rear": rear, **more}
    return RIDDEN, put("session", "pressures.hot", reading)


COLD_AT_20 = cold(temperature="20 C")


def check_before(**more: Any) -> dict[str, Any]:
    """Tell a history with a cold check at 20 C, and what else it says."""
    reading = {"front": "2.30 bar", "rear": "1.90 bar", "temperature": "20 C"}
    return {"history": went_before({"pressures": {"cold": reading}, **more})}


NAIL = check_before()
AGAIN = put("session", "pressures.again", {"front": "2.08 bar", "rear": "1.90 bar", "temperature": "20 C"})
UNREAD: dict[str, Any] = {"history": went_before({"parked": dt.time(9, 0)}, hot_read=False)}
NOVICE = put("rider", "group", "novice")
ROAD_TYRES = put("tyres", "", {"front": {"kind": "road"}, "rear": {"kind": "road"}})


def at(hour: int, front: str, **more: Any) -> dict[str, Any]:
    """Give one more reading of the front at 20 C."""
    return {"at": dt.time(hour), "front": front, "rear": "1.90 bar", "temperature": "20 C", **more}


def this_morning(**more: Any) -> dict[str, Any]:
    """Tell an earlier session of the day whose pressures were set at 6 C."""
    reading = {"front": "2.10 bar", "rear": "1.90 bar", "temperature": "6 C", "set_to_front": "2.15 bar"}
    found = went_before({"number": 1, "pressures": {"cold": reading, **more}, "parked": dt.time(9, 20)})
    return {"earlier": (found.past[0].session,), "history": found}


LET_OUT = {"front": "2.60 bar", "set_to_front": "2.20 bar"}
"""Air let out on the warmers."""


def weather(air: str, then: str = "12 C") -> tuple[Change, ...]:
    """Set the pressures in one temperature, and ride in another."""
    return cold(temperature=then), put("session", "air", air)


CASES = {
    "hot-below-cold": Cases(
        raising=(
            raises("front", "serious", *hot(front="2.05 bar"), says="2.05 bar hot"),
            raises("front", "serious", cold(set_to_front="2.30 bar"), *hot(front="2.25 bar")),
        ),
        silent=(
            silent(*hot()),
            silent(),
            silent(without("session", "pressures.cold"), *hot(front="1.0 bar")),
            # Let out on the warmers, so that hot and cold are not of the same air.
            silent(cold("2.50 bar"), put("session", "pressures.warmers", LET_OUT), *hot(front="2.30 bar")),
        ),
        asks=True,
    ),
    "no-hot-pressure-last-time": Cases(
        raising=(
            raises("front", "note", **UNREAD),
            raises("front", "note", NOVICE, ROAD_TYRES, **UNREAD),
        ),
        silent=(
            silent(),
            silent(RIDDEN, **UNREAD),
            silent(history=went_before({"pressures": {"hot": {"front": "2.4 bar", "rear": "2.2 bar"}}})),
            silent(history=went_before({"parked": dt.time(9, 0), "tyres": "others"}, hot_read=False)),
            silent(history=went_before({"parked": dt.time(9, 0), "kind": "road"}, hot_read=False)),
        ),
        asks=True,
    ),
    "hot-reading-too-late": Cases(
        raising=(
            raises("at", "note", *hot(after=5), says="5 min after parking: warm, not hot"),
            raises("at", "note", *hot(after=12), says="out of every trend"),
        ),
        silent=(silent(*hot(after=3)), silent(), silent(*hot(after=12), without("session", "parked"))),
        asks=True,
    ),
    "hot-pressure-off-its-target": Cases(
        raising=(
            raises("front", "caution", TARGETS, *hot(front="2.60 bar"), says="0.20 bar over"),
            raises("front", "caution", TARGETS, *hot(front="2.20 bar"), says="0.20 bar under"),
            raises("front", "serious", TARGETS, *hot(front="2.80 bar")),
            raises("front", "caution", TARGETS, *hot(front="2.60 bar", after=6)),
            raises(
                "front",
                "caution",
                TARGETS,
                put("session", "surface", "wet"),
                *hot(front="2.40 bar", rear="2.2 bar"),
            ),
            raises(
                "rear",
                "caution",
                put("tyres", "", {"front": {"kind": "wet"}, "rear": {"kind": "wet", "hot_wet": "30 psi"}}),
                put("session", "surface", "damp"),
                *hot(rear="33.0 psi"),
                says="3.0 psi over its hot target of 30 psi",
            ),
        ),
        silent=(
            silent(TARGETS, *hot()),
            # Damp patches do not cool a tyre as water does: the target for the dry stands.
            silent(TARGETS, put("session", "surface", "drying"), *hot()),
            silent(TARGETS, put("session", "surface", "damp"), *hot("2.36 bar", "2.36 bar")),
            silent(*hot(front="2.80 bar")),
            silent(TARGETS, *hot(front="2.20 bar", after=6)),
            silent(TARGETS, *hot(front="2.80 bar", set_to_front="2.40 bar")),
        ),
        missing=(
            lacks("the surface", TARGETS, *hot(), without("session", "surface")),
            lacks("the tyre set", *hot(), without("tyres")),
        ),
    ),
    "tyre-worked-outside-its-range": Cases(
        raising=(
            raises(
                "front", "caution", RANGED, COLD_AT_20, LONG, *hot(front="2.20 bar"), says="too little heat"
            ),
            raises("front", "caution", RANGED, COLD_AT_20, LONG, *hot(front="2.95 bar"), says="too hot"),
        ),
        silent=(
            silent(RANGED, COLD_AT_20, LONG, *hot(front="2.55 bar", rear="2.35 bar")),
            # A slick from 1.50 bar at 20 C to 2.02 bar rises by a third, and is right at 80 C.
            silent(
                RANGED, cold("1.50 bar", "1.50 bar", temperature="20 C"), LONG, *hot("2.02 bar", "2.02 bar")
            ),
            silent(COLD_AT_20, LONG, *hot(front="2.20 bar")),
            silent(RANGED, COLD_AT_20, *hot(front="2.20 bar"), put("session", "ridden_time", "4 min")),
            silent(RANGED, COLD_AT_20, LONG, *hot(front="2.20 bar"), put("session", "warmers", "used")),
            silent(RANGED, COLD_AT_20, LONG, *hot(front="2.20 bar", after=7)),
            silent(RANGED, COLD_AT_20, LONG, *hot(front="2.20 bar"), put("session", "surface", "wet")),
            silent(
                RANGED, COLD_AT_20, LONG, put("session", "pressures.leaving", LET_OUT), *hot(front="2.20 bar")
            ),
        ),
        missing=(lacks("the surface", RANGED, COLD_AT_20, LONG, *hot(), without("session", "surface")),),
    ),
    "pressure-lost": Cases(
        raising=(
            raises("front", "serious", COLD_AT_20, **NAIL, says="lost 0.20 bar"),
            raises("front", "hold", COLD_AT_20, AGAIN, **NAIL),
            # Mended and filled, and the latest reading holds: the rider answers for it.
            raises(
                "front",
                "serious",
                COLD_AT_20,
                put("session", "pressures.again", at(9, "2.08 bar", set_to_front="2.30 bar")),
                put("session", "pressures.after", at(10, "2.30 bar")),
                **NAIL,
            ),
        ),
        silent=(
            silent(COLD_AT_20),
            silent(cold("2.28 bar", temperature="20 C"), **NAIL),
            # Ten degrees colder: 2.30 bar at 20 C are 2.19 at 10 C.
            silent(cold("2.17 bar", "1.80 bar", temperature="10 C"), **NAIL),
            silent(cold(), **NAIL),
            silent(COLD_AT_20, **check_before(tyres="others")),
            silent(COLD_AT_20, **check_before(date=dt.date(2026, 4, 1))),
            silent(
                COLD_AT_20,
                history=went_before(
                    {
                        "pressures": {
                            "cold": {"front": "2.30 bar", "rear": "1.90 bar", "temperature": "20 C"},
                            "hot": {"front": "2.60 bar", "rear": "2.30 bar", "set_to_front": "2.40 bar"},
                        }
                    }
                ),
            ),
            silent(COLD_AT_20, RIDDEN, **NAIL),
            silent(
                COLD_AT_20,
                history=went_before(
                    {
                        "pressures": {
                            "cold": {"front": "2.30 bar", "rear": "1.90 bar", "temperature": "20 C"},
                            "warmers": LET_OUT,
                        }
                    }
                ),
            ),
        ),
        asks=True,
    ),
    "road-pressure-on-the-track": Cases(
        raising=(
            raises("front", "caution", cold("2.50 bar")),
            raises("rear", "caution", cold(rear="2.90 bar")),
            raises(
                "front",
                "caution",
                without("session", "pressures"),
                put("session", "setup.front_start", "2.5 bar"),
            ),
        ),
        silent=(
            silent(),
            silent(cold("2.50 bar"), put("session", "surface", "wet")),
            silent(cold("2.50 bar"), put("session", "kind", "road")),
            silent(cold("2.50 bar", set_to_front="2.20 bar")),
            silent(cold("2.50 bar"), RIDDEN),
        ),
        missing=(lacks("the surface", cold("2.50 bar"), without("session", "surface")),),
    ),
    "weather-moved-since-set": Cases(
        raising=(
            raises("front", "note", *weather("24 C"), says="12 C warmer"),
            raises("front", "note", *weather("9 C", "20 C"), says="11 C colder"),
            raises(
                "front",
                "note",
                without("session", "pressures"),
                put("session", "air", "19 C"),
                says="13 C warmer than when the pressures were set before session 1",
                **this_morning(),
            ),
        ),
        silent=(
            silent(*weather("18 C")),
            silent(*weather("mild")),
            silent(),
            silent(*weather("24 C"), RIDDEN),
            silent(without("session", "pressures"), put("session", "air", "12 C"), **this_morning()),
            silent(
                without("session", "pressures"),
                put("session", "air", "19 C"),
                **this_morning(hot={"front": "2.40 bar", "rear": "2.20 bar", "set_to_front": "2.35 bar"}),
            ),
            silent(
                without("session", "pressures"),
                put("session", "air", "19 C"),
                put("session", "tyres", "others"),
                **this_morning(),
            ),
        ),
        asks=True,
    ),
}
