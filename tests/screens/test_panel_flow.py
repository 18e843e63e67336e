"""The panel of a wide screen: what the row under the cursor does, unless a hold or its own finding."""

from pathlib import Path

import pytest

from tests.screens.rider import Rider, riding


def goes(rider: Rider, label: str) -> None:
    row = next(row for row in rider.app.main.board.page.rows() if row.label == label)
    assert rider.app.main.board.go(row.identity)


async def test_the_row_under_the_cursor_is_explained_at_the_right(garage: Path) -> None:
    async with riding(garage, 120, 40) as rider:
        await rider.types("p")
        goes(rider, "engine braking")
        await rider.presses("down up")
        assert "engine braking: what it does" in rider.screen
        # Traction has a serious finding: it stands there instead.
        goes(rider, "traction control")
        await rider.presses("down up")
        assert "traction control: what it does" not in rider.screen
        assert "── serious ──" in rider.screen


async def test_a_hold_stands_there_whatever_row_is_looked_at(garage: Path) -> None:
    async with riding(garage, 120, 40) as rider:
        await rider.types("p")
        goes(rider, "slide control")
        await rider.types("enter text:99 enter")
        goes(rider, "engine braking")
        await rider.presses("down up")
        assert "── hold ──" in rider.screen
        assert "engine braking: what it does" not in rider.screen


@pytest.mark.parametrize("size", [(80, 24), (40, 20)])
async def test_a_narrower_screen_has_no_panel(garage: Path, size: tuple[int, int]) -> None:
    async with riding(garage, *size) as rider:
        await rider.types("p")
        goes(rider, "engine braking")
        await rider.presses("down up")
        assert "what it does" not in rider.screen
