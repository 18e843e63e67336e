"""What stands on the screen as text, for the terminal's clipboard: never more than is shown."""

from typing import Any

from textual.app import App

from paddock_tui.pages.layout import text_of
from paddock_tui.widgets.board import Board

COPYING_IS_OFF = "copying is off: paddock-tui settings --edit, then copy = true"


def copied(app: App[Any], board: Board, whole: bool, allowed: bool) -> str:
    """Give the terminal what is shown, where that is allowed; gives what the last line says of it."""
    if not allowed:
        return COPYING_IS_OFF
    text = shown_text(board, whole)
    app.copy_to_clipboard(text)
    lines = len(text.splitlines())
    return f"copied {lines} {'line' if lines == 1 else 'lines'}, where your terminal allows it"


def shown_text(board: Board, whole: bool) -> str:
    """Return the lines that are drawn: of the row under the cursor, or all of them."""
    row = board.cursor_row
    at = next((place for place, one in enumerate(board.drawn.rows()) if one is row), None)
    lines = [
        text_of(line).rstrip()
        for line, owner in zip(board.laid.lines, board.laid.owners, strict=True)
        if whole or (owner is not None and owner == at)
    ]
    return "\n".join(lines).strip("\n")
