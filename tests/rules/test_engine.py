"""The engine: the verdict, to-dos and when they are due, stacks, acceptances, profiles."""

import datetime as dt
from typing import Any

import attrs
import pytest

from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import Acceptance
from paddock_tui.rules import CAUTION, HOLD, NOTE, RULES, SERIOUS, Finding, Remedy, Review, Severity, review
from paddock_tui.rules.core import RaisedFinding, Topic, call, rule
from tests.every import every
from tests.rules.situations import SESSION, WHOLE, at, files, look, put, raised, situation, without

WET = put("session", "surface", "wet")
DAMP = put("session", "surface", "damp")
NOVICE = put("rider", "group", "novice")
OFF = at("traction", "off")


def finding(severity: Severity, about: Topic = "danger", accepted: Acceptance | None = None) -> Finding:
    """A finding that is only a severity."""
    return Finding("a-rule", "it", severity, about, None, "M.", "W.", "f", Remedy("R."), "s", accepted)


VERDICTS: list[tuple[list[Finding], str, int, int]] = [
    ([], "NO FINDINGS", 0, 0),
    ([finding(NOTE)], "NO FINDINGS", 0, 0),
    ([finding(CAUTION)], "CARE", 1, 0),
    ([finding(CAUTION, "method")], "NO FINDINGS", 0, 0),
    ([finding(SERIOUS)], "CARE", 1, 1),
    ([finding(SERIOUS, "method")], "NO FINDINGS", 0, 0),
    ([finding(SERIOUS, accepted=Acceptance())], "CARE", 1, 0),
    ([finding(HOLD)], "HOLD", 0, 0),
    ([finding(HOLD, accepted=Acceptance())], "HOLD", 0, 0),
    ([finding(HOLD), finding(SERIOUS), finding(CAUTION), finding(NOTE)], "HOLD", 2, 1),
    ([finding(SERIOUS), finding(SERIOUS, accepted=Acceptance()), finding(CAUTION)], "CARE", 3, 1),
]


@every(("findings", "verdict", "cares", "to_answer"), VERDICTS)
def test_the_verdict_and_its_counts(
    findings: list[Finding], verdict: str, cares: int, to_answer: int
) -> None:
    made = Review(tuple(findings))
    assert (made.verdict, made.cares, made.to_answer) == (verdict, cares, to_answer)


def test_severities_are_counted() -> None:
    made = Review((finding(HOLD), finding(NOTE), finding(NOTE)))
    assert [made.count(severity) for severity in (HOLD, SERIOUS, CAUTION, NOTE)] == [1, 0, 0, 2]


def test_a_whole_dry_day_is_clear_with_nothing_left_unjudged() -> None:
    found = look()
    assert (found.verdict, found.findings, found.not_judged, found.to_do) == ("NO FINDINGS", (), (), ())


def test_the_worst_comes_first() -> None:
    found = look(WET, OFF, at("wheelie", 9), without("bike", "controls.throttle.most_help"))
    severities = [one.severity for one in found.findings]
    assert severities == sorted(severities, reverse=True)
    assert severities[0] == HOLD
    assert severities[-1] < severities[0]


# To-dos ------------------------------------------------------------------------------------------------

NO_COLD = without("session", "pressures")
DAY_OF_THE_SESSION = dt.date(2026, 5, 16)


def on(day: dt.date, hour: int, minute: int) -> dt.datetime:
    """A time on a day."""
    return dt.datetime.combine(day, dt.time(hour, minute))


DUE: list[tuple[str, dict[str, Any], bool]] = [
    ("long before", {"now": on(DAY_OF_THE_SESSION, 8, 0)}, False),
    ("just before", {"now": on(DAY_OF_THE_SESSION, 10, 29)}, False),
    ("ten minutes before the start", {"now": on(DAY_OF_THE_SESSION, 10, 30)}, True),
    ("after the start", {"now": on(DAY_OF_THE_SESSION, 11, 0)}, True),
    ("the day before at that hour", {"now": on(dt.date(2026, 5, 15), 10, 35)}, False),
    ("a year later", {"now": on(dt.date(2027, 5, 16), 10, 35)}, False),
    ("the day before, going out", {"now": on(dt.date(2026, 5, 15), 10, 35), "going_out": True}, True),
    ("long before, going out", {"now": on(DAY_OF_THE_SESSION, 8, 0), "going_out": True}, True),
]


@every(("more", "due"), [row[1:] for row in DUE], ids=[row[0] for row in DUE])
def test_a_to_do_becomes_a_finding_when_it_is_due(more: dict[str, Any], due: bool) -> None:
    found = look(NO_COLD, **more)
    assert bool(raised(found, "cold-pressures-not-read")) == due
    assert ("cold-pressures-not-read" in {one.rule for one in found.to_do}) != due
    assert found.verdict == ("CARE" if due else "NOT YET")


def test_without_a_start_nothing_is_due_by_the_clock() -> None:
    late = on(DAY_OF_THE_SESSION, 18, 0)
    found = look(NO_COLD, without("session", "start"), now=late)
    assert [(one.rule, one.due) for one in found.to_do] == [("cold-pressures-not-read", None)]
    assert raised(
        look(NO_COLD, without("session", "start"), now=late, going_out=True), "cold-pressures-not-read"
    )


