"""Text being typed, with its caret, in as many cells as there are."""

from paddock_tui.pages.layout.pen import Ink, Pen
from paddock_tui.pages.layout.view import Editor
from paddock_tui.text import width


def put_editor(ink: Ink, editor: Editor, cells: int) -> None:
    """Draw what is typed around its caret; what does not fit is cut on either side, visibly."""
    pen = ink.pen
    if editor.offered:
        ink.put(pen.say(editor.text), "caret", min(cells, ink.room))
        return
    before = pen.say(editor.text[: editor.caret])
    here = pen.say(editor.text[editor.caret : editor.caret + 1]) or ("_" if editor.second else " ")
    after = pen.say(editor.text[editor.caret + 1 :])
    cells = min(cells, ink.room)
    before = _tail(before, cells - width(here) - min(width(after), 3), pen)
    ink.put(before, "edit")
    cells -= width(before)
    ink.put(here, "caret", cells)
    ink.put(after, "edit", cells - width(here))


def _tail(text: str, cells: int, pen: Pen) -> str:
    """Cut text at its beginning; what is cut is an ellipsis."""
    if width(text) <= cells:
        return text
    mark = pen.cut("....", 3)[-3:] if pen.plain else "…"
    room = cells - width(mark)
    if room < 1:
        return ""
    start = len(text)
    while start and width(text[start - 1 :]) <= room:
        start -= 1
    return mark + text[start:]
