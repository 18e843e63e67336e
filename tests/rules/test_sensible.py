"""A sensible set-up raises nothing: a validator that cries wolf is switched off."""

from typing import Any

import pytest

from paddock_tui.calc.levels import Levels
from paddock_tui.calc.starting_levels import Aid, RiderGroup, Surface, TyreKind, starting_help
from paddock_tui.rules import CAUTION, NOTE
from tests.every import every
from tests.rules.situations import BIKE_DOWN, BIKE_UP, Change, at, look, put

AIDS = {
    "traction": Aid.TRACTION,
    "wheelie": Aid.WHEELIE,
    "abs": Aid.ABS,
    "throttle": Aid.THROTTLE,
    "slide": Aid.SLIDE,
    "rear-abs": Aid.REAR_ABS,
    "power": Aid.POWER,
}

THREE_STEPS: dict[str, Any] = {
    **BIKE_UP,
    "controls": {
        "traction": {"kind": "level", "levels": [1, 3], "most_help": 3, "off": True},
        "wheelie": {"kind": "switch"},
        "abs": {"kind": "choice", "choices": ["off", "track", "road"], "most_help": "road"},
        "throttle": {"kind": "choice", "choices": ["full", "soft"], "most_help": "soft"},
        "engine-braking": {"kind": "level", "levels": [1, 2], "frees_most": 1},
        "pit-limiter": BIKE_UP["controls"]["pit-limiter"],
    },
    "modes": {"open": {"use": "any"}},
}

EVERYTHING: dict[str, Any] = {
    **BIKE_UP,
    "drive": {"power": "141 kW"},
    "controls": {
        **BIKE_UP["controls"],
        "slide": {"kind": "level", "levels": [1, 7], "most_help": 7, "off": True},
        "rear-abs": {"kind": "level", "levels": [0, 3], "most_help": 3, "off": 0},
        "power": {"kind": "choice", "choices": ["full", "trimmed", "least"], "most_help": "least"},
        "launch": {"kind": "state", "choices": ["off", "armed"]},
        "shifter": {"kind": "state", "choices": ["off", "both"], "effects": {"both": {"shifts": "both"}}},
    },
}

BIKES = {
    "counts up": BIKE_UP,
    "counts down": BIKE_DOWN,
    "few steps": THREE_STEPS,
    "has everything": EVERYTHING,
}

STATES = {"launch": "off", "shifter": "both"}

TYRES = {
    Surface.DRY: (TyreKind.ROAD, TyreKind.TRACKDAY, TyreKind.SLICK),
    Surface.COLD_DRY: (TyreKind.ROAD, TyreKind.TRACKDAY),
    Surface.DAMP: (TyreKind.ROAD, TyreKind.TRACKDAY, TyreKind.WET),
    Surface.WET: (TyreKind.ROAD, TyreKind.TRACKDAY, TyreKind.WET),
}


def levels(control: dict[str, Any]) -> Levels:
    """What a control offers, as the bike's file says it."""
    if control["kind"] == "switch":
        return Levels.choices(("on",), "on", True)
    if control["kind"] == "choice":
        words = control["choices"]
        return Levels.choices(words, control["most_help"], "off" in words)
    low, high = control["levels"]
    return Levels.span(
        low, high, control.get("most_help", control.get("frees_most")), control.get("off", False)
    )


def set_up(bike: dict[str, Any], group: RiderGroup, surface: Surface, tyre: TyreKind) -> tuple[Change, ...]:
    """The starting level of every aid, rounded toward more help."""
    made: list[Change] = [
        ("bike", (), bike),
        put("rider", "group", group.value),
        put("session", "surface", "dry" if surface is Surface.COLD_DRY else surface.value),
        put("session", "track", "9 C" if surface is Surface.COLD_DRY else "24 C"),
    ]
    freeing = levels(bike["controls"]["engine-braking"]).scale_if_known()
    held = starting_help(group, surface, tyre, Aid.ENGINE_BRAKING)
    assert freeing is not None
    assert held is not None
    made.append(at("engine-braking", freeing.nearest(held)))
    for name, aid in AIDS.items():
        if name not in bike["controls"]:
            continue
        wanted = starting_help(group, surface, tyre, aid)
        scale = levels(bike["controls"][name]).help_if_known()
        assert wanted is not None
        assert scale is not None
        made.append(at(name, scale.level_at_least(wanted)))
    made += [at(name, value) for name, value in STATES.items() if name in bike["controls"]]
    return tuple(made)


@every("bike", BIKES)
@every("group", RiderGroup)
@every("surface", TYRES)
def test_the_starting_levels_raise_nothing_above_a_note(
    bike: str, group: RiderGroup, surface: Surface
) -> None:
    for tyre in TYRES[surface]:
        found = look(*set_up(BIKES[bike], group, surface, tyre), going_out=True)
        assert [one.message for one in found.findings if one.severity > NOTE] == []
        assert found.not_judged == ()


@pytest.mark.parametrize("bike", ["counts up", "counts down"])
def test_the_check_of_the_starting_levels_can_fail(bike: str) -> None:
    """The same set-ups of the quickest group, on a wet track for a novice, are not silent."""
    dry = set_up(BIKES[bike], RiderGroup.RACE, Surface.DRY, TyreKind.SLICK)
    found = look(*dry, put("session", "surface", "wet"), put("rider", "group", "novice"))
    assert any(one.severity >= CAUTION for one in found.findings)


BARE = {"name": "no aids", "electronics": "none", "suspension": "none", "tank": {"capacity": "17 l"}}


@every("surface", ["dry", "damp", "wet"])
@every("group", ["novice", "race"])
def test_a_bike_without_aids_is_asked_nothing_about_them(surface: str, group: str) -> None:
    found = look(
        ("bike", (), BARE),
        put("session", "setup", {}),
        put("session", "surface", surface),
        put("rider", "group", group),
        put("session", "dash", {}),
        going_out=True,
    )
    # That it has no ABS is said once, to a novice in the wet.
    assert {one.rule for one in found.findings} <= {"no-abs-for-a-novice-in-the-wet"}
    assert found.not_judged == ()


@every("gone", ["traction", "wheelie", "abs", "engine-braking", "throttle", "pit-limiter"])
def test_a_control_that_the_bike_does_not_have_is_silent(gone: str) -> None:
    found = look(put("bike", f"controls.{gone}", None), at(gone, None), put("session", "surface", "wet"))
    # A riding mode that still names it is a note on the file; the wet package notes what else is less wet.
    assert {one.rule for one in found.findings} <= {"record-at-odds-with-itself", "dry-set-up-in-the-wet"}
    assert all(gone not in str(put.path) for one in found.findings for put in one.remedy.puts)
    assert all(one.severity == NOTE for one in found.findings)
    assert found.not_judged == ()


@every(
    ("group", "changes"),
    [
        ("advanced", [at("traction", 2), at("wheelie", "off"), at("abs", 0)]),
        ("race", [at("traction", "off"), at("wheelie", "off"), at("abs", "off")]),
        ("novice", [at("engine-braking", 5)]),
        ("intermediate", [at("throttle", "soft")]),
    ],
)
def test_what_is_usual_in_the_dry_is_not_held_against_anybody(group: str, changes: list[Change]) -> None:
    found = look(put("rider", "group", group), *changes)
    assert [one for one in found.findings if one.severity > NOTE] == []
