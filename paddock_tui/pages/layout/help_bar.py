"""Scales with their marks, and the words at their ends."""

from paddock_tui.pages.layout.cells import Cells
from paddock_tui.pages.layout.columns import SHORT_VALUE, Columns
from paddock_tui.pages.layout.lanes import marked, place_of
from paddock_tui.pages.layout.pen import Ink, Line, Pen
from paddock_tui.pages.pictures import Mark
from paddock_tui.pages.pictures.data import NOW
from paddock_tui.pages.rows import Bar, Section
from paddock_tui.text import width

FIXED = "="
"""The mark of a level that the riding mode fixes: no other one can be had."""


def put_scale(ink: Ink, bar: Bar, cells: int) -> None:
    """Draw a scale of `cells` cells: what is open as dots, the letters to compare with, the block of now."""
    if cells < 1:
        return
    drawn = Cells(ink.pen, cells)
    if not bar.fixed:
        low, high = bar.allowed or (0.0, 1.0)
        first, last = place_of(low, 0.0, 1.0, cells), place_of(high, 0.0, 1.0, cells)
        drawn.fill(first, last, "·", "bar")
        if bar.allowed is not None:
            drawn.put(first - 1, "[", "bar")
            drawn.put(last + 1, "]", "bar")
    marks = [] if bar.fixed else list(bar.marks)
    if bar.at is not None:
        marks.append(Mark(FIXED if bar.fixed else NOW, bar.at))
    for place, one in marked(marks, 0.0, 1.0, cells):
        drawn.put(place, one, "mark" if one in (NOW, FIXED) else "aside")
    drawn.onto(ink)


def common_ends(section: Section) -> tuple[str, str] | None:
    """Return the words drawn once above the first help bar of a section; None without one."""
    return next((row.bar.ends for row in section.rows if row.bar and not row.bar.two_ended), None)


def ends_line(ends: tuple[str, str], columns: Columns) -> Line:
    """Draw the words above the bars: flush with both ends, or before them where bars are narrow."""
    start, cells = columns.value if columns.below else columns.right, columns.bar
    if columns.beside:
        start, cells = columns.value + SHORT_VALUE + 1, columns.beside
    pen = columns.pen
    left, right = _fitting(ends, cells, pen)
    ink = Ink(pen)
    ink.to(start)
    ink.put(left, "aside")
    ink.to(start + cells - width(right))
    ink.put(right, "aside")
    return ink.line()


def put_bar(ink: Ink, bar: Bar, cells: int, common: tuple[str, str] | None) -> None:
    """Draw a bar in `cells` cells; words that do not stand above it already go to its two ends."""
    if not bar.two_ended and bar.ends == common:
        put_scale(ink, bar, cells)
        return
    left, right = _fitting(bar.ends, max(cells - 7, 0), ink.pen)
    if left:
        ink.put(f"{left} ", "aside")
        cells -= width(left) + 1
    if right:
        cells -= width(right) + 1
    put_scale(ink, bar, cells)
    if right:
        ink.put(f" {right}", "aside")


def _fitting(ends: tuple[str, str], cells: int, pen: Pen) -> tuple[str, str]:
    """Return both words whole, their first words, or both cut, whatever fits side by side."""
    left, right = map(pen.say, ends)
    if width(left) + 1 + width(right) <= cells:
        return left, right
    first = left.partition(" ")[0], right.partition(" ")[0]
    if first[0] != first[1] and width(first[0]) + 1 + width(first[1]) <= cells:
        return first
    half = max((cells - 1) // 2, 0)
    return pen.cut(first[0], half), pen.cut(first[1], half)
