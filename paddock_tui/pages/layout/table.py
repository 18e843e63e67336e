"""Rows with cells under the columns of their section: as many as fit, labels and the last one standing."""

import re
from collections.abc import Sequence

import attrs

from paddock_tui.pages.layout.columns import MARK, NARROW
from paddock_tui.pages.layout.fields import mark
from paddock_tui.pages.layout.pen import Ink, Line, Pen
from paddock_tui.pages.rows import Row, Section
from paddock_tui.text import width

_GAP = 2
_LEAST = 8
"""Cells for the column looked at; with fewer the one that stands is left out."""


@attrs.frozen
class DrawnTable:
    """Where a section's columns stand: cells of the label, and for each shown column its place and cells.

    Columns of figures, and their headings, stand at the `right` of their cells.
    """

    pen: Pen
    label: int
    shown: tuple[tuple[int, int, int], ...]
    hidden: int
    headings: tuple[str, ...]
    chosen: int
    right: frozenset[int] = frozenset()


def table_of(section: Section, pen: Pen, lead: int = MARK) -> DrawnTable | None:
    """Choose the columns of a section that are shown; None for a section without columns."""
    if not section.columns:
        return None
    rows = [row for row in section.rows if row.kind == "cells"]
    share = 9 / 20 if pen.width < 60 else 3 / 10
    longest = max((width(pen.say(row.label)) for row in rows), default=0)
    label = lead + min(longest + _GAP, int(pen.width * share))
    widths = [_width(section, place, rows, pen) for place in range(len(section.columns))]
    beside = pen.width - label - widths[-1]
    standing = [len(widths) - 1] if section.last_stands and len(widths) > 1 and beside >= _LEAST else []
    if section.last_stands and not standing:
        widths = widths[:-1] or widths
    # Behind the last column no gap is needed.
    room = pen.width + _GAP - label - sum(widths[place] for place in standing)
    # One column wider than the room is cut, so that the one that stands is never pushed out.
    widths = [cells if at in standing else min(cells, max(room, _GAP + 1)) for at, cells in enumerate(widths)]
    moving = widths[: len(widths) - len(standing)]
    chosen = min(max(section.chosen, 0), len(moving) - 1)
    places = [*moved(moving, chosen, room), *standing]
    shown: list[tuple[int, int, int]] = []
    at = label
    for place in places:
        cells = max(min(widths[place] - _GAP, pen.width - at), 1)
        shown.append((place, at, cells))
        at += cells + _GAP
    hidden, right = len(widths) - len(places), _of_figures(section, rows)
    return DrawnTable(pen, label, tuple(shown), hidden, section.columns, chosen, right)


_FIGURE = re.compile(r"-|[+-]?[0-9][0-9.:]*( [A-Z]{3})?")
"""A count, a time, a sum of money, or that there is none."""


def _of_figures(section: Section, rows: list[Row]) -> frozenset[int]:
    """Return the columns that hold figures alone, more than one of them."""
    found = set()
    for place in range(len(section.columns)):
        texts = [row.cells[place] for row in rows if place < len(row.cells)]
        if all(map(_FIGURE.fullmatch, texts)) and any(text != "-" for text in texts):
            found.add(place)
    return frozenset(found)


def _start(table: DrawnTable, place: int, at: int, cells: int, text: str) -> int:
    """Return where a text of a column begins."""
    return at + max(cells - width(text), 0) if place in table.right else at


def moved(widths: list[int], chosen: int, room: int) -> range:
    """Return the columns that fit, the chosen one among them, from the first on where that can be."""
    first = 0
    while first < chosen and sum(widths[first : chosen + 1]) > room:
        first += 1
    last = chosen
    while last + 1 < len(widths) and sum(widths[first : last + 2]) <= room:
        last += 1
    return range(first, last + 1)


def _width(section: Section, place: int, rows: list[Row], pen: Pen) -> int:
    texts = [section.columns[place], *(row.cells[place] for row in rows if place < len(row.cells))]
    return max(width(pen.say(text)) for text in texts) + _GAP


def note_of(section: Section, table: DrawnTable) -> str:
    """Return the note of the title: which column is looked at comes first where some are hidden."""
    if not table.hidden:
        return section.note
    moving = len(section.columns) - section.last_stands
    where = f"{section.columns[table.chosen]}, {table.chosen + 1} of {moving}"
    return "; ".join(filter(None, (where, section.note)))


def in_columns(rows: Sequence[Row], pen: Pen) -> Sequence[Row]:
    """Return rows that open something, what they say in like parts below each other, where there is room.

    What closes each stands in one column behind that.
    """
    if pen.width < NARROW:
        return rows
    parts = {at: row.value.split(_PART) for at, row in enumerate(rows) if row.kind == "link" and row.ref}
    counts = [len(one) for one in parts.values()]
    usual = max(counts, key=counts.count, default=1)
    alike = {at: one for at, one in parts.items() if len(one) == usual}
    if usual < _FEWEST_PARTS or len(alike) < 2:
        return rows
    cells = [max(width(one[place]) for one in alike.values()) for place in range(usual)]
    if sum(cells) + len(_PART) * (usual - 1) > pen.width // 2:
        return rows
    made = list(rows)
    for at, one in alike.items():
        padded = (f"{text}{' ' * (wide - width(text))}" for text, wide in zip(one, cells, strict=True))
        made[at] = attrs.evolve(rows[at], value=_PART.join(padded))
    return made


_PART = " · "
_FEWEST_PARTS = 3


def heading_line(table: DrawnTable) -> Line:
    """Draw the headings; the column looked at stands out."""
    ink = Ink(table.pen)
    for place, at, cells in table.shown:
        text = table.pen.say(table.headings[place])
        ink.to(_start(table, place, at, cells, text))
        ink.put(text, "focus" if place == table.chosen else "aside", cells)
    return ink.line()


def cells_line(row: Row, table: DrawnTable, on: bool) -> Line:
    """Draw one row: its label, and the cells under the columns shown."""
    ink = Ink(table.pen)
    mark(ink, on)
    ink.put(table.pen.say(row.label), "focus" if on else "label", table.label - MARK - 1)
    for place, at, cells in table.shown:
        text = table.pen.say(row.cells[place]) if place < len(row.cells) else ""
        ink.to(_start(table, place, at, cells, text))
        ink.put(text, "value" if row.known else "unknown", cells)
    return ink.line()
