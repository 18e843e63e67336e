"""Bare numbers: counts, ratios, scores, and adjuster values in their own unit."""

import math
import re
from decimal import Decimal
from typing import Any

from paddock_tui.quantities import EXAMPLE, Unreadable, parse_bare
from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes.base import SOME, JsonSchema, Shape, found_words
from paddock_tui.records.shown_words import meant, shown

TWICE = "the same word twice"
_MOST = 10**12
"""No number here is larger."""

NUMBER = re.compile(r"[+-]?\d{1,12}(?:[.,]\d{1,12})?")


_RANGE = (
    rf"({NUMBER.pattern})(?:\s*(?:to|\.\.)\s*|\s+[-\u2013\u2212]\s+|[-\u2013\u2212])({NUMBER.pattern})"
    r"(?:\s*[a-z]+)?"
)
"""A range as screens and riders write it: 1-7, 1 to 7, 1..7; its unit may follow."""


def read_number(text: str) -> float | int | None:
    """Read a plain number, comma or point; None where it is not one. Never evaluates anything."""
    typed = text.strip()
    if not NUMBER.fullmatch(typed):
        return None
    if "," in typed or "." in typed:
        return float(typed.replace(",", "."))
    return int(typed)


def _typed(shape: Shape[Any], text: str, unit: str, most: float) -> float | int | InputError:
    """Read a number typed on a row, its unit perhaps behind it; a whole one comes as an int."""
    found = parse_bare(text, unit, most)
    if isinstance(found, Unreadable):
        mend = "" if EXAMPLE in found.mend else found.mend
        return InputError(found=f"{found_words(text)} ({found.why})", expected=shape.expected, mend=mend)
    return int(found) if found.as_tuple().exponent == 0 else float(found)


def _sized(value: float) -> bool:
    """Return whether a number is of a size that anything here can be; NaN and infinity are not."""
    return abs(value) <= _MOST


def show_number(value: float) -> str:
    """Write a number without a needless fraction."""
    if isinstance(value, float) and value.is_integer() and abs(value) < 1e15:
        return str(int(value))
    # Every digit is shown, never an exponent, so that what is shown is read back as the same number.
    return f"{Decimal(repr(value)):f}" if isinstance(value, float) else str(value)


class Whole(Shape[int]):
    """A whole number. With `strict` one outside the range cannot be read (scores); else a rule judges it."""

    def __init__(self, low: int, high: int, *, unit: str = "", strict: bool = False) -> None:
        self.low, self.high, self.unit, self.strict = low, high, unit, strict

    @property
    def expected(self) -> str:
        unit = f" ({self.unit})" if self.unit else ""
        return f"a whole number from {self.low} to {self.high}{unit}"

    def schema(self) -> JsonSchema:
        far = self.strict
        return {
            "type": "integer",
            "minimum": self.low if far else -_MOST,
            "maximum": self.high if far else _MOST,
        }

    def load(self, raw: object) -> int | InputError:
        if isinstance(raw, bool) or not isinstance(raw, int):
            number = read_number(raw) if isinstance(raw, str) else None
            return self.wrong(raw, f"write {number}, without quotes" if isinstance(number, int) else "")
        if (self.strict and not self.low <= raw <= self.high) or abs(raw) > _MOST:
            return self.wrong(raw)
        return raw

    def read(self, text: str) -> int | InputError:
        number = _typed(self, text, self.unit, self.high)
        if isinstance(number, float):
            return self.wrong(text)
        return number if isinstance(number, InputError) else self.load(number)

    def dump(self, value: int) -> int:
        return value

    def example(self) -> int:
        return self.low

    def step(self, value: int, by: int) -> int:
        return max(self.low, min(self.high, value + by))

    def band(self) -> tuple[float, float, str]:
        return self.low, self.high, self.unit


class Number(Shape[float]):
    """A number with a fraction, in a unit that the row states."""

    def __init__(self, low: float, high: float, *, unit: str = "", step: float = 1.0) -> None:
        self.low, self.high, self.unit, self.increment = low, high, unit, step

    @property
    def expected(self) -> str:
        unit = f" ({self.unit})" if self.unit else ""
        return f"a number from {show_number(self.low)} to {show_number(self.high)}{unit}"

    def schema(self) -> JsonSchema:
        return {"type": "number", "minimum": -_MOST, "maximum": _MOST}

    def load(self, raw: object) -> float | InputError:
        if isinstance(raw, bool) or not isinstance(raw, int | float):
            number = read_number(raw) if isinstance(raw, str) else None
            return self.wrong(
                raw, f"write {show_number(number)}, without quotes" if number is not None else ""
            )
        if not _sized(raw):
            return self.wrong(raw)
        return raw

    def read(self, text: str) -> float | InputError:
        number = _typed(self, text, self.unit, self.high)
        return number if isinstance(number, InputError) else self.load(number)

    def dump(self, value: float) -> float:
        return value

    def example(self) -> float:
        return tidy(self.low + self.increment)

    def show(self, value: float) -> str:
        return show_number(value)

    def step(self, value: float, by: int) -> float:
        """Go to the next multiple of the step; from between two, to the near one in that direction."""
        steps = (value - self.low) / self.increment
        near = round(steps)
        if abs(steps - near) > 1e-9:
            near = math.floor(steps) if by > 0 else math.ceil(steps)
        moved = self.low + (near + by) * self.increment
        return tidy(max(self.low, min(self.high, moved)))

    def band(self) -> tuple[float, float, str]:
        return self.low, self.high, self.unit


