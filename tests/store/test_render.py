"""Every value of a record can be written, and reads back as the same value of the same type."""

import datetime as dt
import tomllib
import unicodedata
from typing import NoReturn

import pytest
from hypothesis import given

from paddock_tui.records.edits import Value
from paddock_tui.store.data import same
from paddock_tui.store.render import RenderError, render, render_inline, render_table
from tests.every import every
from tests.examples import examples
from tests.store.documents import TABLE_VALUES, WRITABLE

WRITTEN = {
    '"2.10 bar"': "2.10 bar",
    r'"a \"b\" \\ c"': 'a "b" \\ c',
    r'"\t\n\r\u001b\u007f\u009b"': "\t\n\r\x1b\x7f\x9b",
    '"12 °C · é"': "12 °C · é",
    "6.5": 6.5,
    "2.0": 2.0,
    "1e+16": 1e16,
    "-3": -3,
    "true": True,
    "2026-05-16": dt.date(2026, 5, 16),
    "10:40:00": dt.time(10, 40),
    "2026-05-16T10:40:00": dt.datetime(2026, 5, 16, 10, 40),
    '[0, "x", 1.5]': [0, "x", 1.5],
    "[]": (),
}


@every(("text", "value"), WRITTEN.items(), ids=WRITTEN)
def test_values_are_written_plainly(text: str, value: Value) -> None:
    assert render(value) == text


@every(
    "value",
    [None, object(), float("nan"), {"a": 1}, [[1]], b"x", "\udc80"],
    ids=["none", "object", "nan", "table", "nested", "bytes", "surrogate"],
)
def test_what_records_never_hold_cannot_be_written(value: object) -> None:
    with pytest.raises(RenderError):
        render(value)


@examples(50)
@given(WRITABLE)
def test_a_written_value_reads_back_the_same(value: Value) -> None:
    text = render(value)

    assert "\n" not in text
    assert same(tomllib.loads(f"a = {text}")["a"], value)


def test_a_text_without_anything_to_escape_is_not_looked_at_letter_by_letter(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def letter(_: str) -> NoReturn:
        raise AssertionError("letter by letter")

    monkeypatch.setattr(unicodedata, "category", letter)

    assert render("standing water") == '"standing water"'


@examples(25)
@given(TABLE_VALUES)
def test_a_written_table_reads_back_the_same_under_headers_and_inline(value: dict[str, object]) -> None:
    headed = "\n".join(render_table(("t",), value))

    assert same(tomllib.loads(headed), {"t": value})
    assert same(tomllib.loads(f"t = {render_inline(value)}"), {"t": value})


def test_what_cannot_be_written_is_named() -> None:
    with pytest.raises(RenderError, match=r"^no way to write b'x'$"):
        render_inline(b"x")
