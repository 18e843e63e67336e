"""What the electronics are at: riding modes, help in either direction, off as a level of its own."""

from typing import Any

import pytest

from paddock_tui.facts import ABSENT, NotKnown
from paddock_tui.facts.core import Facts
from tests.every import every
from tests.rules.situations import (
    Change,
    at,
    counts_down,
    files,
    put,
    situation,
    without,
)


def facts(*changes: Change) -> Facts:
    """The facts of the whole situation, changed."""
    return situation(files(*changes)).facts()


def missing(found: Any) -> list[str]:
    """List the words for what is missing."""
    assert isinstance(found, NotKnown)
    return [one.label for one in found.missing]


SHOWERS = put("session", "setup.mode", "showers")
NO_MODE = without("session", "setup.mode")


def in_force(control: str, *changes: Change) -> Any:
    """The value of a control on the track."""
    found = facts(*changes).get("in_force", control)
    return getattr(found, "value", found)


def test_a_free_control_is_at_what_the_rider_set() -> None:
    assert in_force("throttle") == "even"


def test_a_mode_that_fixes_a_control_says_what_is_in_force() -> None:
    assert in_force("throttle", SHOWERS) == "soft"
    assert in_force("throttle", SHOWERS, at("throttle", None)) == "soft"


def test_a_control_outside_the_modes_is_left_alone() -> None:
    assert in_force("throttle", SHOWERS, put("bike", "controls.throttle.outside_modes", True)) == "even"


def test_a_mode_that_limits_a_control_leaves_what_was_set() -> None:
    assert in_force("traction", SHOWERS) == 8
    assert facts(SHOWERS).get("left_by_mode", "traction") == (6, 10)
    assert facts(SHOWERS).get("left_by_mode", "wheelie") is ABSENT
    assert facts(SHOWERS).get("left_by_mode", "throttle") is ABSENT


def test_without_the_mode_only_controls_that_no_mode_names_are_known() -> None:
    assert in_force("wheelie", NO_MODE) == 5
    assert missing(facts(NO_MODE).get("in_force", "throttle")) == ["the riding mode"]
    assert missing(facts(NO_MODE).get("in_force", "traction")) == ["the riding mode"]
    assert in_force("throttle", NO_MODE, put("bike", "controls.throttle.outside_modes", True)) == "even"


def test_a_mode_that_the_bike_does_not_have_is_not_known() -> None:
    assert missing(facts(put("session", "setup.mode", "snow")).get("in_force", "throttle")) == [
        "the riding mode"
    ]


def test_a_bike_without_modes_leaves_everything_free() -> None:
    assert in_force("throttle", put("bike", "modes", None), NO_MODE) == "even"


def test_a_value_that_was_not_written_is_asked_for_unless_the_mode_fixes_it() -> None:
    assert missing(facts(at("throttle", None)).get("set_value", "throttle")) == [
        "what throttle response is set to"
    ]
    assert facts(SHOWERS, at("throttle", None)).get("set_value", "throttle") is ABSENT


def as_(**control: Any) -> Change:
    """Give the bike another traction control."""
    return put("bike", "controls.traction", control)


ZERO_IS_OFF = as_(kind="level", levels=[0, 5], most_help=5, off=0)

HELP = [
    ("counts up, least", (at("traction", 0),), 0.0),
    ("counts up, some", (at("traction", 4),), 0.4),
    ("counts up, most", (at("traction", 10),), 1.0),
    ("counts up, off", (at("traction", "off"),), -1.0),
    ("counts down, least", counts_down(at("traction", 11)), 0.0),
    ("counts down, some", counts_down(at("traction", 7)), 0.4),
    ("counts down, most", counts_down(at("traction", 1)), 1.0),
    ("counts down, off", counts_down(at("traction", "off")), -1.0),
    (
        "written from the other end",
        (as_(kind="level", levels=[10, 0], most_help=10), at("traction", 4)),
        0.4,
    ),
    (
        "level 0 is off and is not counted",
        (
            ZERO_IS_OFF,
            at("traction", 0),
        ),
        -1.0,
    ),
    (
        "beside a level that is off",
        (
            ZERO_IS_OFF,
            at("traction", 1),
        ),
        0.0,
    ),
    (
        "only one level, on",
        (as_(kind="switch"), at("traction", "on")),
        1.0,
    ),
    ("a switch, off", (as_(kind="switch"), at("traction", "off")), -1.0),
    (
        "words count by their place",
        (
            put(
                "bike", "controls.traction", {"kind": "choice", "choices": ["c", "b", "a"], "most_help": "c"}
            ),
            at("traction", "b"),
        ),
        0.5,
    ),
    (
        "off among words is off",
        (
            as_(kind="choice", choices=["off", "on"], most_help="on"),
            at("traction", "off"),
        ),
        -1.0,
    ),
    (
        "a state with words in an order",
        (as_(kind="state", choices=["off", "on"]), at("traction", "on")),
        1.0,
    ),
]


