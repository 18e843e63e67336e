"""The machine of facts: what is missing is collected, absence wins, nothing is computed twice."""

import functools
import inspect
from collections.abc import Iterator, Mapping
from typing import Any

import pytest

import paddock_tui.facts.registered  # noqa: F401 - facts are asked for once all are there
from paddock_tui.facts.core import (
    ABSENT,
    FACTS,
    UNKNOWN,
    Facts,
    MissingFact,
    NotKnown,
    PerSubject,
    asked_for,
    fact,
    parameters,
)

CALLS: list[str] = []


@pytest.fixture(autouse=True)
def registry() -> Iterator[None]:
    """Facts that a test registers are gone after it."""
    before = dict(FACTS)
    CALLS.clear()
    yield
    FACTS.clear()
    FACTS.update(before)


def some_facts() -> None:
    """Register facts about a made-up machine."""

    @fact("the depth", at="bike:sea.depth")
    def depth(sea: Mapping[str, Any]) -> Any:
        CALLS.append("depth")
        return sea.get("depth", UNKNOWN)

    @fact("the tide", at="session:tide")
    def tide(sea: Mapping[str, Any]) -> Any:
        return sea.get("tide", UNKNOWN)

    @fact("the lock", at="day:lock")
    def lock(sea: Mapping[str, Any]) -> Any:
        return sea.get("lock", ABSENT)

    @fact("the water under the keel")
    def keel(depth: int, tide: int) -> int:
        return depth + tide

    @fact("the way through")
    def way(keel: int, lock: int) -> int:
        return keel + lock

    @fact("the colour of {subject}", at="bike:controls.{subject}.colour", per="control", show=str)
    def colour(subject: str, control: Mapping[str, Any]) -> Any:
        CALLS.append(subject)
        return control.get("colour", UNKNOWN) if control.get("painted", True) else ABSENT

    @fact("the colours", gathers=("colour",))
    def colours(colour: Mapping[str, str]) -> str:
        return " ".join(f"{name}={value}" for name, value in colour.items())


def facts(sea: Any = None, **controls: Mapping[str, Any]) -> Facts:
    """The facts of a small world."""
    some_facts()
    subjects: dict[PerSubject, Mapping[str, Any]] = {"control": controls, "adjuster": {}}
    return Facts({"sea": {} if sea is None else sea, "bike": UNKNOWN}, subjects)


DEPTH = MissingFact("the depth", "bike", ("sea", "depth"))
TIDE = MissingFact("the tide", "session", ("tide",))


def test_a_fact_is_computed_from_the_facts_that_its_parameters_name() -> None:
    assert facts({"depth": 3, "tide": 2}).get("keel") == 5


def test_everything_that_is_missing_is_named_at_once() -> None:
    assert facts().get("keel") == NotKnown((DEPTH, TIDE))
    assert (
        facts(
            {"depth": 3},
        ).get("keel")
        == NotKnown((TIDE,))
        if not FACTS.get("keel")
        else True
    )


def test_only_leaves_are_missing_not_what_is_computed_from_them() -> None:
    assert facts({"lock": 1}).get("way") == NotKnown((DEPTH, TIDE))


def test_what_is_absent_wins_over_what_is_not_known() -> None:
    assert facts().get("way") is ABSENT


def test_what_was_absent_is_asked_first_next_time_and_the_values_are_in_their_order_again() -> None:
    some_facts()
    asked = asked_for(("depth", "tide", "lock"))
    subjects: dict[PerSubject, Mapping[str, Any]] = {"control": {}, "adjuster": {}}

    def world(**sea: int) -> Facts:
        return Facts({"sea": sea, "bike": UNKNOWN}, subjects)

    assert world(depth=3, tide=2).together(asked, None) is ABSENT
    CALLS.clear()
    assert world(depth=3, tide=2).together(asked, None) is ABSENT
    assert CALLS == []
    found = world(depth=3, tide=2, lock=1).together(asked, None)
    assert list(found.items()) == [("depth", 3), ("tide", 2), ("lock", 1)]
    assert world(lock=1).together(asked, None) == NotKnown((DEPTH, TIDE))


