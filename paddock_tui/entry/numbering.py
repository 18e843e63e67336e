"""The number that comes next in a growing table."""

from collections.abc import Iterable, Mapping
from typing import Any

from paddock_tui.entry.pieces import lookup
from paddock_tui.records.paths import Path


def next_number(data: Mapping[str, Any], table: str, used: Iterable[Path] = ()) -> int:
    """Return the number after the highest in a table of numbered keys, those of other paths included."""
    held = lookup(data, (table,))
    keys = [key for key in held if isinstance(key, str)] if isinstance(held, Mapping) else []
    keys += [path[1] for path in used if path[0] == table]
    return max((int(key) for key in keys if key.isascii() and key.isdecimal()), default=0) + 1
