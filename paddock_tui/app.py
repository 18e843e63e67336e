"""The app: theme, the screen, and leaving in good order whatever the link does.

The first page is drawn out of plain data; records, rules and rooms are loaded once it is sent.
"""

import asyncio
import contextlib
import datetime as dt
import gc
import os
import shutil
import threading
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, ClassVar

from rich.text import Text
from textual import events
from textual.app import App
from textual.binding import Binding, BindingType
from textual.screen import Screen

from paddock_tui.on_demand import load_declared
from paddock_tui.pages.opening_page import LISTING, opening_page, reading_hint
from paddock_tui.pages.rows import Page
from paddock_tui.store import presence
from paddock_tui.store.crash import CRASHED, report, sentence
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.settings import load_settings
from paddock_tui.widgets.base import repaint_on_resume
from paddock_tui.widgets.driver import driver_class
from paddock_tui.widgets.opening import OpeningScreen
from paddock_tui.widgets.signals import Leaver, block
from paddock_tui.widgets.sparing import ShownCells
from paddock_tui.widgets.themes import theme_named, themes

if TYPE_CHECKING:
    from paddock_tui.desk import Desk
    from paddock_tui.screens.main import MainScreen
    from paddock_tui.screens.own_settings import OwnSettings
    from paddock_tui.screens.place import Place

SENT_WITHIN_S = 0.5
"""Seconds for which what is loaded next waits at most for the verdict to be on the terminal."""

MainParts = tuple["Desk", "Place | None", "OwnSettings | None"]
"""What the main screen is made of."""


class PaddockApp(App[int]):
    """Opens one garage on one screen."""

    TITLE = "paddock-tui"
    ENABLE_COMMAND_PALETTE = False
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("ctrl+z", "suspend_process", "to the shell", show=False),
    ]

    def __init__(
        self,
        desk: "Desk | None" = None,
        place: "Place | None" = None,
        own: "OwnSettings | None" = None,
        theme: str = "",
    ) -> None:
        # Where no colour is wanted the framework is to send none: else it sends greys for all of them.
        super().__init__(driver_class=driver_class(), ansi_color=True if os.environ.get("NO_COLOR") else None)
        self.shown = ShownCells()
        """What the terminal shows."""
        self._running_loop: asyncio.AbstractEventLoop | None = None
        self._main: MainScreen | None = None
        self._opening: OpeningScreen | None = None
        self._load: Callable[[], MainParts] | None = None
        self.on_stuck: Callable[[Callable[[], None]], None] | None = None
        """What the input thread calls where the loop hears no ctrl+c; given what restores the terminal."""
        self.animation_level = "none"
        # Each screen would mount a widget for either, which nothing here ever shows.
        self._disable_tooltips = self._disable_notifications = True
        for one in themes():
            self.register_theme(one)
        wanted, kept = os.environ.get("PADDOCK_THEME", ""), own.settings.theme if own else theme
        self.theme = f"paddock-{theme_named(wanted, kept)}"
        if desk is not None:
            self.opens_at((desk, place, own))

    def opens_with(self, opening: OpeningScreen, load: Callable[[], MainParts]) -> None:
        """Show a first page, and what `load` gives once that is on the terminal."""
        self._opening, self._load = opening, load
        opening.share(self.shown)
        opening.on_shown = self._begin_to_load

    @property
    def main(self) -> "MainScreen":
        """The main screen; there is none before everything is loaded."""
        assert self._main is not None
        return self._main

    @property
    def is_loaded(self) -> bool:
        """Whether there is the main screen."""
        return self._main is not None

    def opens_at(self, loaded: MainParts) -> None:
        """Show the main screen."""
        from paddock_tui.screens.main import MainScreen

        self._main = MainScreen(*loaded)
        self._main.share(self.shown)

    def show_judged(self, page: Page) -> None:
        """Show the first page with its verdict, asked in the thread that loads; wait until it is sent.

        Work in two threads at once would make it late. Nothing is waited for long: the app may be leaving.
        """
        assert self._opening is not None
        assert self._running_loop is not None
        sent = threading.Event()
        show = partial(self._opening.show_judged, page, LISTING, sent.set)
        with contextlib.suppress(RuntimeError):  # the loop has closed
            self._running_loop.call_soon_threadsafe(self._opening.call_later, show)
            sent.wait(SENT_WITHIN_S)

    def _begin_to_load(self) -> None:
        """Load everything in a thread of its own, so that signals and ctrl+c are heard meanwhile."""
        threading.Thread(target=self._load_aside, name="loading", daemon=True).start()

    def _load_aside(self) -> None:
        assert self._load is not None
        assert self._running_loop is not None
        try:
            then: Callable[[], object] = partial(self.call_later, self._go_on, self._load())
        except Exception as error:
            then = partial(self._handle_exception, error)
        with contextlib.suppress(RuntimeError):  # the loop has closed: the app is leaving
            self._running_loop.call_soon_threadsafe(then)

    async def _go_on(self, loaded: MainParts) -> None:
        """Show the main screen, and give it what was typed meanwhile, in order.

        This is the app's own turn: what is typed from now on waits for its end, and so comes behind.
        """
        assert self._opening is not None
        self.opens_at(loaded)
        await self.push_screen(self.main)
        self.main.set_focus(self.main.board)
        if self._opening.moved_to is not None:
            self.main.board.go(self._opening.moved_to)
        for event in self._opening.early:
            self.main.board.post_message(event)
        # What no page needed yet is there before most keys that need it.
        self.main.call_after_refresh(_load_rooms)

    def get_default_screen(self) -> Screen[Any]:
        """Return start on the one screen there is, so that no empty one is painted first."""
        return self._opening or self.main

    async def on_event(self, event: events.Event) -> None:
        """Do what a key says in this same turn, where the board has the focus and nothing waits for that.

        The stock app looks through all bindings first, of which only one with ctrl comes before the board,
        and gives it the key a turn later.
        """
        board = self._main.board if self._main is not None else None
        is_plain = isinstance(event, events.Key) and not (event.is_forwarded or event.key.startswith("ctrl+"))
        if board is None or not is_plain or self.focused is not board or board.message_queue_size:
            await super().on_event(event)
            return
        event._set_forwarded()
        await board._dispatch_message(event)

    def on_mount(self) -> None:
        """Repaint when the process comes back from being stopped."""
        self._running_loop = asyncio.get_running_loop()
        repaint_on_resume(self, self.shown)

    def refresh_css(self, animate: bool = True) -> None:
        """Style everything anew; while nothing is there yet, only take over the colours to style it with."""
        if self._running_loop is None:
            self.stylesheet.set_variables(self.get_css_variables())
        else:
            super().refresh_css(animate)

    def leave_soon(self, answered: Callable[[], None], status: int) -> None:
        """Leave from another thread. Raises RuntimeError where there is no loop to ask."""

        def leave() -> None:
            answered()
            self.exit(return_code=status)

        if self._running_loop is None:
            raise RuntimeError
        self._running_loop.call_soon_threadsafe(leave)

    def _handle_exception(self, error: Exception) -> None:
        """End in good order: keep what is being typed, write a report, and say so in one sentence.

        The stock app would print the values of all variables, a garage's content among them.
        """
        self._return_code = CRASHED
        if self._exception is None:
            self._exception = error
            self._exception_event.set()
        with contextlib.suppress(Exception):  # whatever is broken may be broken here too
            self.save_half_typed()
        self.panic(Text(sentence(report(error))))

    def save_half_typed(self) -> None:
        """Keep what is being typed; safe from any thread, and more than once."""
        if self._main is None:
            return
        from paddock_tui.screens.half_typed import half_typed
        from paddock_tui.store.half_typed import save

        half = half_typed(self._main, self._main.question_line)
        if half is not None:
            save(self._main.desk.root, half)


