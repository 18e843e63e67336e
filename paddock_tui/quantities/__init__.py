"""Numbers with units: reading, exact conversion, showing.

Beyond the everyday units pint is the authority, loaded only when such a unit turns up.
"""

import re
from decimal import Decimal

from paddock_tui.quantities.hints import meant
from paddock_tui.quantities.lookup import find, known
from paddock_tui.quantities.quantity import Quantity, rounded
from paddock_tui.quantities.reading import (
    EXAMPLE,
    PRESSURE_BANDS,
    Unreadable,
    parse,
    parse_bare,
    parse_pressure,
    parse_typed,
)
from paddock_tui.quantities.table import ALIASES, TABLE
from paddock_tui.quantities.units import change

__all__ = [
    "EVERYDAY_UNITS",
    "EXAMPLE",
    "PRESSURE_BANDS",
    "Quantity",
    "Unreadable",
    "compatible",
    "convert",
    "difference",
    "digits_of",
    "dimension_of",
    "meant",
    "parse",
    "parse_bare",
    "parse_pressure",
    "parse_typed",
    "pattern_of",
    "rounded",
]

EVERYDAY_UNITS = tuple(TABLE)
"""The spellings of the short table: what a list of units offers, and what no call may be equal to."""


def convert(number: float | Decimal, old: str, new: str) -> float:
    """Turn a reading of one unit into another; raises ValueError for unknown units or between dimensions."""
    return change(number, known(old), known(new))


def difference(number: float | Decimal | Quantity, old: str, new: str) -> float:
    """Turn the difference of two readings into another unit: 10 C apart is 18 F apart.

    A quantity is first taken as a difference in its own unit. Raises ValueError as `convert` does.
    """
    if isinstance(number, Quantity):
        number = number.as_difference(old)
    return change(number, known(old), known(new), difference=True)


def dimension_of(unit: str) -> str | None:
    """Return what a unit measures, or None where the unit is not known."""
    found = find(unit)
    return found.dimension if found else None


def compatible(unit: str, dimension: str) -> bool:
    """Return whether a unit measures this dimension; an unknown unit measures none."""
    return dimension_of(unit) == dimension


def digits_of(unit: str) -> int:
    """Return the decimal places of everyday use; raises ValueError for an unknown unit."""
    return known(unit).digits


def pattern_of(dimension: str | None = None) -> str:
    """Return a regular expression (as JSON Schema takes them) of amounts as files hold them.

    It names the units of everyday use of one dimension, or of all; units beyond the short table are
    read from files too, and not matched.
    """
    number = r"-?[0-9]+(\.[0-9]+)?"
    # A consumption is above zero: no engine runs on none.
    above_zero = r"(?!0+(\.0+)?[^0-9.])[0-9]+(\.[0-9]+)?"
    kinds = dict.fromkeys(unit.dimension for unit in TABLE.values() if dimension in (None, unit.dimension))
    amounts = (f"{above_zero if kind == 'consumption' else number} ?({_spellings(kind)})" for kind in kinds)
    return f"^({'|'.join(amounts)})$"


def _spellings(dimension: str) -> str:
    names = [name for name, unit in TABLE.items() if unit.dimension == dimension]
    names += [alias for alias, name in ALIASES.items() if name in names]
    return "|".join(re.sub(r"([.*+?^$()|/\\])", r"\\\1", name) for name in names)
