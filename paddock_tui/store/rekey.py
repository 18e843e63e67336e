"""A table gets another key: only its headings are written anew, so that lines and comments stay in place."""

from collections.abc import Iterator, Mapping
from typing import Any

import attrs

from paddock_tui.records.edits import MISSING, Edit
from paddock_tui.records.paths import Path
from paddock_tui.store.data import lookup, same
from paddock_tui.store.lines import BOM, Layout, key_spans, scan
from paddock_tui.store.patch import Patched, patch
from paddock_tui.store.reading import loads
from paddock_tui.store.render import render_key


@attrs.frozen
class Rekeyed:
    """The new text; `undo` are the edits that give the old one back where headings alone did not do it."""

    text: str
    undo: tuple[Edit, ...] = ()


def rekey(text: str, path: Path, to: str) -> Rekeyed | None:
    """Return the text with the last key of `path` replaced; None where nothing, or something, stands there.

    Where a heading alone does not do it, as in an inline table, the table goes out and comes back at the end.
    """
    mark = BOM if text.startswith(BOM) else ""
    body = text.removeprefix(BOM)
    data = loads(body)
    if not isinstance(data, dict):
        return None
    table, target = lookup(data, path), (*path[:-1], to)
    if not isinstance(table, Mapping) or lookup(data, target) is not MISSING:
        return None
    goal = _renamed(data, path, to)
    changed = _headings(scan(body), path, to)
    if same(loads(changed), goal):
        return Rekeyed(mark + changed)
    moved = patch(text, (Edit(path, table, MISSING), Edit(target, MISSING, table)))
    return Rekeyed(moved.text, moved.undo) if isinstance(moved, Patched) else None


def _renamed(data: Mapping[str, Any], path: Path, to: str) -> dict[str, Any]:
    if len(path) == 1:
        return {(to if key == path[0] else key): value for key, value in data.items()}
    return {key: _renamed(value, path[1:], to) if key == path[0] else value for key, value in data.items()}


def _headings(layout: Layout, path: Path, to: str) -> str:
    lines = list(layout.lines)
    for line, place in _places(layout, path):
        spans = key_spans(lines[line])
        if place < len(spans):
            start, end = spans[place]
            lines[line] = f"{lines[line][:start]}{_like(lines[line][start:end], to)}{lines[line][end:]}"
    return "".join(lines)


def _places(layout: Layout, path: Path) -> Iterator[tuple[int, int]]:
    """List the lines that name the table, and which of the keys in each it is."""
    for head in layout.heads.values():
        if head.path[: len(path)] == path:
            yield head.line, len(path) - 1
    for entry in layout.entries.values():
        above = len(entry.table)
        if not entry.inline and above < len(path) and entry.path[: len(path)] == path:
            yield entry.first, len(path) - 1 - above


def _like(old: str, to: str) -> str:
    """Write a key in the quotes of the old one, so that the way back gives the same bytes.

    Quotes that the old key could not be without say nothing of how its owner writes keys.
    """
    quoted = old[:1] in ("'", '"')
    chosen = quoted and render_key(old[1:-1]) == old[1:-1]
    needed = quoted and render_key(to) != to
    return f"{old[0]}{to}{old[0]}" if chosen or needed else render_key(to)
