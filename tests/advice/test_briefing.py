"""The briefing: whom it is for, what is new on another bike, what is off, unknown, traded or reset."""

import re
from typing import Any

from paddock_tui.advice.about import About
from paddock_tui.advice.briefing import Briefing, CameFrom, briefing
from paddock_tui.explanations.in_short import IN_SHORT
from paddock_tui.pages.briefing import LONG, READ_AT, SHORT, briefing_lines
from paddock_tui.records.bike import Bike
from paddock_tui.records.electronics import FUNCTIONS
from paddock_tui.records.setup import SetUp
from paddock_tui.rules import review
from paddock_tui.text import width
from tests.every import every
from tests.explanations.test_registry import PROMISES
from tests.rules.situations import BIKE_DOWN, BIKE_UP, Change, at, files, put, read, situation, without

WET = put("session", "surface", "wet")
NOVICE = put("rider", "group", "novice")
DOWN = read("bike", BIKE_DOWN, Bike) or Bike()
UP = read("bike", BIKE_UP, Bike) or Bike()


def made(*changes: Change, came: CameFrom | None = None) -> Briefing:
    found = situation(files(*changes))
    return briefing(About(found, found.history), review(found), came)


def part(title: str, *changes: Change, came: CameFrom | None = None) -> tuple[str, ...]:
    found = {one.title: one.sentences for one in made(*changes, came=came).parts}
    return found.get(title, ())


def test_every_function_is_there_in_short() -> None:
    assert set(IN_SHORT) == set(FUNCTIONS)


@every("function", FUNCTIONS)
def test_what_is_said_in_short_promises_nothing_and_fits_a_line(function: str) -> None:
    one = IN_SHORT[function]
    assert re.findall(r"\bfast", f"{one.does} {one.does_not}") == []
    assert PROMISES.findall(f"{one.does} {one.does_not}") == []
    assert re.fullmatch(r"[A-Z].*\.", one.does_not)


def test_the_rider_s_start_comes_first_the_furthest_below_it_before_the_rest() -> None:
    said = part("for you", NOVICE, WET, at("traction", 2), at("wheelie", 4))
    assert said[0].startswith("Ines, novice, in the wet on counts up: ")
    assert "less help than a start for you" in said[0]
    assert said[1].startswith("Traction control 2 (0-10): less help than your start, 10.")


def test_without_the_group_no_start_is_guessed() -> None:
    assert part("for you", without("rider", "group")) == (
        "Ines, group not known, in the dry on counts up: your start cannot be worked out, "
        "not known: rider's group.",
    )


def test_what_is_off_or_not_known_comes_before_what_no_aid_can_do() -> None:
    said = part("does not", at("traction", "off"), at("wheelie", None))
    assert said[0] == "Off, and nothing catches you there: Traction control."
    assert said[1] == "Not known what it is set to: wheelie control; count on nothing there."
    assert said[2].startswith("No aid adds grip")
    assert not any("Traction control saves" in one for one in said)


def test_an_end_that_nobody_knows_is_asked_about() -> None:
    said = part("does not", without("bike", "controls.traction.most_help"))
    assert said[0] == "Which end is which is not known for traction control: ask before you turn it."


def test_the_cost_of_less_help_comes_first_for_a_novice_and_in_the_wet() -> None:
    little = at("traction", 1)
    assert "costs: less is caught and later; gives: drive" in part("traded", NOVICE, little)[0]
    assert "costs: less is caught and later; gives: drive" in part("traded", WET, little)[0]
    advanced = [one for one in part("traded", put("rider", "group", "advanced"), little) if "Traction" in one]
    assert "gives: drive" in advanced[0].partition("costs")[0]


def test_what_resets_and_what_nobody_knows_of_is_told_apart() -> None:
    said = part("ignition", put("bike", "controls.abs.key_off", "resets"))
    assert said[0] == "Read the dash after ignition off; it resets ABS."
    assert said[1].startswith("After ignition off it is not known for")


def other(bike: Bike, setup: SetUp = SetUp(), same: bool = False) -> CameFrom:  # noqa: B008 - frozen
    return CameFrom("Otter", bike, setup, same, "session 2 of 2026-05-01")


def test_scales_that_turn_round_on_another_bike_come_first() -> None:
    said = part("new", came=other(DOWN))
    assert said[0].startswith("Otter counts the other way for traction control, where 10 helps most; ")
    assert said[-1] == "You come from Otter, session 2 of 2026-05-01."
    assert not any("the other way" in one for one in part("new", came=other(UP)))


def test_what_only_one_bike_has_is_named() -> None:
    bare = Bike(controls={name: one for name, one in UP.controls.items() if name != "wheelie"})
    assert "Otter has no wheelie control: feel what they do before you lean on them." in part(
        "new", came=other(bare)
    )
    said = part("new", without("bike", "controls.abs"), came=other(UP))
    assert "Here there is no ABS: nothing does that for you." in said


def test_on_the_same_bike_what_moved_since_is_new() -> None:
    before = SetUp(mode="open", controls={"traction": 5, "wheelie": 5})
    assert part("new", came=other(UP, before, same=True)) == (
        "Since session 2 of 2026-05-01: traction control 5 -> 8 (more help).",
    )
    assert "take everything here as new" in part("new")[0]


@every(
    "changes",
    [(), (WET, NOVICE), (without("bike"),), (without("rider"),), (without("session", "setup"),)],
    ids=["dry", "novice in the wet", "no bike", "no rider", "no set-up"],
)
def test_whatever_is_known_both_forms_keep_their_lines_and_promise_nothing(changes: Any) -> None:
    found = made(*changes)
    for long, most in ((False, SHORT), (True, LONG)):
        lines = list(briefing_lines(found, READ_AT, long))
        assert 0 < len(lines) <= most
        assert max(map(width, lines)) <= READ_AT
        assert PROMISES.findall(" ".join(lines)) == []
