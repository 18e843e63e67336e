"""Facts and rules join by name and by type: what a parameter asks for is what its fact gives back."""

import functools
import operator
import types
from collections.abc import Callable, Iterator, Mapping
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints

import pytest

from paddock_tui.facts import FACTS
from paddock_tui.facts.core import ABSENT, UNKNOWN
from paddock_tui.facts.joining import KEYS, ROOTS, SUBJECTS, check_needs
from paddock_tui.rules import RULES
from tests.every import every
from tests.rules.situations import WHOLE, situation

MARKERS = {Literal[UNKNOWN], Literal[ABSENT]}


def alternatives(hint: Any) -> frozenset[Any]:
    """The types of a union, one of several literals, or the type itself; without the two markers."""
    if get_origin(hint) in (Union, types.UnionType):
        return frozenset().union(*map(alternatives, get_args(hint)))
    if get_origin(hint) is Literal:
        return frozenset(Literal[one] for one in get_args(hint)) - MARKERS
    return frozenset({hint})


def given(need: str, gathered: bool) -> frozenset[Any]:
    """What a fact or a rule is handed under a name."""
    if need not in FACTS:
        return alternatives({**ROOTS, **SUBJECTS}[need])
    found = get_type_hints(FACTS[need].function)["return"]
    if not gathered:
        return alternatives(found)
    per = FACTS[need].per
    assert per is not None
    each = functools.reduce(operator.or_, alternatives(found))
    return frozenset({types.GenericAlias(Mapping, (KEYS[per], each))})


def askers() -> Iterator[tuple[str, Callable[..., Any], frozenset[str]]]:
    for name, one in FACTS.items():
        yield f"fact {name}", one.function, one.gathers
    for rule_id, rule in RULES.items():
        yield f"rule {rule_id}", rule.function, rule.gathers


def unlike(function: Callable[..., Any], gathers: frozenset[str]) -> dict[str, Any]:
    """The parameters of a function whose type is not what the fact of that name gives."""
    hints = {name: hint for name, hint in get_type_hints(function).items() if name != "return"}
    return {name: hint for name, hint in hints.items() if alternatives(hint) != given(name, name in gathers)}


def test_each_parameter_of_a_fact_or_a_rule_has_the_type_that_is_handed_to_it() -> None:
    found = {who: wrong for who, function, gathers in askers() if (wrong := unlike(function, gathers))}

    assert found == {}


def test_a_type_that_differs_is_found_out() -> None:
    def of_a_word(surface: int, in_force: str | None) -> None: ...

    assert set(unlike(of_a_word, frozenset())) == {"surface", "in_force"}


def test_a_fact_called_is_something_is_a_bool() -> None:
    gives = {name: get_type_hints(one.function)["return"] for name, one in FACTS.items()}

    assert {name for name in gives if name.startswith("is_") and alternatives(gives[name]) != {bool}} == set()
    assert any(name.startswith("is_") for name in gives)


def test_what_a_situation_gives_is_what_is_declared() -> None:
    assert set(situation(WHOLE)._roots()) == set(ROOTS)


@every(
    ("needs", "gathers", "said"),
    [
        (("surfice",), (), "the rule r needs surfice: no fact has this name; is it surface?"),
        (("surface", "zzzzzz"), (), "the rule r needs zzzzzz: no fact has this name"),
        (("surface",), ("help_in_force",), "the rule r gathers help_in_force: no fact about each"),
        (("surface",), ("surface",), "the rule r gathers surface: no fact about each"),
    ],
)
def test_a_misspelt_need_is_refused_with_the_name_meant(
    needs: tuple[str, ...], gathers: tuple[str, ...], said: str
) -> None:
    with pytest.raises(NameError, match=said.replace("?", r"\?")):
        check_needs("rule", "r", needs, gathers)
