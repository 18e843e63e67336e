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


async def test_it_compares_with_any_bike_or_profile_that_somebody_comes_from(garage: Path) -> None:
    async with riding(garage, 80, 24) as rider:
        await rider.types("p")
        await rider.chooses("brief")
        board = rider.app.main.board
        row = next(row for row in board.page.rows() if row.key == "coming from")
        assert row.value.startswith("session ")
        assert board.go(row.identity)
        seen = {}
        for _ in range(12):
            said = [one.value for one in board.page.rows() if one.key.startswith("new ")]
            seen[next(one.value for one in board.page.rows() if one.key == "coming from")] = said
            await rider.types("+")

    assert any("Otter counts the other way" in " ".join(said) for said in seen.values())
    assert "profile otter-tobin-cold" in seen
    assert len({tuple(said) for said in seen.values()}) > 3
