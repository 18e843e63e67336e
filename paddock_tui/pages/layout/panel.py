"""A panel at the right of a wide screen: what is said of the row under the cursor, beside the rows."""

from collections.abc import Sequence

from paddock_tui.pages.layout.body import body
from paddock_tui.pages.layout.columns import columns
from paddock_tui.pages.layout.pen import Ink, Line, Pen, text_of
from paddock_tui.pages.rows import Page, Section
from paddock_tui.text import width

WIDE = 110
"""The narrowest screen with a panel: what stands at 80 columns keeps its place there."""

_LEFT = 78
_GAP = 2
_MOST = 48


def panel_width(cells: int) -> int:
    """Return the cells of the panel: what 78 columns of rows leave, at most 48; none on a narrower screen."""
    return min(cells - _LEFT - _GAP, _MOST) if cells >= WIDE else 0


def rows_width(cells: int) -> int:
    """Return the cells left for the rows of a page with a panel."""
    taken = panel_width(cells)
    return cells - taken - _GAP if taken else cells


def panel_lines(sections: Sequence[Section], cells: int, height: int, plain: bool) -> list[Line]:
    """Draw the sections in exactly `height` lines; where more was to be said, the last line says so."""
    page = Page("", tuple(sections))
    pen = Pen(cells, plain)
    lines = [owned.line for owned in body(page, columns(page, pen)).lines]
    if len(lines) > height > 0:
        ink = Ink(pen)
        ink.put("w: all of it", "hint")
        lines = [*lines[: height - 1], ink.line()]
    return [*lines[:height], *[()] * (height - len(lines))]


def beside(lines: Sequence[Line], panel: Sequence[Line], cells: int) -> list[Line]:
    """Put the panel's lines right of the rows', whose lines are `cells` wide at most."""
    joined: list[Line] = []
    for left, right in zip(lines, panel, strict=True):
        gap = " " * (cells + _GAP - width(text_of(left)))
        joined.append((*left, (gap, ""), *right) if right else left)
    return joined
