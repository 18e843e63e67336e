"""Triples drawn quickly from a seed: records as people keep them, with comments, and edits of both sides."""

import random
from typing import Any

from paddock_tui.records.edits import MISSING, Edit
from paddock_tui.records.paths import Path
from paddock_tui.store.data import lookup
from tests.merge.triples import Triple, data, edited

_TABLES: tuple[Path, ...] = (
    (),
    ("setup",),
    ("setup", "controls"),
    ("setup", "adjusters"),
    ("laps",),
    ("checks", "lever"),
    ("checks", "tyres"),
    ("incidents", "1"),
    ("incidents", "2"),
    ("notes", "1"),
    ("pressures", "hot"),
)
_KEYS = (
    "a",
    "b",
    "front",
    "pit-limiter",
    "1",
    "2",
    "3",
    "status",
    "at",
    "head_contact",
    "mended",
    "with space",
)
_VALUES: tuple[Any, ...] = (
    1,
    2,
    6.5,
    True,
    False,
    "ok",
    "to fix",
    "2.10 bar",
    "# no",
    'q"',
    [1, 2],
    ["x"],
    "wet",
)
_COMMENTS = ("", "", "", "  # why", "  # soft, hard")


def drawn_triple(drawn: random.Random) -> Triple:
    """Draw a record and edit it up to four times on each side."""
    base = _text(drawn)
    return Triple(base, _side(drawn, base), _side(drawn, base))


def _text(drawn: random.Random) -> str:
    lines: list[str] = []
    for table in _TABLES:
        if table and drawn.random() < 0.45:
            continue
        if table:
            lines += [*([""] if drawn.random() < 0.8 else []), f"[{'.'.join(table)}]"]
        for key in drawn.sample(_KEYS, drawn.randrange(0, 4)):
            if drawn.random() < 0.15:
                lines.append("# a line about the next one")
            shown = f'"{key}"' if " " in key else key
            lines.append(f"{shown} = {_written(drawn.choice(_VALUES))}{drawn.choice(_COMMENTS)}")
    text = "\n".join(lines) + "\n"
    try:
        data(text)
    except ValueError:
        return 'name = "plain"\n'
    return text


def _written(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, list):
        return f"[{', '.join(map(_written, value))}]"
    return f"'{value}'" if isinstance(value, str) else str(value)


def _side(drawn: random.Random, text: str) -> str:
    for _ in range(drawn.randrange(0, 5)):
        now = data(text)
        table = drawn.choice(_TABLES)
        if table and drawn.random() < 0.15:
            old = lookup(now, table)
            new: Any = MISSING if old is not MISSING else {drawn.choice(_KEYS): drawn.choice(_VALUES)}
            text = edited(text, [Edit(table, old, new)])
            continue
        path = (*table, drawn.choice(_KEYS))
        old = lookup(now, path)
        if isinstance(old, dict):
            continue
        new = MISSING if old is not MISSING and drawn.random() < 0.3 else drawn.choice(_VALUES)
        text = edited(text, [Edit(path, old, new)])
        if drawn.random() < 0.1:
            text = text.replace("  # why", "  # because", 1)
    return text
