"""Going out on the screen: what is open is answered and come back to, then the time is stamped."""

from pathlib import Path

from tests.screens.rider import riding

LEAK = '\n[incidents.1]\nwhat = "leak"\n'


async def test_o_shows_what_is_open_and_its_last_row_stamps_the_time(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("s o")
        assert "Traction control low" in rider.screen
        await rider.types("o enter")
        assert "serious, no answer" in rider.last
        await rider.types("enter")
        assert "went_out = 12:55:00" in rider.text
        assert '[out]\nat = 12:55:00\nverdict = "CARE"\n' in rider.text
        assert '[out.findings.little-traction-help-in-the-wet]\ntraction = "serious"\n' in rider.text
        await rider.types("u")
        assert "went_out" not in rider.text
        assert "[out" not in rider.text


async def test_enter_goes_where_it_is_answered_and_o_comes_back_to_what_is_left(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("s o enter")
        assert rider.app.main.place.room == "setup"
        await rider.types("8 enter o")
        assert rider.app.main.place.room == "out"
        assert "Traction control low for a wet track: 3" not in rider.screen


async def test_a_hold_asks_once_more_and_locks_nobody_out(garage: Path) -> None:
    file = garage / "sessions/2026/2026-06-20-4-magpie.toml"
    file.write_text(file.read_text(encoding="utf-8") + LEAK, encoding="utf-8")
    async with riding(garage) as rider:
        await rider.types("s o o enter")
        assert "a hold stands" in rider.screen
        assert "went_out" not in rider.text
        await rider.types("escape")
        assert "not gone out" in rider.last
        await rider.types("enter enter")
        assert "went_out = 12:55:00" in rider.text


async def test_a_limit_is_changed_in_its_room_and_taken_back(garage: Path) -> None:
    file = garage / "garage.toml"
    before = file.read_text(encoding="utf-8")
    async with riding(garage) as rider:
        await rider.types("m / text:threshold enter enter")
        assert rider.app.main.place.room == "limits"
        rider.to("limits", "fuel-short-at-the-flag", "reserve")
        await rider.types("enter ctrl+u text:30 enter")
        assert "0 to 10 l" in rider.screen
        await rider.types("ctrl+u text:3 enter")
        assert 'reserve = "3 l"' in file.read_text(encoding="utf-8")
        await rider.types("u")
        assert file.read_text(encoding="utf-8") == before
