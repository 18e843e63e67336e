"""The board: keys become messages, the cursor stays on its row, and only what changed is sent."""

from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import asynccontextmanager

import pytest
from textual import events

from paddock_tui.pages.rows import Page
from paddock_tui.widgets.board import Board
from tests.screens.typing import type_keys
from tests.widgets.board_app import Bench, BoardApp, page, without
from tests.widgets.wire import Wire

Keys = Callable[[str], Awaitable[None]]


@asynccontextmanager
async def bench(columns: int = 80, lines: int = 24) -> AsyncIterator[tuple[Bench, Keys]]:
    app = BoardApp()
    async with app.run_test(size=(columns, lines)) as pilot:
        await pilot.pause()

        async def keys(text: str) -> None:
            await type_keys(app, pilot, text)

        yield app.bench, keys


def last_line(board: Board) -> str:
    return board.laid.text().split("\n")[-1]


@pytest.mark.parametrize(
    ("keys", "heard"),
    [
        ("7", ("digit", "traction", "7")),
        ("-", ("stepped", "traction", -1, None)),
        ("+", ("stepped", "traction", 1, None)),
        ("=", ("stepped", "traction", 1, None)),
        ("left", ("stepped", "traction", -1, False)),
        ("right", ("stepped", "traction", 1, True)),
        ("tab right", ("stepped", "front preload", 1, None)),
        ("backspace", ("cleared", "traction")),
        ("space", ("toggled", "traction")),
        ("w", ("letter", "w")),
        ("end enter", ("chosen", "tyres")),
        ("down down up - ", ("stepped", "wheelie", -1, None)),
        ("tab tab tab -", ("stepped", "traction", -1, None)),
        ("shift+tab enter", ("chosen", "tyres")),
        ("enter enter", ("accepted", "traction", "4")),
        ("enter ctrl+u text:2.3 left backspace home delete enter", ("accepted", "traction", "3")),
        ("enter end text:_qw_up ctrl+w text:? enter", ("accepted", "traction", "4 qw ?")),
    ],
)
async def test_a_key_says_what_it_asks_for(keys: str, heard: tuple[object, ...]) -> None:
    async with bench() as (screen, press):
        await press(keys)

        assert screen.heard == [heard]


async def test_a_row_that_is_shut_takes_no_key_and_says_why() -> None:
    async with bench() as (screen, press):
        await press("tab up 3")

        assert screen.heard == []
        assert last_line(screen.board).startswith("fixed by the riding mode")
        await press("enter")
        assert not screen.board.is_typing


async def test_what_was_said_stands_until_the_next_key() -> None:
    async with bench() as (screen, press):
        await press("5")
        assert last_line(screen.board).startswith("traction 4 -> 5, u undoes")
        await press("w")

        assert "undoes" not in last_line(screen.board)


async def test_the_cursor_stays_on_its_row_while_rows_before_it_go() -> None:
    async with bench() as (screen, press):
        await press("down down down")
        screen.board.show(without("wheelie", screen.board.page))

        assert screen.board.cursor_row is not None
        assert screen.board.cursor_row.label == "throttle"


async def test_a_refused_text_stays_and_escape_keeps_it_for_the_next_time() -> None:
    async with bench() as (screen, press):
        board = screen.board
        await press("enter ctrl+u text:abc enter")
        assert "abc is not a number" in board.laid.text()
        assert board.half_typed is not None
        assert board.half_typed[1] == "abc"

        await press("escape")
        closed = board.half_typed
        await press("down up enter")
        offered = board.half_typed
        await press("ctrl+u 9 enter")
        kept = board.half_typed
        await press("enter")
        again = board.half_typed

        assert [closed, offered and offered[1], kept, again and again[1]] == [None, "abc", None, "4"]


async def test_an_editor_whose_row_goes_leaves_its_text_to_be_offered() -> None:
    async with bench() as (screen, press):
        shown = screen.board.page
        await press("enter end text:5")
        screen.board.show(without("traction", shown))
        assert not screen.board.is_typing
        screen.board.show(shown)
        assert screen.board.go(shown.rows()[0].identity)
        screen.board.edit()

        assert screen.board.half_typed == (shown.rows()[0], "45")


async def test_pasted_text_is_one_line_in_the_rows_editor() -> None:
    async with bench() as (screen, press):
        screen.board.post_message(events.Paste("2.1\r\n bar\n"))
        await press("w")

        assert screen.board.half_typed is not None
        assert screen.board.half_typed[1] == "2.1  barw"


