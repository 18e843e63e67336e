"""What a key will ask for is worked out while nobody types, once nothing else is waited for."""

import asyncio
from collections.abc import Callable
from pathlib import Path

import pytest

from paddock_tui.on_demand import Later
from paddock_tui.pages.kept_sections import KeptSections
from paddock_tui.screens.ahead import Ahead, begin
from tests.pages.test_bench import TITLES
from tests.screens.rider import Rider, riding


@pytest.fixture(autouse=True)
def _loaded(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(Later, "is_loaded", True)


class Turns:
    """Has what is to be done later done turn by turn."""

    def __init__(self) -> None:
        self.waiting: list[Callable[[], None]] = []

    def after(self, _: float, act: Callable[[], None]) -> None:
        self.waiting.append(act)

    def turn(self) -> None:
        self.waiting.pop()()


def made(rider: Rider) -> int:
    return rider.app.main.state.of(KeptSections).made


async def test_the_bench_is_worked_out_before_its_key_a_calculator_at_a_time(garage: Path) -> None:
    async with riding(garage, 80, 24) as rider:
        turns = Turns()
        ahead = Ahead(rider.app.main, turns.after, lambda: True)
        ahead.go_on()
        while turns.waiting:
            before = made(rider)
            turns.turn()
            assert made(rider) <= before + 1

        assert ahead.is_done
        assert made(rider) == len(TITLES)
        await rider.types("b")
        assert made(rider) == len(TITLES)
        assert "calculators" in rider.screen


async def test_a_key_that_comes_meanwhile_finds_the_same_page(garage: Path) -> None:
    async with riding(garage, 80, 24) as rider:
        turns = Turns()
        Ahead(rider.app.main, turns.after, lambda: True).go_on()
        while made(rider) < 3:
            turns.turn()

        await rider.types("b")
        assert made(rider) == len(TITLES)
        shown = rider.screen
        while turns.waiting:
            turns.turn()
        await rider.types("g b")

        assert rider.screen == shown


async def test_nothing_is_worked_out_while_modules_are_loaded_or_nothing_is_judged(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with riding(garage, 80, 24) as rider:
        turns, judged = Turns(), [False]
        monkeypatch.setattr(Later, "is_loaded", False)
        begin(rider.app.main, turns.after, lambda: judged[0])
        monkeypatch.setattr(Later, "is_loaded", True)
        turns.turn()
        assert made(rider) == 0
        judged[0] = True
        while turns.waiting:
            turns.turn()

        assert made(rider) == len(TITLES)


async def test_the_screen_works_out_ahead_by_itself(garage: Path) -> None:
    async with riding(garage, 80, 24) as rider:
        async with asyncio.timeout(60):
            while made(rider) < len(TITLES):
                await asyncio.sleep(0.05)
