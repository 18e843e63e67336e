"""Guards of adjusters and offsets."""

from tests.advice.next_change.cases import felt, sag
from tests.advice.next_change.told.given import (
    AUTOMATIC,
    Guard,
    adjuster,
    situation_of,
    turned,
)
from tests.advice.next_change.told.steps import SOFTER
from tests.rules.situations import put, without

DIVES = felt("dives")
ADJUSTERS = [
    Guard(
        "never past the range",
        "front compression has no more range that way: the spring or the valving is the next thing",
        situation_of("compression closed", "table", "OWN", DIVES, turned(front_compression=1)),
        situation_of(
            "compression in the middle",
            "table",
            "CHANGE",
            DIVES,
            turned(front_compression=13),
            puts=adjuster("front-compression", 11),
        ),
    ),
    Guard(
        "never into the last clicks",
        "front compression would stand in the last clicks of its range",
        situation_of("compression near its end", "table", "OWN", DIVES, turned(front_compression=4)),
        situation_of(
            "compression a click farther",
            "table",
            "CHANGE",
            DIVES,
            turned(front_compression=5),
            puts=adjuster("front-compression", 3),
        ),
    ),
    Guard(
        "an adjuster that is there",
        "there is no compression adjuster at the front",
        situation_of("no compression", "table", "OWN", DIVES, without("bike", "adjusters.front-compression")),
        situation_of("compression there", "table", "CHANGE", DIVES, puts=SOFTER),
    ),
    Guard(
        "a preload adjuster that is there",
        "there is no preload adjuster at the rear",
        situation_of(
            "no preload at the rear",
            "table",
            "OWN",
            felt("parts ground"),
            without("bike", "adjusters.rear-preload"),
        ),
        situation_of(
            "preload at the rear",
            "table",
            "CHANGE",
            felt("parts ground"),
            puts=adjuster("rear-preload", 5),
        ),
    ),
    Guard(
        "preload that the damping mode closes",
        "rear preload does nothing in damping mode automatic",
        situation_of(
            "preload set by motor",
            "table",
            "OWN",
            *AUTOMATIC,
            put("bike", "damping.automatic.closes.rear-preload", True),
            felt("parts ground"),
        ),
        situation_of(
            "preload by hand, damping by motor",
            "table",
            "CHANGE",
            *AUTOMATIC,
            felt("parts ground"),
            puts=adjuster("rear-preload", 5),
        ),
    ),
    Guard(
        "preload that the damping mode closes, with too much sag",
        "front preload does nothing in damping mode automatic",
        situation_of(
            "too much sag, preload set by motor",
            "sag",
            "OWN",
            *AUTOMATIC,
            put("bike", "damping.automatic.closes.front-preload", True),
            DIVES,
            sag("front", 43.0),
        ),
        situation_of(
            "too much sag, preload by hand",
            "sag",
            "CHANGE",
            *AUTOMATIC,
            DIVES,
            sag("front", 43.0),
            puts=adjuster("front-preload", 14),
        ),
    ),
    Guard(
        "a range that is known",
        "the bike's file does not say the range of front compression",
        situation_of(
            "no range of compression",
            "table",
            "OWN",
            DIVES,
            without("bike", "adjusters.front-compression.range"),
        ),
        situation_of("a range of compression", "table", "CHANGE", DIVES, puts=SOFTER),
    ),
    Guard(
        "a damper that is there",
        "there is no steering damper to turn",
        situation_of(
            "no damper", "table", "LOOK", felt("bars wobble", "yes"), without("bike", "adjusters.damper")
        ),
        situation_of(
            "a damper, and all looked at",
            "table",
            "CHANGE",
            felt("bars wobble", "yes"),
            turned(damper=16),
            puts=adjuster("damper", 15),
        ),
    ),
    Guard(
        "no damper before the four looks",
        "Look at head bearings, front tyre, axle, pinch bolts and damper mount before riding on",
        situation_of("a shake not looked at", "table", "LOOK", felt("bars wobble", "no"), turned(damper=16)),
        situation_of(
            "a shake looked at",
            "table",
            "CHANGE",
            felt("bars wobble", "yes"),
            turned(damper=16),
            puts=adjuster("damper", 15),
        ),
    ),
    Guard(
        "an offset that is written down",
        "offset front is not written down: read it on the dash",
        situation_of(
            "offset not read", "table", "OWN", *AUTOMATIC, DIVES, without("session", "setup.offsets.front")
        ),
        situation_of("offset read", "table", "CHANGE", *AUTOMATIC, DIVES, puts={"offsets.front": 1}),
    ),
    Guard(
        "never past an offset's range",
        "offset front has no more range that way",
        situation_of(
            "offset at its end", "table", "OWN", *AUTOMATIC, DIVES, put("session", "setup.offsets.front", 4)
        ),
        situation_of(
            "offset short of its end",
            "table",
            "CHANGE",
            *AUTOMATIC,
            DIVES,
            put("session", "setup.offsets.front", 3),
            puts={"offsets.front": 4},
        ),
    ),
]
