"""Limits: declared once, at, below and above each, and as the owner overrides them."""

import pytest

from paddock_tui import quantities
from paddock_tui.rules import LIMITS, RULES, Limit, Limits
from tests.rules.case import Raises, raises
from tests.rules.situations import Change, at, look, put, raised

WET, DAMP = put("session", "surface", "wet"), put("session", "surface", "damp")
NOVICE = put("rider", "group", "novice")


def levels(low: int, high: int, most: int) -> Change:
    """Give the bike other levels of traction, so that thresholds snap elsewhere."""
    return put(
        "bike", "controls.traction", {"kind": "level", "levels": [low, high], "most_help": most, "off": True}
    )


TEN, TEN_DOWN, FOUR, THREE = levels(0, 10, 10), levels(1, 11, 1), levels(1, 4, 4), levels(1, 3, 3)

WET_RULE, DAMP_RULE, STACK = (
    "little-traction-help-in-the-wet",
    "little-traction-help-in-the-damp",
    "all-aids-near-least",
)

Row = tuple[str, str, tuple[Change, ...], int, str]

ROWS: list[Row] = [
    # 0.35 of ten steps lies halfway between 3 and 4 and snaps to more help, 4.
    (WET_RULE, "serious_below", (TEN, WET), 3, "serious"),
    (WET_RULE, "serious_below", (TEN, WET), 4, "caution"),
    (WET_RULE, "caution_below", (TEN, WET), 4, "caution"),
    (WET_RULE, "caution_below", (TEN, WET), 5, ""),
    (WET_RULE, "caution_below", (TEN, WET), 6, ""),
    (WET_RULE, "novice_below", (TEN, WET, NOVICE), 5, "serious"),
    (WET_RULE, "novice_below", (TEN, WET, NOVICE), 6, ""),
    (WET_RULE, "novice_below", (TEN, WET, NOVICE), 7, ""),
    # The same bike counting down from 11 to 1: 11 is no help at all, 1 the most.
    (WET_RULE, "serious_below", (TEN_DOWN, WET), 8, "serious"),
    (WET_RULE, "serious_below", (TEN_DOWN, WET), 7, "caution"),
    (WET_RULE, "caution_below", (TEN_DOWN, WET), 6, ""),
    (WET_RULE, "novice_below", (TEN_DOWN, WET, NOVICE), 6, "serious"),
    (WET_RULE, "novice_below", (TEN_DOWN, WET, NOVICE), 5, ""),
    # Four levels are help 0, 1/3, 2/3, 1: 0.35 snaps to 1/3, 0.5 and 0.6 to 2/3.
    (WET_RULE, "serious_below", (FOUR, WET), 1, "serious"),
    (WET_RULE, "serious_below", (FOUR, WET), 2, "caution"),
    (WET_RULE, "caution_below", (FOUR, WET), 3, ""),
    (WET_RULE, "novice_below", (FOUR, WET, NOVICE), 2, "serious"),
    (WET_RULE, "novice_below", (FOUR, WET, NOVICE), 3, ""),
    # Three levels are help 0, 0.5, 1: all three limits snap to 0.5.
    (WET_RULE, "serious_below", (THREE, WET), 1, "serious"),
    (WET_RULE, "caution_below", (THREE, WET), 2, ""),
    (WET_RULE, "novice_below", (THREE, WET, NOVICE), 2, ""),
    (DAMP_RULE, "caution_below", (TEN, DAMP), 3, "caution"),
    (DAMP_RULE, "caution_below", (TEN, DAMP), 4, ""),
    (DAMP_RULE, "caution_below", (TEN, DAMP), 5, ""),
    (DAMP_RULE, "caution_below", (FOUR, DAMP), 1, "caution"),
    (DAMP_RULE, "caution_below", (FOUR, DAMP), 2, ""),
    (DAMP_RULE, "novice_below", (TEN, DAMP, NOVICE), 5, "caution"),
    (DAMP_RULE, "novice_below", (TEN, DAMP, NOVICE), 6, ""),
    (DAMP_RULE, "novice_below", (TEN, DAMP, NOVICE), 7, ""),
    # 0.25 of ten steps snaps to 3.
    (STACK, "near_least", (TEN, WET, at("wheelie", 1), at("abs", 1)), 2, "serious"),
    (STACK, "near_least", (TEN, WET, at("wheelie", 1), at("abs", 1)), 3, "serious"),
    (STACK, "near_least", (TEN, WET, at("wheelie", 1), at("abs", 1)), 4, ""),
    (STACK, "near_least", (FOUR, WET, at("wheelie", 1), at("abs", 1)), 2, "serious"),
    (STACK, "near_least", (FOUR, WET, at("wheelie", 1), at("abs", 1)), 3, ""),
]


@pytest.mark.parametrize(("rule", "limit", "changes", "level", "severity"), ROWS)
def test_at_below_and_above_each_limit(
    rule: str, limit: str, changes: tuple[Change, ...], level: int, severity: str
) -> None:
    assert (rule, limit) in LIMITS
    found = raised(look(*changes, at("traction", level)), rule)
    assert [worst for _, worst in found] == ([severity] if severity else [])


def test_each_limit_has_rows_that_raise_and_rows_that_do_not() -> None:
    for rule, name in LIMITS:
        mine = [severity for row_rule, limit, *_, severity in ROWS if (row_rule, limit) == (rule, name)]
        assert any(mine), f"{rule}.{name} is never exceeded"
        assert "" in mine or "caution" in mine, f"{rule}.{name} is never kept"


@pytest.mark.parametrize("limit", LIMITS.values(), ids=lambda limit: f"{limit.rule}.{limit.name}")
def test_each_limit_is_declared_in_full_by_the_one_rule_that_it_names(limit: Limit) -> None:
    assert len(limit.meaning) >= 8
    assert len(limit.source) >= 8
    assert limit.low <= limit.value <= limit.high
    assert [rule.id for rule in RULES.values() if limit in rule.limits] == [limit.rule]


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


@pytest.mark.parametrize("value", ["0.2", "20 %", 2, -0.1, True, "2.1 bar"])
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
        ("no-such-rule", "below", "no rule has such a limit"),
        (DAMP_RULE, "caution_below", "expected 0 to 1"),
        (DAMP_RULE, "novice_below", "expected 0 to 1"),
        (DAMP_RULE, "other", "no rule has such a limit"),
    ]
    assert Limits({DAMP_RULE: {"caution_below": 0.2}}).problems() == []


def test_a_limit_with_a_unit_takes_any_unit_of_its_dimension() -> None:
    limit = Limit("some-rule", "over", 2.0, "bar", "a pressure that is too much", "made up here", 1.0, 3.0)
    psi, celsius = quantities.parse("30 psi"), quantities.parse("30 C")
    assert Limits({"some-rule": {"over": psi}})[limit] == pytest.approx(2.068, abs=0.001)
    assert Limits({"some-rule": {"over": celsius}})[limit] == 2.0
    assert Limits({"some-rule": {"over": 2.5}})[limit] == 2.0
