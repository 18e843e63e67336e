"""Where things stand in a TOML text: the lines of every value and of every table."""

import re
from bisect import bisect_right
from functools import lru_cache
from typing import NamedTuple

import attrs

from paddock_tui.records.paths import Path

BOM = "\ufeff"

_GAP = re.compile(r"(?:[ \t\r\n]|#[^\n]*)*")
_DOT = re.compile(r"[ \t]*\.[ \t]*")
_KEY = re.compile(r"""[A-Za-z0-9_-]+|"(?:\\.|[^"\\\n])*"|'[^'\n]*'""")
_EQUALS = re.compile(r"[ \t]*=[ \t]*")
_COMMA = re.compile(r"[ \t\r\n,]*")
_BARE = re.compile(r"[^,\]}#\r\n]*")
_PLAIN = re.compile(
    r"""[ \t]*(?:
    ([A-Za-z0-9_-]+)[ \t]*=[ \t]*("[^"\\\n]*"|[^\s,\]}\#"'\[{](?:[^,\]}\#"'\r\n]*[^\s,\]}\#"'])?)
    |\[[ \t]*([A-Za-z0-9_-]+(?:\.[A-Za-z0-9_-]+)*)[ \t]*\]
    )?[ \t]*(?:\#[^\n]*)?\r?\n?""",
    re.VERBOSE,
)
"""What nearly every line of a record is: a bare key with a short string, or with a value of no brackets; a
heading of bare keys; or nothing that means anything.
"""
_STRING = re.compile(
    r'"""(?:\\.|[^\\])*?"{3,5}' r"|'''.*?'{3,5}" r'|"(?:\\.|[^"\\\n])*"' r"|'[^'\n]*'",
    re.DOTALL,
)
_NESTED = re.compile(_STRING.pattern + r"|#[^\n]*|[\[\]{}]", re.DOTALL)
_DEEPEST = 40  # inline tables nested deeper than this are not mapped: their ancestor's line serves


_LineMeaning = tuple[Path, int, int]
"""The key of a plain line and where its value stands in it; the keys of a heading, or none, and nought."""

_OTHER: _LineMeaning = (), -1, -1
_meanings: dict[str, _LineMeaning] = {}
"""What lines mean: the same stand in many records, and all but one after an edit."""

_MOST_REMEMBERED = 4_000


class KeyValue(NamedTuple):
    """One `key = value`: its lines (0-based, both included) and the offsets of its value in the text."""

    path: Path
    table: Path
    """The table under whose header it is written; shorter than the parent where the key is dotted."""
    first: int
    last: int
    start: int
    end: int
    inline: bool
    """It stands inside an inline table."""
    opens: bool
    """Its value is an inline table."""


class Head(NamedTuple):
    """One table with a header of its own; the root has line -1. Lines are 0-based."""

    path: Path
    line: int
    last: int
    """The last line of its own values; the header line where it has none."""


@attrs.frozen
class Layout:
    """The map of one text; elements of an array of tables are counted in the path: ("p", "0", "n")."""

    text: str
    lines: tuple[str, ...]
    entries: dict[Path, KeyValue]
    heads: dict[Path, Head]
    busy: frozenset[int]
    """The lines that a header or a value occupies; all others are blank or comments."""
    _implied: dict[Path, int]

    def line_of(self, path: Path) -> int | None:
        """Return the 1-based line of what is at a path, else of its nearest ancestor; None at the root."""
        for length in range(len(path), 0, -1):
            place = self._place(path[:length])
            if place is not None:
                return place + 1
        return None

    def is_comment(self, line: int) -> bool:
        """Return whether a line (0-based) holds nothing but a comment."""
        return self._is_free(line) and self.lines[line].lstrip().startswith("#")

    def is_blank(self, line: int) -> bool:
        """Return whether a line (0-based) is empty or white, and not part of a value."""
        return self._is_free(line) and not self.lines[line].strip()

    def _is_free(self, line: int) -> bool:
        return 0 <= line < len(self.lines) and line not in self.busy

    def _place(self, path: Path) -> int | None:
        if path in self.entries:
            return self.entries[path].first
        if path in self.heads:
            return self.heads[path].line
        return self._implied.get(path)


