"""The checklist by keyboard: it begins at what is open, digits answer, the review follows, undo undoes."""

from pathlib import Path

from tests.screens.rider import riding
from tests.small import snapshot


async def test_items_are_answered_marked_to_fix_opened_and_undone_by_keys(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage, 80, 24) as rider:
        app = rider.app
        board = app.main.board

        def now() -> tuple[str, str]:
            row = board.cursor_row
            assert row is not None
            return row.label, row.value

        await rider.types("c")
        assert board.page.heading.startswith("wet swap: surface wet, tyres track-day · session 4")
        assert now() == ("open", "wets on, arrows right, spacers and speed sensors in place")

        await rider.types("1")
        assert now() == ("open", "axles and calipers torqued, second person, marked")
        await rider.types("2 up up")
        while now()[1] != "axles and calipers torqued, second person, marked":
            await rider.types("down")
        assert now() == ("to fix", "axles and calipers torqued, second person, marked")
        assert board.page.verdict.startswith("HOLD 1")
        assert board.page.findings[0].value.startswith("To fix: axles and calipers torqued")
        written = (garage / "sessions/2026/2026-06-20-4-magpie.toml").read_text()
        assert '[checks.wheels-torqued]\nstatus = "to fix"\nat = 12:55:00\nby = "IS"\n' in written

        # From the finding to its item, and mended there.
        await rider.types("r")
        await rider.types("home enter")
        await rider.types("1")
        assert app.main.place.room == "checklist"
        assert now() == ("ok", "axles and calipers torqued, second person, marked")
        assert board.page.verdict.startswith("CARE")

        # A digit that is no answer changes nothing; backspace opens the item again.
        await rider.types("7 backspace")
        assert now()[0] == "open"

        # The morning's list is kept in the day.
        await rider.types("home 2")
        assert now()[0] == "to fix"
        day = (garage / "days/2026-06-20-anvilfen.toml").read_text()
        assert '[entries.ines.magpie.checks.packing-list]\nstatus = "to fix"\nat = 12:55:00' in day

        await rider.types("u u u u u")
        assert snapshot(garage) == before


async def test_enter_leads_to_the_value_that_answers_an_item(garage: Path) -> None:
    async with riding(garage, 40, 20) as rider:
        app = rider.app
        await rider.types("c")
        await rider.types("/")
        await rider.types("text:fuel_and_reserve enter")
        await rider.types("enter")
        row = app.main.board.cursor_row
        assert app.main.place.room == "session"
        assert row is not None
        assert row.path == ("fuel_added",)
