"""Cases of the rules about what the riding mode and the damping mode make of the set-up."""

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.situations import at, put, without

SHOWERS = put("session", "setup.mode", "showers")
AUTOMATIC = put("session", "setup.damping", "automatic")

CASES = {
    "fixed-by-the-riding-mode": Cases(
        raising=(
            raises("throttle", "note", SHOWERS, says="showers sets throttle response to soft, not even."),
        ),
        silent=(
            silent(),
            silent(SHOWERS, at("throttle", "soft")),
            silent(SHOWERS, at("throttle", None)),
            silent(SHOWERS, put("bike", "controls.throttle.outside_modes", True)),
        ),
        missing=(lacks("the riding mode", without("session", "setup.mode")),),
    ),
    "outside-the-riding-mode": Cases(
        raising=(
            raises(
                "traction",
                "hold",
                SHOWERS,
                at("traction", 5),
                says="Traction control 5 is not for showers: it allows 6 to 10.",
            ),
            raises(
                "traction",
                "hold",
                SHOWERS,
                at("traction", "off"),
                says="it cannot be off in it",
            ),
            # Level 0 means off on this control, and off has to be allowed by name.
            raises(
                "abs",
                "hold",
                SHOWERS,
                put("bike", "modes.showers.limits.abs", [0, 3]),
                at("abs", 0),
            ),
            raises(
                "throttle",
                "hold",
                put("bike", "modes.open.limits", {"throttle": ["even", "soft"]}),
                at("throttle", "sharp"),
                says="it allows even, soft",
            ),
        ),
        silent=(
            silent(),
            silent(SHOWERS),
            silent(SHOWERS, at("traction", 6)),
            silent(SHOWERS, at("traction", 10)),
            silent(
                SHOWERS,
                at("traction", "off"),
                put("bike", "modes.showers.off_allowed", ["traction"]),
            ),
            silent(
                SHOWERS,
                at("traction", 0),
                put("bike", "controls.traction.outside_modes", True),
            ),
        ),
        missing=(
            lacks("the riding mode", without("session", "setup.mode")),
            lacks("what traction control is set to", SHOWERS, at("traction", None)),
        ),
    ),
    "closed-by-the-damping-mode": Cases(
        raising=(
            raises(
                "front-rebound", "note", AUTOMATIC, says="Front rebound is not used in automatic damping."
            ),
        ),
        silent=(
            silent(),
            silent(AUTOMATIC, without("session", "setup.adjusters.front-rebound")),
            silent(put("bike", "damping", {})),
        ),
        missing=(lacks("the damping mode", without("session", "setup.damping")),),
    ),
}