@lru_cache(maxsize=4)
def split_lines(text: str) -> tuple[str, ...]:
    """Split at line feeds only, as TOML does; every line keeps its ending.

    A save asks for the lines of the text before it and of the one after it, some of them twice.
    """
    lines = text.split("\n")
    whole = [f"{line}\n" for line in lines[:-1]]
    return (*whole, lines[-1]) if lines[-1] else tuple(whole)


def scan(text: str) -> Layout:
    """Map a text that `tomllib` has accepted; any other text gives a map without meaning, but no error."""
    return _Scanner(text).scan()


def key_spans(line: str, most: int | None = None) -> tuple[tuple[int, int], ...]:
    """Return where the keys stand in a line that begins with a heading or with `key = value`.

    Of more than `most` only so many are looked for.
    """
    at = len(line) - len(line.lstrip(" \t["))
    spans: list[tuple[int, int]] = []
    while (match := _KEY.match(line, at)) is not None:
        spans.append(match.span())
        dot = _DOT.match(line, match.end())
        if dot is None or len(spans) == most:
            break
        at = dot.end()
    return tuple(spans)


def _meaning(line: str) -> _LineMeaning:
    """Read a line by itself, and remember it."""
    found = _PLAIN.fullmatch(line)
    if found is None:
        meaning = _OTHER
    elif found[1]:
        meaning = (found[1],), *found.span(2)
    else:
        meaning = tuple(found[3].split(".")) if found[3] else (), 0, 0
    if len(_meanings) >= _MOST_REMEMBERED:
        _meanings.clear()
    _meanings[line] = meaning
    return meaning


def plain_span(text: str, path: Path) -> tuple[int, int] | None:
    """Return where the value at a path stands, if it seems to be a plain one on a line under its heading.

    It is found by its line alone, without a map of the text, so that it has to be verified. None where no
    line seems to hold it.
    """
    table: Path = ()
    key, known, start = path[-1:], _meanings.get, 0
    for line in split_lines(text):
        keys, first, end = known(line) or _meaning(line)
        if first > 0:
            if keys == key and table == path[:-1]:
                return start + first, start + end
        elif keys:
            table = keys
        start += len(line)
    return None


