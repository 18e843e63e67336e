"""How a value is typed on its row, by its kind: what each key does there, and when what is typed is whole."""

import re
from collections.abc import Mapping, Sequence
from decimal import Decimal
from typing import Any, Literal

from paddock_tui.entry.typed import is_tyre_pressure
from paddock_tui.records.common import Units
from paddock_tui.records.electronics import Bounds, OffValue
from paddock_tui.records.shapes import (
    Amount,
    AnySetting,
    DateCode,
    Flag,
    LevelSetting,
    Named,
    Number,
    Reference,
    Series,
    Shape,
    Text,
    TimeOfDay,
    Whole,
    Word,
    WordList,
    WordSetting,
)

TypingKind = Literal[
    "",
    "words",
    "yes or no",
    "choice",
    "score",
    "one digit",
    "two digits",
    "three digits",
    "four digits",
    "other",
]
"""How a value is typed; empty: a row without one. `other`: figures with units, dates, laps."""

KeyKind = Literal[
    "letter", "y or n", "digit", "space", "sign", "sideways", "up or down", "backspace", "enter", "alt+letter"
]
"""The keys that mean something on a row, by kind. `sign` is minus, plus and equals."""

Meaning = Literal["edits", "answers", "moves", "acts", "nothing"]
"""What a key does on a row: open its editor, change its value at once, move the cursor, run a command."""


_USUAL: Mapping[KeyKind, Meaning] = {
    "letter": "acts",
    "y or n": "acts",
    "digit": "edits",
    "space": "nothing",
    "sign": "answers",
    "sideways": "answers",
    "up or down": "moves",
    "backspace": "answers",
    "enter": "edits",
    "alt+letter": "acts",
}
"""What keys do where a kind has no other meaning for them."""

MEANS: Mapping[TypingKind, Mapping[KeyKind, Meaning]] = {
    "words": {**_USUAL, "letter": "edits", "y or n": "edits", "sign": "edits", "sideways": "nothing"},
    "yes or no": {
        **_USUAL,
        "letter": "nothing",
        "y or n": "answers",
        "digit": "nothing",
        "space": "answers",
    },
    "choice": {**_USUAL, "space": "answers"},
    "score": {**_USUAL, "digit": "answers"},
    "one digit": {**_USUAL, "digit": "answers", "space": "answers"},
    "two digits": {**_USUAL, "digit": "answers", "space": "answers"},
    "three digits": _USUAL,
    "four digits": _USUAL,
    "other": {**_USUAL, "space": "answers"},
}
"""What each kind of key does on a row of each kind of value; of two digits the first stays open."""

SAID: Mapping[TypingKind, tuple[str, str]] = {
    "words": ("text, list", "its first letter, digit or sign opens it; enter keeps it"),
    "yes or no": ("yes or no", "y, n or space; no other letter does anything"),
    "choice": ("one of few", "its number and enter, or enter and a start that fits one alone"),
    "score": ("score 1 to 5", "one digit, and on to the next row that is open"),
    "one digit": ("level to 9", "one digit, at once; + and - one on, space off and back"),
    "two digits": ("to 99", "`1_` waits for a second digit; any other key ends it"),
    "three digits": (
        "pressure, fuel",
        "238 is 2.38 bar, 345 is 34.5 psi, 065 is 6.5 l; it goes on",
    ),
    "four digits": ("time of day", "1341 goes on by itself; 13:41 and enter; a date code alike"),
    "other": ("other figures", "the first digit opens it; enter keeps it, with or without a unit"),
}
"""What the help says of each kind: what it is, and how it is typed."""

TAKES_LETTERS: tuple[TypingKind, ...] = tuple(kind for kind, by in MEANS.items() if by["letter"] != "acts")
"""The kinds on which no plain letter is a command."""

COUNTED: tuple[TypingKind, ...] = ("score", "one digit", "two digits")
"""The kinds whose digits are set at once, so that a unit may still follow them."""

_PLACES = {"bar": 2, "psi": 1, "kPa": 0, "l": 1, "US gal": 1, "imp gal": 1}
"""How many of three digits stand behind the point, by unit."""


def typing_kind(shape: Shape[Any]) -> TypingKind:
    """Return how values of a shape are typed."""
    if isinstance(shape, Flag):
        return "yes or no"
    if isinstance(shape, Text | WordList | Series | Bounds | OffValue) or type(shape) is AnySetting:
        return "words"
    if isinstance(shape, Word | WordSetting | Named | Reference):
        return "choice"
    if isinstance(shape, TimeOfDay | DateCode):
        return "four digits"
    if isinstance(shape, Amount) and (is_tyre_pressure(shape) or shape.unit == "l"):
        return "three digits"
    if isinstance(shape, Number) and not float(shape.increment).is_integer():
        return "other"
    if isinstance(shape, Whole) and shape.strict and shape.high <= 9:
        return "score"
    if isinstance(shape, Whole | LevelSetting | Number) and shape.low >= 0:
        return "one digit" if shape.high <= 9 else "two digits" if shape.high <= 99 else "other"
    return "other"


def choices_of(shape: Shape[Any]) -> tuple[str, ...]:
    """List the words that a number picks on a row of a shape; empty where none does."""
    return shape.words() if typing_kind(shape) == "choice" else ()


def chosen(choices: Sequence[str], text: str) -> str:
    """Return the word that a number picks, the first being 1; the text itself where it picks none."""
    typed = text.strip()
    if not typed.isdecimal() or not choices or typed in choices:
        return text
    return choices[int(typed) - 1] if 0 < int(typed) <= len(choices) else text


def numbered(choices: Sequence[str]) -> str:
    """Write choices with the numbers that pick them."""
    return "  ".join(f"{number} {one}" for number, one in enumerate(choices, 1))


def second_possible(shape: Shape[Any], digit: str) -> bool:
    """Return whether a digit may be the first of two on a field: none begins with a nought."""
    high = getattr(shape, "high", 0)
    return typing_kind(shape) == "two digits" and 0 < int(digit) * 10 <= high


def is_whole(kind: TypingKind, text: str) -> bool:
    """Return whether what was typed is all that a value of fixed length takes: three digits, or four."""
    length = {"three digits": 3, "four digits": 4}.get(kind, 0)
    return bool(length) and re.fullmatch(rf"[0-9]{{{length}}}", text) is not None


def whole_text(shape: Shape[Any], text: str, units: Units | None) -> str:
    """Write out what was typed on a row: three digits alone get their point and unit; else as typed."""
    if typing_kind(shape) != "three digits" or not is_whole("three digits", text):
        return text
    return pointed(text, unit_of_digits(shape, units))


def unit_of_digits(shape: Shape[Any], units: Units | None) -> str:
    """Return the unit that digits alone are in on a pressure or a volume of fixed length."""
    if is_tyre_pressure(shape):
        return (units.pressure if units is not None else None) or "bar"
    return (units.volume if units is not None else None) or "l"


def pointed(text: str, unit: str) -> str:
    """Write three digits with the point where a unit has it, and the unit: 238 is 2.38 bar."""
    return f"{Decimal(text).scaleb(-_PLACES.get(unit, 1))} {unit}"
