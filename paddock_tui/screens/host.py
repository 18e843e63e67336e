"""What a room or an action may ask of the screen: each is written against this, and none knows the screen."""

from collections.abc import Callable
from contextlib import AbstractContextManager
from typing import Protocol

from paddock_tui.desk import Desk
from paddock_tui.pages.actions import ActionContext
from paddock_tui.pages.rows import Page, Row
from paddock_tui.records.common import Units
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Path, Ref
from paddock_tui.screens.place import Place
from paddock_tui.screens.question import Question
from paddock_tui.screens.run_state import RunState
from paddock_tui.widgets.cursor import Identity


class HostBoard(Protocol):
    """The board: its cursor, its editor and the last line."""

    pressed_at: float

    @property
    def page(self) -> Page:
        """The page shown, without the rows that the filter hides."""

    @property
    def cursor_row(self) -> Row | None:
        """The row under the cursor; None on a page without one."""

    @property
    def is_typing(self) -> bool:
        """Whether an editor or a question is open."""

    @property
    def has_second(self) -> bool:
        """Whether a digit is being typed that a second one may follow, or has followed."""

    @property
    def half_typed(self) -> tuple[Row | None, str] | None:
        """What is being typed and not yet kept: the row (None: the question) and the text."""

    def go(self, identity: Identity) -> bool:
        """Put the cursor on a row; False where the page has none of this identity."""

    def say(self, text: str, *, stays: bool = False) -> None:
        """Say something in the last line until the next key; what `stays` no note replaces until then."""

    def note(self, text: str) -> None:
        """Say what no key asked for; behind something that stays it waits for the next key."""

    def edit(self, text: str = "", *, second: bool = False) -> None:
        """Open the editor of the cursor's row; `second`: the text is a digit that a second may follow."""

    def done(self) -> None:
        """Close the editor or the question: its text was taken."""

    def offer(self, row: Row, text: str) -> None:
        """Keep text for the next time that a row's editor opens."""

    def refuse(self, why: str) -> None:
        """Keep open what is being typed and say what is wrong with it."""

    def preview(self, *lines: str) -> None:
        """Say above the question what its answer would do."""

    def filter(self, words: str) -> None:
        """Show only the rows that hold every one of these words; all without."""


class Host(Protocol):
    """The screen, as far as rooms and actions need it."""

    place: Place

    @property
    def desk(self) -> Desk:
        """The garage in hand."""

    @property
    def board(self) -> HostBoard:
        """The board."""

    @property
    def state(self) -> RunState:
        """What this run remembers."""

    def context(self) -> ActionContext:
        """Return what tells whether an action can act just now."""

    def go(self, place: Place, row: Identity | None = None) -> None:
        """Go to another place, on a row of it."""

    def open(self, ref: Ref) -> None:
        """Go to the room of a record."""

    def jump(self, ref: Ref, path: Path) -> None:
        """Go to the row of a value, in the room that shows it."""

    def back(self) -> None:
        """Go back from a room that is left so; nothing elsewhere."""

    def act(self, name: str) -> None:
        """Do an action by its id, or say why it cannot act."""

    def draw(self) -> None:
        """Make the page anew and show it."""

    def ask(self, question: Question) -> None:
        """Ask for an answer in the last line."""

    def do(self, step: Step) -> None:
        """Do a step and say so."""

    def say_done(self) -> None:
        """Say again what was done last: the cursor has gone on since."""

    def attempt(self, step: Step | str, left: Callable[[], None] | None = None) -> None:
        """Do a step, asking first where that changes what is known of a ridden session; say a refusal."""

    def set_text(self, ref: Ref, path: Path, text: str) -> str:
        """Set a value from text; gives what is wrong with it, or nothing."""

    def aside(self, work: Callable[[], object], then: Callable[[], None]) -> None:
        """Do what takes a while in a thread of its own, and then something in the one that draws."""

    def units(self, ref: Ref | None) -> Units:
        """Return the units of bare numbers on a record: its rider's, else the garage's."""

    def suspended(self) -> AbstractContextManager[None]:
        """Give the terminal to another program for a while."""

    def copy(self, whole: bool) -> None:
        """Give the terminal the row or the whole page that is shown, where the settings allow it."""

    def wear(self, theme: str) -> None:
        """Show everything in the colours of a theme."""

    def leave(self, status: int) -> None:
        """End the program."""


def refuse(host: Host, why: str) -> None:
    """Say why something is not taken, in the editor where one is open."""
    if host.board.is_typing:
        host.board.refuse(why)
    else:
        host.board.say(why)
