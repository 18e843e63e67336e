"""No page, and no key on it, sends much more at 80x24 than it did before pages said more."""

from pathlib import Path

import pytest

from tests.bench.page_bytes import PAGES, letters
from tests.screens.rider import riding
from tests.screens.sent import Sent

MORE = 1.25
"""So many times what was sent before is sent at most."""

ARROWS = 20

SAYS_MORE = {"review": 320, "going out": 360}
"""Bytes of the first arrow at most where it shows what it did not then: most of them are text."""


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
            await rider.types("down")
            arrow = sent.sent
            assert 500 < len(page) <= MORE * one.page, (one.name, len(page))
            assert 10 < len(arrow) <= SAYS_MORE.get(one.name, MORE * one.arrow), (one.name, len(arrow))
            if one.name in SAYS_MORE:
                assert letters(arrow) > 0.6 * len(arrow), (one.name, letters(arrow), len(arrow))
    assert {one.name for one in PAGES if one.arrow_says} == set(SAYS_MORE)


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
