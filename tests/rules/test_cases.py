"""Every rule, as a plain review of a small situation: raised, silent, and not judged for want of a fact."""

import pytest
from _pytest.mark.structures import ParameterSet

from paddock_tui.pages.message_line import MESSAGE_CELLS, message_line
from paddock_tui.records.paths import Ref
from paddock_tui.rules import RULES, Finding, Review
from paddock_tui.text import fold, printable, width
from tests.every import every
from tests.rules.case import Lacks, Raises, Silent
from tests.rules.cases import CASES
from tests.rules.looked import looked
from tests.rules.situations import files, look, look_for, raised, situation


def _all(of: str) -> list[ParameterSet]:
    return [
        pytest.param(rule, case, id=f"{rule}-{at}")
        for rule, cases in CASES.items()
        for at, case in enumerate(getattr(cases, of))
    ]


RAISING, SILENT, MISSING = _all("raising"), _all("silent"), _all("missing")


@every(("rule", "case"), RAISING)
def test_it_is_raised(rule: str, case: Raises) -> None:
    found = looked(rule, case)
    mine = [one for one in found.findings if one.rule == rule and one.subject == case.subject]
    assert [str(one.severity) for one in mine] == [case.severity], found.findings
    assert case.says in mine[0].message
    assert rule not in found.passed


@every(("rule", "case"), SILENT)
def test_it_is_silent(rule: str, case: Silent) -> None:
    found = look_for(rule, *case.changes, **case.more)
    assert raised(found, rule) == []
    assert rule not in found.missing_rules()
    assert rule not in {one.rule for one in found.to_do}


@every(("rule", "case"), MISSING)
def test_without_a_fact_it_is_not_judged_and_says_which(rule: str, case: Lacks) -> None:
    found = look_for(rule, *case.changes, **{"going_out": True, **case.more})
    assert raised(found, rule) == []
    assert rule not in found.passed
    missing = {one.label for entry in found.not_judged if entry.rule == rule for one in entry.missing}
    assert case.label in missing


@every("rule", sorted(RULES))
def test_each_rule_has_its_cases(rule: str) -> None:
    assert rule in CASES, f"{rule} has no cases: add them to tests/rules/cases"
    cases = CASES[rule]
    assert cases.raising
    assert cases.silent
    assert bool(cases.missing) != cases.asks, "what is missing is shown, or asked for"


def test_no_cases_are_left_of_rules_that_are_gone() -> None:
    assert set(CASES) == set(RULES)


@every("rule", [rule for rule in CASES if CASES[rule].asks])
def test_a_rule_that_asks_is_never_not_judged(rule: str) -> None:
    for role in ("bike", "rider", "tyres", "day"):
        assert rule not in look_for(rule, (role, (), None)).missing_rules()


@every("rule", sorted(RULES))
def test_each_rule_names_its_source(rule: str) -> None:
    assert len(RULES[rule].source) >= 8


def said(rule: str) -> list[Finding]:
    """List every finding of a rule, in all the cases that raise it; there is at least one in each."""
    found = [[one for one in looked(rule, case).findings if one.rule == rule] for case in CASES[rule].raising]
    assert all(found)
    return [one for each in found for one in each]


@every("rule", CASES)
def test_what_is_said_fits_every_screen(rule: str) -> None:
    for one in said(rule):
        assert width(message_line(one)) <= MESSAGE_CELLS
        assert all(text in one.message for text in one.quoted)
        for text in _texts(one):
            assert text
            assert text == printable(text) == text.strip()
            assert " ".join(fold(text, 38)) == text, "a word is too long for a narrow screen"
        assert one.message.endswith(".")
        assert one.why.endswith(".")
        assert one.remedy.text.endswith(".")
        assert one.message[:1] == one.message[:1].upper() or one.rule == "fixed-by-the-riding-mode"


def _texts(one: Finding) -> tuple[str, ...]:
    return one.message, one.why, one.remedy.text, one.facts


LEAVE_TO_RIDE = (
    "safe",
    "good to go",
    "ready to ride",
    "ready to go",
    "no danger",
    "no risk",
    "you can ride",
    "you may ride",
    "may be ridden",
    "ride on",
    "go ahead",
    "all clear",
    "clear to",
    "harmless",
    "fine to",
    "nothing to fear",
    "good enough",
    "will be fine",
)

NEVER_BY_ITSELF = (
    "concussion-suspected",
    "head-hit-not-cleared",
    "head-contact-not-answered",
    "rider-unwell",
    "brake-lever-not-firm",
    "pads-below-the-least",
    "wheel-work-not-checked",
    "oil-work-not-checked-hot",
    "leak-not-mended",
    "engine-lamp-not-mended",
    "lamp-not-explained",
    "fall-not-inspected",
    "fall-at-standstill",
)
"""Rules whose remedy needs hands or eyes: no key may make them go by setting a value."""

LOOKED_AT_BY_OTHERS = ("manual", "second person", "medic", "doctor", "organiser", "inspection")


@every("rule", CASES)
def test_nothing_reads_as_leave_to_ride(rule: str) -> None:
    for one in said(rule):
        text = " ".join(_texts(one)).casefold()
        assert not [words for words in LEAVE_TO_RIDE if words in text]


@every("rule", NEVER_BY_ITSELF)
def test_head_brakes_wheels_and_leaks_are_never_mended_by_a_key_and_send_to_who_knows(rule: str) -> None:
    for one in said(rule):
        assert one.remedy.puts == ()
        assert any(words in f"{one.remedy.text} {one.why}".casefold() for words in LOOKED_AT_BY_OTHERS)


def test_a_remedy_that_is_an_edit_mends_the_finding() -> None:
    """Doing what the remedy proposes makes this finding go, and brings no worse one."""
    edits = [rule for rule in CASES if any(one.remedy.puts for one in said(rule))]
    assert len(edits) > 20
    for rule in edits:
        for case in CASES[rule].raising:
            if any(one.remedy.puts for one in looked(rule, case).findings if one.rule == rule):
                _mends(rule, case, look(*case.changes, **case.more))


def _mends(rule: str, case: Raises, before: Review) -> None:
    mine = next(one for one in before.findings if one.rule == rule and one.subject == case.subject)
    puts = tuple(
        ("session" if put.role == "setup" else put.role, put.path, put.value) for put in mine.remedy.puts
    )
    after = look(*case.changes, *puts, **case.more)
    assert mine.subject not in [subject for subject, _ in raised(after, rule)], (rule, case)
    worse = {(one.rule, one.subject) for one in after.findings if one.severity > mine.severity}
    assert worse <= {(one.rule, one.subject) for one in before.findings}


@every("rule", CASES)
def test_a_finding_points_at_a_place_that_can_be_entered(rule: str) -> None:
    for case in CASES[rule].raising:
        _points(rule, case)


def _points(rule: str, case: Raises) -> None:
    found = looked(rule, case)
    made = situation(files(*case.changes), **case.more)
    before = {Ref("session", one.id) for one in (*made.history.past, *made.rider_today)}
    for one in (one for one in found.findings if one.rule == rule and one.where is not None):
        assert one.where is not None
        assert one.where.ref in {*made.refs.values(), *before}
