"""No page, and no key on it, sends much more at 80x24 than it did before pages said more."""

from pathlib import Path

import pytest

from tests.bench.page_bytes import PAGES, letters
from tests.screens.rider import riding
from tests.screens.sent import Sent

MORE = 1.25
"""So many times what was sent before is sent at most."""

ARROWS = 20

RESTED = 320
"""Bytes at most of what opens under the cursor once it has rested: most of them are text."""


async def test_pages_and_arrows_send_at_most_a_quarter_more_than_before_they_said_more(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # What is worked out aside comes late: its page is drawn twice.
    monkeypatch.setattr("paddock_tui.desk.answers.AT_ONCE_S", 0.0)
    async with riding(garage) as rider:
        sent = Sent(rider, 80, 24, monkeypatch)
        for one in PAGES:
            await rider.types("g")
            assert rider.app.main.place.room == "garage"
            sent.sent = b""
            await rider.types(one.key)
            page, sent.sent = sent.sent, b""
            await rider.presses("down")
            arrow, sent.sent = sent.sent, b""
            await rider.settled()
            await rider.presses("")
            rested = sent.sent
            assert 500 < len(page) <= MORE * one.page, (one.name, len(page))
            assert 10 < len(arrow) <= MORE * one.arrow, (one.name, len(arrow))
            assert bool(rested) == one.opens, (one.name, rested)
            if rested:
                assert len(rested) <= RESTED, (one.name, len(rested))
                assert letters(rested) > 0.6 * len(rested), (one.name, letters(rested), len(rested))


async def test_arrows_through_a_page_send_little_in_the_mean(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with riding(garage) as rider:
        sent = Sent(rider, 80, 24, monkeypatch)
        for page in "po":
            await rider.types(page)
            sent.sent = b""
            for _ in range(ARROWS):
                await rider.presses("down")
            # The page turned on the way, and findings opened and folded.
            assert rider.app.main.board.laid.top > 0
            assert len(sent.sent) <= 200 * ARROWS, (page, len(sent.sent))
