"""What the board tells its screen."""

from dataclasses import dataclass

from textual.message import Message

from paddock_tui.pages.rows import Row


@dataclass
class Accepted(Message, namespace="board"):
    """Enter in a row's editor. The screen answers with `board.done()` or `board.refuse(why)`."""

    row: Row
    text: str


@dataclass
class Editing(Message, namespace="board"):
    """What is being typed in a row's editor has changed."""

    row: Row
    text: str


@dataclass
class Stepped(Message, namespace="board"):
    """A step by 1 or -1: of the bike's number, or of the bar's mark where `more_help` says which way."""

    row: Row
    by: int
    more_help: bool | None = None


@dataclass
class Cleared(Message, namespace="board"):
    """Backspace on a row: not known any more."""

    row: Row


@dataclass
class Toggled(Message, namespace="board"):
    """Space on a row."""

    row: Row


@dataclass
class Digit(Message, namespace="board"):
    """A digit on a row: the screen sets it at once, or opens the editor with it."""

    row: Row
    text: str


@dataclass
class Chosen(Message, namespace="board"):
    """Enter on a row that opens something, or that has no value to edit."""

    row: Row


@dataclass
class Moved(Message, namespace="board"):
    """The cursor has come to another row."""

    row: Row


@dataclass
class Typed(Message, namespace="board"):
    """The answer to the question in the last line has changed: time for a preview."""

    text: str


@dataclass
class Completed(Message, namespace="board"):
    """Tab in the answer to the question: the screen may put more of it with `board.answer(text)`."""

    text: str


@dataclass
class Recalled(Message, namespace="board"):
    """Up or down in the answer: an earlier (-1) or later (1) one is wanted."""

    by: int


@dataclass
class Answered(Message, namespace="board"):
    """Enter on the question. The screen answers with `board.done()` or `board.refuse(why)`."""

    text: str


@dataclass
class Declined(Message, namespace="board"):
    """Escape on the question."""

    text: str
