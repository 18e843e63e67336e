"""The page of the next change: the proposal first, then what waits, what is decided, what comes before."""

from pathlib import Path

import pytest

from paddock_tui.advice.next_change import next_change
from paddock_tui.desk import Desk
from paddock_tui.desk.sessions.next_change import next_of
from paddock_tui.pages.next_change import Coming, answers_of, next_change_page, proposal_of
from paddock_tui.pages.rows import Page, Section
from paddock_tui.records.common import Units
from paddock_tui.records.paths import Ref
from tests.desk.opened import at_desk, typed

LAST = Ref("session", "2026-06-20-2-magpie")
RODE_THESE = Ref("session", "2026-05-16-3-magpie")
"""An earlier session: on the tyre set of the last one, these are not new to the bike."""

ASKS = Ref("session", "2026-04-18-1-badger")
OWN_WORDS = Ref("session", "2026-06-20-1-magpie")


@pytest.fixture
def off_target(garage: Path) -> Desk:
    """Give a desk where the last session came in with too much air at both ends."""
    desk = at_desk(garage)
    desk.do(typed(desk, RODE_THESE, ("tyres", "magpie-trackday-2")))
    desk.do(typed(desk, LAST, ("pressures.hot.front", "2.70 bar"), ("pressures.hot.rear", "2.60 bar")))
    return desk


def page_of(desk: Desk, ref: Ref) -> Page:
    coming = next_of(desk.files, ref)
    there = desk.files.read(coming) if coming is not None else None
    made = Coming(there, "2 changes since the session before.") if there is not None else None
    loaded = desk.files.read(ref)
    assert loaded is not None
    return next_change_page(next_change(desk.about(ref)), loaded, made, "here", Units())


def titled(page: Page, start: str) -> Section:
    return next(section for section in page.sections if section.title.startswith(start))


def test_the_proposal_says_what_for_why_what_to_expect_and_what_to_watch(off_target: Desk) -> None:
    rows = titled(page_of(off_target, LAST), "the next change").rows
    assert [row.label for row in rows] == ["change", "for", "why", "expect", "watch"]
    assert rows[0].value.startswith("front start pressure 2.15 bar -> 2.05 bar")
    assert rows[0].aside == "v takes it into the next session"
    assert all(row.offer for row in rows)


def test_what_is_decided_stands_with_its_reasons_and_several_are_said_to_be_so(garage: Path) -> None:
    section = titled(page_of(at_desk(garage), LAST), "decided: session 2026-06-20-4-magpie")
    assert [(row.label, row.value) for row in section.rows if row.kind == "text"] == [
        ("traction control", "5 -> 3"),
        ("slide control", "4 -> 3"),
    ]
    reasons = [row for row in section.rows if row.kind == "field"]
    assert reasons[0].path == ("because", "controls", "traction", "why")
    assert reasons[0].value == "cut in out of 7 although nothing moved"
    assert section.note == "2 changes since the session before."
    assert section.rows[-1].label == "your own"


def test_what_comes_before_any_change_is_listed_with_how_it_stands(off_target: Desk) -> None:
    rows = titled(page_of(off_target, LAST), "comes before").rows
    assert {row.label: row.value.split(":")[0] for row in rows} == {
        "front pressure": "put right first",
        "rear pressure": "put right first",
        "tyres": "ok",
        "chain": "not assessed",
        "bearings": "ok, says the checklist",
    }


def test_a_question_lists_its_answers_by_number(garage: Path) -> None:
    page = page_of(at_desk(garage), ASKS)
    answers = [row for row in page.rows() if row.kind == "link" and row.path]
    assert [row.label for row in answers] == ["1", "2", "3"]
    words = {label: row.key for label, row in answers_of(page.rows(), answers[0]).items()}
    assert words == {"1": "answer overshoots", "2": "answer settles", "3": "answer creeps"}
    assert page.rows()[0].label == "answer first"


def test_of_words_of_ones_own_none_may_be_meant_and_then_nothing_is_asked_any_more(garage: Path) -> None:
    desk = at_desk(garage)
    page = page_of(desk, OWN_WORDS)
    answers = [row for row in page.rows() if row.kind == "link" and row.path]
    none = answers[-1]
    assert (none.value, none.path) == ("none of these", ("did",))
    assert answers_of(page.rows(), answers[0])[none.label] is none

    desk.do(typed(desk, OWN_WORDS, ("did", none.key.removeprefix("answer "))))
    assert next_change(desk.about(OWN_WORDS)).cause != "own-words"


def test_a_row_that_waits_stands_for_its_own_proposal(off_target: Desk) -> None:
    desk = off_target
    found = next_change(desk.about(LAST))
    waits = titled(page_of(desk, LAST), "waits").rows[0]
    assert proposal_of(found, waits) is found.waiting[0]
    assert proposal_of(found, None) is found.proposal
    assert proposal_of(found, page_of(desk, LAST).rows()[0]) is found.proposal
