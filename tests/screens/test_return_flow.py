"""Back from the track on the screen: rows that fill by themselves, and nothing lost on the way."""

import datetime as dt
from pathlib import Path

import pytest

from tests.screens.rider import riding
from tests.small import snapshot

BACK = dt.datetime(2026, 6, 20, 13, 41)


async def test_groups_advance_by_themselves_and_coming_back_finds_the_first_open_row(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage, now=BACK) as rider:
        await rider.types("p i - -")
        assert "parked = 13:39:00" in rider.text
        await rider.types("2 3 8")
        assert "2 min after parking: hot" in rider.screen
        await rider.types("2 0")
        assert rider.typing == "20"
        await rider.types("escape g")  # another screen in the middle of a group
        await rider.types("i 2 0 5")
        assert 'rear = "2.05 bar"' in rider.text
        await rider.types("3 0 3")  # turning in is passed over
        await rider.types("s i")
        row = rider.app.main.board.cursor_row
        assert row is not None
        assert row.label == "exit, drive"
        await rider.types("7")
        assert "expected a whole number from 1 to 5" in rider.last
        await rider.types("2 4")
        assert rider.typing == ""  # the symptom is open for letters
        await rider.types("h a")
        assert "1 harsh on single bumps 2 harsh on a series" in rider.screen
        await rider.types("2 1 2 f d")
        assert 'what = "harsh on a series"\ncorner = "12"\nend = "front"\neach_lap = "differs"' in rider.text
        await rider.types("escape home u u u u u u u u u u u u u u u u u")
        await rider.types("u u u u")
    assert snapshot(garage) == before


async def test_the_aim_is_asked_first_by_one_letter_and_holds_up_no_pressure(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage, now=BACK) as rider:
        await rider.types("i")
        row = rider.app.main.board.cursor_row
        assert row is not None
        assert (row.label, row.path) == ("was it met?", ("aim_met",))
        await rider.types("p")
        assert 'aim_met = "partly"' in rider.text
        assert rider.app.main.place.room == "return"
        await rider.types("2 3 8")
        assert 'front = "2.38 bar"' in rider.text
        await rider.types("escape home u u u")
    assert snapshot(garage) == before
    async with riding(garage, now=BACK) as rider:
        await rider.types("i 2 3 8 2 0 5")
        assert 'front = "2.38 bar"' in rider.text
        assert "aim_met" not in rider.text


async def test_a_word_typed_on_after_it_was_picked_does_nothing_more(garage: Path) -> None:
    async with riding(garage, now=BACK) as rider:
        await rider.types("i 2 3 8 2 0 5 3 3 3 3 3 text:wallows 4 enter r")
        assert rider.app.main.place.room == "return"
        assert 'what = "wallows"\ncorner = "4"\nend = "rear"' in rider.text


async def test_doubtful_and_impossible_figures_stay_open_until_enter_or_mended(garage: Path) -> None:
    async with riding(garage, now=BACK) as rider:
        await rider.types("i 9 9 9")
        assert "9.99 bar cannot be" in rider.screen
        await rider.types("9 9 9 9 9")
        assert "[pressures.hot]" not in rider.text
        await rider.types("ctrl+u 2 3 enter")
        assert "three digits, or write it out" in rider.screen
        await rider.types("ctrl+u 2 2 2")
        assert "is a key held down?" in rider.screen
        assert "[pressures.hot]" not in rider.text
        await rider.types("enter 2 3 5")
        assert 'front = "2.22 bar"' in rider.text
        assert 'rear = "2.35 bar"' in rider.text


async def test_a_digit_that_is_held_down_does_not_run_on_through_the_rows(garage: Path) -> None:
    async with riding(garage, now=BACK) as rider:
        await rider.types("i 2 3 8 2 0 5 3 3 3 3 3 3 3 3 3 3")  # all in one piece, as over a slow link
        assert "straight = 3" in rider.text
        assert "is a key held down?" in rider.screen
        assert "[symptoms" not in rider.text


