"""The TOML that records are mostly written in, read quickly; whatever is more than that is left to tomllib.

One value a line: headings and keys of letters, digits, `-` and `_`, in headings also other words in plain
quotes; strings in plain quotes without escapes, whole and decimal numbers, booleans, dates, times, and arrays
of such on one line. Nothing is ever refused here, and nothing read otherwise than tomllib reads it
(`tests/store/test_everyday.py`).
"""

import datetime as dt
import re
import sys
from collections.abc import Callable, Mapping
from typing import Any

DEEPEST = 8
"""Parts of a heading."""

_BARE = r"[A-Za-z0-9_-]+"
_PART = rf'(?:{_BARE}|"[^".\\]+")'
_TEXT = r'"[^"\\]*"'
_WHOLE = r"[+-]?(?:0|[1-9][0-9]{0,17})"
_DECIMAL = r"[+-]?(?:0|[1-9][0-9]*)\.[0-9]+"
_ITEM = rf"(?:{_TEXT}|{_DECIMAL}|{_WHOLE})"

_LINE = re.compile(
    rf"""[ \t]*(?:
    (?P<key>{_BARE})[ \t]*=[ \t]*(?:
        "(?P<text>[^"\\]*)"
        |(?P<date>[0-9]{{4}}-[0-9]{{2}}-[0-9]{{2}})
        |(?P<time>(?:[01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9])
        |(?P<decimal>{_DECIMAL})
        |(?P<whole>{_WHOLE})
        |(?P<flag>true|false)
        |(?P<array>\[[ \t]*(?:{_ITEM}(?:[ \t]*,[ \t]*{_ITEM})*[ \t]*,?[ \t]*)?\])
    )
    |\[[ \t]*(?P<table>{_PART}(?:\.{_PART})*)[ \t]*\]
    )?[ \t]*(?:\#.*)?""",
    re.VERBOSE | re.DOTALL,
)
_ITEMS = re.compile(rf'"(?P<text>[^"\\]*)"|(?P<decimal>{_DECIMAL})|(?P<whole>{_WHOLE})')
_KEY = re.compile(_BARE)
_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f]")

_REMEMBERED = 4_000
"""Lines whose meaning is remembered: the same stand in many records, and then share their values too."""

_MOST_BLOCKS = 2_000
"""Blocks that are remembered, and headings: most of what stands under one stands under many."""

_INDENTED = re.compile(r"\n[ \t]+\[")

_Meaning = tuple[str, Any]
"""Key and value of a line; of a heading no key, and its name; of an array its key, and its text."""

_Heading = tuple[tuple[str, ...], str]
"""The tables that a table stands in, the same object for all that stand in the same, and its own key."""


class _Array(str):
    """The text of an array, which is made anew for each record."""


class SharedTable(dict[str, Any]):
    """What stands under one heading, the same object wherever the same stands: nobody may change it.

    `made` holds what others made of it, by what they made it with. One with an array is nobody else's.
    """

    __slots__ = ("has_arrays", "made")

    def __init__(self, given: Mapping[str, Any], *, has_arrays: bool) -> None:
        super().__init__(given)
        self.has_arrays = has_arrays
        self.made: dict[Any, Any] = {}

    def copied(self) -> dict[str, Any]:
        """Return the same as a table of its own."""
        if not self.has_arrays:
            return dict(self)
        return {key: _array(value) if type(value) is _Array else value for key, value in self.items()}


_NOTHING: _Meaning = ("", None)
_meanings: dict[str, _Meaning] = {"": _NOTHING}
_blocks: dict[str, SharedTable] = {}
_headings: dict[str, _Heading] = {}
_parents: dict[tuple[str, ...], tuple[str, ...]] = {(): ()}
_keys: dict[str, str] = {}


def everyday(body: str) -> dict[str, Any] | None:
    """Read a text that is written so; None where any of it is not."""
    return _tree(body, shared=False)


def in_blocks(body: str) -> dict[str, Any] | None:
    """Read a text as `everyday` does, tables that hold no others being blocks: it is for looking at only."""
    return _tree(body, shared=True)


