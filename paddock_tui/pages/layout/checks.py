"""One item of a checklist as lines: how it stands, its text wrapped beside it, who said so at the right."""

from functools import lru_cache

from paddock_tui.pages.layout.columns import MARK, Columns
from paddock_tui.pages.layout.fields import mark
from paddock_tui.pages.layout.pen import Ink, Line
from paddock_tui.pages.layout.texts import severity_style
from paddock_tui.pages.rows import Row
from paddock_tui.text import fold, width

_WIDE = 60
"""From this width on the longest answer, and a time with initials, stand in columns of their own."""

_GAP = 2
_STAMP = 10
"""Cells that a time with initials keeps beside the text; what is longer stands below."""


@lru_cache(maxsize=4096)
def check_lines(row: Row, columns: Columns, on: bool) -> tuple[Line, ...]:
    """Draw an item; what is open stands out, what is answered is quiet."""
    pen = columns.pen
    wide = pen.width >= _WIDE
    column = min(MARK + (15 if wide else 9), max(pen.width - 2, 0))
    ink = Ink(pen)
    mark(ink, on, row.severity)
    ink.put(pen.say(row.label), _lead(row, on))
    lines: list[Line] = []
    if ink.at >= column:
        lines.append(ink.line())
        ink = Ink(pen)
    quiet = row.known and not row.severity
    said = pen.say(row.aside)
    room = pen.width - column - (min(width(said) + _GAP, _STAMP) if wide and said else 0)
    pieces = fold(pen.say(row.value), max(room, 2)) or [""]
    for place, piece in enumerate(pieces):
        ink.to(column)
        ink.put(piece, "aside" if quiet else "value")
        if place == len(pieces) - 1 and said and ink.room >= width(said) + _GAP:
            ink.to(pen.width - width(said))
            ink.put(said, "aside")
            said = ""
        lines.append(ink.line())
        ink = Ink(pen)
    for words, style in ((said, "aside"), (row.trouble, "trouble"), (row.shut if on else "", "shut")):
        lines += _below(pen.say(words), style, columns, column)
    return tuple(lines)


def _below(words: str, style: str, columns: Columns, column: int) -> list[Line]:
    lines = []
    for piece in fold(words, max(columns.pen.width - column, 2)):
        ink = Ink(columns.pen)
        ink.to(column)
        ink.put(piece, style)
        lines.append(ink.line())
    return lines


def _lead(row: Row, on: bool) -> str:
    if row.severity:
        return severity_style(row.severity)
    if on:
        return "focus"
    return "aside" if row.known else "label"
