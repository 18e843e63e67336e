"""Escape and the key typed after it are two keys, however they arrive."""

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.widgets.escapes import Escapes
from tests.every import every
from tests.examples import examples


@every(
    ("text", "pieces"),
    [
        ("m", ["m"]),
        ("\x1bm", ["\x1b", "m"]),
        ("\x1b\r", ["\x1b", "\r"]),
        ("\x1b5", ["\x1b", "5"]),
        ("23\x1bm/x", ["23", "\x1b", "m/x"]),
        ("\x1b\x1b[A", ["\x1b", "\x1b[A"]),
        ("\x1b[B\x1b[B", ["\x1b[B\x1b[B"]),
        ("\x1bOP", ["\x1bOP"]),
        ("\x1b[200~a\x1bb\x1b[201~\x1bm", ["\x1b[200~a\x1bb\x1b[201~", "\x1b", "m"]),
    ],
)
def test_an_escape_that_is_a_key_stands_alone(text: str, pieces: list[str]) -> None:
    assert Escapes().split(text) == pieces


def test_an_escape_that_comes_last_is_held_until_what_follows_tells_what_it_is() -> None:
    arrow, letter, alone = Escapes(), Escapes(), Escapes()

    assert (arrow.split("4\x1b"), arrow.waits) == (["4"], True)
    assert (arrow.split("[B"), arrow.waits) == (["\x1b[B"], False)
    assert letter.split("\x1b") == []
    assert letter.split("m") == ["\x1b", "m"]
    assert alone.split("\x1b") == []
    assert alone.release() == "\x1b"
    assert alone.release() == ""


@examples(25)
@given(st.lists(st.text("ab\x1b[~O", max_size=6), max_size=6))
def test_nothing_is_lost_or_added_however_the_text_is_cut(parts: list[str]) -> None:
    escapes = Escapes()
    pieces = [piece for part in parts for piece in escapes.split(part)]

    assert "".join((*pieces, escapes.release())) == "".join(parts)
