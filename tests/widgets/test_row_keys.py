"""What a key asks of a row: letters type, answer or act by the kind of its value, whatever is drawn."""

import string

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.entry.row_typing import TypingKind
from paddock_tui.pages.rows import Row
from paddock_tui.widgets.row_keys import Escaped, asked_of, goes_on, letter_on
from tests.every import every
from tests.examples import examples

KINDS: tuple[TypingKind, ...] = ("words", "yes or no", "one digit", "two digits", "other", "")
PLAIN = string.ascii_letters


@every("kind", KINDS)
def test_letters_are_commands_only_where_no_value_is_typed_with_them(kind: TypingKind) -> None:
    row = Row("row", typing=kind)

    assert row.takes_letters is (kind in ("words", "yes or no"))
    assert not Row("row", typing=kind, shut="fixed").takes_letters
    assert not Row("row", typing=kind, kind="link").takes_letters


def test_no_plain_letter_is_left_to_the_commands_where_letters_type() -> None:
    words, flag = Row("note", typing="words"), Row("scrubbed", typing="yes or no")

    assert {letter_on(words, letter) for letter in PLAIN} == {"types"}
    assert {letter: letter_on(flag, letter) for letter in "yYnNu"} == {
        "y": "yes",
        "Y": "yes",
        "n": "no",
        "N": "no",
        "u": "neither",
    }
    assert all(letter_on(flag, letter) for letter in PLAIN)
    assert all(letter_on(words, sign) == "types" for sign in "-+=")


@every(
    ("keys", "parts"),
    [
        ([("escape", "\x1b"), ("u", "u")], ["armed", "command"]),
        ([("escape", "\x1b"), ("escape", "\x1b")], ["armed", "command"]),
        ([("escape", "\x1b"), ("left_square_bracket", "["), ("B", "B")], ["armed", "swallowed", "swallowed"]),
        ([("escape", "\x1b"), ("O", "O"), ("A", "A"), ("u", "u")], ["armed", "swallowed", "swallowed", ""]),
        ([("escape", "\x1b"), ("H", "H")], ["armed", ""]),
        ([("escape", "\x1b"), ("down", ""), ("u", "u")], ["armed", "", ""]),
    ],
)
def test_alt_and_a_small_letter_are_a_command_and_a_split_arrow_is_nothing(
    keys: list[tuple[str, str]], parts: list[str]
) -> None:
    escaped = Escaped()

    assert [escaped.part(*key, arms=True) for key in keys] == parts


@examples(100)
@given(st.sampled_from(KINDS), st.sampled_from([*string.printable]))
def test_a_drawn_pair_of_kind_and_key_either_types_or_asks_or_is_left_to_the_commands(
    kind: TypingKind, key: str
) -> None:
    row = Row("row", typing=kind)
    meant = letter_on(row, key) if row.takes_letters else ""
    asked = asked_of(row, key, key)

    if row.takes_letters and key.isalpha():
        assert meant
        assert asked is None
    if key.isdecimal():
        assert not meant
        assert asked is not None
        assert goes_on(key, key)
