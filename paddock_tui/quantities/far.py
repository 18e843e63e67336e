"""Units beyond the short table: single names from pint, and one or two units joined by / or a product.

Only unit names ever reach pint, never a number and never an expression: pint's parser evaluates what
it is given. pint is loaded at the first name that the table does not know.
"""

import functools
import math
import re
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from paddock_tui.quantities.table import AMBIGUOUS, TABLE
from paddock_tui.quantities.units import Unit

if TYPE_CHECKING:
    import pint

_SHAPE = re.compile(r"([A-Za-z]{1,20})(?:\^?([23]))?(?:([/ *])([A-Za-z]{1,20})(?:\^?([23]))?)?")

# Mega is left out: a capital M at the keyboard is far more often a slip than a million.
_PREFIXES = frozenset({"", "kilo", "hecto", "deci", "centi", "milli", "micro"})

_SINGLE: dict[frozenset[tuple[str, object]], str] = {
    frozenset(dimensionality): dimension
    for dimension, *dimensionality in (
        ("length", ("[length]", 1)),
        ("area", ("[length]", 2)),
        ("volume", ("[length]", 3)),
        ("mass", ("[mass]", 1)),
        ("time", ("[time]", 1)),
        ("speed", ("[length]", 1), ("[time]", -1)),
        ("acceleration", ("[length]", 1), ("[time]", -2)),
        ("force", ("[mass]", 1), ("[length]", 1), ("[time]", -2)),
        ("pressure", ("[mass]", 1), ("[length]", -1), ("[time]", -2)),
        ("power", ("[mass]", 1), ("[length]", 2), ("[time]", -3)),
        ("viscosity", ("[length]", 2), ("[time]", -1)),
    )
}
"""pint's dimensionality of a single unit, and the dimension it has here.

Energy is absent, since a joule would pass for a torque; so is temperature, for its offsets.
"""

_POWERS = {("length", 2): "area", ("length", 3): "volume", ("time", 2): "time squared"}

_JOINED = {
    ("force", "/", "length"): "spring rate",
    ("force", "/", "area"): "pressure",
    ("force", "*", "length"): "torque",
    ("length", "*", "force"): "torque",
    ("length", "/", "time"): "speed",
    ("length", "/", "time squared"): "acceleration",
    ("area", "/", "time"): "viscosity",
    ("mass", "/", "volume"): "density",
}


@functools.lru_cache(maxsize=256)
def far_unit(spelling: str) -> Unit | None:
    """Return the unit of this spelling beyond the table, or None where no such unit is known."""
    if spelling in AMBIGUOUS or not (shape := _SHAPE.fullmatch(spelling)):
        return None
    name, power, joint, second, second_power = shape.groups()
    first = _atom(name, power)
    if first is None:
        return None
    if joint is None:
        return _named(spelling, *first)
    other = _atom(second, second_power)
    if other is None:
        return None
    joint = "/" if joint == "/" else "*"
    dimension = _JOINED.get((first[0], joint, other[0]))
    if dimension is None:
        return None
    factor = first[1] / other[1] if joint == "/" else first[1] * other[1]
    return _named(spelling, dimension, factor)


def _named(spelling: str, dimension: str, factor: Fraction) -> Unit | None:
    if dimension == "time squared":
        return None
    return Unit(spelling, dimension, factor, digits=2)


def _atom(name: str, power: str | None) -> tuple[str, Fraction] | None:
    """Return dimension and SI factor of one unit name, raised to its power."""
    if name in AMBIGUOUS:
        return None
    unit = TABLE.get(name)
    if unit and (unit.offset or unit.reciprocal):
        return None
    atom = (unit.dimension, unit.factor) if unit else _from_pint(name)
    if atom is None or power is None:
        return atom
    dimension = _POWERS.get((atom[0], int(power)))
    return (dimension, atom[1] ** int(power)) if dimension else None


def _from_pint(name: str) -> tuple[str, Fraction] | None:
    # Pint reads single letters as constants too ("c" is the speed of light).
    if len(name) < 2:
        return None
    registry = _registry()
    readings = registry.parse_unit_name(name)
    if not readings or readings[0][0] not in _PREFIXES:
        return None
    unit = registry.Unit(name)
    dimension = _SINGLE.get(frozenset(unit.dimensionality.items()))
    if dimension is None:
        return None
    one, two = (float(registry.Quantity(n, unit).to_base_units().magnitude) for n in (1.0, 2.0))
    if not math.isclose(two, 2 * one, rel_tol=1e-9):  # logarithmic: does not multiply
        return None
    # Fifteen digits drop the rounding of pint's chain of factors (a foot of 0.30479999999999996 m).
    return dimension, Fraction(f"{one:.15g}")


@functools.cache
def _registry() -> "pint.UnitRegistry[Any]":
    import pint

    try:
        return pint.UnitRegistry(cache_folder=":auto:")
    except Exception:  # no home, a full disk, a damaged cache: units work without a cache, only slower
        return pint.UnitRegistry()
