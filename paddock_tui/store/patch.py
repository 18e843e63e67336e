"""Edits made in the text of a record, each one verified, with the edits that take them back."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Literal

import attrs

from paddock_tui.records.edits import MISSING, Edit, Missing, Value
from paddock_tui.records.paths import Path
from paddock_tui.store import inplace
from paddock_tui.store.data import after, blocked, lookup, outermost_missing, same
from paddock_tui.store.lines import BOM, Layout, scan, split_lines
from paddock_tui.store.placement import ways
from paddock_tui.store.reading import loads
from paddock_tui.store.render import RenderError
from paddock_tui.store.splice import go_back, only_touched, splice, way_back


@attrs.frozen
class Patched:
    """The new text, and the edits that give the old one back, in the order in which they are made."""

    text: str
    undo: tuple[Edit, ...]


@attrs.frozen
class RefusedPatch:
    """None of the edits was made. `found` is what stands at the edit's path now."""

    reason: str
    edit: Edit
    why: Literal["clash", "unsafe", "unreadable"]
    found: Value | Missing = MISSING


FileData = dict[str, Any]


def patch(text: str, edits: Sequence[Edit], data: FileData | None = None) -> Patched | RefusedPatch:
    """Make all edits, or none. `data` is what the text parses to, where that is known.

    `patch(patched.text, patched.undo)` gives back the same text, byte for byte, and its own undo is
    the redo. An edit whose `raw` lines still stand is made by exchanging those lines; any other is
    made by its meaning. Either way the outcome must parse to exactly the data that the edit asks for.
    """
    mark = BOM if text.startswith(BOM) else ""
    body = text.removeprefix(BOM)
    undo: list[Edit] = []
    for edit in edits:
        if data is None:
            data = _parsed(body)
        if data is None:
            return RefusedPatch("the file is not valid TOML", edit, "unreadable")
        made = _make(body, data, edit)
        if isinstance(made, RefusedPatch):
            return made
        changed, then = made
        undo.insert(0, _undo(edit, body, changed, data, then))
        body, data = changed, then
    return Patched(mark + body, tuple(undo))


def _make(body: str, data: FileData, edit: Edit) -> tuple[str, FileData] | RefusedPatch:
    """Make one edit: return the new text and its data."""
    refused = _clash(data, edit) or _shapeless(edit)
    if refused is not None:
        return refused
    if same(edit.old, edit.new):
        return body, data
    if edit.raw is None and MISSING not in (edit.old, edit.new):
        at_once = _at_once(body, data, edit)
        if at_once is not None:
            return at_once
    layout = scan(body)
    goal = after(data, edit, lambda path: _stands(layout, path))
    reason = "the edit could not be made without touching other lines"
    try:
        for changed in _proposals(layout, edit, goal):
            if same(_parsed(changed), goal):
                return changed, goal
    except RenderError as error:
        reason = str(error)
    return RefusedPatch(reason, edit, "unsafe", lookup(data, edit.path))


def _at_once(body: str, data: FileData, edit: Edit) -> tuple[str, FileData] | None:
    """Exchange a plain value on its own line, without a map of the text; None where that gives other data."""
    try:
        changed = inplace.respelled(body, edit)
    except RenderError:
        return None
    goal = after(data, edit, lambda _: False)
    return (changed, goal) if changed is not None and same(_parsed(changed), goal) else None


def _proposals(layout: Layout, edit: Edit, goal: FileData) -> Iterator[str]:
    """Return texts that an edit might give, best first; in each only lines of the edit are touched."""
    if edit.raw is not None:
        lines = go_back(layout.lines, edit.raw)
        if lines is not None:
            yield "".join(lines)
    for way in ways(layout, edit, goal):
        text = "".join(splice(layout.lines, way))
        if way and only_touched(layout.lines, split_lines(text), way):
            yield text


def _undo(edit: Edit, old: str, new: str, before: FileData, then: FileData) -> Edit:
    """Return the edit that takes one back; tables that came or went with it are part of it."""
    raw = way_back(split_lines(old), split_lines(new))
    if edit.old is MISSING and edit.new is not MISSING:
        path = outermost_missing(before, edit.path)
        return Edit(path, lookup(then, path), MISSING, raw)
    if edit.new is MISSING and edit.old is not MISSING:
        path = outermost_missing(then, edit.path)
        return Edit(path, MISSING, lookup(before, path), raw)
    return Edit(edit.path, edit.new, edit.old, raw)


def _clash(data: FileData, edit: Edit) -> RefusedPatch | None:
    found = lookup(data, edit.path)
    if not same(found, edit.old):
        return RefusedPatch("another value stands there now", edit, "clash", found)
    if found is MISSING:
        found = blocked(data, edit.path)
        if found is not MISSING:
            return RefusedPatch("a value stands where a table is needed", edit, "clash", found)
    return None


def _shapeless(edit: Edit) -> RefusedPatch | None:
    """Refuse an edit that is none of the five kinds."""
    if not edit.path:
        return RefusedPatch("a whole file is not edited as one value", edit, "unsafe", edit.old)
    tables = [isinstance(value, Mapping) for value in (edit.old, edit.new) if value is not MISSING]
    if len(tables) == 2 and any(tables) and not same(edit.old, edit.new):
        return RefusedPatch("a table is dropped or added, not set", edit, "unsafe", edit.old)
    return None


def _stands(layout: Layout, path: Path) -> bool:
    """Return whether a table is there by itself, even with nothing in it."""
    return path in layout.heads or path in layout.entries


def _parsed(text: str) -> FileData | None:
    found = loads(text, shared=True)
    return found if isinstance(found, dict) else None
