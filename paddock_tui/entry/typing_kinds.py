"""Of which kind the values of a field are when they are typed on its row, and when what is typed is whole."""

import functools
import re
from collections.abc import Sequence
from decimal import Decimal
from typing import Any

from paddock_tui.entry.row_typing import TypingKind
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

COUNTED: tuple[TypingKind, ...] = ("score", "one digit", "two digits")
"""The kinds whose digits are set at once, so that a unit may still follow them."""

_PLACES = {"bar": 2, "psi": 1, "kPa": 0, "l": 1, "US gal": 1, "imp gal": 1}
"""How many of three digits stand behind the point, by unit."""


def typing_kind(shape: Shape[Any]) -> TypingKind:
    """Return how values of a shape are typed."""
    return _of_all(type(shape)) or _of_one(shape)


@functools.cache
def _of_all(of: type[Shape[Any]]) -> TypingKind | None:
    """Return how all shapes of a class are typed; None where it depends on the shape."""
    if issubclass(of, Flag):
        return "yes or no"
    if issubclass(of, Text | WordList | Series | Bounds | OffValue) or of is AnySetting:
        return "words"
    if issubclass(of, Word | WordSetting | Named | Reference):
        return "choice"
    if issubclass(of, TimeOfDay | DateCode):
        return "four digits"
    return None


def _of_one(shape: Shape[Any]) -> TypingKind:
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
