"""Pages as plain text: what the commands print, and what a terminal that can do nothing is given."""

from collections.abc import Iterator, Sequence

import attrs

from paddock_tui.pages.layout.pen import Pen, text_of
from paddock_tui.pages.layout.table import cells_line, heading_line, table_of
from paddock_tui.pages.rows import NOTHING, Bar, Page, Row, Section
from paddock_tui.records.paths import spell
from paddock_tui.text import fold, width

_AROUND = 3
"""Cells around a label: two before it, and at least one between it and its value."""

_VALUE = 18
_LEAST_BAR, _MOST_BAR = 24, 32
_LEAST_VALUE = 14


@attrs.frozen
class _Columns:
    """Where the parts of a row stand: cells of the whole line, of the label, and of the bar (0: none)."""

    all: int
    label: int
    bar: int


def plain_page(page: Page, columns: int = 80, *, unknown: bool = True, paths: bool = False) -> Iterator[str]:
    """Print a page line by line, in at most `columns` cells (38 or more).

    Values that are not known stand together in one line of their section (left out without `unknown`).
    With `paths` each value has the path under which `set` takes it.
    """
    if page.heading:
        yield from fold(page.heading, columns)
    if page.verdict:
        yield from fold(page.verdict, columns)
    for section in page.sections:
        if section.rows and not section.note and all(row.kind == "add" for row in section.rows):
            continue
        yield ""
        yield from _section(section, columns, unknown, paths)
    if page.findings:
        yield ""
        for row in page.findings:
            yield from row_lines(row, columns)
    if page.caution:
        yield ""
        yield from fold(page.caution, columns)


def row_lines(row: Row, columns: int = 80) -> Iterator[str]:
    """Print one row by itself."""
    yield from _row(row, _places([row], columns), paths=False)


def _section(section: Section, columns: int, unknown: bool, paths: bool) -> Iterator[str]:
    section = attrs.evolve(section, rows=tuple(row for row in section.rows if row.kind != "add"))
    yield from _title(section, columns)
    if section.columns:
        yield from _table(section, columns)
        section = attrs.evolve(section, rows=tuple(row for row in section.rows if row.kind != "cells"))
    # What is open on a checklist is no value that is missing: it is printed to be gone through.
    known = [row for row in section.rows if paths or _is_told(row)]
    places = _places(known, columns)
    ends: tuple[str, str] | None = None
    for row in known:
        if row.bar is not None and places.bar and row.bar.ends != ends:
            ends = row.bar.ends
            yield f"{'':{places.label + _VALUE}}{_ends(row.bar, places.bar)}"
        yield from _row(row, places, paths)
    lost = [row for row in section.rows if not (paths or _is_told(row))]
    for lead, words in (("not known", False), ("empty", True)) if unknown else ():
        # What no rule waits for is only empty: a record that is not retired lacks nothing.
        labels = [row.label for row in lost if (row.value == NOTHING) is words and row.path != ("retired",)]
        if labels:
            yield from _hanging(f"  {lead}: ", " · ".join(labels), columns)


def _is_told(row: Row) -> bool:
    return row.known or bool(row.trouble) or row.kind == "check"


def _table(section: Section, columns: int) -> Iterator[str]:
    """Print the columns of a section, as many beside each other as fit, the rest below with their labels."""
    rows = [row for row in section.rows if row.kind == "cells"]
    pen = Pen(columns)
    first = 0
    while first < len(section.columns):
        rest = attrs.evolve(
            section,
            columns=section.columns[first:],
            rows=tuple(attrs.evolve(row, cells=row.cells[first:]) for row in rows),
            chosen=0,
            last_stands=False,
        )
        table = table_of(rest, pen)
        if table is None:
            return
        yield from ("",) if first else ()
        yield text_of(heading_line(table))
        yield from (text_of(cells_line(row, table, False)) for row in rest.rows)
        first += len(table.shown)


