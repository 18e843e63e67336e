"""Answering checklist items on disk: where they are kept, who and when, comments kept, one undo each."""

import datetime as dt
from pathlib import Path

import pytest

from paddock_tui.desk import Desk
from paddock_tui.desk.day.checklist import answering
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref
from paddock_tui.store.saving import Saved
from tests.desk.opened import at_desk
from tests.every import every
from tests.small import session, snapshot, write

ONE = Ref("session", "one")
NOW = dt.datetime(2026, 5, 16, 9, 31, 7, 500)
DAY = """# the club's day
date = 2026-05-16

[entries.ann.plain.checks.oil]   # looked twice
status = "ok"    # half a litre added
at = 07:30:00

[limits]   # as posted
pit_lane = "60 km/h"
"""


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return write(tmp_path, sessions__one=session(day='"may"'), days__may=DAY)


def desk_at(root: Path) -> Desk:
    return at_desk(root, NOW)


def answered(desk: Desk, item: str, status: str | None, *, in_day: bool = False, text: str = "") -> Step:
    """Answer an item, and wait until it is on disk."""
    step = answering(desk.files, ONE, item, status, desk.now(), in_day=in_day, text=text)
    assert isinstance(step, Step), step
    desk.do(step)
    assert all(isinstance(outcome, Saved) for outcome in desk.settled())
    return step


def why_not(desk: Desk, item: str, *, in_day: bool = True) -> str:
    found = answering(desk.files, ONE, item, "ok", desk.now(), in_day=in_day)
    assert isinstance(found, str)
    return found


def test_an_item_of_the_session_is_kept_there_with_time_and_initials(root: Path) -> None:
    step = answered(desk_at(root), "visor", "ok", text="visor clean")
    assert step.label == "open -> ok: visor clean"
    text = (root / "sessions/one.toml").read_text()
    assert text.endswith('\n\n[checks.visor]\nstatus = "ok"\nat = 09:31:07\nby = "AN"\n')
    assert text.startswith(session(day='"may"'))


def test_an_item_of_the_day_is_kept_there_under_rider_and_bike(root: Path) -> None:
    answered(desk_at(root), "horn", "not applicable", in_day=True)
    text = (root / "days/may.toml").read_text()
    added = '\n[entries.ann.plain.checks.horn]\nstatus = "not applicable"\nat = 09:31:07\nby = "AN"\n'
    assert text.replace(added, "") == DAY
    assert (root / "sessions/one.toml").read_text() == session(day='"may"')


def test_another_answer_changes_only_its_lines_and_keeps_the_comments(root: Path) -> None:
    step = answered(desk_at(root), "oil", "to fix", in_day=True)
    assert step.label == "ok -> to fix: oil"
    wanted = DAY.replace('status = "ok"    #', 'status = "to fix"    #').replace(
        "at = 07:30:00\n", 'at = 09:31:07\nby = "AN"\n'
    )
    assert (root / "days/may.toml").read_text() == wanted


def test_opening_again_drops_the_answer(root: Path) -> None:
    desk = desk_at(root)
    answered(desk, "visor", "ok")
    step = answered(desk, "visor", None)
    assert step.label == "ok -> open: visor"
    assert (root / "sessions/one.toml").read_text() == session(day='"may"')


def test_opening_again_keeps_what_is_not_part_of_the_answer(root: Path) -> None:
    (root / "days/may.toml").write_text(DAY.replace("at = 07:30:00", 'seen = "left side"'))
    answered(desk_at(root), "oil", None, in_day=True)
    text = (root / "days/may.toml").read_text()
    assert 'seen = "left side"' in text
    assert "half a litre" not in text


@pytest.mark.parametrize("status", ["ok", "to fix", "not applicable", None])
@pytest.mark.parametrize(("item", "in_day"), [("oil", True), ("horn", True), ("visor", False)])
def test_one_undo_gives_the_same_bytes_back(root: Path, item: str, in_day: bool, status: str | None) -> None:
    before = snapshot(root)
    desk = desk_at(root)
    if item != "oil" and status is None:
        words = answering(desk.files, ONE, item, None, desk.now(), in_day=in_day)
        assert words == f"{item} is open already"
        return
    answered(desk, item, status, in_day=in_day)
    after = snapshot(root)
    assert after != before
    desk.undo()
    desk.settled()
    assert snapshot(root) == before
    desk.redo()
    desk.settled()
    assert snapshot(root) == after


def test_the_login_stands_for_missing_initials(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("LOGNAME", "pitcrew")
    (root / "riders/ann.toml").write_text('name = "Ann"\n')
    answered(desk_at(root), "visor", "ok")
    assert 'by = "pitcrew"' in (root / "sessions/one.toml").read_text()


@every(
    ("change", "says"),
    [
        ({"day": "None"}, "there is no day to save it in"),
        ({"day": '"gone"'}, "there is no day to save it in"),
        ({"day": '"may"', "rider": "None"}, "nobody is named as the rider"),
        ({"day": '"may"', "bike": "None"}, "there is no bike"),
    ],
)
def test_it_says_in_words_why_the_day_cannot_hold_it(
    tmp_path: Path, change: dict[str, str], says: str
) -> None:
    root = write(tmp_path, sessions__one=session(1, **change), days__may=DAY)
    desk = desk_at(root)
    assert says in why_not(desk, "oil")
    assert isinstance(answering(desk.files, ONE, "visor", "ok", NOW, in_day=False), Step)


def test_a_value_where_the_answers_stand_is_not_written_over(root: Path) -> None:
    path = root / "days/may.toml"
    path.write_text("entries.ann.plain.checks = 3\n" + DAY.split("[entries")[0])
    assert "edit the file" in why_not(desk_at(root), "oil")


def test_a_session_that_cannot_be_read_holds_nothing(root: Path) -> None:
    (root / "sessions/one.toml").write_text("date = = 3\n")
    assert "cannot be read" in why_not(desk_at(root), "visor", in_day=False)


def test_an_answer_that_cannot_be_read_is_written_over_and_comes_back(root: Path) -> None:
    path = root / "days/may.toml"
    path.write_text(DAY.replace('"ok"', '"fine"'))
    before = snapshot(root)
    desk = desk_at(root)
    answered(desk, "oil", "ok", in_day=True)
    assert 'status = "ok"    # half a litre added' in path.read_text()
    desk.undo()
    desk.settled()
    assert snapshot(root) == before
