"""The season by keyboard: a year at a time, and a cost typed on the day's own row."""

from pathlib import Path

from tests.screens.rider import riding

DAY = ("entries", "ines", "magpie", "costs", "fuel")


async def test_years_are_stepped_and_typed_and_a_cost_is_an_ordinary_row(garage: Path) -> None:
    day = garage / "days" / "2026-05-16-anvilfen.toml"
    day.write_text(day.read_text().replace("date = 2026-05-16", "date = 2025-05-16", 1))
    async with riding(garage) as rider:
        await rider.chooses("season")
        assert rider.app.main.board.page.heading == "season · 2026"
        assert "129.90 EUR" in rider.screen
        await rider.types("-")
        assert rider.app.main.board.page.heading == "season · 2025"
        await rider.types("enter ctrl+u text:1999 enter")
        assert "a year in which something stands: 2025, 2026" in rider.screen
        await rider.types("escape backspace")
        assert rider.app.main.board.page.heading == "season · 2026"
        await rider.types("escape g")
        rows = [row for row in rider.app.main.board.page.rows() if row.label == "2026-05-16-anvilfen"]
        assert rider.app.main.board.go(rows[0].identity)
        await rider.types("enter")
        rider.to(*DAY)
        await rider.types("enter ctrl+u text:1,234 enter")
        assert "write 1234, or 1.23" in rider.screen
        await rider.types("ctrl+u text:31,5 enter")
        assert rider.value == "31.50"
    assert 'fuel = "31.50"' in day.read_text()
