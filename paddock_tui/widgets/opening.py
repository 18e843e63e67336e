"""The screen of the first page, which stands until everything is loaded.

Moves over its rows, and leaving, wait for nothing; all else is kept in order for the screen that follows.
"""

from collections.abc import Callable

from textual import events
from textual.app import ComposeResult

from paddock_tui.pages.rows import Page
from paddock_tui.widgets.base import QuietScreen
from paddock_tui.widgets.board import Board
from paddock_tui.widgets.cursor import Identity, moved, stops
from paddock_tui.widgets.typed_run import TypedRun

_LOOKS = 1000
"""Turns of the loop after which everything is loaded all the same."""

_NEW_LINE = "ctrl+j"

_MOVES = ("up", "down", "pageup", "pagedown", "home")
_FORWARD = ("down", "pagedown")


class OpeningScreen(QuietScreen[None]):
    """Shows one page, and keeps what is typed meanwhile, in order, for the screen that follows."""

    EVERY_S = 1.0
    """Seconds after which it is said again how far the reading is."""

    AUTO_FOCUS = ""  # the keys are this screen's, not the board's

    def __init__(self, page: Page, hint: Callable[[], str], leaves: str = "") -> None:
        """Show a page; `hint` stands in the last line, `leaves` is the key that leaves, empty: none."""
        super().__init__()
        self.board = Board()
        self.early: list[events.Event] = []
        self.on_shown: Callable[[], object] = lambda: None
        """Called once, when the page has been sent to the terminal."""
        self._page, self._hint, self._leaves = page, hint, leaves
        self._moved = False

    def compose(self) -> ComposeResult:
        """Return the board is all there is."""
        yield self.board

    def is_drawn(self) -> bool:
        """Return whether the page is laid out."""
        return bool(self.board.laid.lines)

    def on_mount(self) -> None:
        """Draw the page, and say so when it is sent."""
        self.board.show(self._page)
        self._say()
        self._when_shown(_LOOKS)
        self.set_interval(self.EVERY_S, self._say)

    @property
    def moved_to(self) -> Identity | None:
        """The row that the cursor was moved to; None where it was not moved."""
        row = self.board.cursor_row
        return row.identity if self._moved and row is not None else None

    def show_judged(self, page: Page, hint: str, then: Callable[[], object]) -> None:
        """Show the page with its verdict, saying what is waited for still; `then`, once that is sent."""
        self._hint = lambda: hint
        self.board.show(page)
        self._say()
        self.call_after_refresh(then)

    def _say(self) -> None:
        self.board.say(self._hint())

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
        """Move, leave, or keep a key; nothing overtakes what is kept.

        Of an enter from before it was this program's, the terminal has made a new line.
        """
        if not self.early and self._answers(event):
            event.stop()
            event.prevent_default()
            return
        enter = event.key == _NEW_LINE
        self._keep(event, events.Key("enter", "\r") if enter else events.Key(event.key, event.character))

    def _answers(self, event: events.Key) -> bool:
        """Do what needs nothing but this page; whether it was that."""
        if event.key == self._leaves:
            self.app.exit(return_code=0)
            return True
        able, at = stops(self.board.drawn), self.board.cursor_at
        if event.key not in _MOVES or at is None:
            return False
        to = moved(self.board.drawn, at, event.key, self.board.laid.body)
        if to is None or (event.key in _FORWARD and to == able[-1] and (to == at or event.key != "down")):
            return False  # further rows are on the page that follows
        self.board.on_key(event)
        self._moved = True
        self._say()
        return True

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