@every(("changes", "helps"), [row[1:] for row in HELP], ids=[row[0] for row in HELP])
def test_help_is_between_none_and_all_whichever_way_the_bike_counts(
    changes: tuple[Change, ...], helps: float
) -> None:
    assert facts(*changes).get("help_in_force", "traction") == pytest.approx(helps)


UNKNOWN_HELP = [
    (without("bike", "controls.traction.most_help"), "which end of traction control helps most"),
    (without("bike", "controls.traction.levels"), "the levels of traction control"),
    (put("bike", "controls.traction.most_help", 5), "the levels of traction control"),
    (put("bike", "controls.traction.levels", [0, 10**9]), "the levels of traction control"),
    (at("traction", 99), "how much help traction control gives"),
    (at("traction", None), "what traction control is set to"),
]


@every(("change", "words"), UNKNOWN_HELP)
def test_help_is_never_guessed(change: Change, words: str) -> None:
    assert missing(facts(change).get("help_in_force", "traction")) == [words]


def test_which_end_frees_the_rear_says_nothing_about_help_and_the_other_way_round() -> None:
    swapped = facts(
        without("bike", "controls.traction.most_help"),
        put("bike", "controls.traction.frees_most", 10),
        without("bike", "controls.engine-braking.frees_most"),
        put("bike", "controls.engine-braking.most_help", 5),
    )
    assert missing(swapped.get("help_scale", "traction")) == ["which end of traction control helps most"]
    assert missing(swapped.get("freeing_scale", "engine-braking")) == [
        "which end of engine braking brakes least"
    ]


def test_engine_braking_is_a_two_ended_scale_and_no_help() -> None:
    found = facts()
    assert found.get("freeing_scale", "engine-braking").position_of(5) == 1.0
    assert facts(*counts_down()).get("freeing_scale", "engine-braking").position_of(1) == 1.0
    assert found.get("help_in_force", "engine-braking") is ABSENT
    assert found.get("freeing_scale", "traction") is ABSENT


def test_only_what_catches_a_slip_or_a_lift_is_a_net() -> None:
    found = facts()
    nets = [name for name in found.subjects("control") if found.get("net", name) is not ABSENT]
    assert nets == ["abs", "traction", "wheelie"]


SHOWN = [
    ((), "traction control 8 (range 0-10)"),
    (counts_down(), "traction control 3 (11 = least, 1 = most)"),
    ((at("traction", "off"),), "traction control off"),
    ((without("bike", "controls.traction.most_help"),), "traction control 8 (range 0-10)"),
]


@every(("changes", "words"), SHOWN)
def test_a_control_is_quoted_with_the_bikes_own_number_least_help_first(
    changes: tuple[Change, ...], words: str
) -> None:
    assert facts(*changes).shown("in_force", "traction") == words


FRONT = [
    (4, False),
    (2, False),
    (1, True),
    (0, True),
    ("off", True),
]


@every(("level", "left"), FRONT)
def test_abs_is_judged_by_what_its_level_does(level: int | str, left: bool) -> None:
    assert facts(at("abs", level)).get("front_wheel_left", "abs") is left


def test_a_level_that_means_off_is_off_also_while_the_range_is_not_known() -> None:
    found = facts(at("abs", 0), without("bike", "controls.abs.levels"))
    assert found.get("front_wheel_left", "abs") is True


LIMITERS: list[tuple[tuple[Change, ...], str]] = [
    ((), "pit limiter 60 km/h"),
    ((at("pit-limiter", "off"),), "pit limiter off"),
    ((at("pit-limiter", None),), ""),
    ((at("pit-limiter", "fast"),), ""),
]


@every(("changes", "words"), LIMITERS)
def test_the_pit_limiter_as_it_is_quoted(changes: tuple[Change, ...], words: str) -> None:
    assert facts(*changes).shown("limiter", None) == words


def test_a_limiter_that_the_mode_may_fix_is_not_known_without_the_mode() -> None:
    named = (
        put("bike", "controls.pit-limiter.outside_modes", False),
        put("bike", "modes.showers.fixes.pit-limiter", "40 km/h"),
    )
    assert missing(facts(NO_MODE, *named).get("limiter")) == ["what the pit limiter is set to"]
    assert facts(SHOWERS, *named).shown("limiter", None) == "pit limiter 40 km/h"
