"""A row with a picture as lines: the picture, the cursor's mark on its first line."""

from functools import lru_cache

import attrs

from paddock_tui.pages.layout.chart import chart_lines
from paddock_tui.pages.layout.columns import MARK, Columns
from paddock_tui.pages.layout.fields import folded, mark
from paddock_tui.pages.layout.lanes import lanes_lines, pairs_lines
from paddock_tui.pages.layout.pen import Ink, Line, Pen, text_of
from paddock_tui.pages.layout.texts import text_lines
from paddock_tui.pages.pictures import Chart, Lanes, Picture
from paddock_tui.pages.rows import Row
from paddock_tui.text import width

NARROW = 60
"""From this width on a picture that may stand apart stands on its page."""

_LEAST = 30
"""The narrowest screen with pictures: below it their sentence is said."""


def drawn(picture: Picture, pen: Pen) -> list[Line]:
    """Draw a picture of any kind."""
    if isinstance(picture, Lanes):
        return lanes_lines(picture, pen)
    return chart_lines(picture, pen) if isinstance(picture, Chart) else pairs_lines(picture, pen)


@lru_cache(maxsize=256)
def picture_lines(row: Row, columns: Columns, on: bool) -> tuple[Line, ...]:
    """Draw the picture of a row; where the screen is too narrow for one, its sentence."""
    pen = columns.pen
    if row.picture is None:
        return ()
    if row.apart and pen.width < NARROW:
        return text_lines(attrs.evolve(row, kind="link", value="a page of its own: w"), columns, on)
    if pen.width < _LEAST:
        return tuple(folded(pen.say(row.picture.sentence), "aside", columns, 2))
    lines = drawn(row.picture, pen)
    if on and lines:
        lines = [_marked(lines[0], pen), *lines[1:]]
    return tuple(lines)


def _marked(line: Line, pen: Pen) -> Line:
    """Put the cursor's mark into the two blank cells that every picture begins with."""
    ink = Ink(pen)
    mark(ink, True)
    first, *rest = line or (("  ", ""),)
    # A line ends with no gap, but here the picture goes on behind it: it would move by a cell.
    gap = " " * (MARK - width(text_of(ink.line())))
    return (*ink.line(), (gap + first[0][MARK:], first[1]), *rest)
