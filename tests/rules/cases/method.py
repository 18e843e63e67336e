"""Cases of the rules about method: what changed since the session before, and what can be learnt."""

from typing import Any

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.cases.before import RIDDEN, copied
from tests.rules.situations import BIKE_DOWN, Change, at, put, without

LEGS = (
    put(
        "bike",
        "adjusters",
        {
            "front-rebound-left": {
                "end": "front",
                "what": "rebound",
                "unit": "turn",
                "range": [0, 3],
                "step": 0.25,
                "leg": "left",
            },
            "front-rebound-right": {
                "end": "front",
                "what": "rebound",
                "unit": "turn",
                "range": [0, 3],
                "step": 0.25,
                "leg": "right",
            },
            "rear-preload": {"end": "rear", "unit": "turn", "range": [0, 12]},
            "rear-rebound": {"end": "rear", "unit": "click", "range": [0, 40]},
        },
    ),
    put("bike", "damping", {}),
)


def turned(name: str, value: float) -> Change:
    """Set an adjuster."""
    return put("session", f"setup.adjusters.{name}", value)


def both_legs(turns: float) -> tuple[Change, ...]:
    """Set the rebound of both legs, and the rear."""
    return (
        put("session", "setup.adjusters", {}),
        turned("front-rebound-left", turns),
        turned("front-rebound-right", turns),
        turned("rear-preload", 4),
        turned("rear-rebound", 20),
    )


PRELOAD_CLICKS = (
    put("bike", "adjusters.front-preload.unit", "click"),
    put("bike", "adjusters.front-preload.range", [0, 40]),
)
LEGS_BEFORE = copied(*both_legs(1.5), bike=LEGS)
WET = put("session", "surface", "wet")
SHOWERS = put("session", "setup.mode", "showers")
FORK = put("session", "setup.fork_height", "5 mm")
TWO = (turned("front-rebound", 10), turned("front-preload", 7))
LOWER = (at("traction", 7), at("wheelie", 4))
REASON = put("session", "because.adjusters.front-rebound", {"why": "harsh over the ripples"})
NO_REBOUND = without("session", "setup.adjusters.front-rebound")
ON_RECORD: dict[str, Any] = {
    f"sag.{end}.rider": {"extended": "700 mm", "pushed": "668 mm", "lifted": "672 mm"}
    for end in ("front", "rear")
}

