"""Laps by keys: doubtful ones are asked about, a list typed again takes the place of the old one."""

import datetime as dt
from pathlib import Path

from paddock_tui.records.paths import Ref
from tests.screens.rider import riding

BACK = dt.datetime(2026, 6, 20, 13, 41)
DAY = "2026-06-20-anvilfen"


async def test_retyping_the_laps_replaces_them_with_the_old_ones_in_the_question(garage: Path) -> None:
    async with riding(garage, now=BACK) as rider:
        await rider.types("i")
        rider.to("laps")
        await rider.types("text:423418416 enter")
        assert '1 = "1:42.3"\n2 = "1:41.8"\n3 = "1:41.6"' in rider.text
        before = rider.text
        await rider.types("text:431_425 enter")
        assert "3 laps stand: 1:42.3, 1:41.8, 1:41.6" in rider.screen
        await rider.types("escape")
        assert rider.text == before
        await rider.types("enter enter enter")
        assert '[laps]\n1 = "1:43.1"\n2 = "1:42.5"\n' in rider.text
        assert '3 = "1:41.6"' not in rider.text
        await rider.types("escape u")
        assert rider.text == before


async def test_a_lap_far_from_the_others_and_laps_of_nobody_out_are_asked_about(garage: Path) -> None:
    async with riding(garage, now=BACK) as rider:
        await rider.types("i")
        rider.to("laps")
        await rider.types("text:1:46.0_1:46.4_2:14.9_1:47.0 enter")
        assert "lap 3, 2:14.9, is far from the others, about 1:46" in rider.screen
        assert "[laps]" not in rider.text
        await rider.types("enter")
        assert '3 = "2:14.9"' in rider.text
    async with riding(garage) as rider:
        rider.app.main.open(Ref("session", "2026-06-20-4-magpie"))
        await rider.types("u u")
        assert "parked" not in rider.text.partition("[setup]")[0].replace("no parked", "")
        await rider.types("e text:laps_1:46.0_1:46.4 enter")
        assert "session 4 has not gone out: are these its laps?" in rider.screen
        await rider.types("escape")
        assert "[laps]" not in rider.text


async def test_a_lap_far_from_the_usual_one_is_asked_about_however_it_is_typed(garage: Path) -> None:
    async with riding(garage, now=BACK) as rider:
        await rider.types("i")
        rider.to("laps")
        await rider.types("text:150 enter")
        assert "lap 1, 1:15.0, is far from the usual 1:4" in rider.screen
        assert "[laps]" not in rider.text
        await rider.types("enter")
        assert '[laps]\n1 = "1:15.0"\n' in rider.text
        await rider.types("escape s")
        rider.to("laps", "1")
        await rider.types("enter ctrl+u text:45.1 enter")
        assert "lap 1, 45.1, is far from the usual 1:4" in rider.screen
        await rider.types("escape")
        assert '[laps]\n1 = "1:15.0"\n' in rider.text


async def test_a_days_page_takes_its_timetable_without_a_session_and_says_what_would_be_taken(
    tmp_path: Path,
) -> None:
    days = tmp_path / "days"
    days.mkdir()
    (tmp_path / "garage.toml").write_text('name = "New"\n', encoding="utf-8")
    file = days / "2026-06-20-fen.toml"
    file.write_text("date = 2026-06-20\n", encoding="utf-8")
    async with riding(tmp_path) as rider:
        rider.app.main.open(Ref("day", "2026-06-20-fen"))
        for typed, near in (
            ("9:20_9:40_every_60", "9:20 9:40 every 60 x6"),
            ("9:20_9:40_10:20", "e.g. 09:20 09:40 10:20 10:40"),
            ("9:20_9:40_every_10_x3", "e.g. 09:20 09:40 every 25 x3"),
            ("9:20_9:40_every_300_x9", "e.g. 09:20 09:40 every 300 x3"),
        ):
            await rider.types(f"e ctrl+u text:{typed} enter")
            assert near in rider.screen, rider.screen
            await rider.types("escape")
        await rider.types("e ctrl+u text:9:20-9:40_every_60_x6 enter")
        assert file.read_text(encoding="utf-8").count("from = ") == 6
        assert "[timetable.everybody.1]" in file.read_text(encoding="utf-8")
        await rider.types("e text:9:30_9:50_every_60_x2 enter")
        assert file.read_text(encoding="utf-8").count("from = ") == 2