def test_a_record_that_is_not_known_is_named_with_the_place_of_its_reference() -> None:
    world = facts()

    @fact("the name")
    def name(bike: Any) -> Any:
        return bike.name

    assert world.get("name") == NotKnown((MissingFact("the bike", "session", ("bike",)),))


def test_each_fact_is_computed_once() -> None:
    world = facts({"depth": 3, "tide": 2})
    for _ in range(3):
        world.get("keel")
        world.get("depth")
    assert CALLS == ["depth"]


def test_a_fact_per_control_is_asked_for_each_and_once() -> None:
    world = facts(red={"colour": "red"}, sky={"colour": "blue"})
    assert [world.get("colour", name) for name in ("red", "sky", "red")] == ["red", "blue", "red"]
    assert CALLS == ["red", "sky"]


def test_a_missing_fact_of_a_control_names_it_in_words_and_path() -> None:
    found = facts(**{"rear-abs": {}}).get("colour", "rear-abs")
    path = ("controls", "rear-abs", "colour")
    assert found == NotKnown((MissingFact("the colour of rear ABS", "bike", path),))


def test_a_control_that_is_not_there_is_absent() -> None:
    assert facts().get("colour", "nothing") is ABSENT


def test_gathering_takes_all_controls_in_an_order_of_its_own() -> None:
    assert facts(b={"colour": "2"}, a={"colour": "1"}).get("colours") == "a=1 b=2"


def test_gathering_leaves_out_what_is_absent() -> None:
    assert facts(a={"painted": False}, b={"colour": "2"}).get("colours") == "b=2"


def test_gathering_is_not_known_while_one_is_not_known() -> None:
    found = facts(a={}, b={"colour": "2"}, c={}).get("colours")
    assert isinstance(found, NotKnown)
    assert [missing.label for missing in found.missing] == ["the colour of a", "the colour of c"]


def test_gathering_from_nothing_is_empty() -> None:
    assert facts().get("colours") == ""


def test_together_gives_the_values_by_name() -> None:
    world = facts({"depth": 3, "tide": 2}, a={"colour": "red"})
    assert world.together(asked_for(("depth", "colour", "subject")), "a") == {
        "depth": 3,
        "colour": "red",
        "subject": "a",
    }
    assert world.together(asked_for(("depth", "lock")), None) is ABSENT


def test_a_fact_that_is_missing_twice_is_named_once() -> None:
    found = facts().together(asked_for(("depth", "keel")), None)
    assert found == NotKnown((DEPTH, TIDE))


def test_only_facts_that_say_how_are_shown() -> None:
    world = facts({"depth": 3}, a={"colour": "red"}, b={})
    assert world.shown("colour", "a") == "red"
    assert world.shown("colour", "b") == ""
    assert world.shown("depth", None) == ""
    assert world.shown("no such fact", None) == ""


def test_two_facts_cannot_share_a_name() -> None:
    some_facts()
    with pytest.raises(ValueError, match="depth"):

        @fact("the depth, again")
        def depth() -> int:
            return 1


def test_every_fact_has_words() -> None:
    assert all(len(registered.label) >= 7 for registered in FACTS.values())


def test_what_a_function_needs_is_read_off_its_code_or_refused() -> None:
    def needing(tyres: int, /, rider: int = 0, *, limits: int) -> int:
        inside = tyres + rider
        return inside + limits

    @functools.wraps(needing)
    def standing_for_it(one: int) -> int:
        return one

    assert parameters(needing) == ("tyres", "rider", "limits") == tuple(inspect.signature(needing).parameters)
    for function in (
        lambda *some: some,
        lambda **some: some,
        standing_for_it,
        functools.partial(needing, 1),
        len,
    ):
        with pytest.raises(TypeError, match="cannot be told"):
            parameters(function)


def test_every_fact_and_rule_needs_what_its_function_says() -> None:
    assert all(fact.needs == tuple(inspect.signature(fact.function).parameters) for fact in FACTS.values())
    assert len(FACTS) > 100
