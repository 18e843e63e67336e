"""The garage followed: what becomes of own steps is said and marked, and what others change is shown."""

import asyncio
import contextlib
from collections.abc import Callable

from paddock_tui.desk import DeskChange
from paddock_tui.desk.unsaved import NOT_YET
from paddock_tui.pages.rows import Page
from paddock_tui.pages.unsaved import marked
from paddock_tui.screens.host import Host
from paddock_tui.screens.outcomes import said_of
from paddock_tui.text import printable

SOON = 0.1
"""Seconds in which a step is kept without a word; later its rows are marked until it is."""

Timing = Callable[[float, Callable[[], None]], object]
"""What has something done after, or every, so many seconds."""


class DeskFollower:
    """Follows the garage: what becomes of own steps, and what others change."""

    def __init__(self, host: Host, every: Timing, after: Timing) -> None:
        """Follow for a screen, whose timers are `every` so many seconds and once `after` so many."""
        self._host, self._every, self._after = host, every, after
        self._loop: asyncio.AbstractEventLoop | None = None
        self._marking = False
        self._late = False

    def start(self) -> None:
        """Listen to the desk, and look at the files from time to time; called in the loop."""
        self._loop = asyncio.get_running_loop()
        self._host.desk.on_change.append(self._told)
        self._every(1.0, self.poll)

    def stop(self) -> None:
        """Stop listening."""
        if self._told in self._host.desk.on_change:
            self._host.desk.on_change.remove(self._told)

    def soon(self, call: Callable[[], object]) -> None:
        """Have the loop do something, from another thread. Raises RuntimeError where there is no loop."""
        if self._loop is None:
            raise RuntimeError
        self._loop.call_soon_threadsafe(call)

    def with_marks(self, page: Page) -> Page:
        """Mark what shows and is not on disk."""
        marks = self._host.desk.marks()
        if not self._late:
            marks = {at: words for at, words in marks.items() if words != NOT_YET}
        self._marking = bool(marks)
        return marked(page, marks, len(self._host.desk.unkept()))

    def watch(self) -> None:
        """Mark what was just done if it is not kept soon."""
        self._late = False
        self._after(SOON, self._mark)

    def _mark(self) -> None:
        self._late = True
        self._host.desk.take_over()
        if self._host.desk.marks():
            self._host.draw()

    def _told(self, told: DeskChange) -> None:
        """Hear from the desk, in whichever thread: an edit of our own, one that failed, or one of others."""
        if told.outcome is None and told.step is None:
            return
        # Never waits: the writer must not hang on a loop that is waiting for the writer.
        with contextlib.suppress(RuntimeError):
            self.soon(lambda: self._landed(told))

    def _landed(self, told: DeskChange) -> None:
        self._host.desk.take_over()
        said = said_of(told.outcome)
        if said or self._marking:
            self._host.draw()
        if said:
            self._host.board.say(said)

    def poll(self) -> None:
        """Look whether others changed files, and say so."""
        changed = self._host.desk.poll()
        if changed:
            self._host.draw()
            names = ", ".join(str(ref) for ref in changed[:2])
            self._host.board.say(printable(f"changed by another program: {names}"))
