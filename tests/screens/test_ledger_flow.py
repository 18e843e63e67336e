"""The ledger by keyboard: chosen, opened, tried back, set back, undone."""

from pathlib import Path

from paddock_tui.pages.one_change import TRY_BACK
from tests.screens.rider import Rider, riding
from tests.small import snapshot


def on_row(rider: Rider, label: str, session: str = "") -> None:
    rows = [
        one for one in rider.app.main.board.page.rows() if one.label == label and session in (*one.path, "")
    ]
    assert rows, label
    assert rider.app.main.board.go(rows[0].identity)


async def test_a_change_is_opened_tried_back_and_undone(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage, 80, 24) as rider:
        main = rider.app.main
        await rider.types("l")
        assert main.place.room == "ledger"
        assert "cannot tell yet" in rider.screen

        on_row(rider, "front trim", "2026-05-16-2-magpie")
        await rider.types("enter")
        assert main.place.room == "change"
        assert "faster with it, slower without again" in rider.screen
        await rider.types("escape")
        assert main.place.room == "ledger"
        assert rider.app.main.board.cursor_row is not None
        assert rider.app.main.board.cursor_row.label == "front trim"

        await rider.types("enter")
        on_row(rider, "re-test")
        assert main.board.cursor_row is not None
        assert main.board.cursor_row.key == TRY_BACK
        await rider.types("enter")
        assert main.place.room == "setup"
        assert "re-test: front trim +1 -> 0" in rider.last
        assert "front-trim = 0" in rider.text
        assert 'why = "re-test: check of front trim in 2026-05-16-2-magpie"' in rider.text
        await rider.types("u")
    assert snapshot(garage) == before


async def test_what_is_shown_is_stepped_typed_and_cleared(garage: Path) -> None:
    async with riding(garage, 40, 20) as rider:
        main = rider.app.main
        await rider.types("l down")
        await rider.types("+")
        assert rider.value == "anvilfen"
        await rider.types("backspace")
        assert rider.value == "any"
        on_row(rider, "what was changed")
        await rider.types("enter text:front_t enter")
        assert rider.value == "front trim"
        assert "changes" in main.board.page.heading
        await rider.types("enter ctrl+u text:nonsense enter")
        assert main.board.is_typing
        await rider.types("escape")
        assert rider.value == "front trim"


async def test_a_whole_set_up_is_set_back_from_the_palette_and_undone(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage, 80, 24) as rider:
        await rider.types("l")
        on_row(rider, "front trim", "2026-05-16-2-magpie")
        main = rider.app.main
        main.act("set_back")
        await rider.types("")
        assert "restored the set-up of 2026-05-16-2-magpie" in rider.last
        assert 'mode = "soaring"' in rider.text
        await rider.types("u")
    assert snapshot(garage) == before
