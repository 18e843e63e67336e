"""The map of a text: which lines a value, a table and its header occupy."""

import tomllib
from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from paddock_tui.records.paths import Path, parse
from paddock_tui.store import lines
from paddock_tui.store.lines import BOM, Layout, scan, split_lines
from tests.every import every
from tests.examples import examples
from tests.sample import FILES
from tests.store.documents import Document, documents, paths

TEXT = '''\
# file
name = "x"   # note
a.b = 1
a."c.d" = { e = 1, f.g = [1,
  2] , h = {} }

[t]   # header
 text = """
[no]
key = 1
"""
list = [ # ]
  "]", # "
]
# after

[ u . "v w" ]
"its" = 1
'''

LINES = {
    "name": 2,
    "a": 3,
    "a.b": 3,
    'a."c.d"': 4,
    'a."c.d".e': 4,
    'a."c.d".f': 4,
    'a."c.d".f.g': 4,
    'a."c.d".h': 5,
    "t": 7,
    "t.text": 8,
    "t.list": 12,
    "t.nothing": 7,
    "t.text.deeper": 8,
    "u": 17,
    'u."v w"': 17,
    'u."v w".its': 18,
    "nowhere": None,
    "no": None,
    "key": None,
}


def keys(path: str) -> Path:
    found = parse(path)
    assert found is not None
    return found


@every(("path", "line"), LINES.items(), ids=LINES)
@every("dress", ["\n", "\r\n", "\ufeff"], ids=["lf", "crlf", "bom"])
def test_every_path_has_its_line(path: str, line: int | None, dress: str) -> None:
    text = dress + TEXT if dress == "\ufeff" else TEXT.replace("\n", dress)

    assert scan(text).line_of(keys(path)) == line


def test_a_value_spans_its_lines_and_its_characters() -> None:
    layout = scan(TEXT)

    entry = layout.entries["t", "list"]
    assert (entry.first, entry.last) == (11, 13)
    assert TEXT[entry.start : entry.end] == '[ # ]\n  "]", # "\n]'
    assert (layout.entries["t", "text"].first, layout.entries["t", "text"].last) == (7, 10)


def test_a_table_knows_its_header_and_its_last_value() -> None:
    heads = scan(TEXT).heads

    assert {path: (head.line, head.last) for path, head in heads.items()} == {
        (): (-1, 4),
        ("t",): (6, 13),
        ("u", "v w"): (16, 17),
    }


def test_an_own_header_wins_over_a_sub_table_that_stands_earlier() -> None:
    assert scan("[a.b]\n[a]\n").line_of(("a",)) == 2


def test_comments_and_blank_lines_are_told_from_text_inside_values() -> None:
    layout = scan('# one\n\na = """\n# two\n\n"""\n  # three\n')

    assert [line for line in range(7) if layout.is_comment(line)] == [0, 6]
    assert [line for line in range(7) if layout.is_blank(line)] == [1]


def test_elements_of_arrays_of_tables_are_counted() -> None:
    layout = scan("[[p]]\nn = 1\n[p.q]\nx = 1\n[[p]]\nn = 2\n[[p.r]]\nz = 1\n")

    assert layout.line_of(("p",)) == 1
    assert layout.line_of(("p", "0", "q", "x")) == 4
    assert layout.line_of(("p", "1", "n")) == 6
    assert layout.line_of(("p", "1", "r", "0", "z")) == 8


@every(
    "value",
    [
        '""',
        '""""""',
        "''''''",
        '"""a"b""c"""',
        '"""a"""""',
        "'''a'''''",
        r'"""\""""',
        r'"\\"',
        "1979-05-27 07:32:00",
    ],
)
def test_strings_end_where_the_parser_ends_them(value: str) -> None:
    text = f"a = {value} # end\nb = 1\n"
    assert "b" in tomllib.loads(text)

    entry = scan(text).entries["a",]

    assert text[entry.start : entry.end] == value


def test_deep_nesting_costs_no_stack() -> None:
    deep = "[" * 5000 + "]" * 5000
    tables = "{a=" * 5000 + "1" + "}" * 5000

    layout = scan(f"x = {deep}\ny = {tables}\nz = 1\n")

    assert layout.line_of(("z",)) == 3


@examples(50)
@example('"\\q" = 1')
@given(st.text(st.sampled_from("a.=[]{}\"'\\,# \n\r\ufeff1"), max_size=30))
def test_text_that_is_not_toml_is_no_error(text: str) -> None:
    assert len(scan(text).lines) == text.count("\n") + (not text.endswith("\n") and text != "")


def test_lines_are_split_at_line_feeds_only() -> None:
    assert split_lines("a\u2028b\r\nc\x0cd\n\ne") == ("a\u2028b\r\n", "c\x0cd\n", "\n", "e")
    assert split_lines("") == ()


@examples(50)
@given(documents())
def test_the_map_holds_exactly_the_values_that_the_parser_finds(document: Document) -> None:
    text = document.text.removeprefix("\ufeff")
    layout = scan(text)

    leaves = {path for path, value in paths(tomllib.loads(text)) if not isinstance(value, Mapping)}

    assert {path for path, entry in layout.entries.items() if not entry.opens} == leaves


@examples(50)
@given(documents())
def test_the_characters_of_every_value_parse_to_that_value(document: Document) -> None:
    text = document.text.removeprefix("\ufeff")
    layout = scan(text)
    values: dict[Path, Any] = dict(paths(tomllib.loads(text)))

    for path, entry in layout.entries.items():
        alone = tomllib.loads(f"value = {text[entry.start : entry.end]}")["value"]
        assert repr(alone) == repr(values[path])
        assert text.count("\n", 0, entry.end) == entry.last
        assert layout.line_of(path) == entry.first + 1


def slowly(text: str) -> Layout:
    """Map a text statement by statement, no line being read by itself."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(lines, "_meanings", {})
        patch.setattr(lines, "_meaning", lambda _: lines._OTHER)
        return scan(text)


@examples(150)
@given(documents())
@example(Document(TEXT, (), ()))
def test_lines_read_by_themselves_mean_what_they_mean_as_statements(document: Document) -> None:
    for text in (document.text, BOM + document.text, document.text.replace("\n", "\r\n")):
        assert scan(text) == slowly(text)


def test_of_the_sample_every_line_is_mapped_alike_either_way() -> None:
    plain = 0
    for path in FILES.values():
        text = path.read_text(encoding="utf-8")
        assert scan(text) == slowly(text)
        plain += sum(lines._meaning(line) is not lines._OTHER for line in split_lines(text))

    assert plain > 1000


@pytest.mark.parametrize(
    "line",
    [
        'a = """',
        "a = '",
        "a = [",
        "a = {",
        "a.b = 1",
        "[[a]]",
        "[a",
        'a = "1" x',
        'a = "\\"',
        "a = 1, 2",
        "x",
    ],
)
def test_lines_that_may_be_more_are_read_as_statements(line: str) -> None:
    assert lines._meaning(line) is lines._OTHER
