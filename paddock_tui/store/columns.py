"""Columns of many values as JSON that is read at once: numbers as their bytes, what recurs written once."""

import binascii
import sys
from array import array
from collections.abc import Callable, Iterable, Sequence
from typing import Any, Literal, TypeVar

V = TypeVar("V")

Width = Literal["B", "I", "q", "Q"]
"""How a number is held: in a byte, in four, in eight with its sign or without."""


def packed(values: Iterable[int], width: Width) -> str:
    """Return numbers as text. Raises OverflowError for one that is too large."""
    return binascii.b2a_base64(_little(array(width, values)).tobytes(), newline=False).decode()


def numbers(text: str, width: Width) -> "array[int]":
    """Return the numbers of such a text. Raises ValueError or TypeError for any other."""
    found: array[int] = array(width)
    found.frombytes(binascii.a2b_base64(text, strict_mode=True))
    return _little(found)


def recurring(values: Sequence[Any]) -> dict[str, Any]:
    """Return plain values, of which few differ, with each of them once."""
    places = {one: place for place, one in enumerate(dict.fromkeys(values))}
    return {"of": list(places), "at": packed(map(places.__getitem__, values), "I")}


def each_of(given: dict[str, Any], make: Callable[[Any], V]) -> list[V]:
    """Return the values of such, each made once. Raises ValueError, TypeError, KeyError or IndexError."""
    return list(map([make(one) for one in given["of"]].__getitem__, numbers(given["at"], "I")))


def word(value: object) -> str:
    """Return a text. Raises TypeError for anything else."""
    if type(value) is not str:
        raise TypeError(value)
    return value


def _little(found: "array[int]") -> "array[int]":
    if sys.byteorder == "big":
        found.byteswap()
    return found