def _tree(body: str, *, shared: bool) -> dict[str, Any] | None:
    """Read a text heading by heading; what stands under many alike is read once."""
    if "\n " in body or "\n\t" in body:
        body = _INDENTED.sub("\n[", body)
    first, *rest = ("\n" + body).split("\n[")
    top = _block(first)
    if top is None:
        return None
    root = here = top.copied()
    headed: list[_Heading] = []
    above: tuple[str, ...] = ()
    for piece in rest:
        heading, _, under = piece.partition("\n")
        place = _headings.get(heading) or _heading(heading)
        block = _blocks.get(under) or _block(under, remember=True)
        if place is None or block is None:
            return None
        parents, last = place
        if parents is not above:
            # Tables of one kind mostly stand one after the other.
            found = _walked(root, parents)
            if found is None:
                return None
            here, above = found, parents
        if last not in here:
            here[last] = block if shared and not block.has_arrays else block.copied()
        elif place in headed or not _merged(here, last, block):
            return None
        headed.append(place)
    return root


def _walked(root: dict[str, Any], keys: tuple[str, ...]) -> dict[str, Any] | None:
    """Return the table that others stand in, made where it is not there; None where a value is in the way."""
    here = root
    for key in keys:
        below = here.setdefault(key, {})
        if type(below) is SharedTable:
            # What others stand in is a table of its own.
            below = here[key] = below.copied()
        if type(below) is not dict:
            return None
        here = below
    return here


def _merged(here: dict[str, Any], key: str, block: SharedTable) -> bool:
    """Add to a table that was there for the tables in it; gives whether nothing is in the way."""
    held = here[key]
    if type(held) is not dict or not held.keys().isdisjoint(block):
        return False
    held.update(block.copied())
    return True


def _heading(text: str) -> _Heading | None:
    """Read a heading without its first bracket; None where it is not written so."""
    meaning = _read(f"[{text}") if _CONTROL.search(text) is None else None
    if meaning is None or len(meaning[1]) > DEEPEST:
        return None
    if len(_headings) >= _MOST_BLOCKS:
        _headings.clear()
        _parents.clear()
    parents = meaning[1][:-1]
    found = _headings[text] = _parents.setdefault(parents, parents), meaning[1][-1]
    return found


def _block(text: str, *, remember: bool = False) -> SharedTable | None:
    """Read the lines under a heading; None where any is more than everyday, or another heading."""
    if _CONTROL.search(text) is not None:
        return None
    here: dict[str, Any] = {}
    has_arrays = False
    known = _meanings.get
    for line in text.split("\n"):
        meaning = known(line) or _read(line)
        if meaning is None:
            return None
        key, value = meaning
        if key:
            if key in here:
                return None
            here[key] = value
            has_arrays = has_arrays or type(value) is _Array
        elif value is not None:
            return None
    block = SharedTable(here, has_arrays=has_arrays)
    if remember and not next(iter(here), "").isdecimal():
        if len(_blocks) >= _MOST_BLOCKS:
            _blocks.clear()
        _blocks[text] = block
    return block


def _read(line: str) -> _Meaning | None:
    """Read a line and remember it; None where it is not written so."""
    plain = _text_line(line)
    if plain is not None:
        return plain
    found = _LINE.fullmatch(line)
    if found is None:
        return None
    kind = found.lastgroup
    try:
        if kind is None:
            return _NOTHING
        meaning = (
            ("", tuple(sys.intern(part.strip('"')) for part in found[kind].split(".")))
            if kind == "table"
            else (sys.intern(found["key"]), _READ[kind](found[kind]))
        )
    except ValueError:
        return None
    return _remember(line, meaning)


def _remember(line: str, meaning: _Meaning) -> _Meaning:
    if len(_meanings) >= _REMEMBERED:
        _meanings.clear()
    _meanings[line] = meaning
    return meaning


def _text_line(line: str) -> _Meaning | None:
    """Read a line that is a key and a text, as most that are new are; None where it is another."""
    written, found, text = line.partition(' = "')
    if not found or text[-1:] != '"' or text.find('"') != len(text) - 1 or "\\" in text:
        return None
    key = _keys.get(written)
    if key is None:
        if _KEY.fullmatch(written) is None:
            return None
        if len(_keys) >= _MOST_BLOCKS:
            _keys.clear()
        key = _keys[written] = sys.intern(written)
    meaning = key, text[:-1]
    # Of what is numbered, as laps are, hardly any stands twice.
    return meaning if key.isdecimal() else _remember(line, meaning)


def _array(text: _Array) -> list[Any]:
    return [_READ[one.lastgroup or ""](one[one.lastgroup or ""]) for one in _ITEMS.finditer(text)]


_READ: dict[str, Callable[[str], Any]] = {
    "text": str,
    "date": dt.date.fromisoformat,
    "time": dt.time.fromisoformat,
    "decimal": float,
    "whole": int,
    "flag": "true".__eq__,
    "array": _Array,
}
