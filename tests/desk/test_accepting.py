"""A serious finding is ridden with for a reason, as long as its facts read the same."""

from pathlib import Path

import pytest

from paddock_tui.desk import Desk, accepting, withdrawing
from paddock_tui.desk.edits.values import login
from paddock_tui.records.paths import Ref
from paddock_tui.rules import Finding
from tests.desk.opened import BEFORE, NEXT, at_desk, typed
from tests.small import snapshot

RULE, SUBJECT = "little-traction-help-in-the-wet", "traction"
FILE = "sessions/2026/2026-06-20-4-magpie.toml"


def finding(desk: Desk, ref: Ref = NEXT) -> Finding:
    (found,) = [one for one in desk.review(ref).findings if (one.rule, one.subject) == (RULE, SUBJECT)]
    return found


def accept(desk: Desk, reason: str = "behind the instructor") -> None:
    desk.do(accepting(desk.files, NEXT, finding(desk), reason, BEFORE, "IS"))


def test_an_acceptance_is_written_with_reason_initials_time_and_the_facts_as_text(garage: Path) -> None:
    before = snapshot(garage)
    desk = at_desk(garage)
    serious = finding(desk)
    assert serious.to_answer

    accept(desk, "  behind the instructor ")
    desk.close()

    added = snapshot(garage)[FILE][len(before[FILE]) :].decode()
    assert added == (
        f"\n[accepted.{RULE}.{SUBJECT}]\n"
        'reason = "behind the instructor"\n'
        'by = "IS"\n'
        "at = 08:00:00\n"
        f'facts = "{serious.facts}"\n'
    )
    assert "traction control 3 (range 0-10)" in serious.facts
    assert "surface wet" in serious.facts


def test_what_is_accepted_is_still_care_and_not_to_answer(garage: Path) -> None:
    desk = at_desk(garage)

    accept(desk)
    found = finding(desk)

    assert found.accepted is not None
    assert (found.accepted.reason, found.accepted.by) == ("behind the instructor", "IS")
    review = desk.review(NEXT)
    assert (review.verdict, review.to_answer) == ("CARE", 0)
    desk.close()


def test_an_acceptance_lapses_when_the_facts_change_and_returns_when_that_is_undone(garage: Path) -> None:
    desk = at_desk(garage)
    accept(desk)

    desk.do(typed(desk, NEXT, ("setup.controls.traction", "2")))
    assert finding(desk).to_answer
    desk.undo()

    assert not finding(desk).to_answer
    desk.close()


def test_what_has_nothing_to_do_with_the_facts_leaves_an_acceptance(garage: Path) -> None:
    desk = at_desk(garage)
    accept(desk)

    desk.do(typed(desk, NEXT, ("fatigue", "4"), ("setup.adjusters.front-preload", "7")))

    assert not finding(desk).to_answer
    desk.close()


def test_the_mornings_reason_is_found_again_in_a_later_session_of_the_day(garage: Path) -> None:
    desk = at_desk(garage)
    accept(desk)
    desk.settled()
    folder = garage / "sessions" / "2026"
    text = (folder / "2026-06-20-4-magpie.toml").read_text()
    later = text[: text.index("\n[accepted")].replace("number = 4", "number = 5").replace("13:20", "14:20")
    for name, changed in {
        "2026-06-20-5-magpie": later,
        "2026-06-21-5-magpie": later.replace("date = 2026-06-20", "date = 2026-06-21"),
        "2026-06-20-6-magpie": later.replace('rider = "ines"', 'rider = "tobin"'),
    }.items():
        (folder / f"{name}.toml").write_text(changed)
    desk.poll()

    assert not finding(desk, Ref("session", "2026-06-20-5-magpie")).to_answer
    assert finding(desk, Ref("session", "2026-06-21-5-magpie")).to_answer
    assert finding(desk, Ref("session", "2026-06-20-6-magpie")).to_answer
    desk.close()


def test_accepting_again_changes_the_reason_in_place(garage: Path) -> None:
    desk = at_desk(garage)
    accept(desk)
    desk.settled()
    once = (garage / FILE).read_text()

    accept(desk, "two slow laps first")
    desk.settled()

    assert (garage / FILE).read_text() == once.replace("behind the instructor", "two slow laps first")
    desk.close()


def test_withdrawing_gives_back_the_file_as_it_was_and_undo_the_acceptance(garage: Path) -> None:
    before = snapshot(garage)
    desk = at_desk(garage)
    accept(desk)
    desk.settled()
    accepted = snapshot(garage)

    step = withdrawing(desk.files, NEXT, RULE, SUBJECT)
    assert step is not None
    desk.do(step)
    assert finding(desk).to_answer
    desk.settled()
    assert snapshot(garage) == before
    assert withdrawing(desk.files, NEXT, RULE, SUBJECT) is None
    desk.undo()
    desk.close()

    assert snapshot(garage) == accepted


def test_without_initials_the_login_stands_for_who(garage: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("getpass.getuser", lambda: "pit")
    desk = at_desk(garage)

    desk.do(accepting(desk.files, NEXT, finding(desk), "x", BEFORE, None))

    accepted = finding(desk).accepted
    assert accepted is not None
    assert accepted.by == "pit"
    desk.close()


def test_a_system_that_names_nobody_leaves_the_rider(monkeypatch: pytest.MonkeyPatch) -> None:
    def nobody() -> str:
        raise KeyError("uid")

    monkeypatch.setattr("getpass.getuser", nobody)

    assert login() == "rider"