def _title(section: Section, columns: int) -> Iterator[str]:
    note = f" {section.note}" if section.note else ""
    first, *rest = fold(section.title, columns - 6) or [""]
    lead = f"-- {first} " if first else "-"
    if rest or width(lead) + width(note) > columns - 2:
        yield f"-- {first}"
        yield from (f"   {line}" for line in (*rest, *fold(section.note, columns - 3)))
        return
    yield f"{lead}{'-' * (columns - width(lead) - width(note))}{note}"


def _places(rows: Sequence[Row], columns: int) -> _Columns:
    """Return the label column of a section the room that its labels need, within what the width allows."""
    widest = max((width(row.label) for row in rows if row.kind != "finding"), default=0) + _AROUND
    label = min(max(24, widest), 34) if columns >= 72 else min(max(16, widest), columns * 45 // 100)
    bar = min(_MOST_BAR, columns - label - _VALUE)
    return _Columns(columns, label, bar if bar >= _LEAST_BAR else 0)


def _row(row: Row, at: _Columns, paths: bool) -> Iterator[str]:
    """Print label, value and bar, and what is said beside it: on lines of its own where it is long."""
    if row.kind == "finding":
        yield from _hanging(f"  {row.severity:<8} ", row.value, at.all)
        yield from _hanging(" " * 11, row.aside, at.all)
        return
    if row.severity == "trouble" or not row.label:
        yield from _hanging("  ", row.label, at.all) if row.label else ()
        yield from _hanging("    " if row.label else "  ", row.value, at.all)
        return
    said = [part for part in (row.trouble, _shut(row), row.aside) if part]
    if paths and row.path:
        said.append(f"path {spell(row.path)}")
    label, shown = _padded(f"  {row.label}", at.label), f"{row.value} {row.range}".strip()
    drawn = row.bar is not None and at.bar and width(shown) < _VALUE and width(label) <= at.label
    beside = f"{_padded(shown, _VALUE)}{_drawn(row.bar, at.bar)}" if drawn and row.bar is not None else shown
    line = f"{label}{beside}  {'; '.join(said)}"
    if width(row.label) <= at.label - _AROUND and width(line) <= at.all:
        yield line.rstrip()
        return
    if drawn:
        yield f"{label}{beside}"
    else:
        yield from _labelled(row.label, shown, at)
    for part in said:
        yield from _hanging(" " * at.label, part, at.all)


def _padded(text: str, cells: int) -> str:
    """Fill a text up to a width in cells; wide characters count double."""
    return text + " " * max(0, cells - width(text))


def _labelled(label: str, shown: str, at: _Columns) -> Iterator[str]:
    """Print a label and its value; a label too long for its column has the value beside it or below."""
    if width(label) <= at.label - _AROUND:
        yield from _hanging(_padded(f"  {label}", at.label), shown, at.all)
    elif width(label) + width(shown) + 4 <= at.all:
        yield f"  {label}  {shown}".rstrip()
    else:
        yield from _hanging("  ", label, at.all)
        yield from _hanging(" " * at.label, shown, at.all)


def _shut(row: Row) -> str:
    """Say why a row takes no key, where the words beside it do not say that already."""
    return "" if row.aside.startswith("fixed by") else row.shut


def _ends(bar: Bar, cells: int) -> str:
    low, high = bar.ends
    return f"{low} {'.' * max(1, cells - width(low) - width(high) - 2)} {high}"


def _drawn(bar: Bar, cells: int) -> str:
    if bar.at is None:
        return "." * cells
    place = round(bar.at * (cells - 1))
    return "." * place + "|" + "." * (cells - 1 - place)


def _hanging(lead: str, text: str, columns: int) -> Iterator[str]:
    room = max(_LEAST_VALUE, columns - width(lead))
    for place, line in enumerate(fold(text, room) or [""]):
        yield f"{lead}{line}".rstrip() if place == 0 else f"{' ' * width(lead)}{line}"
