"""Cases of the rules about wheels that lock, hold or lift: ABS, engine braking, wheelie control, launch."""

import datetime as dt

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.cases.aids import DAMP, NO_AIDS, NO_GROUP, NO_SURFACE, NOVICE, WET
from tests.rules.cases.before import RIDDEN
from tests.rules.cases.incidents import earlier, happened
from tests.rules.cases.nets import ADVANCED, COLD, RACE
from tests.rules.situations import Change, at, counts_down, put, went_before, without

REAR_OFF = put("bike", "controls.abs.effects", {"2": {"rear": "off"}})
REAR_ABS = put("bike", "controls.rear-abs", {"kind": "level", "levels": [0, 3], "most_help": 3, "off": 0})
NO_FREEING_END = without("bike", "controls.engine-braking.frees_most")
STRONG = put("bike", "drive.power", "141 kW")
LAUNCH = put("bike", "controls.launch", {"kind": "state", "choices": ["off", "armed", "armed 2"]})
ARMED = (LAUNCH, at("launch", "armed"))
STRONGER = (LAUNCH, put("bike", "controls.launch.gentlest", "armed"), at("launch", "armed 2"))
STARTED = {"kind": "race", "parked": dt.time(9, 40), "setup.controls": {"launch": "armed"}}
A_RACE = put("session", "kind", "race")
PRACTICE_STARTS = put("session", "kind", "start practice")
ROAD = put("session", "kind", "road")

# From a printout: what it takes to work out which gears lift the front.
FIGURES: tuple[Change, ...] = (
    put("bike", "wet_mass", "203 kg"),
    put("rider", "weight", "64 kg"),
    put("bike", "chassis", {"centre_height": "690 mm", "centre_ahead": "702 mm"}),
    put(
        "bike",
        "drive",
        {
            "power": "141 kW",
            "primary": 1.652,
            "gearbox": [2.571, 2.067, 1.762],
            "front_sprocket": 16,
            "rear_sprocket": 43,
            "peak_torque": "116 N m",
        },
    ),
    put("bike", "rear.circumference", "1986 mm"),
)


def braking(level: int) -> Change:
    """Set engine braking."""
    return at("engine-braking", level)


def starts(count: int | None, at_: dt.time | None) -> dict[str, object]:
    """Note practice starts."""
    return {"what": "practice starts", **({"count": count} if count else {}), **({"at": at_} if at_ else {})}


def noted(*rows: dict[str, object]) -> Change:
    """Write what happened into the session."""
    return put("session", "incidents", {str(number): row for number, row in enumerate(rows, 1)})


TEN = dt.time(10, 34)

SHIFTER = (
    put(
        "bike",
        "controls.shifter",
        {
            "kind": "state",
            "choices": ["off", "up only", "both ways"],
            "effects": {"up only": {"shifts": "up"}, "both ways": {"shifts": "both"}},
        },
    ),
    at("shifter", "both ways"),
)

