"""What is worked out in a thread of its own: its failure ends the app, and nobody waits for it elsewhere."""

import asyncio
import threading
from pathlib import Path

import pytest

from paddock_tui.desk.looking import LooksAt
from paddock_tui.desk.sessions.ledger import Ledger, ledger
from tests.screens.rider import Rider, riding

WORK = "paddock_tui.desk.sessions.ledger.ledger"


@pytest.fixture
def may_go_on(monkeypatch: pytest.MonkeyPatch) -> threading.Event:
    """Nothing is found at once."""
    monkeypatch.setattr("paddock_tui.desk.answers.AT_ONCE_S", 0.0)
    return threading.Event()


async def until_it_has_ended(rider: Rider) -> None:
    assert rider.pilot is not None
    for _ in range(200):
        if not rider.desk.answers.are_awaited:
            return
        await asyncio.sleep(0.02)
        await rider.pilot.pause()
    raise AssertionError("it is still awaited")


async def test_a_failure_is_heard_of_as_any_other(
    garage: Path, monkeypatch: pytest.MonkeyPatch, may_go_on: threading.Event
) -> None:
    def fails(looks: LooksAt) -> Ledger:
        may_go_on.wait(10)
        raise ValueError(looks.root.name)

    monkeypatch.setattr(WORK, fails)
    async with riding(garage) as rider:
        await rider.presses("l")
        assert "reading" in rider.screen
        may_go_on.set()
        await until_it_has_ended(rider)
        assert isinstance(rider.app._exception, ValueError)
        rider.app._exception = None  # it was looked at here: the test's end need not raise it


async def test_what_is_found_once_another_page_shows_is_taken_over_there(
    garage: Path, monkeypatch: pytest.MonkeyPatch, may_go_on: threading.Event
) -> None:
    threads = []

    def waits(looks: LooksAt) -> Ledger:
        threads.append(threading.get_ident())
        may_go_on.wait(10)
        return ledger(looks)

    monkeypatch.setattr(WORK, waits)
    async with riding(garage) as rider:
        await rider.presses("l")
        await rider.presses("s")
        may_go_on.set()
        await until_it_has_ended(rider)
        await rider.presses("l")
        assert "reading" not in rider.screen
    assert len(threads) == 1
