"""Less help never makes it look better: on any of the seven aids, whichever way the bike counts."""

import itertools
from typing import Any

import attrs
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.levels import HelpScale, Level
from paddock_tui.rules import CAUTION, Review
from tests.every import every
from tests.examples import examples
from tests.rules.situations import BIKE_UP, Change, Data, asked, at, look, put
from tests.rules.test_sensible import levels

FUNCTIONS = ("traction", "wheelie", "slide", "front-abs", "rear-abs", "throttle", "power")

TOO_LITTLE = frozenset(
    {
        "aid-off-in-the-wet",
        "little-traction-help-in-the-wet",
        "little-traction-help-in-the-damp",
        "little-traction-help-for-a-novice",
        "little-traction-help-on-a-poor-rear-tyre",
        "front-wheel-without-abs",
        "rear-wheel-without-abs",
        "front-wheel-without-abs-in-the-wet",
        "rear-without-abs-and-little-freed",
        "sharp-map-in-the-wet",
        "wheelie-off-on-a-strong-bike",
        "wheelie-off-with-launch-armed",
        "all-aids-near-least",
        "nets-thin-together",
    }
)
"""What is said of too little help, stacks included."""


@st.composite
def controls(draw: st.DrawFn) -> dict[str, Data]:
    """Controls of the seven aids, some left out: counting up or down, few levels or many, or in words."""
    made: dict[str, Data] = {}
    for name in draw(st.lists(st.sampled_from(FUNCTIONS), unique=True, min_size=1)):
        size = draw(st.integers(2, 11))
        low = draw(st.integers(0, 2))
        kind = draw(st.sampled_from(["up", "down", "words", "switch", "level off"]))
        if kind == "switch":
            made[name] = {"kind": "switch"}
        elif kind == "words":
            made[name] = {
                "kind": "choice",
                "choices": ["off", "some", "much"],
                "most_help": "much",
                "off": "off",
            }
        else:
            high = low + size
            most = low if kind == "down" else high
            off: Any = low if kind == "level off" else draw(st.booleans())
            made[name] = {"kind": "level", "levels": [low, high], "most_help": most, "off": off}
    return made


def scale_of(control: Data) -> HelpScale:
    """Give the scale of help of a control."""
    found = levels({"off": False, **control}).help_if_known()
    assert found is not None
    return found


def settings_of(control: Data) -> list[Level]:
    """List what a control can be set to, from least help to most."""
    scale = scale_of(control)
    off: list[Level] = [] if scale.off is False else ["off" if scale.off is True else scale.off]
    return [*off, *scale.on]


@attrs.frozen
class Set:
    """A bike with its aids as they are set, the world around it, and the aid that is stepped down."""

    controls: dict[str, Data]
    places: dict[str, int]
    world: tuple[Change, ...]
    stepped: str

    def changes(self, less: int = 0) -> tuple[Change, ...]:
        """Give the situation, the one aid that many steps lower."""
        engine = {"kind": "level", "levels": [1, 5], "frees_most": 5}
        bike = {**BIKE_UP, "modes": {}, "controls": {**self.controls, "engine-braking": engine}}
        values = {
            name: settings_of(control)[max(self.places[name] - (less if name == self.stepped else 0), 0)]
            for name, control in self.controls.items()
        }
        return (
            ("bike", (), bike),
            put("session", "setup.controls", {"engine-braking": 2, **values}),
            put("session", "setup.mode", None),
            *self.world,
        )


@st.composite
def sets(draw: st.DrawFn) -> Set:
    """Any bike, set anyhow, for anybody, on any track; one aid of it has a step to go down."""
    made = draw(controls())
    places = {name: draw(st.integers(0, len(settings_of(one)) - 1)) for name, one in made.items()}
    stepped = draw(st.sampled_from(sorted(made)))
    places[stepped] = max(places[stepped], 1)
    world = (
        put("session", "surface", draw(st.sampled_from(["dry", "damp", "drying", "wet", "standing water"]))),
        put("session", "track", draw(st.sampled_from(["9 C", "24 C"]))),
        put("rider", "group", draw(st.sampled_from(["novice", "intermediate", "advanced", "race"]))),
        put("tyres", "rear.scrubbed", draw(st.booleans())),
        put("bike", "drive.power", draw(st.sampled_from(["68 kW", "141 kW"]))),
    )
    return Set(made, places, world, stepped)


