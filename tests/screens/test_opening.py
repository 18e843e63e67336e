"""The first page: drawn out of plain data, without a verdict, and what is typed on it waits in order."""

import asyncio
import datetime as dt
import signal
import threading
from pathlib import Path

from textual import events
from textual.pilot import Pilot

from paddock_tui.app import MainParts, PaddockApp
from paddock_tui.desk import Desk
from paddock_tui.pages.garage import garage_page
from paddock_tui.pages.layout import View, layout
from paddock_tui.pages.opening_page import ANSWER, READING, opening_page, reading_hint
from paddock_tui.pages.rows import Row
from paddock_tui.records.verdict_words import WORDS
from paddock_tui.store.garage import GarageFiles
from paddock_tui.widgets.opening import OpeningScreen
from tests.screens.rider import BEFORE
from tests.widgets.wire import Wire

CODE = """
import sys
from paddock_tui.__main__ import main
sys.exit(main([{garage!r}, "--at", "2026-06-20T12:55:30"]))
"""


def test_it_lists_what_the_garage_page_lists_and_judges_nothing(garage: Path) -> None:
    first = opening_page(GarageFiles(garage), lambda: BEFORE, 24)
    whole = garage_page(Desk(garage, lambda: BEFORE))

    drawn = layout(first, View(80, 24, 0)).text()
    said = [[(one.label, one.value) for one in page.rows()] for page in (first, whole)]
    assert said[0] == said[1]
    assert first.verdict == READING
    assert ANSWER in drawn
    assert drawn.count("out CARE") == 1  # a record: what a session of the morning went out with
    assert not [word for word in WORDS if word in drawn.replace("out CARE", "")]


def test_of_many_sessions_as_many_are_read_as_the_screen_shows(garage: Path) -> None:
    files = GarageFiles(garage)

    page = opening_page(files, lambda: BEFORE, 4)

    assert [one.label for one in page.sections[0].rows] == [
        "2026-06-20-4-magpie",
        "2026-06-20-2-otter",
        "2026-06-20-2-magpie",
        "2026-06-20-1-magpie",
    ]


def test_an_empty_garage_says_nothing_of_a_verdict(tmp_path: Path) -> None:
    (tmp_path / "garage.toml").write_text("schema = 1\n", encoding="utf-8")

    page = opening_page(GarageFiles(tmp_path), dt.datetime.now, 24)

    assert page.verdict == page.answer == ""


def opened(garage: Path, may_load: threading.Event) -> PaddockApp:
    files, app = GarageFiles(garage), PaddockApp()

    def load() -> MainParts:
        may_load.wait(10)
        return Desk(garage, lambda: BEFORE, files), None, None

    page = opening_page(files, lambda: BEFORE, 24)
    app.opens_with(OpeningScreen(page, lambda: reading_hint(files), "q"), load)
    return app


async def until_loaded(app: PaddockApp, pilot: Pilot[int]) -> Row | None:
    for _ in range(500):
        await pilot.pause()
        if app.is_loaded and app.main.is_drawn():
            return app.main.board.cursor_row
        await asyncio.sleep(0.02)
    raise AssertionError("it is not loaded")


async def test_moves_wait_for_nothing_and_the_cursor_stays_where_it_was_moved(garage: Path) -> None:
    may_load = threading.Event()
    app = opened(garage, may_load)
    async with app.run_test(size=(80, 24)) as pilot:
        opening = app.screen
        assert isinstance(opening, OpeningScreen)
        for key in ("down", "down", "down", "up"):
            opening.post_message(events.Key(key, None))
        await pilot.pause()

        row = opening.board.cursor_row
        assert row is not None
        assert row.label == opening.board.page.rows()[2].label
        assert opening.early == []
        assert "waits for the verdict" in opening.board.laid.text()

        for key in ("end", "up"):  # what is behind the end is not on this page, and nothing overtakes it
            opening.post_message(events.Key(key, None))
        await pilot.pause()
        assert [event.key for event in opening.early if isinstance(event, events.Key)] == ["end", "up"]
        opening.early.clear()
        may_load.set()
        assert await until_loaded(app, pilot) == row
        app.main.desk.close()


async def test_leaving_waits_for_nothing(garage: Path) -> None:
    may_load = threading.Event()
    app = opened(garage, may_load)
    async with app.run_test(size=(80, 24)) as pilot:
        app.screen.post_message(events.Key("q", "q"))
        await pilot.pause()
        assert app.return_code == 0
    may_load.set()


def test_what_is_typed_on_it_is_done_in_order_once_the_verdict_is_there(garage: Path) -> None:
    with Wire(CODE.format(garage=str(garage)), loaded=False) as wire:
        wire.read_until(READING)
        wire.type("p")
        wire.type("\x1b[B" * 4)
        wire.type("\r7")
        wire.type("7")
        wire.read_until(">▌traction control      77")
        assert "? help" not in wire.shown
        wire.signal(signal.SIGTERM)
        assert wire.ended() == 143


def test_what_is_typed_before_the_guided_start_is_drawn_is_answered_by_it(tmp_path: Path) -> None:
    made = tmp_path / "garage"
    code = f"import sys\nfrom paddock_tui.__main__ import main\nsys.exit(main(['new', {str(made)!r}]))"
    with Wire(code, loaded=False) as wire:
        # The terminal is not the program's yet: it makes new lines of these enters.
        wire.type("\rkite\r")
        wire.read_until("what its electronics let you set")
        wire.type("\x1bq")
        assert wire.ended() == 0
    assert 'name = "kite"' in (made / "bikes" / "kite.toml").read_text(encoding="utf-8")
