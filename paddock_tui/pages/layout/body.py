"""The rows of a page as lines, and the part of them that is shown."""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from typing import NamedTuple

import attrs

from paddock_tui.pages.layout.checks import check_lines
from paddock_tui.pages.layout.columns import Columns, columns_of_words
from paddock_tui.pages.layout.fields import editor_lines, field_lines
from paddock_tui.pages.layout.findings import caution_in_full
from paddock_tui.pages.layout.folds import fold_lines
from paddock_tui.pages.layout.header import first_rule_end
from paddock_tui.pages.layout.help_bar import common_ends, ends_line
from paddock_tui.pages.layout.pen import Line, rule
from paddock_tui.pages.layout.picture import picture_lines
from paddock_tui.pages.layout.table import (
    DrawnTable,
    cells_line,
    heading_line,
    in_columns,
    note_of,
    table_of,
)
from paddock_tui.pages.layout.texts import finding_lines, opens, text_lines
from paddock_tui.pages.layout.view import View
from paddock_tui.pages.rows import FOLD, Page, Row
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


class SharedBySection(NamedTuple):
    """What the rows of a section share: the number of the first, the table, the ends of the bars, and the
    columns of rows of words.
    """

    first: int
    table: DrawnTable | None
    ends: tuple[str, str] | None
    words: Columns


class ReplacedLines(NamedTuple):
    """Lines that stand in place of lines `start` to `end`, and where among all those of the cursor's row
    begin and how many they are.
    """

    start: int
    end: int
    lines: tuple[Owned, ...]
    cursor: int
    size: int


@attrs.frozen(eq=False)
class DrawnRows:
    """The rows of a page without a cursor: all lines, and where those of each row begin and end."""

    rows: tuple[Row, ...]
    lines: tuple[Owned, ...]
    spans: tuple[tuple[int, int], ...]
    shared: tuple[SharedBySection, ...]

    def with_cursor(self, view: View, columns: Columns) -> ReplacedLines:
        """Return the lines of the cursor's row and of one that stands open, in place of which lines."""
        at = view.cursor
        if at is None or not 0 <= at < len(self.rows):
            return ReplacedLines(0, 0, (), 0, 0)
        opened = at if view.editor or view.opened is None or view.opened >= len(self.rows) else view.opened
        first, last = sorted((at, opened))
        drawn = {one: self._drawn(one, view, columns, opened) for one in {first, last}}
        between = self.lines[self.spans[first][1] : self.spans[last][0]] if first != last else ()
        mine = (*drawn[first], *between, *(drawn[last] if first != last else ()))
        start = self.spans[first][0]
        before = 0 if at == first else len(mine) - len(drawn[last])
        return ReplacedLines(start, self.spans[last][1], mine, start + before, len(drawn[at]))

    def _drawn(self, at: int, view: View, columns: Columns, opened: int) -> tuple[Owned, ...]:
        """Draw the cursor's row, or the one that stands open."""
        shared = self.shared[bisect_right(self.shared, at, key=_first_row) - 1]
        row, on = self.rows[at], at == view.cursor
        if on and view.editor:
            lines: Sequence[Line] = editor_lines(row, columns, view.editor)
        elif opens(row):
            lines = finding_lines(row, shared.words, on, at == opened)
        else:
            lines = _row(row, shared, columns, on=on)
        return tuple(Owned(line, at) for line in lines)

    def is_last(self, at: int | None) -> bool:
        """Return whether no row that the cursor stops at follows."""
        return at is not None and all(row.kind == "heading" for row in self.rows[at + 1 :])

    def begun(self, line: int, part: ReplacedLines) -> int:
        """Count the rows that begin before a line, where lines are replaced."""
        end = part.start + len(part.lines)
        if line <= part.start or not part.lines:
            return bisect_left(self.spans, line, key=_first_line)
        if line < end:
            inside = {one.row for one in part.lines[: line - part.start]} - {None}
            return bisect_left(self.spans, part.start, key=_first_line) + len(inside)
        return bisect_left(self.spans, line - end + part.end, key=_first_line)


