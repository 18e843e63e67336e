"""What is not kept: marked, tried again, written elsewhere, asked about before leaving; undo and redo."""

import asyncio
import contextlib
from collections.abc import Callable
from pathlib import Path as FilePath
from typing import TYPE_CHECKING

import attrs

from paddock_tui.desk import DeskChange
from paddock_tui.desk.undo import Done
from paddock_tui.desk.unsaved import NOT_YET
from paddock_tui.pages.actions import NOT_KEPT
from paddock_tui.pages.rows import Page
from paddock_tui.pages.unsaved import marked
from paddock_tui.records.paths import Ref
from paddock_tui.screens.outcomes import said_of
from paddock_tui.screens.question import Question
from paddock_tui.store.errors import NotWritten
from paddock_tui.store.files import replace_durably
from paddock_tui.store.saving import NotSaved
from paddock_tui.text import printable

if TYPE_CHECKING:
    from paddock_tui.screens.main import MainScreen

SOON = 0.1
"""Seconds in which a step is kept without a word; later its rows are marked until it is."""

LEFT_UNKEPT = 3
"""The exit status where changes were left that are not in the garage."""


class Following:
    """Follows the garage: what becomes of own steps, and what others change."""

    def __init__(self, screen: "MainScreen") -> None:
        self._screen = screen
        self._loop: asyncio.AbstractEventLoop | None = None
        self._marking = False
        self._late = False

    def start(self) -> None:
        """Listen to the desk, and look at the files from time to time; called in the loop."""
        self._loop = asyncio.get_running_loop()
        self._screen.desk.on_change.append(self._told)
        self._screen.set_interval(1.0, self._poll)

    def stop(self) -> None:
        """Stop listening."""
        if self._told in self._screen.desk.on_change:
            self._screen.desk.on_change.remove(self._told)

    def soon(self, call: Callable[[], object]) -> None:
        """Have the loop do something, from another thread. Raises RuntimeError where there is no loop."""
        if self._loop is None:
            raise RuntimeError
        self._loop.call_soon_threadsafe(call)

    def with_marks(self, page: Page) -> Page:
        """Mark what shows and is not on disk."""
        marks = self._screen.desk.marks()
        if not self._late:
            marks = {at: words for at, words in marks.items() if words != NOT_YET}
        self._marking = bool(marks)
        return marked(page, marks, len(self._screen.desk.unkept()))

    def watch(self) -> None:
        """Mark what was just done if it is not kept soon."""
        self._late = False
        self._screen.set_timer(SOON, self._mark)

    def _mark(self) -> None:
        self._late = True
        if self._screen.desk.marks():
            self._screen.draw()

    def _told(self, told: DeskChange) -> None:
        """Hear from the desk, in whichever thread: an edit of our own, one that failed, or one of others."""
        if told.outcome is None and told.step is None:
            return
        # Never waits: the writer must not hang on a loop that is waiting for the writer.
        with contextlib.suppress(RuntimeError):
            self.soon(lambda: self._landed(told))

    def _landed(self, told: DeskChange) -> None:
        said = said_of(told.outcome)
        if said or self._marking:
            self._screen.draw()
        if said:
            self._screen.board.say(said)

    def _poll(self) -> None:
        changed = self._screen.desk.poll()
        if changed:
            self._screen.draw()
            names = ", ".join(str(ref) for ref in changed[:2])
            self._screen.board.say(printable(f"changed by another program: {names}"))


def try_again(screen: "MainScreen") -> None:
    """Have what could not be kept tried again."""
    screen.desk.try_again()
    screen.following.watch()
    screen.draw()
    screen.board.say("trying again")


def write_elsewhere(screen: "MainScreen") -> None:
    """Ask for a file, and write the whole text of a record that could not be kept to it."""
    ref = _about(screen)
    if ref is None:
        screen.board.say(NOT_KEPT)
        return

    def answered(text: str) -> str:
        if not text.strip():
            return "name a file that is not there yet, such as /tmp/session.toml"
        path = FilePath(text.strip()).expanduser()
        try:
            replace_durably(path, screen.desk.text_with(ref), create=True)
        except NotWritten as error:
            return printable(f"{path}: {error.reason}")
        for done in screen.desk.unkept():
            if ref in done.refs:
                done.elsewhere = str(path)
        screen.draw()
        screen.board.say(printable(f"{ref} with what is not kept: written to {path}"))
        return ""

    screen.ask(Question(f"file to write {ref} to", answered, declined="not written"))


def leave(screen: "MainScreen") -> None:
    """Leave; asks first where something is neither kept nor written elsewhere."""
    screen.desk.settled()
    lost = [done for done in screen.desk.unkept() if not done.elsewhere]
    if not lost:
        screen.app.exit(0)
        return

    def answered(_: str) -> str:
        screen.app.exit(return_code=LEFT_UNKEPT)
        return ""

    screen.draw()
    words = f"{len(lost)} not kept: enter leaves all the same, escape stays"
    said = tuple(_said(done) for done in lost[-3:])
    screen.ask(Question(words, answered, declined="stayed", said=said, confirms=True))


def undo(screen: "MainScreen") -> None:
    """Take the last step back, of earlier runs too."""
    _moved(screen, "undone", screen.desk.undo())


def redo(screen: "MainScreen") -> None:
    """Do again what was last taken back."""
    _moved(screen, "done again", screen.desk.redo())


def _moved(screen: "MainScreen", word: str, label: str | None) -> None:
    subject, record = screen.place.subject, screen.place.record
    if subject is not None and screen.desk.files.path_of(subject) is None:
        screen.place = attrs.evolve(screen.place, room="garage", subject=None)
    if record is not None and screen.desk.files.path_of(record) is None:
        screen.place = attrs.evolve(screen.place, room="garage", record=None)
    screen.following.watch()
    screen.draw()
    screen.board.say(printable(f"{word}: {label}") if label is not None else "nothing left")


def _about(screen: "MainScreen") -> Ref | None:
    """Return the record to write: the one under the cursor where it has something unkept, else the last
    one.
    """
    unkept = [ref for done in screen.desk.unkept() for ref in done.refs]
    row = screen.board.cursor_row
    if row is not None and row.ref in unkept:
        return row.ref
    return unkept[-1] if unkept else None


def _said(done: Done) -> str:
    reason = done.outcome.reason if isinstance(done.outcome, NotSaved) else ""
    return printable(f"{done.step.label}: {reason}")