class Signed(Number):
    """A number that is written with its sign, since it stands on either side of nothing."""

    def show(self, value: float) -> str:
        return f"+{show_number(value)}" if value > 0 else show_number(value)


def tidy(value: float) -> float:
    """Round off binary dust; give a whole number as an int so that the file shows it as one."""
    rounded = round(value, 6)
    return int(rounded) if float(rounded).is_integer() else rounded


class Series(Shape[tuple[float, ...]]):
    """An array of numbers, at least `least` and at most `most` of them."""

    def __init__(self, least: int, most: int, what: str, *, whole: bool = False) -> None:
        self.least, self.most, self.what, self.whole = least, most, what, whole

    @property
    def expected(self) -> str:
        return self.what

    def schema(self) -> JsonSchema:
        kind = "integer" if self.whole else "number"
        item = {"type": kind, "minimum": -_MOST, "maximum": _MOST}
        return {"type": "array", "items": item, "minItems": self.least, "maxItems": self.most}

    def load(self, raw: object) -> tuple[float, ...] | InputError:
        if not isinstance(raw, list):
            return self.wrong(raw, f"write [{found_words(raw)}]" if isinstance(raw, int | float) else "")
        if not self.least <= len(raw) <= self.most:
            count = "1 number" if len(raw) == 1 else f"{len(raw)} numbers"
            return InputError(found=count, expected=self.expected)
        for item in raw:
            right = isinstance(item, int) if self.whole else isinstance(item, int | float)
            if not right or isinstance(item, bool) or not _sized(item):
                return self.wrong(item)
        return tuple(raw)

    def read(self, text: str) -> tuple[float, ...] | InputError:
        typed = text.strip().strip("[]").strip()
        ends = re.fullmatch(_RANGE, typed, re.IGNORECASE) if self.most == 2 else None
        pieces = list(ends.groups()) if ends else re.split(r"\s*;\s*|\s+|,\s+", typed)
        numbers = [read_number(piece) for piece in pieces]
        if any(number is None for number in numbers):
            return self.wrong(text, "put spaces between the numbers")
        return self.load(numbers)

    def dump(self, value: tuple[float, ...]) -> list[str | int | float | bool]:  # type: ignore[override]
        return list(value)

    def example(self) -> tuple[float, ...]:
        return tuple(range(1, min(3, self.most) + 1))

    def show(self, value: tuple[float, ...]) -> str:
        between = " to " if self.most == 2 else " "
        return between.join(show_number(number) for number in value)


class WordList(Shape[tuple[str, ...]]):
    """An array of words: any that the owner names, or out of a list."""

    def __init__(self, what: str, choices: tuple[str, ...] = ()) -> None:
        self.what, self.choices = what, choices

    @property
    def expected(self) -> str:
        return f"{self.what} (out of {', '.join(self.choices)})" if self.choices else self.what

    def schema(self) -> JsonSchema:
        word: JsonSchema = (
            {"enum": list(self.choices)} if self.choices else {"type": "string", "pattern": SOME}
        )
        return {"type": "array", "items": word, "uniqueItems": True}

    def load(self, raw: object) -> tuple[str, ...] | InputError:
        if not isinstance(raw, list):
            return self.wrong(raw, f'write ["{raw}"]' if isinstance(raw, str) else "")
        for item in raw:
            if not isinstance(item, str) or not item.strip() or (self.choices and item not in self.choices):
                return self.wrong(item)
        if len(set(raw)) != len(raw):
            return InputError(found=TWICE, expected=self.expected)
        return tuple(raw)

    def read(self, text: str) -> tuple[str, ...] | InputError:
        pieces = [piece.strip() for piece in text.split(",") if piece.strip()]
        found = self.load([self._meant(piece) for piece in pieces])
        if isinstance(found, InputError) and self.choices and found.found != TWICE:
            return InputError(found.found, f"{self.what} (out of {', '.join(self.words())})")
        return found

    def _meant(self, typed: str) -> str:
        """Return the choice that a start of it means, where it can be one alone; else what was typed."""
        found = meant(typed, self.choices)
        return found if isinstance(found, str) else typed

    def dump(self, value: tuple[str, ...]) -> list[str | int | float | bool]:  # type: ignore[override]
        return list(value)

    def example(self) -> tuple[str, ...]:
        return self.choices[:2] or ("calm", "firm")

    def show(self, value: tuple[str, ...]) -> str:
        return ", ".join(map(shown, value)) if self.choices else ", ".join(value)

    def words(self) -> tuple[str, ...]:
        return tuple(map(shown, self.choices))
