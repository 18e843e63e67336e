"""Where the lines of an edit go: for each edit the ways to make it, the best one first."""

from collections.abc import Iterator, Mapping
from itertools import pairwise
from typing import Any

from paddock_tui.records.edits import MISSING, Edit
from paddock_tui.records.paths import Path
from paddock_tui.store import inplace
from paddock_tui.store.data import lookup
from paddock_tui.store.inplace import Way
from paddock_tui.store.lines import Head, KeyValue, Layout
from paddock_tui.store.render import render_inline, render_line, render_table
from paddock_tui.store.splice import Splice


def ways(layout: Layout, edit: Edit, goal: Mapping[str, Any]) -> Iterator[Way]:
    """Return ways to make an edit, best first; each has to be verified. `goal` is the data it must give."""
    entry = layout.entries.get(edit.path)
    owner = _inline_owner(layout, edit.path)
    if entry is not None and MISSING not in (edit.old, edit.new):
        if inplace.is_plain(layout, entry, edit):
            yield inplace.respan(layout, entry, render_inline(edit.new))
        yield from inplace.change(layout, owner or entry, edit)
        yield inplace.respan(layout, entry, render_inline(edit.new))
    elif owner is not None:
        yield from inplace.change(layout, owner, edit)
        yield inplace.respan(layout, owner, render_inline(lookup(goal, owner.path)))
    elif edit.new is MISSING:
        whole = isinstance(edit.old, Mapping)
        yield _drop_table(layout, edit.path) if whole else _drop_line(layout, edit.path)
    elif edit.old is MISSING:
        yield _add(layout, edit)


def _inline_owner(layout: Layout, path: Path) -> KeyValue | None:
    """Return the statement whose inline table holds this path."""
    for length in range(1, len(path)):
        entry = layout.entries.get(path[:length])
        if entry is not None and entry.opens:
            return entry
    return None


def _drop_line(layout: Layout, path: Path) -> Way:
    entry = layout.entries.get(path)
    return (Splice(entry.first, entry.last + 1),) if entry else ()


def _add(layout: Layout, edit: Edit) -> Way:
    parent = edit.path[:-1]
    if isinstance(edit.new, Mapping):
        return _at_end(layout, render_table(edit.path, edit.new))
    if parent in layout.heads:
        return _under_head(layout, edit)
    sibling = _dotted_sibling(layout, parent)
    if sibling is not None:
        line = render_line(edit.path[len(sibling.table) :], edit.new)
        return (_insert(sibling.last + 1, _indent_of(layout.lines[sibling.first]) + line),)
    return _at_end(layout, render_table(parent, {edit.path[-1]: edit.new}))


def _under_head(layout: Layout, edit: Edit) -> Way:
    """Insert after the last value of its own table, before the blank line and the comment of the next."""
    head = layout.heads[edit.path[:-1]]
    line = render_line(edit.path[-1:], edit.new)
    if head.last >= 0:
        return (_insert(head.last + 1, _indent(layout, head) + line),)
    return _first_at_root(layout, line)


def _first_at_root(layout: Layout, line: str) -> Way:
    """Insert below the comments that lead the file, above the first header and its comments."""
    if not layout.busy:
        return (_insert(len(layout.lines), line),)
    return (_insert(_attached(layout, min(layout.busy)), line, ""),)


def _indent(layout: Layout, head: Head) -> str:
    """Return the indentation of the table's last value, or of its header."""
    first = [entry.first for entry in layout.entries.values() if entry.last == head.last and not entry.inline]
    return _indent_of(layout.lines[first[0] if first else head.line])


def _indent_of(line: str) -> str:
    return line[: len(line) - len(line.lstrip(" \t"))]


def _dotted_sibling(layout: Layout, table: Path) -> KeyValue | None:
    """Return the last line that writes a value of this table with a dotted key under another header."""
    found = [
        entry
        for entry in layout.entries.values()
        if not entry.inline and len(entry.table) < len(table) and entry.path[: len(table)] == table
    ]
    return found[-1] if found else None


def _at_end(layout: Layout, lines: list[str]) -> Way:
    """Insert behind everything else, after one blank line."""
    end = len(layout.lines)
    gap = [] if end == 0 or layout.is_blank(end - 1) else [""]
    return (_insert(end, *gap, *lines),)


def _insert(at: int, *lines: str) -> Splice:
    return Splice(at, at, lines)


def _drop_table(layout: Layout, path: Path) -> Way:
    """Drop its headers with the comments attached to them, its values, its sub-tables, however written."""

    def below(other: Path) -> bool:
        return other[: len(path)] == path

    gone: set[int] = set()
    for entry in layout.entries.values():
        if below(entry.path) and not below(entry.table) and not entry.inline:
            gone.update(range(entry.first, entry.last + 1))
    blocks: set[int] = set()
    for head in layout.heads.values():
        if below(head.path):
            blocks.update(range(_attached(layout, head.line), _trailing(layout, head.last) + 1))
    gone |= _with_gaps(layout, blocks)
    return tuple(Splice(lo, hi) for lo, hi in _runs(gone))


def _attached(layout: Layout, header: int) -> int:
    """Return the first line of the comments right above a header."""
    while layout.is_comment(header - 1):
        header -= 1
    return header


def _trailing(layout: Layout, last: int) -> int:
    """Return the last comment right below a table's last value, unless they are of the next header."""
    end = last
    while layout.is_comment(end + 1):
        end += 1
    return last if end + 1 in layout.busy else end


def _with_gaps(layout: Layout, blocks: set[int]) -> set[int]:
    """Add the blank lines that would be left over."""
    gone = set(blocks)
    for (_, hi), (lo, _) in pairwise(_runs(blocks)):
        if all(layout.is_blank(line) for line in range(hi, lo)):
            gone.update(range(hi, lo))
    for lo, hi in _runs(gone):
        below = _blanks(layout, hi, 1)
        above = _blanks(layout, lo - 1, -1)
        if hi + len(below) == len(layout.lines):
            gone.update(above)
        elif above or lo == 0:
            gone.update(below)
    return gone


def _blanks(layout: Layout, start: int, step: int) -> list[int]:
    found = []
    while layout.is_blank(start):
        found.append(start)
        start += step
    return found


def _runs(lines: set[int]) -> list[tuple[int, int]]:
    """Sets of lines as [lo, hi) runs, in order."""
    starts = sorted(line for line in lines if line - 1 not in lines)
    ends = sorted(line + 1 for line in lines if line + 1 not in lines)
    return list(zip(starts, ends, strict=True))
