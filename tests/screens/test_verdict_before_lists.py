"""Where many records are listed the verdict stands on the first page before they are read for their rows."""

import asyncio
import contextlib
import gc
import threading
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from textual import events
from textual.pilot import Pilot

from paddock_tui.app import MainParts, PaddockApp, load_main, nothing_is_garbage
from paddock_tui.desk import Desk
from paddock_tui.desk.looking import LooksAt
from paddock_tui.pages.garage import LOOKING, garage_page, problems_read
from paddock_tui.pages.layout import View, layout
from paddock_tui.pages.opening_page import ANSWER, LISTING, READING, opening_page, reading_hint
from paddock_tui.pages.rows import Page
from paddock_tui.records.errors import InputError
from paddock_tui.records.verdict_words import WORDS
from paddock_tui.screens.judged_page import context_of, judged_page
from paddock_tui.screens.place import Place
from paddock_tui.screens.rooms import garage as garage_room
from paddock_tui.store.garage import GarageFiles
from paddock_tui.widgets.opening import OpeningScreen
from tests.desk.opened import until_found
from tests.screens.rider import BEFORE
from tests.screens.test_opening import until_loaded
from tests.store.parsed_files import count_parsed

LINES = 8
"""A screen that shows less than the sample lists."""


@pytest.fixture
def many(monkeypatch: pytest.MonkeyPatch) -> None:
    """No garage lists few."""
    monkeypatch.setattr("paddock_tui.pages.garage_list.MANY", 0)


@pytest.fixture
def may_list(monkeypatch: pytest.MonkeyPatch) -> Iterator[threading.Event]:
    """The rows of the garage wait for a word, in the thread that loads."""
    gate, listed = threading.Event(), garage_page

    def waits(*asked: object, **more: object) -> Page:
        if threading.current_thread() is not threading.main_thread():
            gate.wait(10)
        page: Page = listed(*asked, **more)  # type: ignore[arg-type]
        return page

    monkeypatch.setattr(garage_room, "garage_page", waits)
    yield gate
    gate.set()


def whole_page(garage: Path) -> Page:
    desk = Desk(garage, lambda: BEFORE)
    return judged_page(desk, Place(), context_of(desk, Place(), None, None)).page


def loaded(garage: Path, show: Callable[[Page], object], room: str = "") -> MainParts:
    files = GarageFiles(garage)
    return load_main(files, lambda: BEFORE, room, opening_page(files, lambda: BEFORE, LINES), show)


def opened(garage: Path) -> PaddockApp:
    files, app = GarageFiles(garage), PaddockApp()
    page = opening_page(files, lambda: BEFORE, 24)
    app.opens_with(
        OpeningScreen(page, lambda: reading_hint(files), "q"),
        lambda: load_main(files, lambda: BEFORE, "", page, app.show_judged),
    )
    return app


async def until_judged(app: PaddockApp, pilot: Pilot[int]) -> OpeningScreen:
    for _ in range(500):
        await pilot.pause()
        screen = app.screen
        assert isinstance(screen, OpeningScreen)
        if screen.board.page.verdict != READING:
            return screen
        await asyncio.sleep(0.02)
    raise AssertionError("no verdict came")


