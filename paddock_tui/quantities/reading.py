"""Reading a number and its unit: strictly from a file, leniently from the keyboard.

Nothing is evaluated: one number of at most 12 digits without exponent, then one unit name.
"""

import functools
import re
from decimal import Decimal

import attrs

from paddock_tui.quantities.hints import meant
from paddock_tui.quantities.lookup import choices, find, find_typed, known, nearest
from paddock_tui.quantities.numerals import MOST_DIGITS, take_number
from paddock_tui.quantities.quantity import Quantity
from paddock_tui.quantities.table import TABLE
from paddock_tui.quantities.units import Unit

MOST_CHARACTERS = 48

PRESSURE_BANDS = {
    "bar": (Decimal("0.7"), Decimal("3.5")),
    "psi": (Decimal(10), Decimal(50)),
    "kPa": (Decimal(70), Decimal(350)),
}
"""Where a bare tyre pressure, gauge, can only mean this unit. The bands do not overlap."""

_STRICT = re.compile(r"(-?[0-9]+(?:\.[0-9]+)?) ?([^\W\d_].*|°[CF]?|%)")
_EXPONENT = re.compile(r"[eE][+-]?[0-9]")
_UNIT_START = re.compile(r"[^\W\d_]|[°º˚℃℉%％\"″”#]|1/min\b")
_UNIT_FIRST = re.compile(r"([^\W\d_][^\d]*?)[\s:=]*([0-9]+(?:[.,][0-9]+)?)")


EXAMPLE = "2.1 bar"
"""What a mend shows where nothing is known of the amount that is wanted."""


@attrs.frozen
class Unreadable:
    """A text that is not a quantity: what was found (cut when long), why not, and how to mend it.

    `either` holds the two readings of a comma that may part thousands, the decimal one first.
    """

    found: str
    why: str
    mend: str
    either: tuple[Quantity, ...] = attrs.field(default=(), eq=False)


@attrs.frozen
class _Pieces:
    """A text taken apart: the number in plain digits and the unit as it stands, which may be empty.

    `thousands` is the other number that a comma in front of three digits may stand for.
    """

    number: str
    unit: str
    thousands: str | None = None


@functools.lru_cache(maxsize=8192)
def parse(text: str, usual: str | None = None, dimension: str | None = None) -> Quantity | Unreadable:
    """Read a quantity as files hold it: number with a point, at most one space, the unit.

    The text is kept as written. `usual` is the unit that a mend adds to a bare number, `dimension` what is
    wanted, so that no other unit is proposed.
    """
    strict = _STRICT.fullmatch(text) if len(text) <= MOST_CHARACTERS else None
    if strict and (unit := find(strict[2])):
        return _made(text, strict[1], unit, text)
    typed = parse_typed(text, usual, dimension)
    if isinstance(typed, Unreadable):
        return typed
    return Unreadable(text, _why_not_strict(text, strict), f'write "{typed}"')


def parse_typed(text: str, bare_unit: str | None, dimension: str | None = None) -> Quantity | Unreadable:
    """Read a quantity as people type it, and give it its usual spelling ("2,1BAR" is "2.1 bar").

    A comma is a point, but in front of three digits it asks; the space may be missing; the case of the unit
    does not matter, but a capital M is never a milli. A bare number takes `bare_unit`, and is unreadable
    where that is None. `dimension` (else that of `bare_unit`) keeps other units from being proposed.
    """
    pieces = _taken_apart(text)
    if isinstance(pieces, Unreadable):
        return pieces
    unit = find(bare_unit) if bare_unit else None
    if pieces.unit:
        wanted = dimension or (unit.dimension if unit else None)
        unit = find_typed(pieces.unit)
        if unit is None:
            return _unknown(text, pieces, wanted)
    if unit is None:
        return Unreadable(text, "no unit", "write the unit after the number")
    if pieces.thousands is not None:
        return _asked(text, pieces.number, pieces.thousands, unit)
    return _made(text, pieces.number, unit)


def parse_pressure(text: str) -> Quantity | Unreadable:
    """Read a typed tyre pressure; a bare number takes the one unit in whose band it lies.

    Outside every band nothing is guessed: the answer asks for the unit.
    """
    pieces = _taken_apart(text)
    if isinstance(pieces, Unreadable):
        return pieces
    if pieces.unit:
        read = parse_typed(text, None, "pressure")
        if isinstance(read, Quantity) and read.dimension != "pressure":
            likely = " or ".join(f'"{one}"' for one in meant(read, "pressure"))
            mend = f"write {likely}" if likely else "write bar, psi or kPa"
            return Unreadable(text, f"{read.unit} is {read.dimension}, not pressure", mend)
        return read
    for spelling, (low, high) in PRESSURE_BANDS.items():
        if low <= Decimal(pieces.number) <= high:
            return _made(text, pieces.number, known(spelling))
    bands = ", ".join(f"{spelling} {low} to {high}" for spelling, (low, high) in PRESSURE_BANDS.items())
    units = " or ".join(f'"{pieces.number} {spelling}"' for spelling in PRESSURE_BANDS)
    return Unreadable(text, f"no unit, and in no band ({bands})", f"write {units}")


