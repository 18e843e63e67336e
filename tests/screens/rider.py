"""A rider at the keyboard: types keys into the app on a copy of the sample, and looks at the screen."""

import asyncio
import datetime as dt
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

from textual.pilot import Pilot

from paddock_tui.app import PaddockApp
from paddock_tui.desk import Desk
from tests.desk.opened import until_found
from tests.screens.typing import HAND_S, type_by_hand, type_keys, until_idle

BEFORE = dt.datetime(2026, 6, 20, 12, 55)
"""The time of the flows: the next session of the sample goes out at 13:20."""

HAND = "sessions/2026/2026-06-20-4-magpie.toml"
"""The file of the session in hand."""


class Rider:
    """Types, and looks at the screen."""

    def __init__(self, garage: Path, now: dt.datetime = BEFORE) -> None:
        self.garage = garage
        self.file = garage / HAND
        self.desk = Desk(garage, lambda: now)
        self.app = PaddockApp(self.desk)
        self.pilot: Pilot[int] | None = None

    async def types(self, keys: str) -> None:
        """Type keys, as `type_keys` spells them, and wait until what they did is kept."""
        assert self.pilot is not None
        await type_keys(self.app, self.pilot, keys, self.settled)

    async def types_by_hand(self, keys: str, gap_s: float = HAND_S, after_s: float = 0.0) -> None:
        """Type keys with so many seconds between them, by the clock that keys carry."""
        assert self.pilot is not None
        await type_by_hand(self.app, self.pilot, keys, self.settled, gap_s, after_s)

    async def presses(self, keys: str) -> None:
        """Type keys, and wait for the screen alone."""
        assert self.pilot is not None
        await type_keys(self.app, self.pilot, keys)

    async def settled(self) -> None:
        """Wait for the writer, for what is worked out aside and for the page, without holding up the app.

        The cursor has rested then.
        """
        await asyncio.to_thread(self.desk.wait)
        assert self.pilot is not None
        await until_idle(self.app, self.pilot)
        while self.desk.answers.are_awaited:
            await asyncio.to_thread(until_found, self.desk)
            await until_idle(self.app, self.pilot)
        self.app.main.board.rest()

    async def chooses(self, action: str) -> None:
        """Choose an action from the palette."""
        await self.types("m")
        assert self.app.main.board.go(("None", action))
        await self.types("enter")

    async def shows(self, words: str, *, gone: bool = False) -> None:
        """Wait until words are on the screen, or gone from it."""
        assert self.pilot is not None
        for _ in range(200):
            if (words in self.screen) is not gone:
                return
            await self.pilot.pause(0.05)
        raise AssertionError(f"{words!r} is {'still' if gone else 'not'} on the screen: {self.screen}")

    @property
    def verdict(self) -> str:
        """The verdict at the top right."""
        return self.app.main.board.page.verdict

    @property
    def screen(self) -> str:
        """All that is drawn, one space between words."""
        return " ".join(self.app.main.board.laid.text().split())

    @property
    def last(self) -> str:
        """The last line."""
        return self.app.main.board.laid.text().split("\n")[-1].strip()

    @property
    def typing(self) -> str | None:
        """What stands in the editor or the question that is open."""
        half = self.app.main.board.half_typed
        return half[1] if half is not None else None

    @property
    def value(self) -> str:
        """The value of the row under the cursor."""
        row = self.app.main.board.cursor_row
        assert row is not None
        return row.value

    @property
    def text(self) -> str:
        """The text of the file of the session in hand."""
        return self.file.read_text(encoding="utf-8")

    def to(self, *path: str) -> None:
        """Put the cursor on the row of a value."""
        rows = [row for row in self.app.main.board.page.rows() if row.path == path]
        assert rows, f"no row of {path} in {self.app.main.place.room}"
        assert self.app.main.board.go(rows[0].identity)

    def findings(self) -> set[str]:
        """The findings by severity, rule and subject."""
        seen = self.app.main._seen
        assert seen is not None
        return {f"{one.severity} {one.rule} {one.subject}" for one in seen.review.findings}


@asynccontextmanager
async def riding(
    garage: Path, columns: int = 80, lines: int = 24, now: dt.datetime = BEFORE
) -> AsyncIterator[Rider]:
    """Open the screens for a rider; closed at the end, whatever was typed."""
    rider = Rider(garage, now)
    async with rider.app.run_test(size=(columns, lines)) as rider.pilot:
        yield rider
    rider.desk.close()
