"""The screen of the first page, which stands until everything is loaded."""

from collections.abc import Callable

from textual import events
from textual.app import ComposeResult

from paddock_tui.pages.rows import Page
from paddock_tui.widgets.base import QuietScreen
from paddock_tui.widgets.board import Board
from paddock_tui.widgets.typed_run import TypedRun

_LOOKS = 1000
"""Turns of the loop after which everything is loaded all the same."""

_NEW_LINE = "ctrl+j"


class OpeningScreen(QuietScreen[None]):
    """Shows one page, and keeps what is typed meanwhile, in order, for the screen that follows."""

    AUTO_FOCUS = ""  # the keys are this screen's, not the board's

    def __init__(self, page: Page, hint: str) -> None:
        """Show a page; `hint` stands in the last line."""
        super().__init__()
        self.board = Board()
        self.early: list[events.Event] = []
        self.on_shown: Callable[[], object] = lambda: None
        """Called once, when the page has been sent to the terminal."""
        self._page, self._hint = page, hint

    def compose(self) -> ComposeResult:
        """Return the board is all there is."""
        yield self.board

    def is_drawn(self) -> bool:
        """Return whether the page is laid out."""
        return bool(self.board.laid.lines)

    def on_mount(self) -> None:
        """Draw the page, and say so when it is sent."""
        self.board.show(self._page)
        self.board.say(self._hint)
        self._when_shown(_LOOKS)

    def _when_shown(self, looks: int) -> None:
        """Wait until the board has its size and its page is sent; not for ever, where it gets none."""
        if self.is_drawn() or not looks:
            self.call_after_refresh(self._shown)
        else:
            self.call_after_refresh(self._when_shown, looks - 1)

    def _shown(self) -> None:
        shown, self.on_shown = self.on_shown, lambda: None
        shown()

    def on_key(self, event: events.Key) -> None:
        """Keep a key; of an enter from before it was this program's, the terminal has made a new line."""
        enter = event.key == _NEW_LINE
        self._keep(event, events.Key("enter", "\r") if enter else events.Key(event.key, event.character))

    def on_paste(self, event: events.Paste) -> None:
        """Keep pasted text."""
        self._keep(event, events.Paste(event.text))

    def on_typed_run(self, event: TypedRun) -> None:
        """Keep what was typed in one piece."""
        self._keep(event, TypedRun(event.text))

    def _keep(self, event: events.Event, fresh: events.Event) -> None:
        """Keep one like an event, which ends here, at the time that it came."""
        event.stop()
        event.prevent_default()
        fresh.time = event.time
        self.early.append(fresh)
