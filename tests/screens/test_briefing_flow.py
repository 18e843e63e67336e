"""The briefing by keyboard: from the palette, the long form by enter on its last row, escape leads back."""

from pathlib import Path

from tests.screens.rider import riding


async def test_the_briefing_is_read_short_then_long(garage: Path) -> None:
    async with riding(garage, 80, 24) as rider:
        await rider.types("p")
        await rider.chooses("brief")
        page = rider.app.main.board.page
        assert page.sections[0].rows[0].value.startswith("Ines, intermediate, in the wet on Magpie")
        more = next(row for row in page.rows() if row.key == "more of the briefing")
        assert rider.app.main.board.go(more.identity)
        await rider.types("enter")
        assert len(rider.app.main.board.page.rows()) > len(page.rows())
        await rider.types("escape")
        assert rider.app.main.place.room == "setup"
