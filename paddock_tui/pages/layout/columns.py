"""Where the parts of a row stand: chosen from the width and the labels, never from the values."""

import re

import attrs

from paddock_tui.pages.layout.pen import Pen
from paddock_tui.pages.rows import Page, Section
from paddock_tui.text import width

MARK = 2
"""Cells of the cursor mark."""

_LEAST_BAR = 9
SHORT_VALUE = 7
"""Cells of a value that leaves room for a bar behind it on a narrow screen."""

NUMBER = re.compile(r"[+-]?\d+(?:\.\d+)?(?=$| [^\d-])")
_NUMBERS = 4, 6
"""Cells of a number: most of a set-up are no longer than the first, what a manual says than the other."""

NARROW = 60
"""Under this width cells are short."""


@attrs.frozen
class Columns:
    """Columns in cells: where the value starts, where bar or aside start, and how wide a bar is.

    `below` says that a bar stands on a line of its own, at the value's column; but a short value has room for
    one of `beside` cells behind it. In `number` cells a number is right-aligned, so that numbers end in one
    column and their units begin in one.
    """

    pen: Pen
    value: int
    right: int
    bar: int
    below: bool = False
    number: int = 4
    beside: int = 0


_LAST: list[tuple[Page, Pen, Columns]] = []
"""What was chosen for the last pages: a key that only moves the cursor asks for them again."""


def columns(page: Page, pen: Pen) -> Columns:
    """Choose the columns of a page so that no key shifts them."""
    for known, its_pen, found in _LAST:
        if known is page and its_pen == pen:
            return found
    _LAST[:] = [(page, pen, _chosen(page, pen)), *_LAST[:2]]
    return _LAST[0][2]


def _chosen(page: Page, pen: Pen) -> Columns:
    share = 9 / 20 if pen.width < 60 else 3 / 10
    longest, number = _measured(page)
    label = min(max(page.labels, longest["field"], longest["ask"]) + 2, int(pen.width * share))
    # Names tell records apart: on a narrow screen they come before what is said of them.
    label = max(label, min(longest["link"] + 2, int(pen.width * (1 / 2 if pen.width < 60 else share))))
    if pen.width >= 60:
        label = max(label, min(longest["text"] + 2, int(pen.width * share)))
    value = MARK + max(label, min(10, pen.width // 4))
    right = value + _for_values(pen.width)
    bar = min(31 if pen.width >= 120 else 21, pen.width - right)
    if bar < _LEAST_BAR:
        wide = min(21, max(pen.width - value, 0))
        beside = min(pen.width - value - SHORT_VALUE - 1, 21)
        beside = beside if beside >= _LEAST_BAR else 0
        return Columns(pen, value, right, wide, below=True, number=number, beside=beside)
    return Columns(pen, value, right, bar, number=number)


def _measured(page: Page) -> tuple[dict[str, int], int]:
    """Return the cells of the longest label of each kind, and those of a number: more where one is long.

    Words that stand alone are no label. What is folded counts: what is opened shifts nothing.
    """
    longest = {"field": 0, "ask": 0, "link": 0, "text": 0}
    number, more = _NUMBERS
    for section in page.sections:
        for row in (*section.rows, *section.hidden):
            kind = row.kind
            if kind in longest and (row.value or kind != "text"):
                longest[kind] = max(longest[kind], width(row.label))
            if number < more and kind in ("field", "ask"):
                found = NUMBER.match(row.value)
                number = more if found is not None and number < width(found[0]) <= more else number
    return longest, number


def columns_of_words(section: Section, columns: Columns) -> Columns:
    """Return the columns for rows of words: on a narrow screen behind the section's own labels."""
    if columns.pen.width >= NARROW:
        return columns
    labels = (width(row.label) for row in section.rows if row.kind == "text" and row.value)
    return attrs.evolve(columns, value=min(columns.value, MARK + max(labels, default=0) + 2))


def _for_values(width: int) -> int:
    """Return cells kept for value and range."""
    if width < 60:
        return 12
    if width < 78:
        return 17
    return 28 if width >= 120 else 19
