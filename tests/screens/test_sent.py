"""Drawn keys: what is sent leaves the terminal as it would stand had the whole screen been drawn anew."""

import os
import random
from pathlib import Path

import pytest

from tests.examples import TIMES
from tests.screens.rider import riding
from tests.screens.sent import Sent
from tests.widgets.test_sparing import looks

PAGES_TRIED = 3 * int(os.environ.get(TIMES, "1"))
"""So many pages are drawn for each terminal; TIMES in the environment tries so many times more."""

PAGES = "prsocdjhlbtgim?"
MOVES = ("down", "down", "down", "up", "pagedown", "pageup", "end", "home", "tab", "enter", "w")


@pytest.mark.parametrize(
    ("columns", "lines", "settings"),
    [
        (80, 24, {}),
        (40, 20, {"NO_COLOR": "1"}),
        (80, 24, {"NO_COLOR": "1"}),
        (40, 20, {"PADDOCK_THEME": "night"}),
    ],
)
async def test_after_drawn_keys_the_terminal_shows_what_a_whole_screen_would(
    garage: Path, monkeypatch: pytest.MonkeyPatch, columns: int, lines: int, settings: dict[str, str]
) -> None:
    for name, value in settings.items():
        monkeypatch.setenv(name, value)
    drawn = random.Random(f"{columns} {settings}")
    async with riding(garage, columns, lines) as rider:
        sent = Sent(rider, columns, lines, monkeypatch)
        for page in drawn.choices(PAGES, k=PAGES_TRIED):
            await rider.types(f"escape {page}")
            for _ in range(4):
                keys = " ".join(drawn.choice(MOVES) for _ in range(drawn.choice((1, 1, 2, 5))))
                await rider.types(keys)
                ours, whole = sent.terminal, sent.anew()
                assert ours.text() == whole.text(), (page, keys)
                assert [looks(line) for line in ours.cells] == [looks(line) for line in whole.cells], (
                    page,
                    keys,
                )
    assert len(sent.sent) > 1000
