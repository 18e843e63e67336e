"""Generated TOML documents of the shapes that people write, and edits of them."""

import datetime as dt
import tomllib
from collections.abc import Mapping
from typing import Any

import attrs
from hypothesis import strategies as st

from paddock_tui.records.edits import MISSING, Edit, Value
from paddock_tui.records.paths import Path
from paddock_tui.store.render import render_key

KEYS = st.sampled_from(["a", "b", "c", "front", "pit-limiter", "1", "with space", 'quo"te', "é", ""])
TABLES = st.sampled_from(["setup", "controls", "t", "u", "1", "two words"])
VALUES = st.sampled_from(
    [
        "1",
        "6.5",
        "2.10",
        "0xFF",
        "true",
        "nan",
        '"2.10 bar"',
        '"# not a comment"',
        '"[not.a.header]"',
        r'"quoted \" and \\"',
        "'lit#eral'",
        "2026-05-16",
        "10:40:00",
        "2026-05-16 10:40:00",
        "2026-05-16T10:40:00+02:00",
        "[0, 10]",
        "[]",
        '[\n  1, # one ]\n  # "two\n\n  2,\n]',
        '["a", "]"]',
        '[[1, 2], ["x"]]',
        '"""two\nlines # here"""',
        '"""\n[looks.like]\n\n# a comment\n"""',
        "'''a ''quoted''\n'''",
        '""""quoted""""',
        "{}",
        "{ x = 1 }",
        '{x=1,y.z="}, # no",  w = { v = [1] }}',
    ]
)
GAPS = st.sampled_from(
    ["", "", "", "\n", "\n\n", "   \n", "# a comment\n", "\n# one\n# two\n", "  # indented\n\n"]
)
INDENTS = st.sampled_from(["", "", "", "  ", "\t"])
EQUALS = st.sampled_from([" = ", " = ", "=", "   =  ", "\t=\t"])
TAILS = st.sampled_from(["", "", "", "  # note", " ", "# tight"])

PLAIN = st.one_of(
    st.booleans(),
    st.integers(-(2**63), 2**63 - 1),
    st.floats(allow_nan=False, allow_infinity=False),
    st.text(st.characters(exclude_categories=["Cs"]), max_size=8),
    st.dates(dt.date(1000, 1, 1)),
    st.times(),
    st.datetimes(dt.datetime(1000, 1, 1)),
)
ARRAYS = st.lists(PLAIN, max_size=3)
WRITABLE: st.SearchStrategy[Value] = st.one_of(PLAIN, ARRAYS)
TABLE_VALUES: st.SearchStrategy[Any] = st.recursive(
    st.dictionaries(KEYS, WRITABLE, max_size=2),
    lambda inner: st.dictionaries(KEYS, st.one_of(WRITABLE, inner), max_size=3),
    max_leaves=4,
)


@attrs.frozen
class Chunk:
    """One statement or header as generated, and the path that it is about."""

    path: Path
    text: str


@attrs.frozen
class Document:
    """A generated text, its statements in order, and its lines of comment and blank lines."""

    text: str
    chunks: tuple[Chunk, ...]
    free: tuple[str, ...]


def parses(text: str) -> bool:
    """Whether the parser accepts a text."""
    try:
        tomllib.loads(text.removeprefix("\ufeff"))
    except tomllib.TOMLDecodeError:
        return False
    return True


@st.composite
def documents(draw: st.DrawFn) -> Document:
    """Root values, then tables: comments, gaps, odd spacing, either line ending, mark and last newline."""
    body = ""
    free = ""
    chunks: list[Chunk] = []
    table: Path = ()
    for number in range(draw(st.integers(0, 12))):
        headed = number and draw(st.integers(0, 2)) == 0
        chunk = draw(_headers() if headed else _statements(table))
        gap = draw(GAPS)
        if not parses(body + gap + chunk.text):
            continue
        body += gap + chunk.text
        free += gap
        chunks.append(chunk)
        if chunk.text.lstrip().startswith("["):
            table = chunk.path
    gap = draw(GAPS)
    body += gap
    free += gap
    if draw(st.booleans()) and not body.endswith("\n\n") and body != "\n":
        body = body.removesuffix("\n")
    mark, ending = draw(st.sampled_from(["", "\ufeff"])), draw(st.sampled_from(["\n", "\r\n"]))
    return Document(mark + body.replace("\n", ending), tuple(chunks), tuple(free.splitlines()))


@st.composite
def _headers(draw: st.DrawFn) -> Chunk:
    path = tuple(draw(st.lists(TABLES, min_size=1, max_size=3)))
    dot = draw(st.sampled_from([".", ".", " . "]))
    inside = dot.join(map(render_key, path))
    return Chunk(path, f"{draw(INDENTS)}[{inside}]{draw(TAILS)}\n")


@st.composite
def _statements(draw: st.DrawFn, table: Path) -> Chunk:
    keys = tuple(draw(st.lists(KEYS, min_size=1, max_size=draw(st.sampled_from([1, 1, 1, 2, 3])))))
    key = ".".join(map(render_key, keys))
    line = f"{draw(INDENTS)}{key}{draw(EQUALS)}{draw(VALUES)}{draw(TAILS)}\n"
    return Chunk((*table, *keys), line)


def paths(data: Mapping[str, Any], under: Path = ()) -> list[tuple[Path, Any]]:
    """All values and tables of a document, with their paths."""
    found: list[tuple[Path, Any]] = []
    for key, value in data.items():
        found.append(((*under, key), value))
        if isinstance(value, Mapping):
            found += paths(value, (*under, key))
    return found


@st.composite
def edits(draw: st.DrawFn, data: Mapping[str, Any]) -> Edit:
    """One of the five kinds of edit that this data allows."""
    there = paths(data)
    values = [(path, value) for path, value in there if not isinstance(value, Mapping)]
    tables = [(path, value) for path, value in there if isinstance(value, Mapping)]
    kinds = [
        "add line",
        "add table",
        *(["set", "drop line"] if values else []),
        *(["drop table"] if tables else []),
    ]
    kind = draw(st.sampled_from(kinds))
    if kind == "set":
        path, old = draw(st.sampled_from(values))
        return Edit(path, old, draw(WRITABLE))
    if kind.startswith("drop"):
        path, old = draw(st.sampled_from(values if kind == "drop line" else tables))
        return Edit(path, old, MISSING)
    parent = draw(st.sampled_from([(), ("fresh",), ("fresh", "er"), *(path for path, _ in tables)]))
    key = draw(KEYS.filter(lambda key: (*parent, key) not in dict(there)))
    return Edit((*parent, key), MISSING, draw(WRITABLE if kind == "add line" else TABLE_VALUES))