def test_each_to_do_says_what_and_when_and_where() -> None:
    found = look(NO_COLD, without("session", "dash"), now=on(DAY_OF_THE_SESSION, 8, 0))
    said = [(one.what, one.due.time() if one.due else None) for one in found.to_do]
    assert said == [
        ("read the cold pressures", dt.time(10, 30)),
        ("read the dash after the last ignition-on", dt.time(10, 37)),
    ]
    assert all(one.where is not None for one in found.to_do)


def test_what_is_not_done_yet_is_no_danger_and_no_finding() -> None:
    found = look(NO_COLD, without("session", "dash"), without("day", "entries"))
    assert found.verdict == "NOT YET"
    assert len(found.to_do) == 5
    assert look(without("day", "entries"), going_out=True).verdict == "HOLD"


# Stacks ------------------------------------------------------------------------------------------------


def test_a_stack_absorbs_its_parts_and_nothing_else() -> None:
    found = look(WET, OFF, at("wheelie", "off"), at("abs", 1), without("bike", "controls.throttle.most_help"))
    told = {one.rule for one in found.findings if one.severity >= CAUTION}
    assert told == {"all-aids-near-least", "direction-not-known"}


def test_a_stack_leaves_a_part_that_is_worse_than_itself() -> None:
    found = look(WET, NOVICE, OFF, at("wheelie", "off"), at("abs", 1))
    assert raised(found, "all-aids-near-least") == [("controls", "serious")]
    assert raised(found, "aid-off-in-the-wet") == [("traction", "hold")]


def test_a_stack_leaves_findings_about_what_is_no_part_of_it() -> None:
    rear_only = put("bike", "controls.slide", {"kind": "switch"})
    found = look(WET, OFF, at("wheelie", 6), at("abs", 2), rear_only, at("slide", "on"))
    assert not raised(found, "all-aids-near-least")
    assert raised(found, "aid-off-in-the-wet") == [("traction", "serious")]


# Acceptances -------------------------------------------------------------------------------------------


def accept(found: Finding, **more: Any) -> tuple[str, tuple[str, ...], dict[str, Any]]:
    """Write an acceptance of a finding into the session, as the tool does."""
    entry = {"reason": "two laps behind the instructor", "by": "IS", "facts": found.facts, **more}
    return ("session", ("accepted", found.rule, found.subject), entry)


def the_one(found: Review, rule_id: str) -> Finding:
    """Give the only finding of a rule."""
    (only,) = [one for one in found.findings if one.rule == rule_id]
    return only


def test_an_accepted_finding_stays_with_its_reason_and_asks_no_more() -> None:
    before = look(WET, OFF)
    assert before.to_answer == 1
    after = look(WET, OFF, accept(the_one(before, "aid-off-in-the-wet")))
    mine = the_one(after, "aid-off-in-the-wet")
    assert mine.accepted is not None
    assert mine.accepted.reason == "two laps behind the instructor"
    assert (after.verdict, after.cares, after.to_answer) == ("CARE", 1, 0)


def test_an_acceptance_lapses_when_a_fact_changes_and_returns_when_it_is_put_back() -> None:
    rule_id = "little-traction-help-in-the-wet"
    accepted = accept(the_one(look(WET, at("traction", 3)), rule_id))
    assert the_one(look(WET, at("traction", 3), accepted), rule_id).accepted
    for change in (
        at("traction", 2),
        put("session", "surface", "standing water"),
        put("rider", "group", "race"),
    ):
        changed = look(WET, at("traction", 3), change, accepted)
        assert the_one(changed, rule_id).accepted is None
        water = 1 if change[2] == "standing water" else 0
        assert changed.to_answer == 1 + water
    assert the_one(look(WET, at("traction", 3), accepted), rule_id).accepted


def test_what_the_finding_does_not_stand_on_leaves_the_acceptance_alone() -> None:
    accepted = accept(the_one(look(WET, OFF), "aid-off-in-the-wet"))
    later = look(WET, OFF, accepted, put("session", "setup.adjusters.front-rebound", 8))
    assert the_one(later, "aid-off-in-the-wet").accepted


def test_a_hold_cannot_be_accepted() -> None:
    before = look(WET, OFF, NOVICE)
    mine = the_one(before, "aid-off-in-the-wet")
    assert mine.severity == HOLD
    after = look(WET, OFF, NOVICE, accept(mine))
    assert the_one(after, "aid-off-in-the-wet").accepted is None
    assert after.verdict == "HOLD"


def test_a_caution_needs_no_acceptance_and_takes_none() -> None:
    mine = the_one(look(DAMP, at("traction", 0)), "little-traction-help-in-the-damp")
    after = look(DAMP, at("traction", 0), accept(mine))
    assert the_one(after, "little-traction-help-in-the-damp").accepted is None


