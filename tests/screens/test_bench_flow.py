"""The bench by keyboard: tried in memory only, recalculated at once, taken over as one undoable step."""

from pathlib import Path

from paddock_tui.app import PaddockApp
from paddock_tui.pages.rows import Row
from tests.screens.rider import riding
from tests.small import snapshot


def at(app: PaddockApp, *path: str) -> Row:
    return next(row for row in app.main.board.page.rows() if row.path == ("bench", *path))


async def test_trying_changes_no_file_and_taking_over_is_one_step_that_undoes(garage: Path) -> None:
    before = snapshot(garage)
    async with riding(garage, 80, 24) as rider:
        app = rider.app
        board = app.main.board
        await rider.types("b")
        assert app.main.place.room == "bench"
        assert at(app, "pressures", "answer", "front_start").value.startswith("needs the front tyre air")

        # A bare number is in the row's unit, and recalculates at once.
        await rider.types("enter down down enter")  # what is folded opens first
        await rider.types("text:48,5 enter")
        assert at(app, "pressures", "front_gas").value == "48.5 C"
        start = at(app, "pressures", "answer", "front_start")
        assert start.value == "1.98 bar cold at 17 C for 2.30 bar hot"
        await rider.types("+")
        assert at(app, "pressures", "front_gas").value == "49.5 C"
        assert snapshot(garage) == before

        # What cannot be read is refused where it stands.
        await rider.types("enter")
        await rider.types("ctrl+u text:hot enter")
        assert board.is_typing
        await rider.types("escape")

        # The answer is taken over into the session, and one undo gives the same bytes back.
        board.go(start.identity)
        await rider.types("v")
        assert 'front_start = "1.97 bar"' in rider.text
        assert at(app, "pressures", "front_cold").value == "1.97 bar"
        await rider.types("u")
        assert snapshot(garage) == before

        # Backspace takes back what was tried; then there is nothing left to take over.
        board.go(at(app, "pressures", "front_gas").identity)
        await rider.types("backspace")
        assert at(app, "pressures", "front_gas").value == "not known"
        board.go(start.identity)
        await rider.types("v")
        assert snapshot(garage) == before


async def test_a_pair_of_sprockets_sets_both_ends_and_a_digit_or_space_tries_at_once(garage: Path) -> None:
    async with riding(garage, 40, 20) as rider:
        app = rider.app
        board = app.main.board
        await rider.types("b")
        board.go(at(app, "sprockets", "answer", "15 / 41").identity)
        await rider.types("v")
        written = rider.text
        assert "front_sprocket = 15" in written
        assert "rear_sprocket = 41" in written

        board.go(at(app, "levels", "now slide").identity)
        await rider.types("5")
        assert at(app, "levels", "now slide").value == "5"
        board.go(at(app, "levels", "worn").identity)
        await rider.types("space")
        assert at(app, "levels", "worn").value == "yes"
        assert at(app, "levels", "answer", "traction").value.startswith("start at 9")

        # Another session begins with a bench of its own.
        await rider.types("escape g")
        await rider.types("down enter")
        await rider.types("b")
        assert not any("tried here" in section.note for section in board.page.sections)


async def test_on_the_set_up_page_v_takes_the_start_over_and_w_shows_the_working(
    garage: Path,
) -> None:
    async with riding(garage, 80, 24) as rider:
        app = rider.app
        board = app.main.board
        await rider.types("p")
        row = next(one for one in board.page.rows() if one.path[-1:] == ("traction",))
        board.go(row.identity)
        await rider.types("w")
        titles = [section.title for section in board.page.sections]
        assert "worked out" in titles
        assert any(one.label == "surface" and one.value.startswith("wet") for one in board.page.rows())
        await rider.types("escape")
        await rider.types("v")
        assert "traction = 8 " in rider.text
        await rider.types("v")
        now = board.cursor_row
        assert now is not None
        assert (now.value, now.aside) == ("8", "l5 p5 as s")
