"""What reaches the terminal, and how it is measured, cut and wrapped."""

import sys
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len
from wcwidth import wcwidth

from paddock_tui.text import _NARROW, ELLIPSIS, STAND_IN, clip, fold, printable, width
from tests.every import every
from tests.examples import examples

FORBIDDEN_CATEGORIES = {"Cc", "Cf", "Cs", "Zl", "Zp"}

any_text = st.text(st.characters(), max_size=60)
dirty_text = st.text(
    st.sampled_from(
        "ab 7é車\x00\t\n\r\x1b\x7f\x85\x9b\u200b\u200f\u202e\u2028\u2069\ufe0f\ufeff\udc80\U000e0041"
    ),
    max_size=40,
)


def nonprinting(text: str) -> list[str]:
    """Return what may not be in screen text, by Unicode's own categories."""
    return [
        char
        for char in text
        if unicodedata.category(char) in FORBIDDEN_CATEGORIES
        or ord(char) & 0xFFFE == 0xFFFE
        or 0xFDD0 <= ord(char) <= 0xFDEF
        or 0xFE00 <= ord(char) <= 0xFE0F
        or 0xE0000 <= ord(char) <= 0xE0FFF
    ]


def test_no_character_of_unicode_gets_past() -> None:
    everything = "".join(map(chr, range(sys.maxunicode + 1)))

    assert nonprinting(printable(everything)) == []


@every(
    ("dirty", "clean"),
    [
        pytest.param("\x1b]0;pwn\x07", "␛]0;pwn␇", id="terminal title"),
        pytest.param("\x1b[2J", "␛[2J", id="clear screen"),
        pytest.param("\x9b31m", f"{STAND_IN}31m", id="C1 introducer"),
        pytest.param("a\tb\nc", "a b c", id="gaps"),
        pytest.param("a\rb", "a␍b", id="carriage return"),
        pytest.param("\x7f", "␡", id="delete"),
        pytest.param("2.1\u202ebar", f"2.1{STAND_IN}bar", id="right-to-left override"),
        pytest.param("a\u200bb", f"a{STAND_IN}b", id="zero-width space"),
        pytest.param("\udc80", STAND_IN, id="lone surrogate"),
        pytest.param("a\u2028b", f"a{STAND_IN}b", id="line separator"),
        pytest.param("\U000e0041", STAND_IN, id="tag"),
        pytest.param("\uffff", STAND_IN, id="noncharacter"),
    ],
)
def test_each_danger_becomes_visible(dirty: str, clean: str) -> None:
    assert clean == printable(dirty)


@every("text", ["", "front 2.10 bar", "Übung → 21 °C · [red]x[/red]", "車検", "e\u0301té"])
def test_clean_text_stays(text: str) -> None:
    assert text == printable(text)


@given(any_text | dirty_text)
@examples(25)
def test_printable_text_is_clean_as_long_and_stays(text: str) -> None:
    once = printable(text)

    assert nonprinting(once) == []
    assert len(once) == len(text)
    assert printable(once) == once
    assert once.encode().decode() == once


def test_every_stand_in_is_one_cell_and_visible() -> None:
    stand_ins = set(printable("".join(map(chr, range(0x20))) + "\x7f\x80")) - {" "}

    assert {width(char) for char in stand_ins} == {1}
    assert all(char.isprintable() for char in stand_ins)


@every(
    ("text", "cells"),
    [("", 0), ("bar", 3), ("°C", 2), ("車検", 4), ("e\u0301", 1), ("ｱ", 1), ("Ａ", 2), ("한국", 4), ("─", 1)],
)
def test_width_in_cells(text: str, cells: int) -> None:
    assert cells == width(text)


def test_width_is_never_less_than_the_screen_is_drawn_by_in_all_of_unicode() -> None:
    sampled = [*range(0x20, 0x3400), *range(0x3400, 0x10000, 7), *range(0x10000, sys.maxunicode + 1, 61)]
    chars = [char for code in sampled if printable(char := chr(code)) == char]
    differing = [(char, width(char), cells) for char in chars if width(char) != (cells := cell_len(char))]
    wider = {char for char, ours, theirs in differing if ours > theirs}
    few = [char for char, _, _ in differing if not unlike(char)]

    assert len(chars) > 30_000
    assert [hex(ord(char)) for char, ours, theirs in differing if ours < theirs] == []
    assert few == []
    assert len(wider) < 100


def unlike(char: str) -> bool:
    """Tell what the two tables may see differently: a character of a newer Unicode, half a flag, a tone."""
    return unicodedata.category(char) == "Cn" or 0x1F1E6 <= ord(char) <= 0x1F3FF


@every("start", [0x20, 0xA0, 0x370, 0x2010, 0x2190, 0x2500])
def test_what_is_narrow_without_the_table_is_narrow_in_it(start: int) -> None:
    chars = [char for code in range(start, start + 0x300) if _NARROW.fullmatch(char := chr(code))]

    assert chars
    assert {wcwidth(char) for char in chars} == {1}


@every(
    ("text", "cells", "cut"),
    [
        ("rebound", 7, "rebound"),
        ("rebound", 6, "rebou…"),
        ("rebound", 1, "…"),
        ("rebound", 0, ""),
        ("rebound", -3, ""),
        ("車検場", 6, "車検場"),
        ("車検場", 5, "車検…"),
        ("車検場", 4, "車…"),
        ("e\u0301te\u0301s", 3, "e\u0301t…"),
    ],
)
def test_clip(text: str, cells: int, cut: str) -> None:
    assert cut == clip(text, cells)


@given(any_text | dirty_text, st.integers(0, 40))
@examples(25)
def test_clip_never_exceeds_and_keeps_the_beginning(text: str, cells: int) -> None:
    text = printable(text)
    cut = clip(text, cells)

    assert width(cut) <= cells
    assert text == cut or text.startswith(cut.removesuffix(ELLIPSIS))


def test_fold_wraps_at_spaces() -> None:
    expected = ["Little traction help for a", "damp track: 3 of 0-10."]

    assert expected == fold("Little traction help for a damp track: 3 of 0-10.", 26)


@every(
    ("text", "cells", "lines"),
    [
        ("", 10, []),
        (" \n ", 10, []),
        ("ab  cd\nef", 5, ["ab cd", "ef"]),
        ("abcdefgh", 3, ["abc", "def", "gh"]),
        ("x abcdefgh y", 4, ["x", "abcd", "efgh", "y"]),
        ("at 2.10\u00a0bar", 9, ["at", "2.10\u00a0bar"]),
        ("車検場", 3, ["車", "検", "場"]),
    ],
)
def test_fold_cases(text: str, cells: int, lines: list[str]) -> None:
    assert lines == fold(text, cells)


def test_fold_refuses_a_width_in_which_a_wide_character_cannot_stand() -> None:
    with pytest.raises(ValueError, match="cannot wrap to 1 cells"):
        fold("車", 1)


@given(any_text | st.text("ab 車", max_size=120), st.sampled_from([2, 7, 38, 78]))
@examples(25)
def test_fold_never_exceeds_and_loses_nothing(text: str, cells: int) -> None:
    text = printable(text)
    lines = fold(text, cells)

    assert max(map(width, lines), default=0) <= cells
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")
    assert "" not in lines


@given(st.lists(st.text("abcé車", min_size=1, max_size=9), max_size=30))
@examples(25)
def test_fold_keeps_words_that_fit_whole(words: list[str]) -> None:
    assert words == " ".join(fold(" ".join(words), 38)).split()
