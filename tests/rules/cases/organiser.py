"""Cases of the rules about what the organiser posted."""

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.situations import Change, at, put, without

ROAD = put("session", "kind", "road")


def limiter(set_to: str, *speeds: str) -> tuple[Change, Change]:
    """A limiter set to a speed, out of those that the bike offers."""
    return put("bike", "controls.pit-limiter.speeds", list(speeds)), at("pit-limiter", set_to)


def posted(speed: str) -> Change:
    """The limit of the day."""
    return put("day", "limits.pit_lane", speed)


CASES = {
    "pit-limiter-over-the-limit": Cases(
        raising=(
            raises(
                "pit-limiter",
                "hold",
                posted("59 km/h"),
                says="Pit limiter 60 km/h is over the posted 59 km/h.",
            ),
            raises(
                "pit-limiter",
                "hold",
                *limiter("56 mph", "37 mph", "56 mph"),
                posted("90 km/h"),
                says="Pit limiter 56 mph (90.1 km/h) is over the posted 90 km/h.",
            ),
            raises(
                "pit-limiter",
                "hold",
                *limiter("19 mph"),
                posted("30 km/h"),
                says="Pit limiter 19 mph (30.6 km/h) is over the posted 30 km/h.",
            ),
            # So near that one decimal would call both the same.
            raises(
                "pit-limiter", "hold", *limiter("18.65 mph"), posted("30 km/h"), says="18.65 mph (30.01 km/h)"
            ),
            raises(
                "pit-limiter",
                "caution",
                posted("30 km/h"),
                says="Pit limiter 60 km/h cannot hold the posted 30 km/h.",
            ),
            raises(
                "pit-limiter",
                "hold",
                at("pit-limiter", "40 km/h"),
                put("bike", "controls.pit-limiter.outside_modes", False),
                put("bike", "modes.open.fixes", {"pit-limiter": "60 km/h"}),
                posted("50 km/h"),
            ),
        ),
        silent=(
            silent(),
            silent(*limiter("30 km/h", "30 km/h"), posted("20 mph")),
            silent(*limiter("56 mph", "56 mph"), posted("91 km/h")),
            silent(at("pit-limiter", "off"), posted("30 km/h")),
            silent(posted("30 km/h"), ROAD),
            silent(without("bike", "controls.pit-limiter"), at("pit-limiter", None)),
        ),
        missing=(
            lacks("the posted pit-lane limit", without("day", "limits.pit_lane")),
            lacks("the day", without("day")),
            lacks("what the pit limiter is set to", at("pit-limiter", None)),
        ),
    ),
    "pit-limiter-figure-missing": Cases(
        raising=(raises("pit-limiter", "caution", at("pit-limiter", None)),),
        silent=(
            silent(),
            silent(at("pit-limiter", "off")),
            silent(ROAD, at("pit-limiter", None)),
            silent(without("bike", "controls.pit-limiter"), at("pit-limiter", None)),
        ),
        missing=(
            lacks(
                "the posted pit-lane limit",
                at("pit-limiter", None),
                without("day", "limits.pit_lane"),
            ),
        ),
    ),
}
