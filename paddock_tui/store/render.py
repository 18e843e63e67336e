"""Values and tables written as TOML text."""

import datetime as dt
import math
import re
import unicodedata
from collections.abc import Mapping, Sequence

from paddock_tui.records.paths import Path

_BARE = re.compile(r"[A-Za-z0-9_-]+")
_ESCAPES = {"\\": "\\\\", '"': '\\"', "\b": "\\b", "\t": "\\t", "\n": "\\n", "\f": "\\f", "\r": "\\r"}


class RenderError(Exception):
    """A value that TOML, or this project's use of it, has no way to write."""


def render(value: object) -> str:
    """Write a plain value or an array of plain values on one line; RenderError for anything else."""
    if isinstance(value, Sequence) and not isinstance(value, str | bytes):
        return f"[{', '.join(_plain(item) for item in value)}]"
    return _plain(value)


def render_inline(value: object) -> str:
    """Write a value on one line; a mapping becomes an inline table."""
    if isinstance(value, Mapping):
        inside = ", ".join(f"{render_key(str(key))} = {render_inline(item)}" for key, item in value.items())
        return f"{{ {inside} }}" if inside else "{}"
    if isinstance(value, Sequence) and not isinstance(value, str | bytes):
        return f"[{', '.join(render_inline(item) for item in value)}]"
    return _plain(value)


def render_key(key: str) -> str:
    """Write one key, in quotes where it needs them."""
    return key if _BARE.fullmatch(key) else _string(key)


def render_path(path: Path) -> str:
    """Write a dotted key."""
    return ".".join(render_key(key) for key in path)


def render_line(path: Path, value: object) -> str:
    """Write `key = value`, without indentation and line ending."""
    return f"{render_path(path)} = {render(value)}"


def render_table(path: Path, table: Mapping[str, object]) -> list[str]:
    """Write a table and its sub-tables under headers, one value a line, a blank line between tables."""
    own = {key: item for key, item in table.items() if not isinstance(item, Mapping)}
    lines: list[str] = []
    if own or not table:
        lines = [f"[{render_path(path)}]", *(render_line((key,), item) for key, item in own.items())]
    for key, item in table.items():
        if isinstance(item, Mapping):
            lines += ["", *render_table((*path, key), item)] if lines else render_table((*path, key), item)
    return lines


def _plain(value: object) -> str:
    match value:
        case bool():
            return "true" if value else "false"
        case str():
            return _string(value)
        case int() | float():
            return _number(value)
        case dt.datetime() | dt.date():
            return value.isoformat()
        case dt.time() if value.tzinfo is None:
            return value.isoformat()
    raise RenderError(f"no way to write {value!r:.60}")


def _number(value: int | float) -> str:
    if isinstance(value, float) and not math.isfinite(value):
        raise RenderError(f"{value} is not a number to save")
    try:
        return repr(value)
    except ValueError as error:  # an integer of thousands of digits
        raise RenderError("too many digits") from error


def _string(value: str) -> str:
    if value.isascii() and value.isprintable() and '"' not in value and "\\" not in value:
        return f'"{value}"'  # as nearly every value is: not letter by letter
    return f'"{"".join(_escaped(char) for char in value)}"'


def _escaped(char: str) -> str:
    if char in _ESCAPES:
        return _ESCAPES[char]
    category = unicodedata.category(char)
    if category == "Cs":
        raise RenderError("half a character (a lone surrogate) cannot be saved")
    return f"\\u{ord(char):04x}" if category == "Cc" else char
