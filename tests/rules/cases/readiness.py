"""Cases of the rules about what is not known or not done yet; they are raised once the rider goes out."""

import datetime as dt

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.situations import put, without

RIDDEN = put("session", "parked", dt.time(10, 59))
ROAD = put("session", "kind", "road")
ENTRY = "entries.ines.kestrel"


def _paper(key: str) -> Cases:
    return Cases(
        raising=(
            raises("entries", "hold", without("day", f"{ENTRY}.{key}"), going_out=True),
            raises("entries", "hold", put("day", f"{ENTRY}.{key}", False), going_out=True),
            raises("entries", "hold", without("day", "entries"), going_out=True),
            raises("entries", "hold", without("session", "rider"), going_out=True),
        ),
        silent=(
            silent(going_out=True),
            silent(without("day", "entries"), RIDDEN, going_out=True),
            silent(without("day", "entries"), ROAD, going_out=True),
        ),
        missing=(lacks("the day", without("day")),),
    )


CASES = {
    "too-little-known": Cases(
        raising=(
            raises("bike", "caution", without("bike"), says="Not known: the bike;"),
            raises("electronics", "caution", without("bike", "electronics"), says="listed or none"),
            raises("group", "caution", without("rider", "group"), says="Not known: the rider's group;"),
            raises("rider", "caution", without("rider")),
            raises("kind", "caution", without("session", "kind")),
        ),
        silent=(silent(), silent(without("rider", "group"), RIDDEN)),
        asks=True,
    ),
    "surface-not-known": Cases(
        raising=(raises("surface", "caution", without("session", "surface")),),
        silent=(silent(), silent(without("session", "surface"), RIDDEN)),
        asks=True,
    ),
    "tyre-kind-not-known": Cases(
        raising=(
            raises(
                "kind",
                "caution",
                without("tyres", "rear.kind"),
                says="The kind of the rear tyre is not known.",
            ),
            raises(
                "kind",
                "caution",
                without("tyres", "front"),
                without("tyres", "rear"),
                says="front and rear tyres",
            ),
            raises("tyres", "caution", without("tyres"), says="Which tyres are on the bike is not known."),
        ),
        silent=(silent(), silent(without("tyres"), RIDDEN)),
        asks=True,
    ),
    "cold-pressures-not-read": Cases(
        raising=(
            raises("front", "caution", without("session", "pressures"), going_out=True),
            raises("front", "caution", without("session", "pressures.cold.rear"), going_out=True),
        ),
        silent=(
            silent(going_out=True),
            silent(
                put("session", "pressures", {"warmers": {"front": "2.2 bar", "rear": "1.9 bar"}}),
                going_out=True,
            ),
            silent(without("session", "pressures"), RIDDEN, going_out=True),
        ),
        asks=True,
    ),
    "not-signed-on": _paper("signed_on"),
    "briefing-not-attended": _paper("briefing"),
    "inspection-not-passed": _paper("inspected"),
}
