"""A key is done with in the turn in which the app hears of it, and still in its order."""

import asyncio
from collections.abc import Callable
from pathlib import Path
from unittest.mock import Mock

import pytest
from textual import events
from textual.screen import Screen

from paddock_tui.widgets.board import Board
from tests.screens.rider import riding


def hearing(heard: list[str]) -> Callable[[str], bool]:
    """Return what notes letters and takes all of them."""

    def hear(key: str) -> bool:
        heard.append(key)
        return True

    return hear


async def test_no_bindings_are_looked_through_for_a_key_that_changes_a_value(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with riding(garage) as rider:
        await rider.types("p")
        looked = Mock(return_value=[])
        monkeypatch.setattr(Screen, "_binding_chain", property(looked))
        before = rider.file.read_bytes()

        await rider.types("+")

        assert rider.file.read_bytes() != before
        assert not looked.called


async def test_a_key_is_heard_in_the_turn_in_which_the_app_hears_of_it(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("p")
        heard: list[str] = []
        rider.app.main.board.letter = hearing(heard)

        rider.app.post_message(events.Key("m", "m"))
        await asyncio.sleep(0)  # the app's queue gives it out
        await asyncio.sleep(0)

        assert heard == ["m"]


async def test_a_key_comes_behind_what_waits_for_the_board(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("p")
        heard: list[str] = []
        board: Board = rider.app.main.board
        board.letter = hearing(heard)

        for key in "mno":
            board.post_message(events.Key(key, key))
        rider.app.post_message(events.Key("q", "q"))
        rider.app.post_message(events.Key("r", "r"))
        await rider.settled()

        assert "".join(heard) == "mnoqr"
