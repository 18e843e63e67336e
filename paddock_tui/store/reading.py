"""Text and data out of files that may hold anything: what is wrong is said, with its line."""

import re
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

from paddock_tui.records.errors import InputError
from paddock_tui.store.everyday import everyday, in_blocks
from paddock_tui.store.guarded import NotRead, anywhere, read_file
from paddock_tui.store.hints import hint
from paddock_tui.store.lines import BOM, key_spans, split_lines
from paddock_tui.store.tree import Tree, TreePlace

LARGEST = 1_000_000
"""Bytes: a record is some kilobytes, so that a larger file is something else."""

DEEPEST = 32
"""Tables and arrays inside each other, and parts of one key: a record has five."""

_PLACE = re.compile(r" \(at (?:line (\d+), column (\d+)|end of document)\)$")
_DIGITS = re.compile(r"[0-9][0-9_]*")
_LONG = 4000
_TOO_DEEP = "too many brackets inside each other"


def read_text(
    tree: Tree, path: Path, *, largest: int = LARGEST, look: Callable[[TreePlace], object] = anywhere
) -> str | InputError:
    """Read a file as UTF-8, strictly. A byte order mark stays in the text, as its first character.

    `look` is given its place while that is open.
    """
    name = str(path)
    try:
        data = read_file(tree, path, largest, look)
    except NotRead as error:
        return InputError(error.found, error.expected, file=name)
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        byte = error.start - (data.rfind(b"\n", 0, error.start) + 1) + 1
        found = f"byte {byte} of the line is 0x{data[error.start]:02X}"
        return InputError(found, "UTF-8 text", "save the file as UTF-8", line=line, file=name)


def loads(text: str, file: str = "", *, shared: bool = False) -> dict[str, Any] | InputError:
    """Parse TOML; what the parser refuses comes back with its line and, where known, the mend.

    `shared` data are for looking at only: tables that stand in other texts too may be one object there.
    """
    body = text.removeprefix(BOM)
    quick = in_blocks(body) if shared else everyday(body)
    if quick is not None:
        return quick
    dotted = _dotted(body)
    if dotted is not None:
        return InputError("a key of too many parts", "plain tables", line=dotted, file=file)
    import tomllib  # most garages hold nothing else than everyday lines

    try:
        data = tomllib.loads(body)
    except tomllib.TOMLDecodeError as error:
        return _refused(body, str(error), file)
    except RecursionError:
        return InputError(_TOO_DEEP, "plain tables and arrays", file=file)
    except ValueError:  # the interpreter refuses integers of thousands of digits
        numbers = (one for one in _DIGITS.finditer(body) if one.end() - one.start() > _LONG)
        number = next(numbers, None)
        line = body.count("\n", 0, number.start()) + 1 if number else None
        return InputError("a number with thousands of digits", "a number", line=line, file=file)
    wrong = _unusable(data)
    return data if not wrong else InputError(wrong, "plain tables, arrays and numbers", file=file)


def _dotted(body: str) -> int | None:
    """Return the first line whose key has too many parts: such keys cost the parser their square."""
    if body.count(".") < DEEPEST:
        return None
    for number, line in enumerate(body.split("\n"), 1):
        if line.count(".") >= DEEPEST and len(key_spans(line, DEEPEST + 1)) > DEEPEST:
            return number
    return None


def _unusable(data: dict[str, Any]) -> str:
    """Say what in valid data no record can hold: it would cost or break whoever walks through it."""
    stack: list[tuple[Any, int]] = [(data, 0)]
    while stack:
        value, depth = stack.pop()
        if isinstance(value, dict | list):
            if depth > DEEPEST:
                return _TOO_DEEP
            inside = value.values() if isinstance(value, dict) else value
            stack.extend((one, depth + 1) for one in inside)
        elif isinstance(value, int) and value.bit_length() > 64:
            return "a number beyond 64 bits"
    return ""


def _refused(body: str, message: str, file: str) -> InputError:
    lines = split_lines(body)
    conflict = _conflict(lines, file)
    if conflict is not None:
        return conflict
    place = _PLACE.search(message)
    found = message[: place.start()] if place else message
    line = int(place[1]) if place and place[1] else max(len(lines), 1)
    if place:
        found += f" at column {place[2]}" if place[2] else " at the end of the file"
    shown = lines[line - 1] if line <= len(lines) else ""
    return InputError(found, "TOML", hint(message, shown), line=line, file=file)


def _conflict(lines: Sequence[str], file: str) -> InputError | None:
    """Return where git left both sides of a merge for a person to choose."""
    places: list[str] = []
    first = start = 0
    for number, line in enumerate(lines, 1):
        if line.startswith("<<<<<<< "):
            start, first = number, first or number
        elif line.startswith(">>>>>>> ") and start:
            places.append(f"{start}-{number}")
            start = 0
    if not places:
        return None
    found = f"a merge left unfinished by git, lines {', '.join(places)}"
    mend = "keep one side, and delete the lines of <<<<<<<, ======= and >>>>>>>"
    return InputError(found, "one text, not two", mend, line=first, file=file)
