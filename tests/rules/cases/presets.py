"""Cases of the rules about presets of damping."""

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.situations import Change, put, without

WET = put("session", "surface", "wet")
KEEN = (
    put("session", "setup.damping", "automatic"),
    put("session", "setup.preset", "keen"),
    put("bike", "damping.automatic.presets", ["calm", "keen"]),
    put("bike", "damping.automatic.offsets", {"on-the-brakes": {"range": [-4, 4]}}),
    put(
        "bike",
        "damping.automatic.preset_values",
        {
            "calm": {"use": "wet"},
            "keen": {"use": "dry", "leaves": {"on-the-brakes": [-2, 1]}},
        },
    ),
)


def offset(value: float) -> Change:
    return put("session", "setup.offsets", {"on-the-brakes": value})


CASES = {
    "preset-made-for-the-dry": Cases(
        raising=(
            raises(
                "preset", "caution", *KEEN, WET, says="Preset keen is made for the dry, not for a wet track."
            ),
            raises("preset", "note", *KEEN, put("session", "surface", "damp")),
            raises(
                "preset",
                "caution",
                *KEEN,
                WET,
                put("bike", "damping.automatic.preset_values.calm.use", "dry"),
            ),
            # A name of the owner's takes no more than twenty cells of the line.
            raises(
                "preset",
                "caution",
                *KEEN,
                WET,
                put("bike", "damping.automatic.preset_values.calm.use", "dry"),
                put("bike", "damping.automatic.presets", ["calm", "keen", "for standing water"]),
                put("bike", "damping.automatic.preset_values.for standing water", {"use": "wet"}),
            ),
            raises(
                "preset",
                "caution",
                *KEEN,
                WET,
                put("bike", "damping.automatic.preset_values.calm.use", "dry"),
                put("bike", "damping.automatic.presets", ["calm", "keen", "for a streaming track"]),
                put("bike", "damping.automatic.preset_values.for a streaming track", {"use": "wet"}),
            ),
        ),
        silent=(
            silent(*KEEN),
            silent(*KEEN, WET, put("session", "setup.preset", "calm")),
            silent(*KEEN, WET, put("bike", "damping.automatic.preset_values.keen.use", "any")),
            silent(*KEEN, WET, without("bike", "damping.automatic.preset_values")),
            silent(*KEEN, WET, put("session", "setup.damping", "by-hand")),
            silent(WET),
        ),
        missing=(
            lacks("the preset", *KEEN, WET, without("session", "setup.preset")),
            lacks("the surface", *KEEN, without("session", "surface")),
        ),
    ),
    "outside-what-the-preset-leaves": Cases(
        raising=(
            raises(
                "on-the-brakes",
                "hold",
                *KEEN,
                offset(2),
                says="On the brakes 2 is not for keen: it leaves -2 to 1.",
            ),
            raises("on-the-brakes", "hold", *KEEN, offset(-3)),
        ),
        silent=(
            silent(*KEEN, offset(1)),
            silent(*KEEN, offset(-2)),
            silent(*KEEN),
            silent(*KEEN, offset(2), put("session", "setup.preset", "calm")),
            silent(*KEEN, offset(2), put("session", "setup.damping", "by-hand")),
        ),
        missing=(lacks("the preset", *KEEN, offset(2), without("session", "setup.preset")),),
    ),
}
