"""A review is given again while a new one would say the same, and never a minute or an edit longer."""

import datetime as dt
from pathlib import Path

import pytest

from paddock_tui.desk import Desk
from paddock_tui.facts.core import FACTS
from paddock_tui.records.paths import Ref
from paddock_tui.rules import review
from tests.desk.opened import BEFORE, NEXT, at_desk
from tests.examples import one_in

DAY = dt.datetime(2026, 6, 20)
LAST = Ref("session", "2026-06-20-2-magpie")

NAMED = ("session", "bike", "rider", "day", "venue", "tyres", "source", "garage")
"""The roles that the records of the sample's next session play."""


def made_anew(desk: Desk, ref: Ref = NEXT) -> bool:
    """Judge a session; whether that took a new review. What is given must be what a new one says."""
    before = desk._kept_reviews.made
    given = desk.review(ref)
    assert given == review(desk.assembled(ref).situation)
    return desk._kept_reviews.made > before


def given_again(desk: Desk) -> bool:
    """Judge the session again that was judged last; whether no new review was taken."""
    before = desk._kept_reviews.made
    desk.review(NEXT)
    return desk._kept_reviews.made == before


def test_the_same_review_is_given_while_nothing_changes(garage: Path) -> None:
    desk = at_desk(garage)

    assert desk.review(NEXT) is desk.review(NEXT)
    assert desk.review(NEXT, going_out=True) is desk.review(NEXT, going_out=True)
    assert desk.review(NEXT) is not desk.review(NEXT, going_out=True)
    assert not made_anew(desk)


@pytest.mark.parametrize("role", NAMED)
def test_a_change_of_any_record_takes_a_new_one(garage: Path, role: str) -> None:
    desk = at_desk(garage)
    ref = desk.assembled(NEXT).situation.refs[role]
    data = desk.files.data(ref)
    made_anew(desk)

    for key in list(data)[: 12 : one_in(3)]:
        desk.files.stage(ref, {name: one for name, one in data.items() if name != key})
        assert made_anew(desk), key
        assert given_again(desk), key
        desk.files.unstage(ref)


def test_so_does_a_change_of_what_went_before_and_of_a_checklist(garage: Path) -> None:
    desk = at_desk(garage)
    made_anew(desk)

    for ref, key, value in (
        (LAST, "note", "slid twice"),
        (LAST, "rider", "tobin"),
        (desk.files.listing("checklist")[0], "name", "another"),
        (LAST, "date", None),
    ):
        data = {**desk.files.data(ref), key: value}
        desk.files.stage(ref, {name: one for name, one in data.items() if one is not None})
        assert made_anew(desk), (ref, key)
        assert given_again(desk)


def test_others_files_are_seen_as_well(garage: Path) -> None:
    desk = at_desk(garage)
    made_anew(desk)
    path = garage / "tyres/magpie-trackday-2.toml"

    path.write_text(path.read_text(encoding="utf-8").replace("2026", "2025"), encoding="utf-8")
    desk.poll()

    assert made_anew(desk)


def test_the_clock_moves_and_what_falls_due_is_said(garage: Path) -> None:
    now = [DAY]
    desk = Desk(garage, lambda: now[0])
    anew = []
    for minute in range(0, 26 * 60, 7 * one_in(3)):
        now[0] = DAY + dt.timedelta(minutes=minute)
        anew.append(made_anew(desk))

    # Once at first, when what is due before the start falls due, and around dusk.
    assert 2 < sum(anew) < len(anew) / 4


def test_a_fact_that_takes_the_time_is_asked_again(garage: Path) -> None:
    now = [DAY]
    desk = Desk(garage, lambda: now[0])
    taken = {one.name for one in FACTS.values() if "now" in one.needs}
    situation = desk.assembled(NEXT).situation
    desk.judged(situation)

    facts = desk.facts_of(situation)
    asked = {name for name, _ in facts._found} & taken
    assert asked
    now[0] = DAY.replace(hour=23)
    later = desk.assembled(NEXT).situation
    desk.judged(later)
    for name in taken:
        assert desk.facts_of(later).get(name) == later.facts().get(name)


def test_facts_are_known_without_a_review(garage: Path) -> None:
    desk = at_desk(garage, BEFORE)

    found = desk.facts_of(desk.assembled(NEXT).situation)

    assert found.get("open_matters") == desk.assembled(NEXT).situation.facts().get("open_matters")
    assert "_kept_reviews" not in vars(desk)
