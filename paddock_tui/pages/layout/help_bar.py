"""Scales with one mark, and the words at their ends."""

from paddock_tui.pages.layout.columns import Columns
from paddock_tui.pages.layout.pen import Ink, Line, Pen, Span
from paddock_tui.pages.rows import Bar, Section
from paddock_tui.text import width


def scale(at: float, cells: int) -> list[Span]:
    """Draw a scale of `cells` cells with one mark at `at`, 0.0 to 1.0."""
    if cells < 1:
        return []
    mark = round(min(max(at, 0.0), 1.0) * (cells - 1))
    parts = [("." * mark, "bar"), ("|", "mark"), ("." * (cells - 1 - mark), "bar")]
    return [part for part in parts if part[0]]


def common_ends(section: Section) -> tuple[str, str] | None:
    """Return the words drawn once above the first help bar of a section; None without one."""
    return next((row.bar.ends for row in section.rows if row.bar and not row.bar.two_ended), None)


def ends_line(ends: tuple[str, str], columns: Columns) -> Line:
    """Draw the words above the bars: flush with both ends, or before them where bars are narrow."""
    start = columns.value if columns.below else columns.right
    pen = columns.pen
    left, right = _fitting(ends, columns.bar, pen)
    ink = Ink(pen)
    ink.to(start)
    ink.put(left, "aside")
    ink.to(start + columns.bar - width(right))
    ink.put(right, "aside")
    return ink.line()


def put_bar(ink: Ink, bar: Bar, at: float, cells: int, common: tuple[str, str] | None) -> None:
    """Draw a bar in `cells` cells; words that do not stand above it already go to its two ends."""
    if not bar.two_ended and bar.ends == common:
        for text, style in scale(at, cells):
            ink.put(text, style)
        return
    left, right = _fitting(bar.ends, max(cells - 7, 0), ink.pen)
    if left:
        ink.put(f"{left} ", "aside")
        cells -= width(left) + 1
    if right:
        cells -= width(right) + 1
    for text, style in scale(at, cells):
        ink.put(text, style)
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
