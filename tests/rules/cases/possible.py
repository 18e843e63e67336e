"""Cases of the rules about what can be on this bike."""

import datetime as dt

from paddock_tui.facts.situation import Dangling
from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.situations import at, counts_down, put, without

LOST_BIKE = Dangling("session", ("bike",), "bike", "no-such-bike")
LOST_TYRES = Dangling("session", ("tyres",), "tyres", "spring")


CASES = {
    "record-at-odds-with-itself": Cases(
        raising=(
            raises(
                "controls.traction.most_help",
                "hold",
                put("bike", "controls.traction.most_help", 7),
                says="Traction: 7 is not an end of its range.",
            ),
            raises("controls.traction.levels", "hold", put("bike", "controls.traction.levels", [9, 2])),
            raises(
                "parked",
                "caution",
                put("session", "went_out", dt.time(11, 0)),
                put("session", "parked", dt.time(10, 0)),
            ),
        ),
        silent=(
            silent(),
            silent(put("session", "went_out", dt.time(10, 0)), put("session", "parked", dt.time(10, 0))),
        ),
        asks=True,
    ),
    "impossible-figure": Cases(
        raising=(
            raises(
                "pressures.cold.front",
                "hold",
                put("session", "pressures.cold.front", "21 bar"),
                says="Front (pressures, cold) cannot be 21 bar (psi or a decimal point?).",
            ),
            raises("pressures.cold.front", "hold", put("session", "pressures.cold.front", "0.69 bar")),
            raises("pressures.cold.front", "hold", put("session", "pressures.cold.front", "52 psi")),
            raises(
                "track",
                "caution",
                put("session", "track", "120 C"),
                says="Track temperature cannot be 120 C (F or a decimal point?).",
            ),
            raises(
                "setup.rear_sprocket",
                "caution",
                put("session", "setup.rear_sprocket", 430),
                says="Rear sprocket cannot be 430 (a decimal point?).",
            ),
            raises(
                "limits.pit_lane", "hold", put("day", "limits.pit_lane", "600 km/h"), says="Pit-lane limit"
            ),
        ),
        silent=(
            silent(),
            silent(put("session", "pressures.cold.front", "0.7 bar")),
            silent(put("session", "pressures.cold.front", "50 psi")),
            silent(put("session", "track", "hot")),
            silent(put("session", "setup.adjusters.front-rebound", 999)),
        ),
        asks=True,
    ),
    "level-not-on-the-bike": Cases(
        raising=(
            raises(
                "traction",
                "hold",
                at("traction", 11),
                says="Traction control 11 is not on this bike: it has 0-10 and off.",
            ),
            raises("traction", "hold", at("traction", -1)),
            raises(
                "traction",
                "hold",
                *counts_down(at("traction", 12)),
                says="it has 11 = least, 1 = most and off",
            ),
            raises("engine-braking", "hold", at("engine-braking", "off")),
            raises(
                "throttle",
                "hold",
                at("throttle", "wild"),
                says="it has sharp, even, soft",
            ),
        ),
        silent=(
            silent(),
            silent(at("traction", 0)),
            silent(at("traction", "off")),
            silent(at("abs", 0)),
            silent(*counts_down()),
        ),
        missing=(
            lacks("the levels of traction control", without("bike", "controls.traction.levels")),
            lacks("what traction control is set to", at("traction", None)),
        ),
    ),
    "speed-not-on-the-bike": Cases(
        raising=(
            raises("pit-limiter", "hold", at("pit-limiter", "55 km/h")),
            raises(
                "pit-limiter",
                "hold",
                at("pit-limiter", "off"),
                put("bike", "controls.pit-limiter.off", False),
            ),
        ),
        silent=(
            silent(),
            silent(at("pit-limiter", "off")),
            silent(
                at("pit-limiter", "25 mph"),
                put("bike", "controls.pit-limiter.speeds", ["40.2336 km/h"]),
            ),
            silent(
                at("pit-limiter", "55 km/h"),
                without("bike", "controls.pit-limiter.speeds"),
            ),
        ),
        missing=(lacks("what pit limiter is set to", at("pit-limiter", None)),),
    ),
    "adjuster-outside-its-range": Cases(
        raising=(
            raises(
                "front-rebound",
                "caution",
                put("session", "setup.adjusters.front-rebound", 25),
                says="Front rebound 25 cannot be: it goes from 0 to 24 (counted from the other end?).",
            ),
            raises("front-rebound", "caution", put("session", "setup.adjusters.front-rebound", -1)),
            raises("front-preload", "caution", put("session", "setup.adjusters.front-preload", 15.5)),
            raises(
                "front-rebound",
                "caution",
                put("session", "setup.adjusters.front-rebound", 25),
                put("bike", "adjusters.front-rebound.range", [24, 0]),
            ),
        ),
        silent=(
            silent(),
            silent(put("session", "setup.adjusters.front-rebound", 0)),
            silent(put("session", "setup.adjusters.front-rebound", 24)),
            silent(without("session", "setup.adjusters.front-rebound")),
        ),
        missing=(lacks("the range of front rebound", without("bike", "adjusters.front-rebound.range")),),
    ),
    "not-on-this-bike": Cases(
        raising=(
            raises(
                "mode",
                "hold",
                put("session", "setup.mode", "snow"),
                says="This bike has no riding mode snow.",
            ),
            raises("damping", "hold", put("session", "setup.damping", "magic")),
            raises(
                "preset",
                "hold",
                put("session", "setup.damping", "automatic"),
                put("session", "setup.preset", "wild"),
            ),
            raises("controls.launch", "hold", at("launch", "off")),
            raises("adjusters.rear-rebound", "hold", put("session", "setup.adjusters.rear-rebound", 3)),
            raises(
                "offsets.squat",
                "hold",
                put("session", "setup.damping", "automatic"),
                put("session", "setup.offsets.squat", 1),
            ),
        ),
        silent=(
            silent(),
            silent(put("session", "setup.damping", "automatic"), put("session", "setup.preset", "calm")),
            silent(put("session", "setup.preset", "calm")),
        ),
        missing=(
            lacks("the bike", without("bike")),
            lacks(
                "the bike's electronics (listed or none)",
                without("bike", "electronics"),
                at("launch", "off"),
            ),
            lacks(
                "the bike's suspension (listed or none)",
                without("bike", "suspension"),
                put("session", "setup.adjusters.rear-rebound", 3),
            ),
        ),
    ),
    "reference-not-found": Cases(
        raising=(
            raises(
                "bike", "hold", dangling=(LOST_BIKE,), says="There is no bike no-such-bike in this garage."
            ),
            raises(
                "tyres", "hold", dangling=(LOST_TYRES,), says="There is no tyre set spring in this garage."
            ),
        ),
        silent=(silent(),),
        asks=True,
    ),
}