CASES = {
    "front-wheel-without-abs": Cases(
        raising=(
            raises("abs", "serious", NOVICE, at("abs", 0), says="without ABS on a dry track."),
            raises("abs", "caution", at("abs", 1)),
            raises("abs", "serious", DAMP, at("abs", 1)),
            raises("abs", "caution", ADVANCED, DAMP, at("abs", 0)),
            raises("abs", "serious", NOVICE, DAMP, at("abs", 1), says="on a damp track."),
            raises("abs", "caution", RACE, DAMP, at("abs", 0)),
            raises("abs", "serious", *counts_down(NOVICE, at("abs", "off"))),
        ),
        silent=(
            silent(NOVICE),
            silent(ADVANCED, at("abs", 0)),
            silent(RACE, at("abs", "off")),
            silent(NOVICE, at("abs", 2)),
            silent(NOVICE, WET, at("abs", 0)),
            silent(NOVICE, put("bike", "controls.abs.function", "rear-abs"), at("abs", 0)),
            silent(NOVICE, without("bike", "controls.abs"), at("abs", None)),
        ),
        missing=(
            lacks("the surface", at("abs", 0), NO_SURFACE),
            lacks("the rider's group", at("abs", 0), NO_GROUP),
            lacks("what ABS is set to", at("abs", None)),
        ),
    ),
    "rear-wheel-without-abs": Cases(
        raising=(
            raises("abs", "caution", NOVICE, REAR_OFF, at("abs", 2), says="without ABS on a dry track."),
            raises("abs", "serious", NOVICE, COLD, REAR_OFF, at("abs", 2)),
            raises("abs", "serious", NOVICE, DAMP, REAR_OFF, at("abs", 2)),
            raises("abs", "serious", NOVICE, WET, REAR_OFF, at("abs", 2), braking(5)),
            raises("abs", "note", REAR_OFF, at("abs", 2)),
            raises("abs", "note", COLD, REAR_OFF, at("abs", 2)),
            raises("abs", "caution", DAMP, REAR_OFF, at("abs", 2)),
            raises("abs", "serious", WET, REAR_OFF, at("abs", 2), braking(5)),
            raises("abs", "note", ADVANCED, DAMP, REAR_OFF, at("abs", 2)),
            raises("abs", "caution", RACE, WET, REAR_OFF, at("abs", 2), braking(5)),
            raises("rear-abs", "note", REAR_ABS, at("rear-abs", 0)),
        ),
        silent=(
            silent(NOVICE),
            silent(ADVANCED, REAR_OFF, at("abs", 2)),
            silent(RACE, COLD, REAR_OFF, at("abs", 2)),
            silent(NOVICE, REAR_ABS, at("rear-abs", 1)),
            silent(NOVICE, without("bike", "controls.abs"), at("abs", None)),
        ),
        missing=(
            lacks("the surface", REAR_OFF, at("abs", 2), NO_SURFACE),
            lacks("the rider's group", REAR_OFF, at("abs", 2), NO_GROUP),
            lacks("what ABS is set to", at("abs", None)),
        ),
    ),
    "no-abs-for-a-novice-in-the-wet": Cases(
        raising=(
            raises("abs", "note", NOVICE, WET, without("bike", "controls.abs"), at("abs", None)),
            raises("abs", "note", NOVICE, WET, *NO_AIDS),
        ),
        silent=(
            silent(NOVICE, WET),
            silent(NOVICE, *NO_AIDS),
            silent(WET, *NO_AIDS),
        ),
        missing=(
            lacks("the rider's group", WET, *NO_AIDS, NO_GROUP),
            lacks("the bike's electronics (listed or none)", NOVICE, WET, without("bike", "electronics")),
        ),
    ),
    "rear-without-abs-and-little-freed": Cases(
        raising=(
            raises("abs", "serious", WET, REAR_OFF, at("abs", 2), braking(2), says="strong engine braking 2"),
            raises("abs", "serious", WET, at("abs", 0), braking(1)),
            raises("rear-abs", "serious", WET, REAR_ABS, at("rear-abs", 0), braking(2)),
            raises("abs", "serious", *counts_down(WET, at("abs", "off"), braking(4))),
        ),
        silent=(
            silent(WET, braking(1)),
            silent(WET, REAR_OFF, at("abs", 2), braking(3)),
            silent(REAR_OFF, at("abs", 2), braking(1)),
            silent(DAMP, REAR_OFF, at("abs", 2), braking(1)),
            silent(
                WET,
                REAR_OFF,
                at("abs", 2),
                without("bike", "controls.engine-braking"),
                at("engine-braking", None),
            ),
            silent(WET, REAR_ABS, at("rear-abs", 1), braking(1)),
        ),
        missing=(
            lacks("which end of engine braking brakes least", WET, at("abs", 0), NO_FREEING_END),
            lacks("the surface", at("abs", 0), braking(1), NO_SURFACE),
            lacks("what engine braking is set to", WET, at("abs", 0), at("engine-braking", None)),
        ),
    ),
    "engine-braking-holds-in-the-wet": Cases(
        raising=(
            raises("engine-braking", "serious", WET, braking(1), says="is strong for a wet track: 1"),
            raises("engine-braking", "caution", WET, braking(2)),
            raises("engine-braking", "serious", *counts_down(WET, braking(5))),
            raises("engine-braking", "serious", put("session", "surface", "standing water"), braking(1)),
        ),
        silent=(
            silent(WET, braking(3)),
            silent(WET, braking(5)),
            silent(braking(1)),
            silent(DAMP, braking(1)),
            silent(*counts_down(WET, braking(2))),
            silent(WET, without("bike", "controls.engine-braking"), at("engine-braking", None)),
        ),
        missing=(
            lacks("which end of engine braking brakes least", WET, NO_FREEING_END),
            lacks("the surface", braking(1), NO_SURFACE),
            lacks("what engine braking is set to", WET, at("engine-braking", None)),
            lacks("how strong engine braking is", WET, braking(9)),
        ),
    ),
    "wheelie-off-with-launch-armed": Cases(
        raising=(
            raises(
                "wheelie",
                "serious",
                A_RACE,
                *ARMED,
                at("wheelie", "off"),
                says="Wheelie control is off, and launch is armed.",
            ),
            raises(
                "wheelie", "serious", A_RACE, LAUNCH, at("launch", "armed 2"), at("wheelie", "off"), STRONG
            ),
            raises("wheelie", "serious", A_RACE, *FIGURES, *ARMED, at("wheelie", "off")),
        ),
        silent=(
            silent(A_RACE, *ARMED),
            silent(A_RACE, *ARMED, at("wheelie", 1)),
            silent(A_RACE, LAUNCH, at("launch", "off"), at("wheelie", "off"), RACE),
            silent(at("wheelie", "off"), RACE),
            silent(A_RACE, *ARMED, without("bike", "controls.wheelie"), at("wheelie", None)),
        ),
        missing=(
            lacks("what launch control is set to", A_RACE, LAUNCH, at("wheelie", "off"), RACE),
            lacks("what wheelie control is set to", A_RACE, *ARMED, at("wheelie", None)),
        ),
    ),
    "wheelie-off-on-a-strong-bike": Cases(
        raising=(
            raises(
                "wheelie",
                "caution",
                STRONG,
                at("wheelie", "off"),
                says="for an intermediate on a bike of 141 kW.",
            ),
            raises("wheelie", "caution", STRONG, NOVICE, at("wheelie", "off"), says="for a novice"),
            raises("wheelie", "caution", *FIGURES, at("wheelie", "off")),
        ),
        silent=(
            silent(STRONG),
            silent(STRONG, ADVANCED, at("wheelie", "off")),
            silent(STRONG, RACE, at("wheelie", "off")),
            silent(put("bike", "drive.power", "68 kW"), at("wheelie", "off")),
            silent(STRONG, at("wheelie", 1)),
            silent(ADVANCED, at("wheelie", "off")),
        ),
        missing=(
            lacks("the bike's power", at("wheelie", "off")),
            lacks("the rider's group", STRONG, at("wheelie", "off"), NO_GROUP),
        ),
    ),
    "launch-armed-where-nobody-starts": Cases(
        raising=(
            raises("launch", "serious", *ARMED, says="Launch control is armed for a track day."),
            raises("launch", "serious", put("session", "kind", "qualifying"), *ARMED),
            raises("launch", "serious", put("session", "kind", "practice"), LAUNCH, at("launch", "armed 2")),
        ),
        silent=(
            silent(LAUNCH, at("launch", "off")),
            silent(A_RACE, *ARMED),
            silent(PRACTICE_STARTS, *ARMED),
            silent(ROAD, *ARMED),
        ),
        missing=(
            lacks("the kind of session", *ARMED, without("session", "kind")),
            lacks("what launch control is set to", LAUNCH),
        ),
    ),
    "launch-armed-without-grip": Cases(
        raising=(
            raises("launch", "caution", A_RACE, WET, *ARMED, says="Launch control is armed on a wet track."),
            raises("launch", "caution", PRACTICE_STARTS, DAMP, *ARMED),
        ),
        silent=(
            silent(A_RACE, *ARMED),
            silent(A_RACE, WET, LAUNCH, at("launch", "off")),
            # The worse finding about the same control says enough.
            silent(WET, *ARMED),
        ),
        missing=(
            lacks("the surface", A_RACE, *ARMED, NO_SURFACE),
            lacks("what launch control is set to", WET, LAUNCH),
        ),
    ),
    "launch-above-its-gentlest": Cases(
        raising=(
            raises(
                "launch",
                "caution",
                A_RACE,
                *STRONGER,
                says="Launch control is armed 2: no start with it is on record.",
            ),
            raises("launch", "caution", PRACTICE_STARTS, *STRONGER),
            # Another rider's starts, and a race without it, are no starts of this one with it.
            raises(
                "launch",
                "caution",
                A_RACE,
                *STRONGER,
                history=went_before(
                    {**STARTED, "rider": "wim"}, {**STARTED, "setup.controls": {"launch": "off"}}
                ),
            ),
        ),
        silent=(
            silent(A_RACE, *STRONGER, at("launch", "armed")),
            silent(A_RACE, *STRONGER, at("launch", "off")),
            silent(A_RACE, *STRONGER, history=went_before(STARTED)),
            silent(
                A_RACE,
                *STRONGER,
                history=went_before(
                    {
                        **STARTED,
                        "kind": "track day",
                        "incidents": {"1": {"what": "practice starts", "count": 2}},
                    }
                ),
            ),
            # Where nobody starts it is the worse matter that it is armed at all.
            silent(*STRONGER),
            silent(
                A_RACE,
                put("bike", "controls.launch", {"kind": "state", "choices": ["off", "on"]}),
                at("launch", "on"),
            ),
        ),
        missing=(
            lacks("which level of launch control is the gentlest", A_RACE, LAUNCH, at("launch", "armed 2")),
            lacks("the kind of session", *STRONGER, without("session", "kind")),
        ),
    ),
    "starts-too-close-together": Cases(
        raising=(
            raises("clutch", "serious", noted(starts(3, TEN)), says="3 hard starts inside 10 minutes"),
            raises("clutch", "serious", noted(starts(2, dt.time(10, 26)), starts(None, TEN))),
            # Not timed, but in this session.
            raises("clutch", "serious", noted(starts(4, None))),
            raises("clutch", "serious", history=went_before({"incidents.1": starts(5, TEN)})),
        ),
        silent=(
            silent(),
            silent(noted(starts(2, TEN))),
            silent(noted(starts(2, dt.time(10, 20)), starts(2, TEN))),
            silent(noted(starts(3, dt.time(10, 30)))),
            silent(noted(starts(3, TEN)), now=dt.datetime(2026, 5, 16, 10, 44)),
            silent(noted(starts(3, TEN)), RIDDEN),
            silent(history=went_before({"incidents.1": starts(5, None)})),
            silent(history=went_before({"incidents.1": starts(5, TEN), "date": dt.date(2026, 5, 15)})),
            silent(
                without("session", "start"),
                history=went_before({"incidents.1": starts(5, TEN), "date": dt.date(2026, 5, 15)}),
            ),
        ),
        asks=True,
    ),
    "quick-downshift-with-false-neutrals": Cases(
        raising=(
            raises(
                "shifter",
                "serious",
                *SHIFTER,
                happened("false neutral", count=2),
                says="2 false neutrals, and quickshifter still shifts down.",
            ),
            raises(
                "shifter",
                "serious",
                *SHIFTER,
                happened("false neutral"),
                history=went_before(earlier("false neutral")),
            ),
            raises(
                "shifter",
                "serious",
                *SHIFTER,
                history=went_before(earlier("false neutral", dt.date(2026, 4, 18), count=3)),
            ),
        ),
        silent=(
            silent(*SHIFTER),
            silent(*SHIFTER, happened("false neutral")),
            silent(*SHIFTER, at("shifter", "up only"), happened("false neutral", count=3)),
            silent(*SHIFTER, at("shifter", "off"), happened("false neutral", count=3)),
            silent(*SHIFTER, happened("false neutral", count=3, mended="lever a notch lower")),
            silent(happened("false neutral", count=3)),
            silent(*SHIFTER, happened("false neutral", count=3), RIDDEN),
            silent(
                *SHIFTER,
                happened("false neutral"),
                history=went_before(earlier("false neutral", dt.date(2026, 4, 18))),
            ),
        ),
        missing=(
            lacks(
                "which shifts quickshifter does",
                put("bike", "controls.shifter", {"kind": "switch"}),
                at("shifter", "on"),
                happened("false neutral", count=2),
            ),
            lacks("what quickshifter is set to", SHIFTER[0], happened("false neutral", count=2)),
        ),
    ),
}
