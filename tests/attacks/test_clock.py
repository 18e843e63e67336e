"""Undo goes in the order of what was done, whatever the clock said; a clock that jumps is said."""

import datetime as dt
from pathlib import Path

import pytest

from paddock_tui.desk import Desk
from paddock_tui.desk.clock_watch import ClockWatch, in_words
from paddock_tui.pages.today import today_page
from paddock_tui.store.journal import entries, entries_of
from tests.attacks.trap import naming
from tests.every import every
from tests.small import write

NOW = dt.datetime(2026, 6, 20, 8)
CLOCKS = {
    "wakes in 2020": [NOW, dt.datetime(2020, 1, 1), NOW],
    "wakes in 2099": [NOW, dt.datetime(2099, 12, 31, 23), NOW],
    "months out of order": [dt.datetime(2026, month, 1) for month in (6, 3, 9, 1, 6)],
    "summer time ends": [dt.datetime(2026, 10, 25, 2, minute) for minute in (50, 55, 5, 10)],
    "another time zone": [NOW, NOW - dt.timedelta(hours=9), NOW + dt.timedelta(hours=3)],
}


@every("name", CLOCKS)
@every("runs", ["one run", "a run each"])
def test_undo_is_in_the_order_of_what_was_done(tmp_path: Path, name: str, runs: str) -> None:
    root = write(tmp_path)
    moment = [NOW]
    desk = Desk(root, lambda: moment[0])
    labels = []
    for number, at in enumerate(CLOCKS[name]):
        moment[0] = at
        step = naming("Plain" if number == 0 else str(number - 1), str(number))
        labels.append(step.label)
        if runs == "a run each":
            desk.close()
            desk = Desk(root, lambda: moment[0])
        desk.do(step)
    desk.close()

    assert [one.step.label for one in entries(root)] == labels
    later = Desk(root, lambda: NOW)
    undone = [str(later.undo()) for _ in labels]
    later.close()
    assert [one.rpartition(" (of")[0] for one in undone] == labels[::-1]
    assert 'name = "Plain"' in (root / "bikes" / "plain.toml").read_text()
    assert sum(len(entries_of(root, at.date())) for at in {one.date(): one for one in CLOCKS[name]}.values())


def watch() -> tuple[ClockWatch, list[float]]:
    clocks = [1_000_000.0, 500.0]
    return ClockWatch(lambda: clocks[0], lambda: clocks[1]), clocks


def test_a_jump_is_said_once_and_the_clock_doubted_until_it_is_back() -> None:
    clock, clocks = watch()
    clocks[:] = [clocks[0] + 10, clocks[1] + 10]
    assert (clock.jump(), clock.doubtful) == ("", False)

    clocks[0] -= 3 * 3600
    assert clock.jump() == "the clock went back 3 h: check the laptop's time"
    assert (clock.jump(), clock.doubtful) == ("", True)

    clocks[0] += 3 * 3600
    assert clock.jump() == "the clock went forward 3 h: check the laptop's time"
    assert not clock.doubtful


def test_a_night_asleep_and_small_corrections_are_no_jump() -> None:
    clock, clocks = watch()
    for by, beside in ((8 * 3600.0, 8 * 3600.0), (1.0, 0.2), (-2.0, 0.0)):
        clocks[:] = [clocks[0] + by, clocks[1] + beside]
        assert (clock.jump(), clock.doubtful) == ("", False)


@every(("seconds", "words"), [(60, "1 min"), (3600, "1 h"), (3 * 3600 - 0.5, "3 h"), (172800, "2 d")])
def test_a_span_is_said_in_its_largest_unit(seconds: float, words: str) -> None:
    assert in_words(seconds) == words


def test_what_is_noted_under_a_doubtful_clock_is_marked(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk = Desk(write(tmp_path), lambda: NOW)
    monkeypatch.setattr(ClockWatch, "doubtful", True)
    desk.do(naming("Plain", "x"))
    desk.settled()

    (row,) = today_page(desk).rows()
    assert "the clock was doubtful" in row.aside
    desk.close()


def test_a_clock_behind_the_last_change_is_said_once(tmp_path: Path) -> None:
    root = write(tmp_path)
    desk = Desk(root, lambda: dt.datetime(2026, 6, 22))
    desk.do(naming("Plain", "x"))
    desk.close()

    woken = Desk(root, lambda: dt.datetime(2020, 1, 1))
    assert woken.can_undo() == "name Plain -> x (of 22 Jun 00:00)"
    assert "22 Jun 2026" in woken.clock_doubt()
    assert woken.clock_doubt() == ""
    woken.close()
