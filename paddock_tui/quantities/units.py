"""What a unit is, and exact conversion between two units of one dimension."""

import functools
import math
from decimal import Decimal
from fractions import Fraction

import attrs


@attrs.frozen(eq=False)
class Unit:
    """A unit: how it is spelt, what it measures, and the way to the SI unit of that dimension.

    A number x of this unit is x * factor + offset in SI; where `reciprocal`, it is factor / x.
    `digits` are the decimal places of everyday use; `pint` is pint's name of the unit, if it has one.
    """

    spelling: str
    dimension: str
    factor: Fraction
    digits: int = 1
    offset: Fraction = Fraction(0)
    pint: str | None = None
    reciprocal: bool = False


def change(number: float | Decimal, old: Unit, new: Unit, *, difference: bool = False) -> float:
    """Turn a number of one unit into the nearest float of another, in exact arithmetic throughout.

    A `difference` of two readings is changed without the offsets of its units. Exactness matters at a
    limit: 2.3 bar is 230.0 kPa, not 229.99999999999997. Raises ValueError between dimensions, for a
    number that is not finite or outgrows a float, for zero of a unit that turns into its reciprocal,
    and for a difference between a unit and its reciprocal, which has no fixed size.
    """
    if old.dimension != new.dimension:
        raise ValueError(f"{old.spelling} is {old.dimension}, {new.spelling} is {new.dimension}")
    if not math.isfinite(number):
        raise ValueError(f"not a finite number: {number}")
    if difference and old.reciprocal != new.reciprocal:
        raise ValueError(f"a difference in {old.spelling} has no fixed size in {new.spelling}")
    over, under = number.as_integer_ratio()
    scale, shift, divisor = _way(old, new, difference)
    if old.reciprocal != new.reciprocal:
        return _divided(under * scale, over * divisor)
    return _divided(over * scale + under * shift, under * divisor)


def _divided(top: int, bottom: int) -> float:
    try:
        return top / bottom
    except ArithmeticError as error:
        raise ValueError("the converted number is not finite") from error


@functools.lru_cache(maxsize=512)
def _way(old: Unit, new: Unit, difference: bool) -> tuple[int, int, int]:
    """Return whole numbers: new = (old * scale + shift) / divisor; upside down scale / (old * divisor)."""
    scale = new.factor / old.factor if new.reciprocal else old.factor / new.factor
    shift = Fraction(0) if difference else (old.offset - new.offset) / new.factor
    divisor = math.lcm(scale.denominator, shift.denominator)
    return int(scale * divisor), int(shift * divisor), divisor
