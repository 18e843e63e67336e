"""The text that ends a line of typed words: all that is left of it, or what stands in quotes."""

from typing import NamedTuple

from paddock_tui.entry.line_state import State
from paddock_tui.entry.scanner import unquoted
from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes import Text

_TEXT = Text()


class FreeText(NamedTuple):
    """What was read, why it cannot be (None: an escape in the quotes cannot be read), and where it ends."""

    found: str | InputError | None
    stop: int


def free_text(state: State) -> FreeText | None:
    """Take a text from the line; None where nothing is left of it."""
    token = state.at()
    if token is None:
        return None
    if token.kind == "quoted":
        text, stop, until = unquoted(token.text), token.end, state.place + 1
    else:
        text, until = state.text[token.start :].rstrip(), len(state.tokens)
        stop = token.start + len(text)
    state.place = until
    return FreeText(_TEXT.read(text) if text is not None else None, stop)
