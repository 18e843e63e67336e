"""What the board tells its screen: plain values, so that a room hears them without loading the framework."""

import attrs

from paddock_tui.pages.rows import Row


class BoardMessage:
    """What was asked of the board."""


@attrs.define
class RowMessage(BoardMessage):
    """What was asked of a row."""

    row: Row


@attrs.define
class Accepted(RowMessage):
    """Enter in a row's editor. The screen answers with `board.done()` or `board.refuse(why)`."""

    text: str


@attrs.define
class Editing(RowMessage):
    """What is being typed in a row's editor has changed."""

    text: str


@attrs.define
class Stepped(RowMessage):
    """A step by 1 or -1: of the bike's number, or of the bar's mark where `more_help` says which way."""

    by: int
    more_help: bool | None = None


@attrs.define
class Cleared(RowMessage):
    """Backspace on a row: not known any more."""


@attrs.define
class Toggled(RowMessage):
    """Space on a row."""


@attrs.define
class Digit(RowMessage):
    """A digit on a row: the screen sets it at once, or opens the editor with it."""

    text: str


@attrs.define
class Chosen(RowMessage):
    """Enter on a row that opens something, or that has no value to edit."""


@attrs.define
class Moved(RowMessage):
    """The cursor has come to another row."""


@attrs.define
class Typed(BoardMessage):
    """The answer to the question in the last line has changed: time for a preview."""

    text: str


@attrs.define
class Completed(BoardMessage):
    """Tab in the answer to the question: the screen may put more of it with `board.answer(text)`."""

    text: str


@attrs.define
class Recalled(BoardMessage):
    """Up or down in the answer: an earlier (-1) or later (1) one is wanted."""

    by: int


@attrs.define
class Answered(BoardMessage):
    """Enter on the question. The screen answers with `board.done()` or `board.refuse(why)`."""

    text: str


@attrs.define
class Declined(BoardMessage):
    """Escape on the question."""

    text: str
