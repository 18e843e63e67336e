"""What is worked out aside: in another thread, over one state of the garage, and never shown of another."""

import re
import threading
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from paddock_tui.desk import Desk, setting
from paddock_tui.desk.answers import Reading
from paddock_tui.desk.looking import LooksAt
from paddock_tui.desk.sessions.ledger import Ledger, answer, ledger, newest_changes
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles, Loaded
from tests.desk.opened import until_found

RIDDEN = Ref("session", "2026-06-20-2-magpie")


@pytest.fixture
def desk(garage: Path) -> Desk:
    """A desk whose answers are listened to, as the screens do."""
    made = Desk(garage)
    made.answers.listener = lambda: None
    return made


class Held:
    """Work that waits, in its thread, until it may go on."""

    def __init__(self) -> None:
        self.may_go_on, self.begun = threading.Event(), threading.Event()
        self.threads: list[int] = []

    def __call__(self, looks: LooksAt) -> str:
        self.threads.append(threading.get_ident())
        found = str(looks.files.data(RIDDEN).get("air"))
        self.begun.set()
        self.may_go_on.wait(10)
        return found


def noted(desk: Desk, text: str) -> Step:
    step = setting(desk.files, RIDDEN, [("air", text)], desk.units())
    assert isinstance(step, Step)
    return step


def found(desk: Desk, work: Held) -> str | Reading:
    return desk.answers.of("air", 9, work)


def test_an_answer_is_found_in_another_thread_and_then_stands(desk: Desk) -> None:
    work = Held()
    assert isinstance(found(desk, work), Reading)
    work.may_go_on.set()
    until_found(desk)

    assert found(desk, work) == found(desk, work) == str(desk.files.data(RIDDEN).get("air"))
    assert len(work.threads) == 1
    assert work.threads[0] != threading.get_ident()


def test_an_answer_of_before_an_edit_is_dropped(desk: Desk) -> None:
    work = Held()
    assert isinstance(found(desk, work), Reading)
    work.begun.wait(10)
    desk.do(noted(desk, "17 C"))
    desk.settled()
    work.may_go_on.set()
    until_found(desk)

    said = found(desk, work)
    assert said == "17 C" or isinstance(said, Reading)
    until_found(desk)
    assert found(desk, work) == "17 C"


def test_an_edit_makes_an_answer_stand_no_more(desk: Desk) -> None:
    work = Held()
    work.may_go_on.set()
    found(desk, work)
    until_found(desk)
    assert not isinstance(found(desk, work), Reading)
    desk.do(noted(desk, "18 C"))

    said = found(desk, work)
    assert said == "18 C" or isinstance(said, Reading)
    desk.settled()
    found(desk, work)
    until_found(desk)
    assert found(desk, work) == "18 C"


def test_what_others_changed_between_two_reads_drops_an_answer(desk: Desk) -> None:
    """The work read the file before, the screens after it was changed: nobody noticed a change."""
    work = Held()
    assert RIDDEN not in desk.files._raw
    assert isinstance(found(desk, work), Reading)
    work.begun.wait(10)
    path = desk.files.path_of(RIDDEN)
    assert path is not None
    changed = re.sub("(?m)^air = .*$", 'air = "19 C"', path.read_text(encoding="utf-8"))
    path.write_text(changed, encoding="utf-8")
    now = str(desk.files.data(RIDDEN).get("air"))
    work.may_go_on.set()
    until_found(desk)
    found(desk, work)
    until_found(desk)

    assert found(desk, work) == now == "19 C"


def test_the_ledger_is_read_aside_and_what_was_read_is_kept(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    structure, here = GarageFiles._structure, threading.get_ident()
    read: list[tuple[bool, str]] = []

    def counted(self: GarageFiles, ref: Ref, *given: Any) -> Loaded:
        read.append((threading.get_ident() == here, ref.kind))
        return structure(self, ref, *given)

    monkeypatch.setattr(GarageFiles, "_structure", counted)
    monkeypatch.setattr("paddock_tui.desk.answers.AT_ONCE_S", 0.0)
    answer(desk)
    until_found(desk)
    got = answer(desk)
    count = len(read)

    assert isinstance(got, Ledger)
    assert (True, "session") not in read
    assert [one.label for one in got.entries] == [one.label for one in ledger(desk).entries]
    assert len(read) == count, "what the work read is not read again"


def test_the_newest_changes_are_those_of_the_whole_ledger(desk: Desk) -> None:
    whole = [one for one in ledger(desk).entries if one.bike == "magpie"]
    first = newest_changes(desk, "magpie")

    assert [(one.session.id, one.path, one.changes, one.presets) for one in first] == [
        (one.session.id, one.path, one.changes, one.presets) for one in whole
    ][: len(first)]
    assert first
    assert all(one.judgement is None for one in first)


def test_work_that_fails_is_heard_of(desk: Desk) -> None:
    def fails(looks: LooksAt) -> str:
        raise ValueError(looks.root.name)

    with pytest.raises(ValueError, match=desk.root.name):
        _twice(desk, fails)


def _twice(desk: Desk, work: Callable[[LooksAt], str]) -> None:
    for _ in range(2):
        desk.answers.of("fails", 1, work)
        until_found(desk)


def test_a_failure_over_files_that_changed_meanwhile_is_not_heard_of(desk: Desk) -> None:
    may_go_on = threading.Event()

    def fails(looks: LooksAt) -> str:
        may_go_on.wait(10)
        raise ValueError(looks.root.name)

    desk.answers.of("fails", 1, fails)
    desk.do(noted(desk, "17 C"))
    desk.settled()
    may_go_on.set()
    until_found(desk)
    desk.answers.take_over()

    assert not desk.answers.are_awaited


def test_an_answer_stands_for_the_moment_that_it_was_asked_for(desk: Desk) -> None:
    """What still reads for the moment before goes on, and the next begins with what it read."""
    threads: list[int] = []
    may_go_on = threading.Event()

    def work(looks: LooksAt) -> int:
        threads.append(threading.get_ident())
        may_go_on.wait(10)
        looks.files.read(RIDDEN)
        return len(threads)

    assert isinstance(desk.answers.of("minute", 1, work, at=1), Reading)
    assert isinstance(desk.answers.of("minute", 1, work, at=2), Reading)
    assert len(threads) == 1
    may_go_on.set()
    until_found(desk)
    desk.answers.take_over()
    assert RIDDEN in desk.files._loaded

    for at, found in ((2, 2), (2, 2), (3, 3)):
        desk.answers.of("minute", 1, work, at=at)
        until_found(desk)
        assert desk.answers.of("minute", 1, work, at=at) == found
    assert len(desk.answers._kept) == 1