async def test_what_was_typed_in_this_return_is_mended_without_a_question(garage: Path) -> None:
    async with riding(garage, now=BACK) as rider:
        await rider.types("i 2 3 8 e text:ago_4 enter")
        assert "parked = 13:37:00" in rider.text
        await rider.types("up 2 3 6")
        assert 'front = "2.36 bar"' in rider.text
        await rider.types("s")
        rider.to("rider")
        await rider.types("backspace")
        assert "this session was ridden" in rider.screen  # what was not typed in the return is asked about
        await rider.types("escape")


async def test_before_it_goes_out_parked_is_stamped_only_at_the_second_press(garage: Path) -> None:
    async with riding(garage) as rider:
        before = rider.text
        await rider.types("i")
        assert "it goes out at 13:20: i again stamps" in rider.last
        assert rider.text == before
        await rider.types("i")
        assert "parked = 12:55:00" in rider.text


async def test_a_pasted_column_and_a_file_become_laps_and_one_bad_cell_stops_them(
    garage: Path, tmp_path_factory: pytest.TempPathFactory
) -> None:
    file = tmp_path_factory.mktemp("laps") / "laps.csv"
    file.write_text("Lap,Time,Mark\n1,1:58.9,out\n2,1:61.0,\n3,1:44.3,\n", encoding="utf-8")
    async with riding(garage, now=BACK) as rider:
        before = rider.text
        await rider.types(f"s m / text:import_laps enter enter text:{file} enter")
        assert "2 Time: 1:58.9, 1:61.0, 1:44.3" in rider.screen
        await rider.types("enter")
        assert "row 3: 1:61.0 is no lap time" in rider.screen
        assert rider.text == before
        file.write_text("Lap,Time,Mark\n1,1:58.9,out\n2,1:44.3,\n", encoding="utf-8")
        await rider.types(f"escape m / text:import_laps enter enter ctrl+u text:{file} enter")
        assert "2 laps: 1:58.9 out, 1:44.3" in rider.screen
        await rider.types("enter")
        assert "session 4 has not gone out: are these its laps?" in rider.screen
        assert rider.text == before
        await rider.types("enter")
        assert '[laps]\n1 = "1:58.9 out"\n2 = "1:44.3"\n' in rider.text
        await rider.types("u")
        assert rider.text == before


async def test_late_shifts_the_rest_of_the_day_and_the_clock_counts_to_it(garage: Path) -> None:
    async with riding(garage, now=dt.datetime(2026, 6, 20, 12, 55)) as rider:
        await rider.types("s down")
        assert rider.last.startswith("out in 25 min, read the cold pressures, due 13:10: s")
        await rider.types("e text:late_15")
        assert "10 starts go 15 min later; stops stay" in rider.screen
        await rider.types("enter down")
        assert rider.last.startswith("out in 40 min, read the cold pressures, due 13:25: s")
        await rider.types("t e text:11:15_11:35_every_60_x4")
        assert "left out in a stop: 12:15" in rider.screen
        await rider.types("enter")
        assert "from = 13:15:00" in (garage / "days/2026-06-20-anvilfen.toml").read_text(encoding="utf-8")


async def test_last_time_here_is_taken_over_row_by_row_or_whole(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("h")
        rider.to("setup", "controls", "traction")
        await rider.types("v")
        assert "traction = 8" in rider.text
        await rider.types("m / text:use_last_time enter enter")
        assert 'mode = "wading"' in rider.text
        await rider.types("u u")
        assert "traction = 3" in rider.text


async def test_a_corner_may_begin_with_its_nought_and_a_wrong_letter_is_said_at_once(garage: Path) -> None:
    async with riding(garage, now=BACK) as rider:
        await rider.types("i 2 3 8 2 0 5 3 4 3 4 3 8 0 7")
        assert 'corner = "7"' in rider.text
        await rider.types("x")
        assert "x is no answer here: f front, r rear, 0 skips" in rider.screen
        assert rider.typing == ""
        await rider.types("r s")
        assert 'end = "rear"\neach_lap = "same"' in rider.text


async def test_two_noughts_pass_a_corner_over(garage: Path) -> None:
    async with riding(garage, now=BACK) as rider:
        await rider.types("i 2 3 8 2 0 5 3 4 3 4 3 8 0 0 r")
        assert 'end = "rear"' in rider.text
        assert "\ncorner" not in rider.text
