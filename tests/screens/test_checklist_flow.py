"""The checklist by keyboard: it begins at what is open, digits answer, the review follows, undo undoes."""

from pathlib import Path

import pytest

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
        await rider.types("2")
        assert now() == ("open", "both brakes pumped hard and tried at walking pace")
        await rider.types("up")
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
        await rider.types("up")
        assert now() == ("ok", "axles and calipers torqued, second person, marked")
        assert board.page.verdict.startswith("CARE")

        # A digit that is no answer changes nothing; backspace opens the item again.
        await rider.types("7 backspace")
        assert now()[0] == "open"

        # The morning's list is kept in the day.
        pads = next(row for row in board.page.rows() if row.value.startswith("brake pads, front and rear"))
        assert board.go(pads.identity)
        await rider.types("2")
        held = [(row.label, row.value) for row in board.drawn.rows()]
        assert ("to fix", "brake pads, front and rear, in their packets") in held
        day = (garage / "days/2026-06-20-anvilfen.toml").read_text()
        assert '[entries.ines.magpie.checks.brake-pads]\nstatus = "to fix"\nat = 12:55:00' in day

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


async def test_thirteen_items_take_thirteen_keys_and_a_key_held_down_answers_one(garage: Path) -> None:
    async with riding(garage) as rider:
        before = rider.text
        await rider.types("c")
        await rider.types_by_hand("1 1 1 1 1 1", gap_s=0.04)
        assert rider.text.count("[checks.") == before.count("[checks.") + 1
        assert "is a key held down?" in rider.last
        await rider.types("u")
        await rider.types("up c")
        await rider.types_by_hand(" ".join("1" * 13), after_s=5.0)
        notes = {one.title: one.note for one in rider.app.main.board.page.sections}
        assert notes["Wet swap"] == "0 open of 13"


async def test_what_holds_the_bike_after_a_fall_takes_the_initials_of_who_looked(
    garage: Path,
) -> None:
    async with riding(garage) as rider:
        rider.file.write_text(rider.text + '\n[incidents.1]\nwhat = "fall"\n', encoding="utf-8")
        rider.app.main.follower.poll()
        await rider.types("c 1")
        assert rider.last.startswith("initials of who looked")
        await rider.types("1 enter")
        assert "one to four letters" in rider.screen
        await rider.types("ctrl+u m k enter")
        assert '[checks.head-neck-hands]\nstatus = "ok"\nat = 12:55:00\nby = "MK"' in rider.text
        row = rider.app.main.board.cursor_row
        assert row is not None
        assert row.value.startswith("helmet touched anything?")
        await rider.types_by_hand("2")
        assert '[checks.helmet-after-fall]\nstatus = "to fix"' in rider.text


@pytest.mark.parametrize(
    ("session", "at", "since"),
    [
        ("2026-06-20-4-magpie", None, True),
        ("2026-06-20-2-magpie", "12:10:00", True),
        ("2026-06-20-2-magpie", "09:55:00", False),
        ("2026-06-20-1-magpie", "12:10:00", False),
    ],
)
async def test_what_holds_the_bike_takes_initials_after_work_since_it_was_last_ridden(
    garage: Path, session: str, at: str | None, since: bool
) -> None:
    noted = garage / f"sessions/2026/{session}.toml"
    stamp = f"at = {at}\n" if at is not None else ""
    noted.write_text(f'{noted.read_text("utf-8")}\n[work.9]\nwhat = "axle"\n{stamp}', encoding="utf-8")
    async with riding(garage) as rider:
        await rider.types("c / text:axles_and_calipers enter 1")
        assert rider.last.startswith("initials of who looked") is since, rider.last
        if since:
            await rider.types("m k enter")
        assert ('by = "MK"' in rider.text) is since


async def test_after_a_fall_every_item_that_holds_the_bike_takes_initials_until_its_list_is_through(
    garage: Path,
) -> None:
    async with riding(garage) as rider:
        rider.file.write_text(rider.text + '\n[incidents.1]\nwhat = "fall"\n', encoding="utf-8")
        rider.app.main.follower.poll()
        await rider.types("c / text:axles_and_calipers enter 1")
        assert rider.last.startswith("initials of who looked")