@pytest.mark.usefixtures("many")
def test_no_row_and_no_problem_is_looked_for_before_the_verdict_is_shown(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    spare = {f"tyres/spare-{number}.toml" for number in range(50)}
    for name in spare:
        (garage / name).write_text('name = "spare"\n', encoding="utf-8")
    order: list[str] = []
    parsed = count_parsed(monkeypatch)
    read_by: list[set[str]] = []

    def noted(name: str) -> Callable[..., object]:
        made: Callable[..., object] = getattr(garage_room, name)

        def notes(*asked: object, **more: object) -> object:
            order.append(name)
            return made(*asked, **more)

        return notes

    def shown(page: Page) -> None:
        order.append(page.verdict)
        read_by.append(set(parsed))

    for name in ("problems_aside", "garage_page"):
        monkeypatch.setattr(garage_room, name, noted(name))
    desk = loaded(garage, shown)[0]

    desk.close()
    assert order == [order[0], "problems_aside", "garage_page"]
    assert order[0].startswith(WORDS)
    assert not read_by[0] & spare
    assert set(parsed) >= spare


@pytest.mark.usefixtures("many")
def test_it_is_the_verdict_of_the_whole_page_and_the_rows_are_those_of_the_first(garage: Path) -> None:
    shown: list[Page] = []
    loaded(garage, shown.append)[0].close()

    (page,), whole = shown, whole_page(garage)
    first = opening_page(GarageFiles(garage), lambda: BEFORE, LINES)
    assert page.sections == first.sections
    parts = ("verdict", "whose", "answer", "answer_mid", "answer_short", "when", "clock", "now", "caution")
    assert [getattr(page, one) for one in parts] == [getattr(whole, one) for one in parts]
    assert page.verdict.startswith(WORDS)
    assert page.answer not in ("", ANSWER)


@pytest.mark.usefixtures("many")
def test_it_says_that_problems_are_looked_for_and_counts_none(garage: Path) -> None:
    (garage / "tyres" / "odd.toml").write_text("name = [", encoding="utf-8")
    shown: list[Page] = []
    loaded(garage, shown.append)[0].close()

    assert shown[0].heading.endswith(LOOKING)
    drawn = layout(shown[0], View(120, 24, 0)).text()
    assert "problem" in whole_page(garage).heading
    assert "1 problem" not in drawn


def test_few_are_listed_with_the_verdict(garage: Path) -> None:
    shown: list[Page] = []
    loaded(garage, shown.append)[0].close()
    assert shown == []


@pytest.mark.usefixtures("many")
def test_another_page_than_the_list_comes_with_its_verdict(garage: Path) -> None:
    shown: list[Page] = []
    loaded(garage, shown.append, "setup")[0].close()
    assert shown == []


@pytest.mark.usefixtures("many")
def test_while_earlier_sessions_are_read_no_verdict_is_shown(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("paddock_tui.screens.judged_page.MANY_UNREAD", 0)
    shown: list[Page] = []
    loaded(garage, shown.append)[0].close()
    assert shown == []


@pytest.mark.usefixtures("many")
async def test_no_key_waits_for_the_first_look_for_problems_in_all_files(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("paddock_tui.pages.garage.MANY", 0)
    monkeypatch.setattr("paddock_tui.desk.answers.AT_ONCE_S", 0.0)
    may_look, looked = threading.Event(), problems_read

    def waits(looks: LooksAt) -> Iterator[InputError]:
        may_look.wait(10)
        return looked(looks)

    monkeypatch.setattr("paddock_tui.pages.garage.problems_read", waits)
    (garage / "tyres" / "odd.toml").write_text("name = [", encoding="utf-8")
    app = opened(garage)
    async with app.run_test(size=(120, 40)) as pilot:
        await until_loaded(app, pilot)
        assert app.main.board.page.verdict.startswith(WORDS)
        assert app.main.board.page.heading.endswith(LOOKING)
        may_look.set()
        await asyncio.to_thread(until_found, app.main.desk)
        await pilot.pause()
        assert app.main.board.page.heading.endswith("1 problem, see below")
        app.main.desk.close()


@pytest.mark.usefixtures("many")
async def test_keys_wait_for_the_list_and_moves_for_nothing(garage: Path, may_list: threading.Event) -> None:
    verdict = whole_page(garage).verdict
    app = opened(garage)
    async with app.run_test(size=(80, 24)) as pilot:
        opening = await until_judged(app, pilot)
        assert opening.board.page.verdict == verdict
        assert LISTING in opening.board.laid.text()

        opening.post_message(events.Key("down", None))
        await pilot.pause()
        row = opening.board.cursor_row
        assert row is not None
        assert row.label == opening.board.page.rows()[1].label
        assert LISTING in opening.board.laid.text()
        for key in ("p", "o", "a", "f", "i"):
            opening.post_message(events.Key(key, key))
        await pilot.pause()
        assert [event.key for event in opening.early if isinstance(event, events.Key)] == list("poafi")
        assert not app.is_loaded
        del opening.early[1:]

        may_list.set()
        await until_loaded(app, pilot)
        for _ in range(100):
            await pilot.pause()
            if app.main.place.room == "setup":
                break
        assert app.main.place.room == "setup"
        assert app.main.board.page.verdict.startswith(WORDS)
        app.main.desk.close()


@pytest.mark.usefixtures("many")
async def test_leaving_waits_for_no_list(garage: Path, may_list: threading.Event) -> None:
    app = opened(garage)
    async with app.run_test(size=(80, 24)) as pilot:
        opening = await until_judged(app, pilot)
        opening.post_message(events.Key("q", "q"))
        await pilot.pause()
        assert app.return_code == 0
        assert not app.is_loaded
    may_list.set()


def test_no_garbage_is_looked_for_meanwhile_and_again_afterwards() -> None:
    assert gc.isenabled()
    with contextlib.suppress(ValueError), nothing_is_garbage():
        assert not gc.isenabled()
        raise ValueError
    assert gc.isenabled()
    gc.unfreeze()
