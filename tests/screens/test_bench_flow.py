"""The bench by keyboard: tried in memory only, recalculated at once, taken over as one undoable step."""

import asyncio
import datetime as dt
from pathlib import Path

from paddock_tui.app import PaddockApp
from paddock_tui.desk import Desk
from paddock_tui.pages.rows import Row
from tests.screens.typing import type_keys
from tests.small import snapshot

BEFORE = dt.datetime(2026, 6, 20, 12, 55)
FILE = "sessions/2026/2026-06-20-4-magpie.toml"


def at(app: PaddockApp, *path: str) -> Row:
    return next(row for row in app.main.board.page.rows() if row.path == ("bench", *path))


async def test_trying_changes_no_file_and_taking_over_is_one_step_that_undoes(garage: Path) -> None:
    before = snapshot(garage)
    desk = Desk(garage, lambda: BEFORE)
    app = PaddockApp(desk)

    async def settled() -> None:
        await asyncio.to_thread(desk.wait)

    async with app.run_test(size=(80, 24)) as pilot:
        board = app.main.board
        await type_keys(app, pilot, "b", settled)
        assert app.main.place.room == "bench"
        assert at(app, "pressures", "answer", "front_start").value.startswith("needs the gas")

        # A bare number is in the row's unit, and recalculates at once.
        await type_keys(app, pilot, "down enter")
        await type_keys(app, pilot, "text:48,5 enter")
        assert at(app, "pressures", "front_gas").value == "48.5 C"
        start = at(app, "pressures", "answer", "front_start")
        assert start.value == "1.98 bar cold at 17 C for 2.30 bar hot"
        await type_keys(app, pilot, "+")
        assert at(app, "pressures", "front_gas").value == "49.5 C"
        assert snapshot(garage) == before

        # What cannot be read is refused where it stands.
        await type_keys(app, pilot, "enter")
        await type_keys(app, pilot, "ctrl+u text:hot enter")
        assert board.is_typing
        await type_keys(app, pilot, "escape")

        # The answer is taken over into the session, and one undo gives the same bytes back.
        board.go(start.identity)
        await type_keys(app, pilot, "v", settled)
        assert 'front_start = "1.97 bar"' in (garage / FILE).read_text()
        assert at(app, "pressures", "front_cold").value == "1.97 bar"
        await type_keys(app, pilot, "u", settled)
        assert snapshot(garage) == before

        # Backspace takes back what was tried; then there is nothing left to take over.
        board.go(at(app, "pressures", "front_gas").identity)
        await type_keys(app, pilot, "backspace")
        assert at(app, "pressures", "front_gas").value == "not known"
        board.go(start.identity)
        await type_keys(app, pilot, "v", settled)
        assert snapshot(garage) == before
    desk.close()


async def test_a_pair_of_sprockets_sets_both_ends_and_a_digit_or_space_tries_at_once(garage: Path) -> None:
    desk = Desk(garage, lambda: BEFORE)
    app = PaddockApp(desk)

    async def settled() -> None:
        await asyncio.to_thread(desk.wait)

    async with app.run_test(size=(40, 20)) as pilot:
        board = app.main.board
        await type_keys(app, pilot, "b", settled)
        board.go(at(app, "sprockets", "answer", "15 / 41").identity)
        await type_keys(app, pilot, "v", settled)
        written = (garage / FILE).read_text()
        assert "front_sprocket = 15" in written
        assert "rear_sprocket = 41" in written

        board.go(at(app, "levels", "now slide").identity)
        await type_keys(app, pilot, "5")
        assert at(app, "levels", "now slide").value == "5"
        board.go(at(app, "levels", "worn").identity)
        await type_keys(app, pilot, "space")
        assert at(app, "levels", "worn").value == "yes"
        assert at(app, "levels", "answer", "traction").value.startswith("start at 9")

        # Another session begins with a bench of its own.
        await type_keys(app, pilot, "g", settled)
        await type_keys(app, pilot, "down enter", settled)
        await type_keys(app, pilot, "b", settled)
        assert not any(section.note for section in board.page.sections)
    desk.close()


async def test_on_the_set_up_page_v_takes_the_start_over_and_w_shows_the_working(
    garage: Path,
) -> None:
    desk = Desk(garage, lambda: BEFORE)
    app = PaddockApp(desk)

    async def settled() -> None:
        await asyncio.to_thread(desk.wait)

    async with app.run_test(size=(80, 24)) as pilot:
        board = app.main.board
        await type_keys(app, pilot, "p", settled)
        row = next(one for one in board.page.rows() if one.path[-1:] == ("traction",))
        board.go(row.identity)
        await type_keys(app, pilot, "w", settled)
        titles = [section.title for section in board.page.sections]
        assert "worked out" in titles
        assert any(one.label == "surface" and one.value.startswith("wet") for one in board.page.rows())
        await type_keys(app, pilot, "escape", settled)
        await type_keys(app, pilot, "v", settled)
        assert "traction = 8 " in (garage / FILE).read_text()
        await type_keys(app, pilot, "v", settled)
        now = board.cursor_row
        assert now is not None
        assert (now.value, now.aside) == ("8", "")
    desk.close()