class _Scanner:
    """One pass over a text, statement by statement."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.starts = [0, *(match.end() for match in re.finditer("\n", text))]
        self.entries: dict[Path, KeyValue] = {}
        self.heads: dict[Path, Head] = {(): Head((), -1, -1)}
        self.implied: dict[Path, int] = {}
        self.busy: set[int] = set()
        self.elements: dict[Path, int] = {}  # arrays of tables: how many elements so far
        self.table: Path = ()
        self.last: dict[Path, int] = {}
        """The last line of the values of each table that has some."""
        self.at_table = False
        """Whether the table that is written in has an entry: what that implies is known."""

    def scan(self) -> Layout:
        lines = split_lines(self.text)
        line, starts, known = 0, self.starts, _meanings.get
        while line < len(lines):
            meaning = known(lines[line]) or _meaning(lines[line])
            if meaning is _OTHER:
                line = self._other(line)
                continue
            keys, start, end = meaning
            if start:
                self._plain(keys, line, starts[line] + start, starts[line] + end)
            elif keys:
                self._head(self._counted(keys), line)
            line += 1
        for path, last in self.last.items():
            self.heads[path] = Head(path, self.heads[path].line, last)
        return Layout(self.text, lines, self.entries, self.heads, frozenset(self.busy), self.implied)

    def _other(self, line: int) -> int:
        """Map a statement that is more than a plain line; return the line of the next one."""
        start = self.starts[line]
        at = self._gap(start + self.text.startswith(BOM, start) * (line == 0))
        while at < len(self.text):
            end = self._header(at) if self.text[at] == "[" else self._statement(at)
            at = self._gap(max(end, at + 1))
            line = self._line(at)
            if not self.text[self.starts[line] : at].strip(" \t"):
                return line
        return len(self.starts)

    def _gap(self, at: int) -> int:
        return _end(_GAP.match(self.text, at), at)

    def _line(self, at: int) -> int:
        return bisect_right(self.starts, at) - 1

    def _header(self, at: int) -> int:
        many = self.text.startswith("[[", at)
        at = self._gap(at + 1 + many)
        keys, end = self._keys(at)
        line = self._line(at)
        self._head(self._element(keys) if many else self._counted(keys), line)
        return self.text.find("]", end) + 1 + many

    def _head(self, table: Path, line: int) -> None:
        self.table = table
        self.heads[table] = Head(table, line, line)
        self.last.pop(table, None)
        self.at_table = False
        self._imply(table, line)
        self.busy.add(line)

    def _counted(self, keys: Path) -> Path:
        """Return the element that a header means where it leads through an array of tables."""
        path: Path = ()
        for key in keys:
            path = (*path, key)
            if path in self.elements:
                path = (*path, str(self.elements[path] - 1))
        return path

    def _element(self, keys: Path) -> Path:
        array = (*self._counted(keys[:-1]), *keys[-1:])
        count = self.elements.get(array, 0)
        self.elements[array] = count + 1
        return (*array, str(count))

    def _statement(self, at: int) -> int:
        entry = self._entry(at, self.table, depth=0)
        self.busy.update(range(entry.first, entry.last + 1))
        self.last[self.table] = entry.last
        return entry.end

    def _plain(self, key: Path, line: int, start: int, end: int) -> None:
        """Map a plain value on one line."""
        path = self.table + key
        self.entries[path] = KeyValue(path, self.table, line, line, start, end, False, False)
        if not self.at_table:
            self._imply(path, line)
            self.at_table = True
        self.busy.add(line)
        self.last[self.table] = line

    def _entry(self, at: int, under: Path, depth: int) -> KeyValue:
        keys, end = self._keys(at)
        start = _end(_EQUALS.match(self.text, end), end)
        end = self._value(start)
        path = (*under, *keys)
        first, last = self._line(at), self._line(max(start, end - 1))
        opens = self.text.startswith("{", start)
        entry = KeyValue(path, self.table, first, last, start, end, depth > 0, opens)
        self.entries[path] = entry
        self._imply(path, first)
        if opens and depth < _DEEPEST:
            self._inside(entry, depth)
        return entry

    def _inside(self, table: KeyValue, depth: int) -> None:
        """Map the keys of an inline table."""
        at = _end(_COMMA.match(self.text, table.start + 1), table.start + 1)
        while at < table.end - 1:
            end = self._entry(at, table.path, depth + 1).end
            at = _end(_COMMA.match(self.text, end), end)
            if at <= end:
                return

    def _keys(self, at: int) -> tuple[Path, int]:
        keys: list[str] = []
        while True:
            match = _KEY.match(self.text, at)
            if match is None:
                return tuple(keys), at
            keys.append(_unquoted(match[0]))
            dot = _DOT.match(self.text, match.end())
            if dot is None:
                return tuple(keys), match.end()
            at = dot.end()

    def _value(self, at: int) -> int:
        """Return where the value that starts here ends: brackets are counted, so depth costs no stack."""
        string = _STRING.match(self.text, at)
        if string is not None:
            return string.end()
        if self.text[at : at + 1] not in ("[", "{"):
            bare = _BARE.match(self.text, at)
            return at + len(bare[0].rstrip()) if bare else at
        depth = 0
        for token in _NESTED.finditer(self.text, at):
            depth += (token[0] in ("[", "{")) - (token[0] in ("]", "}"))
            if depth == 0:
                return token.end()
        return len(self.text)

    def _imply(self, path: Path, line: int) -> None:
        for length in range(len(path) - 1, 0, -1):
            self.implied.setdefault(path[:length], line)


def _end(match: re.Match[str] | None, otherwise: int) -> int:
    return match.end() if match else otherwise


def _unquoted(key: str) -> str:
    if key[0] == "'" or (key[0] == '"' and "\\" not in key):
        return key[1:-1]
    if key[0] != '"':
        return key
    import tomllib  # hardly any key has escapes

    try:
        return next(iter(tomllib.loads(f"{key} = 0")))
    except tomllib.TOMLDecodeError:
        return key[1:-1]