CASES = {
    "several-changes-at-once": Cases(
        raising=(
            raises("changes", "caution", *TWO, **copied(), says="2 changes since the session before"),
            raises("changes", "caution", *TWO, FORK, **copied(put("session", "setup.fork_height", "4 mm"))),
            raises("changes", "caution", *LOWER, turned("front-rebound", 11), **copied()),
            raises("changes", "caution", at("engine-braking", 4), turned("front-preload", 7), **copied()),
        ),
        silent=(
            silent(**copied()),
            silent(turned("front-rebound", 11), **copied()),
            silent(*TWO),
            # What came from a saved set-up was found together, and goes back together.
            silent(*TWO, put("session", "taken_from", "kestrel-dry"), **copied()),
            silent(*TWO, WET, **copied()),
            silent(*TWO, **copied(WET)),
            silent(*TWO, SHOWERS, at("traction", 9), **copied()),
            silent(*TWO, **copied(first_day=True)),
            silent(*TWO, RIDDEN, **copied()),
            silent(*TWO, **copied(put("session", "rider", "tobin"))),
            silent(
                *TWO, put("tyres", "rear.kind", "wet"), **copied(tyres={"may": {"rear": {"kind": "slick"}}})
            ),
            # Pressures to their target, more help, and both legs together.
            silent(
                put("session", "setup.front_start", "2.2 bar"),
                at("traction", 9),
                at("wheelie", 6),
                turned("front-rebound", 11),
                **copied(put("session", "setup.front_start", "2.3 bar")),
            ),
            silent(*LEGS, *both_legs(1.75), **LEGS_BEFORE),
            # What was not written down before is no change.
            silent(*TWO, **copied(put("session", "setup.adjusters", {}))),
            silent(
                put("session", "setup.front_sprocket", 15),
                put("session", "setup.rear_sprocket", 42),
                put("session", "setup.links", 110),
                **copied(
                    put("session", "setup.front_sprocket", 16),
                    put("session", "setup.rear_sprocket", 43),
                    put("session", "setup.links", 112),
                ),
            ),
        ),
        missing=(lacks("the bike", without("bike"), **copied()),),
    ),
    "several-aids-lowered": Cases(
        raising=(
            raises("aids", "caution", *LOWER, **copied(), says="2 aids were lowered in one step."),
            raises(
                "aids",
                "caution",
                ("bike", (), BIKE_DOWN),
                at("traction", 5),
                at("wheelie", 3),
                at("abs", 1),
                **copied(at("traction", 4), at("wheelie", 2), at("abs", 1), bike=(("bike", (), BIKE_DOWN),)),
            ),
        ),
        silent=(
            silent(at("traction", 7), at("wheelie", 6), **copied()),
            silent(*LOWER, put("session", "taken_from", "kestrel-dry"), **copied()),
            silent(*LOWER, **copied(WET)),
            silent(*LOWER, **copied(first_day=True)),
            silent(*LOWER, RIDDEN, **copied()),
            silent(*LOWER),
        ),
        missing=(lacks("the bike", without("bike"), **copied()),),
    ),
    "change-without-an-old-value": Cases(
        raising=(
            raises(
                "front-rebound", "caution", REASON, **copied(NO_REBOUND), says="Front rebound was changed"
            ),
            raises(
                "fork_height",
                "caution",
                put("session", "because.setup.fork_height.expect", "turns"),
                **copied(),
            ),
        ),
        silent=(
            silent(REASON, **copied()),
            silent(REASON),
            silent(put("session", "because.adjusters.front-rebound.verdict", "better"), **copied(NO_REBOUND)),
            silent(REASON, RIDDEN, **copied(NO_REBOUND)),
        ),
        asks=True,
    ),
    "step-too-large": Cases(
        raising=(
            raises(
                "front-rebound",
                "caution",
                turned("front-rebound", 17),
                **copied(),
                says="Front rebound 12 -> 17",
            ),
            raises("front-preload", "caution", turned("front-preload", 9), **copied()),
            raises("front-rebound-left", "caution", *LEGS, *both_legs(2.25), **LEGS_BEFORE),
        ),
        silent=(
            silent(turned("front-rebound", 16), **copied()),
            silent(turned("front-preload", 8.5), **copied()),
            # Five clicks of forty are an eighth of the way.
            silent(*LEGS, *both_legs(1.5), turned("rear-rebound", 25), **LEGS_BEFORE),
            silent(turned("front-rebound", 20), put("session", "setup.damping", "automatic"), **copied()),
            silent(turned("front-rebound", 20), WET, **copied()),
            silent(turned("front-rebound", 20), RIDDEN, **copied()),
            # What a click of preload moves is the bike's own: it is none of damping.
            silent(*PRELOAD_CLICKS, turned("front-preload", 30), **copied(bike=PRELOAD_CLICKS)),
        ),
        missing=(lacks("the bike", without("bike"), **copied()),),
    ),
    "height-step-too-large": Cases(
        raising=(
            raises(
                "fork_height",
                "caution",
                FORK,
                put("bike", "front.highest_clear", "20 mm"),
                **copied(put("session", "setup.fork_height", "11 mm")),
                says="Fork protrusion 11 mm -> 5 mm (front higher) is a large step.",
            ),
            raises(
                "rear_height",
                "caution",
                put("session", "setup.rear_height", "0 mm"),
                **copied(put("session", "setup.rear_height", "6 mm")),
            ),
        ),
        silent=(
            silent(
                FORK,
                put("bike", "front.highest_clear", "20 mm"),
                **copied(put("session", "setup.fork_height", "10 mm")),
            ),
            silent(FORK, put("bike", "front.highest_clear", "20 mm"), **copied()),
            silent(**copied()),
        ),
        missing=(lacks("the bike", without("bike"), **copied()),),
    ),
    "damping-before-sag-and-pressures": Cases(
        raising=(
            raises(
                "damping", "caution", turned("front-rebound", 11), **copied(), says="no rider sag on record."
            ),
            raises(
                "damping",
                "caution",
                turned("front-rebound", 11),
                **copied(**{**ON_RECORD, "pressures.hot": None}),
                says="no hot pressures on record.",
            ),
            raises(
                "damping", "caution", turned("front-rebound", 11), **copied(**{**ON_RECORD, "rider": "tobin"})
            ),
        ),
        silent=(
            silent(turned("front-rebound", 11), **copied(**ON_RECORD)),
            silent(turned("front-preload", 7), **copied()),
            silent(turned("front-rebound", 11), **copied(first_day=True)),
            silent(turned("front-rebound", 11), WET, **copied()),
            silent(turned("front-rebound", 11), put("session", "setup.damping", "automatic"), **copied()),
            silent(
                turned("front-rebound", 11),
                put("bike", "front.technician_rider_sag", "33 mm"),
                put("bike", "rear.technician_rider_sag", "31 mm"),
                **copied(),
            ),
        ),
        missing=(lacks("the bike", without("bike"), **copied()),),
    ),
}