GARBAGE_AFTER = 100_000
"""As in a command (`paddock_tui.__main__`), but screens stand for hours, and no look may be felt."""


def run(folder: str, now: Callable[[], dt.datetime], room: str = "") -> int:
    """Open the screens on a garage, in a room where one is named.

    The garage itself shows before records and rules are loaded. Gives the exit status, 128 and the number
    where a signal ended it.
    """
    held = block()
    files = GarageFiles(Path(folder))
    settings = load_settings()[0]
    app = PaddockApp(theme=settings.theme)

    def load() -> MainParts:
        with nothing_is_garbage():
            return load_main(files, now, room, page, app.show_judged)

    leaves = "" if settings.has_keys else "q"
    page = opening_page(files, now, _lines())
    app.opens_with(OpeningScreen(page, lambda: reading_hint(files), leaves), load)

    def save() -> None:
        app.save_half_typed()
        if app.is_loaded:
            app.main.desk.wait()

    def ask(number: int) -> None:
        app.leave_soon(leaver.answered, 128 + number)

    leaver = Leaver(ask, save)
    app.on_stuck = leaver.abandon
    leaver.start(held)
    presence.enter(files.root, now())
    try:
        app.run(mouse=False)
    finally:
        presence.leave(files.root)
    save()
    if app.is_loaded:
        app.main.desk.close()
    leaver.finished()
    return app.return_code or leaver.exit_code


@contextlib.contextmanager
def nothing_is_garbage() -> Iterator[None]:
    """Look for no garbage while much is made that stays, nor later among that and what was there before.

    Each such look took some 30 ms before the verdict. From then on they come as screens need them; before,
    seldom as in a command, so that none comes before the first page.
    """
    gc.freeze()
    gc.disable()
    try:
        yield
    finally:
        gc.freeze()
        gc.set_threshold(GARBAGE_AFTER, 20, 100)
        gc.enable()


def load_main(
    files: GarageFiles, now: Callable[[], dt.datetime], room: str, first: Page, show: Callable[[Page], object]
) -> MainParts:
    """Load records, rules and rooms, and take the garage in hand.

    Where the page takes a while once its verdict is known, the `first` page is shown with that meanwhile.
    """
    from paddock_tui.desk import Desk
    from paddock_tui.pages.garage import looks_aside
    from paddock_tui.screens.judged_page import before_lists, context_of, has_many_unread, judged_page
    from paddock_tui.screens.main import MainScreen  # noqa: F401 - loaded here
    from paddock_tui.screens.own_settings import OwnSettings, settings_said
    from paddock_tui.screens.place import Place
    from paddock_tui.screens.registry import ACTIONS

    settings, wrong = load_settings(ACTIONS)
    own = OwnSettings(settings, settings_said(wrong))
    desk, place = Desk(files.root, now, files), Place(room=room) if room else None
    # What the first page with a verdict takes is read and worked out here, where keys are still heard; of
    # many seasons the page stands without it meanwhile.
    at = place or Place()
    if not has_many_unread(desk, at):
        context = context_of(desk, at, None, None)
        with_verdict = before_lists(desk, at, context, first, own.actions)
        if with_verdict is not None:
            show(with_verdict)
        # Where no run has looked through all files for problems yet, no key waits until this one has.
        if with_verdict is None or not looks_aside(desk):
            judged_page(desk, at, context, actions=own.actions)
    return desk, place, own


def _load_rooms() -> None:
    threading.Thread(target=load_declared, name="rooms", daemon=True).start()


def _lines() -> int:
    """Return how many lines the terminal has."""
    return shutil.get_terminal_size((80, 24)).lines
