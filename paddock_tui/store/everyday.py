"""The TOML that records are mostly written in, read quickly; whatever is more than that is left to tomllib.

One value a line: headings and keys of letters, digits, `-` and `_`, in headings also other words in plain
quotes; strings in plain quotes without escapes, whole and decimal numbers, booleans, dates, times, and arrays
of such on one line. Nothing is ever refused here, and nothing read otherwise than tomllib reads it
(`tests/store/test_everyday.py`).
"""

import datetime as dt
import re
import sys
from collections.abc import Callable
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
_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f]")

_REMEMBERED = 4_000
"""Lines whose meaning is remembered: the same stand in many records, and then share their values too."""

_Meaning = tuple[str, Any]
"""Key and value of a line; of a heading no key, and its name; of an array its key, and its text."""


class _Array(str):
    """The text of an array, which is made anew for each record."""


_NOTHING: _Meaning = ("", None)
_meanings: dict[str, _Meaning] = {"": _NOTHING}


def everyday(body: str) -> dict[str, Any] | None:
    """Read a text that is written so; None where any of it is not."""
    if _CONTROL.search(body) is not None:
        return None
    root: dict[str, Any] = {}
    here = root
    headed: set[tuple[str, ...]] = set()
    known = _meanings.get
    for line in body.split("\n"):
        meaning = known(line) or _read(line)
        if meaning is None:
            return None
        key, value = meaning
        if key:
            if key in here:
                return None
            here[key] = _array(value) if type(value) is _Array else value
        elif value is not None:
            below = _table(root, value)
            if below is None or value in headed:
                return None
            headed.add(value)
            here = below
    return root


def _read(line: str) -> _Meaning | None:
    """Read a line and remember it; None where it is not written so."""
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
    if len(_meanings) >= _REMEMBERED:
        _meanings.clear()
    _meanings[line] = meaning
    return meaning


def _table(root: dict[str, Any], keys: tuple[str, ...]) -> dict[str, Any] | None:
    """Return the table of a heading, made where it is not there; None where a value is in the way."""
    if len(keys) > DEEPEST:
        return None
    here = root
    for key in keys:
        below = here.setdefault(key, {})
        if not isinstance(below, dict):
            return None
        here = below
    return here


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