def body(page: Page, columns: Columns) -> DrawnRows:
    """Draw every section: title rule, ends of the bars, rows."""
    lines: list[Owned] = []
    spans: list[tuple[int, int]] = []
    sections: list[SharedBySection] = []
    rows: list[Row] = []
    loud = _loud(page)
    for section in page.sections:
        table, ends = table_of(section, columns.pen), common_ends(section)
        shared = SharedBySection(len(spans), table, ends, columns_of_words(section, columns))
        sections.append(shared)
        note = note_of(section, table) if table else section.note
        headed = bool(section.rows) and section.rows[0].kind == FOLD
        if not headed:
            end = "" if lines else first_rule_end(page, columns.pen, section.title, note)
            pen = attrs.evolve(columns.pen, heavy=True) if section.heavy else columns.pen
            lines.append(Owned(rule(pen, section.title, note, end), None))
        if table and not headed:
            lines.append(Owned(heading_line(table), None))
        told = False
        for one in in_columns(section.rows, columns.pen):
            row = _railed(one, loud) if loud else one
            rows.append(row)
            if ends and row.bar and not row.bar.two_ended and not told:
                lines.append(Owned(ends_line(ends, columns), None))
                told = True
            start = len(lines)
            lines += [Owned(line, len(spans)) for line in _row(row, shared, columns, on=False)]
            spans.append((start, len(lines)))
            if row.kind == FOLD and table and len(section.rows) > 1:
                lines.append(Owned(heading_line(table), None))
    lines += [Owned(line, None) for line in caution_in_full(page, columns)]
    return DrawnRows(tuple(rows), tuple(lines), tuple(spans), tuple(sections))


def _row(row: Row, shared: SharedBySection, columns: Columns, *, on: bool) -> Sequence[Line]:
    """Draw one row, with the cursor `on` it or without."""
    if row.whole:
        return text_lines(row, shared.words, on)
    if row.kind in ("field", "link", "ask"):
        return field_lines(row, columns, shared.ends, on)
    if row.kind == "cells" and shared.table:
        return (cells_line(row, shared.table, on),)
    if row.kind == "picture":
        return picture_lines(row, columns, on)
    if row.kind == "check":
        return check_lines(row, columns, on)
    if row.kind == FOLD:
        return fold_lines(row, columns, on)
    return text_lines(row, shared.words, on)


_LAST: list[tuple[Page, Columns, DrawnRows]] = []
"""The page drawn last: a key that only moves the cursor draws the rows that it leaves and comes to."""


def shown(page: Page, view: View, columns: Columns, height: int) -> VisibleLines:
    """Choose the part that holds the cursor's row: where it was, else with the row in the middle."""
    if not (_LAST and _LAST[0][0] is page and _LAST[0][1] == columns):
        _LAST[:] = [(page, columns, body(page, columns))]
    whole = _LAST[0][2]
    mine = whole.with_cursor(view, columns)
    total = len(whole.lines) + len(mine.lines) - (mine.end - mine.start)
    top = min(max(view.top, 0), max(total - height, 0))
    if mine.lines and height > 0:
        top = _holding(mine.cursor, mine.cursor + mine.size, top, height, total)
        if whole.is_last(view.cursor) and total - mine.cursor <= height:
            # Behind the last row the cautions stand, and no cursor comes there.
            top = max(total - height, 0)
    part = _part(whole.lines, mine.start, mine.end, mine.lines, top, top + height)
    seen = {line.row for line in part} - {None}
    above = whole.begun(top, mine)
    above -= sum(1 for row in seen if row is not None and row < above)
    below = len(whole.spans) - whole.begun(top + height, mine)
    return VisibleLines(part, top, above, below)


def _part(
    lines: tuple[Owned, ...], start: int, end: int, mine: tuple[Owned, ...], top: int, bottom: int
) -> tuple[Owned, ...]:
    """Return lines `top` to `bottom` of all, `mine` standing in place of those from `start` to `end`."""
    after = start + len(mine)
    return (
        *lines[top : min(bottom, start)],
        *mine[max(top - start, 0) : max(bottom - start, 0)],
        *lines[end + max(top - after, 0) : end + max(bottom - after, 0)],
    )


def _first_row(shared: SharedBySection) -> int:
    return shared.first


def _first_line(span: tuple[int, int]) -> int:
    return span[0]


def _holding(start: int, end: int, top: int, height: int, total: int) -> int:
    """Return a top that shows lines `start` to `end`, or their beginning where they are too many."""
    if start >= top and end <= top + height:
        return top
    if end - start >= height:
        return start
    # Half a page at a time: a page that moves at every key would be sent whole at every key.
    middle = start - (height - (end - start)) // 2
    return min(max(middle, 0), max(total - height, 0))
