"""Limits: declared once, at, below and above each, and as the owner overrides them."""

import ast
import pkgutil
from pathlib import Path

import pytest

from paddock_tui import limits, quantities
from paddock_tui.limits import LIMITS, Limit, Limits
from paddock_tui.limits.next_change import NEXT_CHANGE
from paddock_tui.rules import RULES
from tests.every import every
from tests.rules.case import Raises, raises
from tests.rules.limit_rows import ROWS
from tests.rules.limit_rows.aids import (
    DAMP,
    DAMP_RULE,
)
from tests.rules.limit_rows.row import LimitRow
from tests.rules.said import OF_LIMITS, limits_text
from tests.rules.situations import Change, at, look, look_for, put, raised


@every("case", ROWS, ids=lambda case: f"{case.rule}.{case.limit}")
def test_at_below_and_above_each_limit(case: LimitRow) -> None:
    assert (case.rule, case.limit) in LIMITS
    found = raised(look_for(case.rule, *case.changes, **case.more), case.rule)
    assert [worst for _, worst in found] == ([case.severity] if case.severity else [])


def test_each_limit_has_rows_that_raise_and_rows_that_do_not() -> None:
    for rule, name in (key for key in LIMITS if key[0] in RULES):
        mine = [case.severity for case in ROWS if (case.rule, case.limit) == (rule, name)]
        assert any(mine), f"{rule}.{name} is never exceeded"
        assert "" in mine or len(set(mine)) > 1, f"{rule}.{name} is never kept"


@every("limit", LIMITS.values(), ids=lambda limit: f"{limit.rule}.{limit.name}")
def test_each_limit_is_declared_in_full_and_used_by_the_rule_that_it_names(limit: Limit) -> None:
    assert len(limit.meaning) >= 8
    assert len(limit.source) >= 8
    assert limit.low <= limit.value <= limit.high
    # Those of the next change have their stories in tests/advice/next_change/test_limits.py.
    assert limit.rule == NEXT_CHANGE or limit in RULES[limit.rule].limits


def test_limits_are_declared_as_committed() -> None:
    """What the owner reads of each, its band included: `python -m tests.rules.said` writes them anew."""
    assert limits_text() == OF_LIMITS.read_text(encoding="utf-8")


def test_the_themes_that_register_limits_are_those_of_the_folder() -> None:
    written = ast.parse(Path(limits.__file__).read_text(encoding="utf-8")).body
    named = [node for node in written if isinstance(node, ast.ImportFrom) and node.module == limits.__name__]
    there = {module.name for module in pkgutil.iter_modules(limits.__path__)} - {"core"}
    assert {one.name for node in named for one in node.names} == there


def test_a_rule_that_takes_limits_declares_them() -> None:
    assert {rule.id for rule in RULES.values() if rule.takes_limits} == {
        rule.id for rule in RULES.values() if rule.limits
    }


def _override(value: object) -> Change:
    return put("garage", f"limits.{DAMP_RULE}.caution_below", value)


CAUTION: Raises = raises("traction", "caution", DAMP, at("traction", 3))


def test_the_owner_lowers_a_limit_in_the_garage() -> None:
    assert raised(look(*CAUTION.changes), DAMP_RULE)
    assert not raised(look(*CAUTION.changes, _override(0.2)), DAMP_RULE)


def test_the_owner_raises_a_limit_in_the_garage() -> None:
    assert not raised(look(DAMP, at("traction", 7)), DAMP_RULE)
    assert raised(look(DAMP, at("traction", 7), _override(0.9)), DAMP_RULE)


@every("value", ["0.2", "20 %", 2, -0.1, True, "2.1 bar"])
def test_an_override_that_does_not_fit_is_left_aside(value: object) -> None:
    assert raised(look(*CAUTION.changes, _override(value)), DAMP_RULE)


def test_what_was_overridden_can_be_told() -> None:
    limit = LIMITS[DAMP_RULE, "caution_below"]
    changed = Limits({DAMP_RULE: {"caution_below": 0.2}})
    assert changed[limit] == 0.2
    assert changed.overridden(limit)
    assert not Limits().overridden(limit)
    assert Limits()[limit] == limit.value


def test_the_ends_of_what_an_owner_may_set_are_allowed() -> None:
    limit = LIMITS[DAMP_RULE, "caution_below"]
    for value in (limit.low, limit.high):
        assert Limits({DAMP_RULE: {"caution_below": value}})[limit] == value


def test_overrides_that_cannot_be_used_are_listed() -> None:
    bar = quantities.parse("2.1 bar")
    problems = Limits(
        {"no-such-rule": {"below": 1}, DAMP_RULE: {"caution_below": 3, "novice_below": bar, "other": 1}}
    ).problems()
    assert problems == [
        ("no-such-rule", "below", "no rule has such a threshold"),
        (DAMP_RULE, "caution_below", "expected 0 to 1"),
        (DAMP_RULE, "novice_below", "expected 0 to 1"),
        (DAMP_RULE, "other", "no rule has such a threshold"),
    ]
    assert Limits({DAMP_RULE: {"caution_below": 0.2}}).problems() == []


def test_a_limit_with_a_unit_takes_any_unit_of_its_dimension() -> None:
    limit = Limit("some-rule", "over", 2.0, "bar", "a pressure that is too much", "made up here", 1.0, 3.0)
    psi, celsius = quantities.parse("30 psi"), quantities.parse("30 C")
    assert Limits({"some-rule": {"over": psi}})[limit] == pytest.approx(2.068, abs=0.001)
    assert Limits({"some-rule": {"over": celsius}})[limit] == 2.0
    assert Limits({"some-rule": {"over": 2.5}})[limit] == 2.0
