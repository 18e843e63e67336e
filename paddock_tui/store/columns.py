"""Columns of many values as JSON that is read at once: numbers as their bytes, what recurs written once."""

import binascii
import sys
from array import array
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Any, TypeVar, cast

V = TypeVar("V")

_WIDTHS = {"B": 1 << 8, "H": 1 << 16, "I": 1 << 32, "Q": 1 << 64}
"""How numbers are held of which none is below zero: in so many bytes; and what is too large for that."""

_SIGNED = "q"
"""How others are held: in eight bytes."""


def packed(values: Sequence[int]) -> str:
    """Return numbers as text: how each is held, and their bytes. Raises OverflowError for one too large."""
    least, most = min(values, default=0), max(values, default=0)
    fits = (width for width, too_large in _WIDTHS.items() if least >= 0 and most < too_large)
    width = next(fits, _SIGNED)
    return width + binascii.b2a_base64(_little(array(width, values)).tobytes(), newline=False).decode()


def numbers(text: str) -> "array[int]":
    """Return the numbers of such a text. Raises ValueError, TypeError or LookupError for any other."""
    width = text[0]
    if width != _SIGNED and width not in _WIDTHS:
        raise ValueError(width)
    found: array[int] = array(width)
    found.frombytes(binascii.a2b_base64(text[1:], strict_mode=True))
    return _little(found)


def recurring(values: Sequence[Any]) -> dict[str, Any]:
    """Return plain values, of which few differ, with each of them once."""
    places = {one: place for place, one in enumerate(dict.fromkeys(values))}
    return {"of": list(places), "at": packed(list(map(places.__getitem__, values)))}


def each_of(given: dict[str, Any], make: Callable[[Any], V]) -> Iterator[V]:
    """Give the values of such, each made once. Raises ValueError, TypeError, KeyError or IndexError."""
    return map([make(one) for one in given["of"]].__getitem__, numbers(given["at"]))


def words(values: Iterable[object]) -> list[str]:
    """Return many texts. Raises TypeError for anything else among them."""
    held = list(values)
    if not {str}.issuperset(map(type, held)):
        raise TypeError(held)
    return cast(list[str], held)


def word(value: object) -> str:
    """Return a text. Raises TypeError for anything else."""
    if type(value) is not str:
        raise TypeError(value)
    return value


def _little(found: "array[int]") -> "array[int]":
    if sys.byteorder == "big":
        found.byteswap()
    return found
