"""Riding modes by keyboard: another one is looked at sideways, previewed, taken in one step, and undone."""

from pathlib import Path

from tests.screens.rider import riding
from tests.small import snapshot


async def test_a_mode_is_looked_at_previewed_taken_and_undone(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage, 40, 20) as rider:
        await rider.chooses("modes")
        assert "WILD, 4 of 4" in rider.screen
        await rider.types("left right right left enter")
        assert "traction control 3 -> 6 at least" in rider.screen
        # Which findings go has room on the narrow screen too.
        assert "goes: serious, Traction control low" in rider.screen.replace("\n", " ")
        await rider.types("escape")
        assert "nothing was changed" in rider.last
        assert snapshot(garage) == before
        await rider.types("enter enter")
        assert 'mode = "wading"' in rider.text
        assert "WADING, 3 of 4" in rider.screen
        await rider.types("u")
        assert "WILD, 4 of 4" in rider.screen

        assert snapshot(garage) == before


async def test_a_preset_is_taken_from_its_table_and_escape_leads_back(garage: Path) -> None:
    async with riding(garage, 80, 24) as rider:
        await rider.types("p")
        await rider.chooses("modes")
        row = next(row for row in rider.app.main.board.page.rows() if row.key == "preset made for")
        assert rider.app.main.board.go(row.identity)
        await rider.types("left enter")
        assert "preset keen -> calm" in rider.screen
        await rider.types("enter")
        assert 'preset = "calm"' in rider.text
        await rider.types("escape")
        assert rider.app.main.place.room == "setup"


async def test_what_the_riding_mode_is_leads_on_to_all_of_them(garage: Path) -> None:
    async with riding(garage, 80, 24) as rider:
        await rider.types("p")
        row = next(row for row in rider.app.main.board.page.rows() if row.label == "riding mode")
        assert rider.app.main.board.go(row.identity)
        await rider.types("w")
        assert "riding mode: what it does" in rider.screen
        row = next(row for row in rider.app.main.board.page.rows() if row.key == "to modes")
        assert rider.app.main.board.go(row.identity)
        await rider.types("enter")
        assert rider.app.main.place.room == "modes"