async def test_ctrl_c_says_how_to_leave_and_keeps_what_is_typed() -> None:
    async with bench() as (screen, press):
        await press("ctrl+c")
        assert "q leaves" in last_line(screen.board)
        await press("enter end text:7 ctrl+c")

        assert "escape leaves the editor" in last_line(screen.board)
        assert screen.board.half_typed is not None
        assert screen.board.half_typed[1] == "47"


async def test_a_question_is_previewed_while_typed_and_answered_by_enter() -> None:
    async with bench() as (screen, press):
        screen.board.ask("entry")
        await press("text:t3")
        assert "would do: t3" in screen.board.laid.text()
        await press("enter")

        assert screen.heard == [("answered", "t3")]
        assert not screen.board.is_typing


async def test_a_filter_keeps_the_rows_that_hold_its_words() -> None:
    async with bench() as (screen, _):
        screen.board.filter("suspension REB")
        assert [row.label for row in screen.board.page.rows()] == ["front rebound"]
        screen.board.filter("")

        assert len(screen.board.page.rows()) == 11


@pytest.mark.parametrize("shown", [Page("", ()), Page("none", (), "NO FINDINGS")])
async def test_a_page_without_rows_takes_every_key(shown: Page) -> None:
    async with bench() as (screen, press):
        screen.board.show(shown)
        await press("up down tab enter 5 - space left pagedown end backspace")

        assert screen.board.cursor_row is None
        assert screen.heard == []


async def test_a_key_marks_only_the_lines_that_change(monkeypatch: pytest.MonkeyPatch) -> None:
    async with bench() as (screen, press):
        marked: list[tuple[int, int]] = []
        refresh = screen.board.refresh

        def noted(*regions: object, **options: bool) -> object:
            marked.extend((region.y, region.right) for region in regions)  # type: ignore[attr-defined]
            return refresh(*regions, **options)  # type: ignore[arg-type]

        monkeypatch.setattr(screen.board, "refresh", noted)
        await press("down")

        assert marked == [(3, 80), (4, 80)]
        marked.clear()
        screen.board.show(page(screen.values))
        assert marked == []


@pytest.mark.parametrize("size", [(1, 1), (3, 2), (20, 5), (40, 12), (200, 60)])
async def test_the_board_stands_at_any_size(size: tuple[int, int]) -> None:
    async with bench(*size) as (screen, press):
        await press("down 5 enter text:x enter escape")

        assert len(screen.board.laid.lines) == size[1]


APP = "from tests.widgets.board_app import BoardApp\nBoardApp().run(mouse=False)\n"


def test_on_the_wire_a_key_costs_little_and_rest_costs_nothing() -> None:
    with Wire(APP) as wire:
        wire.read_until("front ABS")
        arrow = wire.after("\x1b[B")
        digit = wire.after("\x1b[A7")
        shown = wire.shown
        rest = wire.read(1.0, 1.0)
        wire.type("q")
        assert wire.ended() == 0

    assert b"wheelie" in arrow
    assert len(arrow) <= 300
    assert "track: 7" in shown
    assert "traction 4 -> 7, u undoes" in shown
    assert len(digit) <= 600
    assert rest == b""


@pytest.mark.parametrize("settings", [{"NO_COLOR": "1"}, {"TERM": "linux"}])
def test_on_the_wire_the_cursor_is_told_by_mark_and_weight(settings: dict[str, str]) -> None:
    with Wire(APP, settings=settings) as wire:
        wire.read_until("front ABS")
        wire.after("\x1b[B")
        look = wire.terminal.look_of("> wheelie")
        wire.type("q")
        assert wire.ended() == 0

    assert "1" in look


@pytest.mark.parametrize("size", [(40, 20), (120, 40)])
async def test_another_size_keeps_the_cursor_and_what_is_being_typed(size: tuple[int, int]) -> None:
    app = BoardApp()
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await type_keys(app, pilot, "down enter ctrl+u text:3")
        board = app.bench.board
        before = board.half_typed

        await pilot.resize_terminal(*size)
        await pilot.pause()

        assert before is not None
        assert before[1] == "3"
        assert board.half_typed == before
        lines = board.laid.text().split("\n")
        assert len(lines) == size[1]
        assert any(line.startswith(">") and "3" in line for line in lines)
