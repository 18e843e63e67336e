"""Change a value where it stands, so that the comment and the spacing of its line stay."""

from collections.abc import Iterator, Mapping
from typing import Any

from paddock_tui.records.edits import MISSING, Edit
from paddock_tui.store.lines import KeyValue, Layout, plain_span, split_lines
from paddock_tui.store.render import render_inline
from paddock_tui.store.splice import Splice

Way = tuple[Splice, ...]


def is_plain(layout: Layout, entry: KeyValue, edit: Edit) -> bool:
    """Return whether one plain value on one line gives way to another: no structure is touched."""
    old = layout.text[entry.start : entry.end]
    plain = not isinstance(edit.new, Mapping | list | tuple) and not old.startswith(("[", "{", '"""', "'''"))
    return plain and entry.first == entry.last


def change(layout: Layout, entry: KeyValue, edit: Edit) -> Iterator[Way]:
    """Let tomlkit set, add or drop a value, where that changes the lines of `entry` and no others."""
    text = _by_tomlkit(layout.text, edit)
    if text is None:
        return
    old, new = layout.lines, split_lines(text)
    behind = len(old) - entry.last - 1
    end = len(new) - behind
    if end > entry.first and new[: entry.first] == old[: entry.first] and new[end:] == old[entry.last + 1 :]:
        yield (Splice(entry.first, entry.last + 1, new[entry.first : end]),)


def respelled(text: str, edit: Edit) -> str | None:
    """Write a plain value in place of another on the line that seems to be its own; None where none does.

    Whether it was that line, the parser has to say.
    """
    if isinstance(edit.new, Mapping | list | tuple):
        return None
    span = plain_span(text, edit.path)
    return None if span is None else text[: span[0]] + render_inline(edit.new) + text[span[1] :]


def respan(layout: Layout, entry: KeyValue, value: str) -> Way:
    """Write a one-line value into the very characters where the old one stands."""
    offset = sum(map(len, layout.lines[: entry.first]))
    statement = "".join(layout.lines[entry.first : entry.last + 1])
    changed = statement[: entry.start - offset] + value + statement[entry.end - offset :]
    return (Splice(entry.first, entry.last + 1, (changed,)),)


def _by_tomlkit(text: str, edit: Edit) -> str | None:
    import tomlkit

    try:
        document: Any = tomlkit.parse(text)
        table = document
        for key in edit.path[:-1]:
            table = table[key]
        if edit.new is MISSING:
            del table[edit.path[-1]]
        else:
            table[edit.path[-1]] = tomlkit.value(render_inline(edit.new))
        return tomlkit.dumps(document)
    except Exception:  # whatever it stumbles over: there is another way, and both are verified
        return None
