"""Facts of forces: what bike and gearing can do, asked for only where a rule needs it."""

from typing import Any

import pytest

from paddock_tui.calc.wheelie_gears import in_words
from paddock_tui.facts import ABSENT, NotKnown
from paddock_tui.facts.physics import torque_points
from tests.advice.given import bike
from tests.every import every
from tests.rules.situations import Change, files, put, situation, without

WHOLE: tuple[Change, ...] = (
    put("bike", "wet_mass", "200 kg"),
    put("bike", "chassis", {"centre_height": "650 mm", "centre_ahead": "700 mm"}),
    put("bike", "rear.circumference", "2000 mm"),
    put(
        "bike",
        "drive",
        {
            "primary": 2.0,
            "gearbox": [2.4, 1.8, 1.4],
            "front_sprocket": 16,
            "rear_sprocket": 40,
            "peak_torque": "100 N m",
        },
    ),
    put("rider", "weight", "80 kg"),
)


def get(name: str, *changes: Change) -> Any:
    return situation(files(*WHOLE, *changes)).facts().get(name)


def test_the_gears_that_lift_follow_from_bike_rider_and_gearing() -> None:
    found = get("gears_that_lift")

    assert [one.lifts for one in found] == [True, False, False]
    assert found[0].force_n == pytest.approx(100 * 12 * 0.9 / (2 / 6.283185307))
    assert in_words(found) == "1st"


def test_they_are_told_in_words_whatever_they_are() -> None:
    facts = situation(files(*WHOLE)).facts()
    weak = situation(files(*WHOLE, put("bike", "drive.peak_torque", "20 N m"))).facts()

    assert facts.shown("gears_that_lift", None) == "1st can lift the front on torque alone"
    assert weak.shown("gears_that_lift", None) == "no gear lifts the front on torque alone"


def test_sprockets_of_the_set_up_go_before_those_delivered() -> None:
    found = get("gears_that_lift", put("session", "setup.rear_sprocket", 50))

    assert in_words(found) == "1st and 2nd"


NEEDS = [
    ("bike", "chassis.centre_height"),
    ("bike", "chassis.centre_ahead"),
    ("bike", "wet_mass"),
    ("rider", "weight"),
    ("bike", "drive.primary"),
    ("bike", "drive.gearbox"),
    ("bike", "drive.peak_torque"),
]


@every(("role", "path"), NEEDS, ids=[path for _, path in NEEDS])
def test_what_is_missing_is_named_with_where_it_is_entered(role: str, path: str) -> None:
    found = get("gears_that_lift", without(role, path))

    assert isinstance(found, NotKnown)
    assert [(one.role, ".".join(one.path)) for one in found.missing] == [(role, path)]


ELSEWHERE = [
    ("drive.front_sprocket", ("session", "setup.front_sprocket")),
    ("drive.rear_sprocket", ("session", "setup.rear_sprocket")),
    ("rear.circumference", ("tyres", "rear.circumference")),
]


@every(("path", "entered"), ELSEWHERE)
def test_what_the_bike_does_not_say_is_asked_of_the_set_up_and_the_tyres(
    path: str, entered: tuple[str, str]
) -> None:
    found = get("gears_that_lift", without("bike", path))

    assert isinstance(found, NotKnown)
    assert [(one.role, ".".join(one.path)) for one in found.missing] == [entered]


def test_without_a_tyre_set_the_bikes_own_tyre_counts() -> None:
    assert in_words(get("gears_that_lift", without("tyres"))) == "1st"


@every(
    ("path", "value"),
    [
        ("chassis.centre_height", "0 mm"),
        ("drive.primary", 0.0),
        ("drive.peak_torque", "9000 N m"),
        ("rear.circumference", "0 mm"),
    ],
)
def test_figures_that_cannot_be_count_as_not_known(path: str, value: Any) -> None:
    assert isinstance(get("gears_that_lift", put("bike", path, value)), NotKnown)


def test_a_curve_is_read_by_its_revs_and_a_peak_is_a_curve_of_one() -> None:
    curve = '[torque_curve]\n10000 = "90 N m"\n9000 = "100 N m"\n500 = "20 N m"\n'
    peak = '[drive]\npeak_torque = "95 N m"\n'

    assert torque_points(bike(curve + peak)) == ((500, 20), (9000, 100), (10000, 90))
    assert torque_points(bike(peak)) == ((0, 95),)
    assert torque_points(bike(peak + 'peak_torque_at = "8500 rpm"\n')) == ((8500, 95),)
    assert torque_points(bike("")) == ()


@every("surface", ["damp", "drying", "wet"])
def test_the_wet_is_told_as_ratios_with_their_assumption(surface: str) -> None:
    words = get("wet_ratio_words", put("session", "surface", surface))

    assert words == "wet, if grip is 50-70 %: corner speed 71-84 %, braking distance 1.4-2 times"


def test_a_dry_track_has_no_ratios_standing_water_none_either_and_unknown_asks() -> None:
    assert get("wet_ratio_words") is ABSENT
    water = get("wet_ratio_words", put("session", "surface", "standing water"))
    assert water.startswith("beyond this estimate")
    assert isinstance(get("wet_ratio_words", without("session", "surface")), NotKnown)
