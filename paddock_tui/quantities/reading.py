"""Reading a number and its unit: strictly from a file, leniently from the keyboard.

Nothing is evaluated: one number of at most 12 digits without exponent, then one unit name.
"""

import re
from decimal import Decimal

import attrs

from paddock_tui.quantities.lookup import choices, find, find_typed, nearest
from paddock_tui.quantities.quantity import Quantity
from paddock_tui.quantities.units import Unit

MOST_CHARACTERS = 48
MOST_DIGITS = 12

PRESSURE_BANDS = {
    "bar": (Decimal("0.7"), Decimal("3.5")),
    "psi": (Decimal(10), Decimal(50)),
    "kPa": (Decimal(70), Decimal(350)),
}
"""Where a bare tyre pressure, gauge, can only mean this unit. The bands do not overlap."""

_STRICT = re.compile(r"(-?[0-9]+(?:\.[0-9]+)?) ?([^\W\d_].*|°[CF]?|%)")
_TYPED = re.compile(r"([+−-]?)([0-9]*)(?:[.,]([0-9]*))?\s*(.*)", re.DOTALL)
_EXPONENT = re.compile(r"[eE][+-]?[0-9]")
_UNIT_START = re.compile(r"[^\W\d_]|[°%]")


EXAMPLE = "2.1 bar"
"""What a mend shows where nothing is known of the amount that is wanted."""


@attrs.frozen
class Unreadable:
    """A text that is not a quantity: what was found (cut when long), why not, and how to mend it."""

    found: str
    why: str
    mend: str


@attrs.frozen
class _Pieces:
    """A text taken apart: the number in plain digits and the unit as it stands, which may be empty."""

    number: str
    unit: str


def parse(text: str, usual: str | None = None) -> Quantity | Unreadable:
    """Read a quantity as files hold it: number with a point, at most one space, the unit.

    The text is kept as written. `usual` is the unit that a mend adds to a bare number.
    """
    strict = _STRICT.fullmatch(text) if len(text) <= MOST_CHARACTERS else None
    if strict and (unit := find(strict[2])):
        return _made(text, strict[1], unit, text)
    typed = parse_typed(text, usual)
    if isinstance(typed, Unreadable):
        return typed
    return Unreadable(text, _why_not_strict(text, strict), f'write "{typed}"')


def parse_typed(text: str, bare_unit: str | None) -> Quantity | Unreadable:
    """Read a quantity as people type it, and give it its usual spelling ("2,1BAR" is "2.1 bar").

    A comma is a point; the space may be missing; the case of the unit does not matter, but a capital
    M is never a milli. A bare number takes `bare_unit`, and is unreadable where that is None.
    """
    pieces = _taken_apart(text)
    if isinstance(pieces, Unreadable):
        return pieces
    if pieces.unit:
        unit = find_typed(pieces.unit)
        return _made(text, pieces.number, unit) if unit else _unknown(text, pieces)
    unit = find(bare_unit) if bare_unit else None
    if unit is None:
        return Unreadable(text, "no unit", "write the unit after the number")
    return _made(text, pieces.number, unit)


def parse_pressure(text: str) -> Quantity | Unreadable:
    """Read a typed tyre pressure; a bare number takes the one unit in whose band it lies.

    Outside every band nothing is guessed: the answer asks for the unit.
    """
    pieces = _taken_apart(text)
    if isinstance(pieces, Unreadable):
        return pieces
    if pieces.unit:
        read = parse_typed(text, None)
        if isinstance(read, Quantity) and read.dimension != "pressure":
            return Unreadable(text, f"{read.unit} is {read.dimension}, not pressure", "write bar, psi or kPa")
        return read
    for spelling, (low, high) in PRESSURE_BANDS.items():
        if low <= Decimal(pieces.number) <= high:
            return parse_typed(text, spelling)
    bands = ", ".join(f"{spelling} {low} to {high}" for spelling, (low, high) in PRESSURE_BANDS.items())
    units = " or ".join(f'"{pieces.number} {spelling}"' for spelling in PRESSURE_BANDS)
    return Unreadable(text, f"no unit, and in no band ({bands})", f"write {units}")


def _taken_apart(text: str) -> _Pieces | Unreadable:
    """Take a typed text apart without looking at what the unit means."""
    if len(text) > MOST_CHARACTERS:
        short = f"{text[: MOST_CHARACTERS - 1]}…"
        return Unreadable(short, f"longer than {MOST_CHARACTERS} characters", "write one number and its unit")
    match = _TYPED.fullmatch(text.strip())
    if match is None or not (match[2] or match[3]):
        return Unreadable(text, "no number", f'write a number and its unit, such as "{EXAMPLE}"')
    sign, whole, part, unit = match.groups()
    if _EXPONENT.match(unit):
        return Unreadable(text, "a number with an exponent", "write the number out")
    if unit and not _UNIT_START.match(unit):
        return Unreadable(text, "not one number and one unit", f'write it such as "{EXAMPLE}"')
    number = f"{'' if sign in {'', '+'} else '-'}{whole or '0'}{f'.{part}' if part else ''}"
    return _Pieces(number, unit)


def _made(found: str, number: str, unit: Unit, text: str | None = None) -> Quantity | Unreadable:
    """Make the quantity, or say what is wrong with its number."""
    if sum(map(str.isdigit, number)) > MOST_DIGITS:
        return Unreadable(found, f"more than {MOST_DIGITS} digits", "round the number")
    value = Decimal(number)
    # A consumption of nothing has no reciprocal, and no engine has it.
    if unit.dimension == "consumption" and value <= 0:
        return Unreadable(found, "a consumption that is not above zero", "write the measured one")
    quantity = Quantity(value, unit.spelling)
    return quantity if text is None else attrs.evolve(quantity, text=text)


def _unknown(text: str, pieces: _Pieces) -> Unreadable:
    if words := choices(pieces.unit):
        return Unreadable(
            text, f'"{pieces.unit}" differs between countries', f"write it in {' or '.join(words)}"
        )
    near = nearest(pieces.unit)
    mend = (
        f'did you mean "{pieces.number} {near}"?' if near else "write a unit such as bar, C, kg, mm or km/h"
    )
    return Unreadable(text, f'unknown unit "{pieces.unit}"', mend)


def _why_not_strict(text: str, strict: re.Match[str] | None) -> str:
    if "," in text:
        return "a comma in the number"
    if strict:
        return f'unknown unit "{strict[2]}"'
    if not any(map(str.isalpha, text)) and "%" not in text and "°" not in text:
        return "no unit"
    return "not spaced or spelt as in a file"
