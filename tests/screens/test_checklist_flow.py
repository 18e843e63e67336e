"""The checklist by keyboard: it begins at what is open, digits answer, the review follows, undo undoes."""

import asyncio
import datetime as dt
from pathlib import Path

from paddock_tui.app import PaddockApp
from paddock_tui.desk import Desk
from tests.screens.typing import type_keys
from tests.small import snapshot

BEFORE = dt.datetime(2026, 6, 20, 12, 55)


async def test_items_are_answered_marked_to_fix_opened_and_undone_by_keys(garage: Path) -> None:
    before = snapshot(garage)
    desk = Desk(garage, lambda: BEFORE)
    app = PaddockApp(desk)

    async def settled() -> None:
        await asyncio.to_thread(desk.wait)

    async with app.run_test(size=(80, 24)) as pilot:
        board = app.main.board

        def now() -> tuple[str, str]:
            row = board.cursor_row
            assert row is not None
            return row.label, row.value

        await type_keys(app, pilot, "c", settled)
        assert board.page.heading.startswith("wet swap: surface wet, tyres track-day · session 4")
        assert now() == ("open", "wets on, arrows right, spacers and speed sensors in place")

        await type_keys(app, pilot, "1", settled)
        await type_keys(app, pilot, "c", settled)
        await type_keys(app, pilot, "2", settled)
        assert now() == ("to fix", "axles and calipers torqued, second person, marked")
        assert board.page.verdict.startswith("HOLD 1")
        assert board.page.findings[0].value.startswith("To fix: axles and calipers torqued")
        written = (garage / "sessions/2026/2026-06-20-4-magpie.toml").read_text()
        assert '[checks.wheels-torqued]\nstatus = "to fix"\nat = 12:55:00\nby = "IS"\n' in written

        # From the finding to its item, and mended there.
        await type_keys(app, pilot, "r", settled)
        await type_keys(app, pilot, "home enter", settled)
        await type_keys(app, pilot, "1", settled)
        assert app.main.place.room == "checklist"
        assert now() == ("ok", "axles and calipers torqued, second person, marked")
        assert board.page.verdict.startswith("CARE")

        # A digit that is no answer changes nothing; backspace opens the item again.
        await type_keys(app, pilot, "7 backspace", settled)
        assert now()[0] == "open"

        # The morning's list is kept in the day.
        await type_keys(app, pilot, "home 2", settled)
        assert now()[0] == "to fix"
        day = (garage / "days/2026-06-20-alderfen.toml").read_text()
        assert '[entries.ines.magpie.checks.packing-list]\nstatus = "to fix"\nat = 12:55:00' in day

        await type_keys(app, pilot, "u u u u u", settled)
        assert snapshot(garage) == before
    desk.close()


async def test_enter_leads_to_the_value_that_answers_an_item(garage: Path) -> None:
    desk = Desk(garage, lambda: BEFORE)
    app = PaddockApp(desk)
    async with app.run_test(size=(40, 20)) as pilot:
        await type_keys(app, pilot, "c")
        await type_keys(app, pilot, "/")
        await type_keys(app, pilot, "text:fuel_and_reserve enter")
        await type_keys(app, pilot, "enter")
        row = app.main.board.cursor_row
        assert app.main.place.room == "session"
        assert row is not None
        assert row.path == ("fuel_added",)
    desk.close()
