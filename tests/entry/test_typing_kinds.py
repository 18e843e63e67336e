"""How every declared value is typed: its kind, and that no plain letter is a command where letters type."""

import string

from paddock_tui.entry.row_typing import MEANS, TAKES_LETTERS, TypingKind
from paddock_tui.entry.typing_kinds import second_possible, typing_kind
from paddock_tui.records.fields import declared
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.shapes import Flag, LevelSetting, Number, Text, Whole, WordList
from tests.every import every

DECLARED = [(kind, one) for kind, record in CLASSES.items() for one in declared(record)]


def test_every_declared_value_has_a_kind_and_words_and_answers_take_letters() -> None:
    found: dict[TypingKind, int] = {}
    for _, one in DECLARED:
        kind = typing_kind(one.shape)
        found[kind] = found.get(kind, 0) + 1
        if isinstance(one.shape, Text | WordList | Flag):
            assert kind in TAKES_LETTERS, one.path

    assert set(found) == set(MEANS)


def test_a_digit_is_never_the_whole_answer_where_words_go() -> None:
    for kind, one in DECLARED:
        said = typing_kind(one.shape)
        if said in TAKES_LETTERS:
            assert not any(second_possible(one.shape, digit) for digit in string.digits), (kind, one.path)
        elif said in ("one digit", "two digits"):
            low, high = one.shape.low, one.shape.high  # type: ignore[attr-defined]
            assert 0 <= low <= high <= (9 if said == "one digit" else 99), (kind, one.path)


@every(
    ("shape", "open_after"),
    [
        (LevelSetting(0, 10, can_be_off=False), "1"),
        (LevelSetting(1, 7, can_be_off=True), ""),
        (Number(0, 24, step=1), "12"),
        (Number(0, 24, step=0.5), ""),
        (Number(-5, 20, step=1), ""),
        (Whole(0, 99), "123456789"),
        (Whole(0, 200), ""),
    ],
)
def test_the_first_of_two_digits_stays_open_while_a_second_one_is_possible(
    shape: LevelSetting | Number | Whole, open_after: str
) -> None:
    assert "".join(digit for digit in string.digits if second_possible(shape, digit)) == open_after
