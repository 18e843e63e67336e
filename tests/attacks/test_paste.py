"""Pasted text that the terminal does not bracket is put in as a whole, and is never a list of commands."""

import string

from textual import events
from textual._xterm_parser import XTermParser

from paddock_tui.widgets.driver import runs
from paddock_tui.widgets.messages import Typed
from paddock_tui.widgets.typed_run import TypedRun, key_of
from tests.every import every
from tests.widgets.test_board import bench, last_line

LONG = "q words x " * 500


async def test_a_paste_into_a_question_is_one_change_of_its_text() -> None:
    async with bench() as (screen, press):
        heard: list[object] = []
        screen.board.listener = heard.append
        screen.board.ask("entry")
        screen.board.post_message(TypedRun(LONG))
        await press("")

        assert screen.board.half_typed == (None, LONG)
        assert heard == [Typed(LONG)]


async def test_a_paste_where_nothing_is_typed_is_no_command_and_is_said() -> None:
    async with bench() as (screen, press):
        screen.board.post_message(TypedRun(LONG))
        screen.board.post_message(TypedRun("xxxxxxxxxxxxxxxxxxx"))
        await press("")

        assert screen.heard == []
        assert "pasted text" in last_line(screen.board)


async def test_keys_typed_ahead_are_still_keys() -> None:
    async with bench() as (screen, press):
        screen.board.post_message(TypedRun("+-+-+-+-+-+-+-+-"))
        await press("")

        assert [one[:1] for one in screen.heard] == [("stepped",)] * 16


@every(
    ("pieces", "found"),
    [
        (["e"], ["e"]),
        (["a" * 15], ["a" * 15]),
        (["a" * 16 + "\r" + "b" * 3], ["", TypedRun, "\rbbb"]),
        (["\x1b[A" + "a" * 40], ["\x1b[A" + "a" * 40]),
    ],
)
def test_only_long_runs_without_escapes_are_taken_as_a_whole(pieces: list[str], found: list[object]) -> None:
    assert [TypedRun if isinstance(one, TypedRun) else one for one in runs(pieces)] == found


def test_each_character_is_the_key_that_the_parser_makes_of_it() -> None:
    for character in string.printable[:95] + "é€":
        (key,) = XTermParser(False).feed(character)
        assert isinstance(key, events.Key)
        assert key_of(character) == key.key
