"""A session that is not of today: its times are asked for, nothing is dated today, and its record says so."""

import datetime as dt
from pathlib import Path

import pytest

from paddock_tui.desk.clock_watch import ClockWatch
from paddock_tui.desk.set_clock import SetClock
from paddock_tui.records.paths import Ref
from tests.screens.rider import riding
from tests.small import snapshot

SUNDAY = dt.datetime(2026, 6, 21, 10, 0)
OTTER = """date = 2026-06-20
number = 3
day = "2026-06-20-anvilfen"
bike = "otter"
rider = "tobin"
start = 13:00:00
went_out = 13:02:00
"""


async def test_saturday_typed_in_on_sunday_asks_for_what_the_clock_would_have_stamped(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage, now=SUNDAY) as rider:
        await rider.types("s o")
        await rider.types("end enter enter")
        assert "went out at" in rider.last
        await rider.types("text:1322 enter")
        assert "went_out = 13:22:00" in rider.text
        assert rider.text.count('times = "typed afterwards"') == 1
        await rider.types("i 1 3 4 1 1 3 4 4 2 3 8 2 0 5 3")
        assert "parked = 13:41:00" in rider.text
        hot = rider.text.partition("[pressures.hot]")[2]
        assert all(line in hot for line in ("at = 13:44:00", 'front = "2.38 bar"', 'rear = "2.05 bar"'))
        assert rider.text.count("typed afterwards") == 1
        await rider.types("0 0 0 0 enter 0 6 5")
        made = garage / "sessions/2026/2026-06-20-5-magpie.toml"
        assert 'fuel_added = "6.5 l"' in made.read_text(encoding="utf-8")
        assert not list((garage / "sessions").rglob("2026-06-21*"))
        await rider.types("escape home p home")
        await rider.types(" ".join("u" * 7))
        assert snapshot(garage) == before


async def test_times_that_a_clock_stamps_after_a_jump_are_marked_once(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with riding(garage) as rider:
        before = rider.text
        monkeypatch.setattr(ClockWatch, "doubtful", property(lambda _: True))
        await rider.types("d")
        rider.to("events", "key-off")
        await rider.types("enter")
        marked = rider.text
        assert "at = 12:55:00" in marked
        assert marked.count('times = "clock in doubt"') == 1
        await rider.types("enter u")
        assert rider.text == marked
        await rider.types("u")
        assert rider.text == before


async def test_the_dash_and_a_checklist_of_another_day_get_no_time_of_today(garage: Path) -> None:
    async with riding(garage, now=SUNDAY) as rider:
        await rider.types("d")
        rider.to("events", "key-off")
        await rider.types("enter")
        assert "key-off at" in rider.last
        await rider.types("text:12.50 enter")
        assert "at = 12:50:00" in rider.text
        before = rider.text
        await rider.types("c 1")
        assert rider.text != before
        assert "10:00" not in rider.text.replace(before, "")
        assert "at = 10:00:00" not in rider.text


async def test_with_two_bikes_out_i_asks_which_and_a_row_that_names_one_does_not(
    garage: Path,
) -> None:
    file = garage / "sessions/2026/2026-06-20-3-otter.toml"
    file.write_text(OTTER, encoding="utf-8")
    hand = garage / "sessions/2026/2026-06-20-4-magpie.toml"
    text = hand.read_text(encoding="utf-8")
    hand.write_text(text.replace("start = 13:20:00", "start = 13:20:00\nwent_out = 13:21:00"), "utf-8")
    async with riding(garage, now=dt.datetime(2026, 6, 20, 13, 41)) as rider:
        await rider.types("g end i")
        assert "which is back? 1 to 2" in rider.last
        await rider.types("text:3 enter")
        assert "a number from 1 to 2" in rider.screen
        await rider.types("escape")
        assert "\nparked" not in file.read_text(encoding="utf-8")
        assert "\nparked" not in rider.text
        rows = rider.app.main.board.page.rows()
        row = next(one for one in rows if one.opens == Ref("session", "2026-06-20-3-otter"))
        assert rider.app.main.board.go(row.identity)
        await rider.types("i")
        assert "parked = 13:41:00" in file.read_text(encoding="utf-8")
        assert "\nparked" not in rider.text


async def test_with_two_bikes_going_next_o_asks_which_and_a_row_that_names_one_does_not(
    garage: Path,
) -> None:
    other = Ref("session", "2026-06-20-3-otter")
    (garage / "sessions/2026/2026-06-20-3-otter.toml").write_text(
        OTTER.replace("went_out = 13:02:00\n", ""), encoding="utf-8"
    )
    async with riding(garage) as rider:
        await rider.types("g end o")
        assert "which goes out? 1 to 2" in rider.last
        await rider.types("escape")
        row = next(one for one in rider.app.main.board.page.rows() if one.opens == other)
        assert rider.app.main.board.go(row.identity)
        await rider.types("o")
        assert (rider.app.main.place.room, rider.app.main.place.subject) == ("out", other)
    assert "went_out" not in (garage / "sessions/2026/2026-06-20-3-otter.toml").read_text(encoding="utf-8")


async def test_the_header_says_a_clock_that_was_set_and_whose_verdict_it_is(garage: Path) -> None:
    async with riding(garage, 40, 20) as rider:
        rider.desk.now = SetClock(dt.datetime(2026, 6, 20, 12, 55) - dt.datetime.now())
        await rider.types("g")
        first = rider.app.main.board.laid.text().split("\n")[0]
        assert first.startswith("clock 20 Jun")
        assert " 4 magpie CARE" in first
        rider.desk.now = SetClock(dt.timedelta())
        await rider.types("s g")
        assert not rider.app.main.board.laid.text().startswith("clock")


async def test_i_on_the_page_of_an_earlier_ridden_session_comes_back_to_that_one(garage: Path) -> None:
    earlier = Ref("session", "2026-05-16-3-magpie")
    async with riding(garage) as rider:
        rider.app.main.open(earlier)
        before = snapshot(garage)
        await rider.types("i")
        assert (rider.app.main.place.room, rider.app.main.place.subject) == ("return", earlier)
        assert snapshot(garage) == before
    async with riding(garage, now=dt.datetime(2026, 6, 20, 13, 41)) as rider:
        rider.app.main.open(earlier)
        await rider.types("i")
        assert "which is back? 1 to 2" in rider.last
        assert snapshot(garage) == before
        await rider.types("2 enter")
        assert rider.app.main.place.subject == Ref("session", "2026-06-20-4-magpie")
        assert "parked = 13:41:00" in rider.text
