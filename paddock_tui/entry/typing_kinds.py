"""How a value is typed on its row, by its kind: whether letters type, answer, or stay commands."""

from typing import Any, Literal

from paddock_tui.records.shapes import (
    AnySetting,
    Flag,
    LevelSetting,
    Number,
    Series,
    Shape,
    Text,
    Whole,
    WordList,
)

TypingKind = Literal["", "words", "yes or no", "one digit", "two digits", "other"]
"""`words`: a text or a list, begun by any letter. `yes or no`: answered by y, n or space. `one digit` is set
at once, `two digits` stays open for its second. `other`: figures with units, times, and choices; digits and
enter open their editor, and letters are commands there, as on the levels."""

TAKES_LETTERS: tuple[TypingKind, ...] = ("words", "yes or no")
"""The kinds on which no plain letter is a command."""


def typing_kind(shape: Shape[Any]) -> TypingKind:
    """Return how values of a shape are typed."""
    if isinstance(shape, Flag):
        return "yes or no"
    if isinstance(shape, Text | WordList | Series) or type(shape) is AnySetting:
        return "words"
    if isinstance(shape, Number) and not float(shape.increment).is_integer():
        return "other"
    if isinstance(shape, Whole | LevelSetting | Number) and shape.low >= 0:
        return "one digit" if shape.high <= 9 else "two digits" if shape.high <= 99 else "other"
    return "other"


def second_possible(shape: Shape[Any], digit: str) -> bool:
    """Return whether a digit may be the first of two on a field: none begins with a nought."""
    high = getattr(shape, "high", 0)
    return typing_kind(shape) == "two digits" and 0 < int(digit) * 10 <= high
