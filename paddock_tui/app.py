"""The app: theme, the one screen, and leaving in good order whatever the link does."""

import contextlib
import datetime as dt
import os
from collections.abc import Callable
from pathlib import Path
from typing import Any, ClassVar

from rich.text import Text
from textual.app import App
from textual.binding import Binding, BindingType
from textual.screen import Screen

from paddock_tui.desk import Desk
from paddock_tui.screens.half_typed import half_typed
from paddock_tui.screens.main import MainScreen
from paddock_tui.screens.own_settings import OwnSettings, settings_said
from paddock_tui.screens.place import Place
from paddock_tui.screens.registry import ACTIONS
from paddock_tui.store import presence
from paddock_tui.store.crash import CRASHED, report, sentence
from paddock_tui.store.half_typed import save as keep_half_typed
from paddock_tui.store.settings import load_settings
from paddock_tui.widgets.base import repaint_on_resume
from paddock_tui.widgets.driver import driver_class
from paddock_tui.widgets.signals import Leaver, block
from paddock_tui.widgets.themes import theme_named, themes


class PaddockApp(App[int]):
    """Opens one garage on one screen."""

    TITLE = "paddock-tui"
    ENABLE_COMMAND_PALETTE = False
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("ctrl+z", "suspend_process", "to the shell", show=False),
    ]

    def __init__(self, desk: Desk, place: Place | None = None, own: OwnSettings | None = None) -> None:
        super().__init__(driver_class=driver_class())
        self.desk = desk
        self.main = MainScreen(desk, place, own)
        self.on_stuck: Callable[[Callable[[], None]], None] | None = None
        """What the input thread calls where the loop hears no ctrl+c; given what restores the terminal."""
        self.animation_level = "none"
        for theme in themes():
            self.register_theme(theme)
        wanted, kept = os.environ.get("PADDOCK_THEME", ""), own.settings.theme if own else ""
        no_color = bool(os.environ.get("NO_COLOR"))
        self.theme = f"paddock-{theme_named(wanted, kept, no_color=no_color)}"

    def get_default_screen(self) -> Screen[Any]:
        """Return start on the one screen there is, so that no empty one is painted first."""
        return self.main

    def on_mount(self) -> None:
        """Repaint when the process comes back from being stopped."""
        repaint_on_resume(self)

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
        half = half_typed(self.main, self.main.question_line)
        if half is not None:
            keep_half_typed(self.desk.root, half)


def run(folder: str, now: Callable[[], dt.datetime], room: str = "") -> int:
    """Open the screens on a garage, in a room where one is named.

    Gives the exit status, 128 and the number where a signal ended it.
    """
    held = block()
    desk = Desk(Path(folder), now)
    settings, wrong = load_settings(ACTIONS)
    own = OwnSettings(settings, settings_said(wrong))
    app = PaddockApp(desk, Place(room=room) if room else None, own)

    def save() -> None:
        app.save_half_typed()
        desk.wait()

    def ask(number: int) -> None:
        app.main.leave_soon(leaver.answered, 128 + number)

    leaver = Leaver(ask, save)
    app.on_stuck = leaver.abandon
    leaver.start(held)
    presence.enter(desk.root, now())
    try:
        app.run(mouse=False)
    finally:
        presence.leave(desk.root)
    save()
    desk.close()
    leaver.finished()
    return app.return_code or leaver.exit_code