def parse_bare(text: str, unit: str, most: float) -> Decimal | Unreadable:
    """Read a bare number of a row that states its unit; the unit may stand behind it ("12 clicks").

    The unit of a row may be a word beyond the table, such as links. A comma in front of three digits is a
    decimal one where thousands would be over `most`.
    """
    pieces = _taken_apart(text)
    if isinstance(pieces, Unreadable):
        return pieces
    if pieces.thousands is not None and Decimal(pieces.thousands) <= Decimal(str(most)):
        either = f'write "{pieces.number}" or "{pieces.thousands}"'
        return Unreadable(text, "a comma that may part thousands", either)
    if pieces.unit and not _same_unit(pieces.unit, unit):
        why = f'"{pieces.unit}" on a row of {unit}' if unit else f'"{pieces.unit}" behind a bare number'
        other = find_typed(pieces.unit)
        mend = f"this row is in {unit}" if other and unit else f'write "{pieces.number}"'
        return Unreadable(text, why, mend)
    return Decimal(pieces.number)


def _same_unit(typed: str, unit: str) -> bool:
    found, row = find_typed(typed), find_typed(unit) if unit else None
    if found is not None and row is not None:
        return found is row
    return bool(unit) and typed.casefold().rstrip("s") == unit.casefold().rstrip("s")


def _taken_apart(text: str) -> _Pieces | Unreadable:
    """Take a typed text apart without looking at what the unit means."""
    if len(text) > MOST_CHARACTERS:
        short = f"{text[: MOST_CHARACTERS - 1]}…"
        return Unreadable(short, f"longer than {MOST_CHARACTERS} characters", "write one number and its unit")
    taken = take_number(text.strip())
    if taken is None:
        return _no_number(text)
    if _EXPONENT.match(taken.rest):
        return Unreadable(text, "a number with an exponent", "write the number out")
    if taken.rest and not _UNIT_START.match(taken.rest):
        return Unreadable(text, "not one number and one unit", f'write it, e.g. "{EXAMPLE}"')
    if taken.why and taken.or_else is None:
        unit = find_typed(taken.rest) if taken.rest else None
        plain = f'write "{taken.number} {unit.spelling}"' if unit else f"write the number out, {taken.number}"
        return Unreadable(text, taken.why, plain)
    return _Pieces(taken.number, taken.rest, taken.or_else)


def _no_number(text: str) -> Unreadable:
    """Say that no number comes first, with the number and its unit turned round where they stand so."""
    turned = _UNIT_FIRST.fullmatch(text.strip())
    unit = find_typed(turned[1].strip()) if turned else None
    mend = f'write a number and its unit, e.g. "{EXAMPLE}"'
    if turned and unit:
        mend = f'write "{turned[2].replace(",", ".")} {unit.spelling}"'
    return Unreadable(text, "no number", mend)


def _asked(text: str, decimal: str, thousands: str, unit: Unit) -> Unreadable | Quantity:
    """Ask which of two numbers is meant by a comma in front of three digits."""
    either = tuple(Quantity(Decimal(number), unit.spelling) for number in (decimal, thousands))
    mend = " or ".join(f'"{one}"' for one in either)
    return Unreadable(text, "a comma that may part thousands", f"write {mend}", either)


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


def _unknown(text: str, pieces: _Pieces, dimension: str | None) -> Unreadable:
    if words := choices(pieces.unit):
        return Unreadable(
            text, f'"{pieces.unit}" differs between countries', f"write it in {' or '.join(words)}"
        )
    first, _, more = pieces.unit.partition(" ")
    alone = find_typed(first) if more else None
    near = alone.spelling if alone else nearest(pieces.unit, dimension)
    units = [one.spelling for one in TABLE.values() if one.dimension == dimension]
    others = f"write it in {', '.join(units[:4])}" if units else "write a unit, e.g. bar, C, kg, mm or km/h"
    mend = f'did you mean "{pieces.number} {near}"?' if near else others
    return Unreadable(text, f'unknown unit "{pieces.unit}"', mend)


def _why_not_strict(text: str, strict: re.Match[str] | None) -> str:
    if "," in text:
        return "a comma in the number"
    if strict:
        return f'unknown unit "{strict[2]}"'
    if not any(map(str.isalpha, text)) and "%" not in text and "°" not in text:
        return "no unit"
    return "not spaced or spelt as in a file"
