"""The rows of a page as lines, and the part of them that is shown."""

from typing import NamedTuple

import attrs

from paddock_tui.pages.layout.checks import check_lines
from paddock_tui.pages.layout.columns import Columns
from paddock_tui.pages.layout.fields import editor_lines, field_lines
from paddock_tui.pages.layout.help_bar import common_ends, ends_line
from paddock_tui.pages.layout.pen import Line, rule
from paddock_tui.pages.layout.picture import picture_lines
from paddock_tui.pages.layout.table import cells_line, heading_line, note_of, table_of
from paddock_tui.pages.layout.texts import text_lines
from paddock_tui.pages.layout.view import View
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.paths import Path, Ref


class Owned(NamedTuple):
    """A line, and the row it belongs to."""

    line: Line
    row: int | None


@attrs.frozen
class VisibleLines:
    """The lines shown, the first one's number, and how many rows stand above and below."""

    lines: tuple[Owned, ...]
    top: int
    above: int
    below: int


def body(page: Page, view: View, columns: Columns) -> list[Owned]:
    """Draw every section: title rule, ends of the bars, rows."""
    lines: list[Owned] = []
    first = 0
    loud = _loud(page)
    for section in page.sections:
        if loud:
            section = attrs.evolve(section, rows=tuple(_railed(row, loud) for row in section.rows))
        lines += _section(section, first, view, columns)
        first += len(section.rows)
    return lines


Loud = dict[tuple[Ref | None, Path], str]


def _loud(page: Page) -> Loud:
    """Return for each value that a finding below is about the worst severity; they come worst first."""
    found: Loud = {}
    for row in page.findings:
        if row.path:
            found.setdefault((row.ref, row.path), row.severity)
    return found


def _railed(row: Row, loud: Loud) -> Row:
    severity = loud.get((row.ref, row.path), "") if row.kind in ("field", "ask") else ""
    return attrs.evolve(row, severity=severity) if severity else row


def _section(section: Section, first: int, view: View, columns: Columns) -> list[Owned]:
    table = table_of(section, columns.pen)
    note = note_of(section, table) if table else section.note
    lines = [Owned(rule(columns.pen, section.title, note), None)]
    if table:
        lines.append(Owned(heading_line(table), None))
    ends = common_ends(section)
    told = False
    for at, row in enumerate(section.rows, first):
        if ends and row.bar and not row.bar.two_ended and not told:
            lines.append(Owned(ends_line(ends, columns), None))
            told = True
        on = at == view.cursor
        if on and view.editor:
            drawn = editor_lines(row, columns, view.editor)
        elif row.kind in ("field", "link", "ask"):
            drawn = field_lines(row, columns, ends, on)
        elif row.kind == "cells" and table:
            drawn = (cells_line(row, table, on),)
        elif row.kind == "picture":
            drawn = picture_lines(row, columns, on)
        elif row.kind == "check":
            drawn = check_lines(row, columns, on)
        else:
            drawn = text_lines(row, columns, on)
        lines += [Owned(line, at) for line in drawn]
    return lines


def shown(lines: list[Owned], view: View, height: int) -> VisibleLines:
    """Choose the part that holds the cursor's row: where it was, else with the row in the middle."""
    top = min(max(view.top, 0), max(len(lines) - height, 0))
    mine = [number for number, line in enumerate(lines) if line.row is not None and line.row == view.cursor]
    if mine and height > 0:
        top = _holding(mine[0], mine[-1] + 1, top, height, len(lines))
    part = lines[top : top + height]
    seen = {line.row for line in part}
    above = {line.row for line in lines[:top]} - seen - {None}
    below = {line.row for line in lines[top + height :]} - seen - {None}
    return VisibleLines(tuple(part), top, len(above), len(below))


def _holding(start: int, end: int, top: int, height: int, total: int) -> int:
    """Return a top that shows lines `start` to `end`, or their beginning where they are too many."""
    if start >= top and end <= top + height:
        return top
    if end - start >= height:
        return start
    # Half a page at a time: a page that moves at every key would be sent whole at every key.
    middle = start - (height - (end - start)) // 2
    return min(max(middle, 0), max(total - height, 0))
