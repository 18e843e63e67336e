"""The wet package by keyboard: the surface turns wet, the package is previewed, taken, and undone."""

from pathlib import Path

from tests.screens.rider import riding
from tests.small import snapshot


async def test_rain_comes_the_package_is_taken_and_undone(garage: Path) -> None:
    async with riding(garage, 80, 24) as rider:
        await rider.types("e text:dry enter")
        await rider.chooses("wet")
        assert "the surface is dry" in rider.last
        await rider.types("e text:wet enter")
        wet = snapshot(garage)
        await rider.chooses("wet")
        assert "wet package: riding mode wild -> wading" in rider.screen
        assert "enter sets them, escape leaves it" in rider.last
        await rider.types("escape")
        assert "nothing was changed" in rider.last
        assert snapshot(garage) == wet
        await rider.chooses("wet")
        await rider.types("enter")
        assert 'mode = "wading"' in rider.text
        assert "traction = 8 " in rider.text
        assert "note dry-set-up-in-the-wet wet-package" not in rider.findings()
        assert "u undoes" in rider.last
        await rider.chooses("wet")
        assert "nothing of the wet package is open" in rider.last
        await rider.types("e text:dry enter")
        assert "note wet-set-up-in-the-dry wet-package" in rider.findings()
        await rider.chooses("wet")
        assert "back to the dry: riding mode wading ->" in rider.screen
        await rider.types("enter")
        assert 'mode = "wading"' not in rider.text
        assert "note wet-set-up-in-the-dry wet-package" not in rider.findings()
        await rider.types("u u u")

        assert snapshot(garage) == wet
        assert "note dry-set-up-in-the-wet wet-package" in rider.findings()


async def test_the_remedy_of_the_finding_takes_it_as_one_step_on_a_narrow_screen(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage, 40, 20) as rider:
        await rider.types("r")
        rows = [row for row in rider.app.main.board.page.rows() if "set for the wet" in row.label + row.value]
        assert rows
        assert rider.app.main.board.go(rows[0].identity)
        await rider.types("f")
        assert 'mode = "wading"' in rider.text
        await rider.types("u")

        assert snapshot(garage) == before
