"""The garage followed: what becomes of own steps is said and marked, and what others change is shown."""

import asyncio
import contextlib
import threading
import time
from collections.abc import Callable, Sequence

from paddock_tui.desk import DeskChange
from paddock_tui.pages.rows import Page
from paddock_tui.pages.unsaved import marked
from paddock_tui.records.paths import Ref
from paddock_tui.screens.host import Host
from paddock_tui.screens.outcomes import said_of
from paddock_tui.store.git_movement import GitMovement
from paddock_tui.store.saving import Saved
from paddock_tui.text import printable

Timing = Callable[[float, Callable[[], None]], object]
"""What has something done every so many seconds."""


class DeskFollower:
    """Follows the garage: what becomes of own steps, and what others change."""

    def __init__(self, host: Host, every: Timing, later: Callable[[Callable[[], object]], object]) -> None:
        """Follow for a screen: its timers act `every` so many seconds, its loop does something `later`."""
        self._host, self._every, self._later = host, every, later
        self._loop: asyncio.AbstractEventLoop | None = None
        self._marking = False
        self._git: GitMovement | None = None

    def start(self) -> None:
        """Listen to the desk, and look at the files from time to time; called in the loop."""
        self._loop = asyncio.get_running_loop()
        self._host.desk.on_change.append(self._told)
        self._git = GitMovement(self._host.desk.root, time.monotonic)
        self._host.desk.answers.listener = self._answered
        self._every(1.0, self.poll)

    def stop(self) -> None:
        """Stop listening."""
        self._host.desk.answers.listener = None
        if self._told in self._host.desk.on_change:
            self._host.desk.on_change.remove(self._told)

    def soon(self, call: Callable[[], object]) -> None:
        """Have the screen do something, from another thread; what fails there fails as for a key.

        Raises RuntimeError where there is no loop.
        """
        if self._loop is None:
            raise RuntimeError
        self._loop.call_soon_threadsafe(self._later, call)

    def aside(self, work: Callable[[], object], then: Callable[[], None]) -> None:
        """Do what takes a while in a thread of its own, and then something in the one that draws."""

        def run() -> None:
            work()
            with contextlib.suppress(RuntimeError):
                self.soon(then)

        threading.Thread(target=run, name="aside", daemon=True).start()

    def with_marks(self, page: Page) -> Page:
        """Mark what shows and is not on disk."""
        marks = self._host.desk.marks()
        self._marking = bool(marks)
        return marked(page, marks, len(self._host.desk.unkept()))

    def _told(self, told: DeskChange) -> None:
        """Hear from the desk, in whichever thread: an edit of our own, one that failed, or one of others."""
        if told.outcome is None and told.step is None:
            return
        # Never waits: the writer must not hang on a loop that is waiting for the writer.
        with contextlib.suppress(RuntimeError):
            self.soon(lambda: self._landed(told))

    def _answered(self) -> None:
        """Hear that an answer was found, in the thread that found it."""
        with contextlib.suppress(RuntimeError):
            self.soon(self._found)

    def _found(self) -> None:
        """Take over what was found, whichever page shows by now: nothing is awaited for it any more."""
        self._host.desk.answers.take_over()
        self._host.draw()

    def _landed(self, told: DeskChange) -> None:
        self._host.desk.take_over()
        said = said_of(told.outcome)
        if said or self._marking:
            self._host.draw()
        if said and isinstance(told.outcome, Saved):
            self._host.board.note(said)
        elif said:
            # What was said to be done or undone was not.
            self._host.board.say(said)

    def poll(self) -> None:
        """Look whether others changed files, or the clock jumped, and say so; say how far reading is."""
        from_git = self._git is not None and self._git.lately()
        changed = self._host.desk.poll()
        if changed or self._host.desk.answers.are_awaited:
            self._host.draw()
        if changed:
            came_in = _came_in(changed, self._host.desk.came_in, from_git=from_git)
            self._host.board.note(printable(came_in))
        doubt = self._host.desk.clock_doubt()
        if doubt:
            self._host.board.note(doubt)


def _came_in(changed: Sequence[Ref], count: int, *, from_git: bool) -> str:
    """Say in one line what others changed: how many values, or records, and where from."""
    facts = f"{count} fact{'s' if count > 1 else ''}" if count else ""
    if from_git:
        records = f"{len(changed)} record{'s' if len(changed) > 1 else ''}"
        return f"{facts or records} from another laptop: r"
    names = ", ".join(str(ref) for ref in changed[:2])
    more = f" and {len(changed) - 2} more" if len(changed) > 2 else ""
    return f"changed by another program: {facts}{' in ' if facts else ''}{names}{more}; r reviews"