def test_an_acceptance_without_a_reason_does_not_count() -> None:
    mine = the_one(look(WET, OFF), "aid-off-in-the-wet")
    assert the_one(look(WET, OFF, accept(mine, reason=None)), "aid-off-in-the-wet").accepted is None


def test_the_mornings_reason_holds_in_the_afternoon() -> None:
    mine = the_one(look(WET, OFF), "aid-off-in-the-wet")
    morning = situation(files(WET, OFF, accept(mine))).session
    assert isinstance(morning, Session)
    afternoon = situation(files(WET, OFF, put("session", "number", 4)), earlier=(morning,))
    assert the_one(review(afternoon), "aid-off-in-the-wet").accepted
    assert the_one(review(attrs.evolve(afternoon, earlier=())), "aid-off-in-the-wet").accepted is None


def test_an_acceptance_of_another_subject_does_not_count() -> None:
    mine = attrs.evolve(the_one(look(WET, OFF), "aid-off-in-the-wet"), subject="slide")
    assert the_one(look(WET, OFF, accept(mine)), "aid-off-in-the-wet").accepted is None


# Profiles ----------------------------------------------------------------------------------------------


def of_profile(**setup: Any) -> Review:
    """Review a profile, for nobody's session."""
    made = {"bike": WHOLE["bike"], "rider": WHOLE["rider"]}
    return review(situation({**made, "profile": {"name": "dry", "setup": {**SESSION["setup"], **setup}}}))


def test_a_profile_is_not_judged_for_want_of_a_session() -> None:
    found = of_profile()
    assert found.verdict == "not assessed"
    assert found.findings == ()
    assert found.to_do == ()


def test_a_profile_has_findings_about_ranges_and_modes_only() -> None:
    found = of_profile(
        controls={"traction": 99, "throttle": "even", "launch": "off"},
        mode="showers",
        adjusters={"front-rebound": 99},
        front_spring="999 N/mm",
    )
    assert {one.rule for one in found.findings} == {
        "level-not-on-the-bike",
        "outside-the-riding-mode",
        "fixed-by-the-riding-mode",
        "adjuster-outside-its-range",
        "impossible-figure",
        "not-on-this-bike",
    }
    assert found.verdict == "not assessed"
    assert all(one.where is not None and one.where.ref.kind == "profile" for one in found.findings)


# What is said of the unknown ---------------------------------------------------------------------------


def test_a_rule_that_could_not_judge_one_control_has_not_passed() -> None:
    slide = put("bike", "controls.slide", {"kind": "switch"})
    found = look(WET, slide)
    assert "aid-off-in-the-wet" in found.missing_rules()
    assert "aid-off-in-the-wet" not in found.passed
    assert "aid-off-in-the-wet" in look(WET, slide, at("slide", "on")).passed


def test_without_the_bike_no_rule_about_its_controls_passes() -> None:
    found = look(WET, without("bike"))
    about_the_bike = {one.id for one in RULES.values() if one.per in ("control", "adjuster")} | {
        "all-aids-near-least"
    }
    assert about_the_bike <= set(found.missing_rules())
    assert not about_the_bike & set(found.passed)


def test_the_fact_that_unlocks_most_comes_first() -> None:
    found = look(without("session", "surface"), without("bike", "suspension"))
    counted = [(missing.label, count) for missing, count in found.unlocking()]
    assert counted[0][0] == "the surface"
    assert [count for _, count in counted] == sorted((count for _, count in counted), reverse=True)
    assert ("the bike's suspension (listed or none)", 1) in counted


def test_what_a_riding_mode_fixes_is_not_mended_by_an_edit_of_the_record() -> None:
    found = look(WET, put("bike", "modes.open.fixes", {"traction": 1}))
    remedy = the_one(found, "little-traction-help-in-the-wet").remedy
    assert remedy.puts == ()
    assert "choose another one first" in remedy.text


def test_a_rule_is_handed_what_it_takes_and_no_more() -> None:
    made = RULES["surface-not-known"]
    session = situation(files()).session
    assert call(made, {"session": session, "to_come": True}, None) == []


def test_two_rules_cannot_share_an_id() -> None:
    with pytest.raises(ValueError, match="surface-not-known"):
        rule("surface-not-known", NOTE)(lambda: RaisedFinding("M.", "W.", Remedy("R.")))


def test_without_any_record_nothing_is_raised_or_passed_and_nothing_fails() -> None:
    found = review(situation({}))
    assert (found.verdict, found.findings, found.to_do) == ("not assessed", (), ())


def test_findings_say_which_record_is_mended() -> None:
    found = look(without("bike", "controls.traction.most_help"))
    mine = the_one(found, "direction-not-known")
    assert mine.where is not None
    assert (mine.where.ref, mine.where.path) == (
        Ref("bike", "kestrel"),
        ("controls", "traction", "most_help"),
    )


def test_a_head_that_was_hit_comes_before_the_bike() -> None:
    fall = put("session", "incidents.1.what", "fall")
    found = look(fall, put("session", "incidents.1.head_contact", True))
    holds = [one.rule for one in found.findings if one.severity == HOLD]

    assert holds == ["concussion-suspected", "helmet-hit", "fall-not-inspected"]