def said_of(found: Review) -> dict[str, int]:
    """Give the worst that is said of too little help, by what it is said of; a stack speaks of its parts."""
    worst: dict[str, int] = {}
    for one in found.findings:
        if one.rule in TOO_LITTLE:
            for subject in (one.subject, *one.parts):
                worst[subject] = max(worst.get(subject, -1), int(one.severity))
    return worst


@examples(40)
@given(sets())
def test_a_step_less_help_never_removes_or_softens_what_is_said_of_too_little(chosen: Set) -> None:
    with asked(*TOO_LITTLE, essentials=False):
        before, after = (said_of(look(*chosen.changes(less))) for less in (0, 1))
    for subject, severity in before.items():
        assert after.get(subject, -1) >= severity, (subject, chosen.changes(), chosen.changes(less=1))


GROUPS = ("novice", "intermediate", "advanced", "race")
WORLDS = {"dry": ("dry", "24 C"), "cold": ("dry", "9 C"), "damp": ("damp", "24 C"), "wet": ("wet", "24 C")}


def swept(stepped: tuple[str, ...], size: int, group: str, world: str) -> list[dict[str, int]]:
    """Step these aids down together from most to off, the others at most, and list what is said each time."""
    surface, track = WORLDS[world]
    made: dict[str, Data] = {
        name: {"kind": "level", "levels": [1, size], "most_help": 1, "off": True} for name in FUNCTIONS
    }
    around = (
        put("session", "surface", surface),
        put("session", "track", track),
        put("rider", "group", group),
    )
    found = []
    for place in range(size, -1, -1):
        places = {name: place if name in stepped else size for name in made}
        found.append(said_of(look(*Set(made, places, around, "").changes())))
    return found


@every("world", WORLDS)
@every("group", GROUPS)
def test_each_aid_by_itself_and_all_nets_together_are_judged_harder_step_by_step(
    group: str, world: str
) -> None:
    nets = tuple(name for name in FUNCTIONS if name not in ("throttle", "power"))
    for stepped, size in (*(((name,), 5) for name in FUNCTIONS), (nets, 11)):
        with asked(*TOO_LITTLE, essentials=False):
            steps = swept(stepped, size, group, world)
        for more, less in itertools.pairwise(steps):
            for subject, severity in more.items():
                assert less.get(subject, -1) >= severity, (stepped, subject)


def test_what_the_property_looks_at_is_raised_at_all() -> None:
    """A property over nothing would hold for ever."""
    world = (put("session", "surface", "wet"), put("rider", "group", "novice"))
    made: dict[str, Data] = {
        name: {"kind": "level", "levels": [1, 5], "most_help": 1, "off": True} for name in FUNCTIONS
    }
    found = said_of(look(*Set(made, dict.fromkeys(FUNCTIONS, 0), world, "traction").changes()))
    assert set(FUNCTIONS) - {"rear-abs", "wheelie", "power", "throttle"} <= set(found)
    assert found["throttle"] > CAUTION


@every("gone", FUNCTIONS)
@every("surface", ["dry", "damp", "wet"])
def test_an_absent_control_is_silent(gone: str, surface: str) -> None:
    made: dict[str, Data] = {
        name: {"kind": "level", "levels": [1, 5], "most_help": 5, "off": True}
        for name in FUNCTIONS
        if name != gone
    }
    chosen = Set(
        made, dict.fromkeys(made, 5), (put("session", "surface", surface), at("engine-braking", 5)), ""
    )
    found = look(*chosen.changes())
    assert [one for one in found.findings if one.severity >= CAUTION] == []
    assert found.not_judged == ()
