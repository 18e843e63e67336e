"""Units against published conversion factors, and against pint over wide ranges.

Exact by definition: inch 0.0254 m, pound 0.45359237 kg, standard gravity 9.80665 m/s2, imperial gallon
4.54609 l, standard atmosphere 101325 Pa, US gallon 231 cubic inches; so psi is
4.4482216152605 / 0.0254^2 = 6894.757293168361... Pa.
"""

import functools
import itertools
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.quantities import convert, difference
from paddock_tui.quantities.table import TABLE
from paddock_tui.quantities.units import Unit
from tests.every import every
from tests.examples import examples
from tests.later import Later
from tests.outside.rows import Row, accounted, params

pint = Later("pint")

SP811 = "NIST SP 811 (2008 ed.) App. B.8/B.9"
CONFIRMED = "CONFIRMED"
FROM_MEMORY = "FROM MEMORY"
DERIVED = "DERIVED"


def _unit(
    row: str,
    number: float,
    unit: str,
    expected: float,
    to: str,
    tol: float,
    source: str,
    status: str,
    *,
    exact: bool = False,
) -> Row:
    """One unit in another; the tolerance is relative where the factor is exact by definition."""
    return Row(row, functools.partial(convert, number, unit, to), expected, tol, source, status, exact)


def _exact(row: str, unit: str, expected: float, to: str) -> Row:
    return _unit(row, 1, unit, expected, to, 1e-12, f"{SP811} (exact)", CONFIRMED, exact=True)


ROWS = [
    _exact("UNI-01", "mph", 0.44704, "m/s"),
    _exact("UNI-02", "mi", 1.609344, "km"),
    _unit("UNI-03", 1, "psi", 6.894757, "kPa", 5e-7, f"{SP811} (6.894 757 E+03 Pa)", CONFIRMED),
    _exact("UNI-04", "in", 25.4, "mm"),
    _exact("UNI-05", "lb", 0.45359237, "kg"),
    _unit("UNI-06", 1, "lbf", 4.448222, "N", 5e-7, f"{SP811} (4.448 222 E+00)", CONFIRMED),
    _exact("UNI-07", "imp gal", 4.54609, "l"),
    _unit("UNI-08", 32, "F", 0.0, "C", 1e-9, f"{SP811} t/C = (t/F - 32)/1.8", FROM_MEMORY),
    _unit("UNI-09", 77, "F", 25.0, "C", 1e-9, f"{SP811} t/C = (t/F - 32)/1.8", CONFIRMED),
    _unit("UNI-10", 1, "mmHg", 133.322, "Pa", 5e-4, f"{SP811} (1.333 224 E+02)", CONFIRMED),
    _exact("UNI-11", "atm", 101.325, "kPa"),
    _unit("UNI-12", 1, "hp", 745.6999, "W", 5e-5, f"{SP811} (550 ft lbf/s)", CONFIRMED),
    _unit("UNI-13", 1, "lbf/in", 0.1751268, "N/mm", 5e-8, f"{SP811} (1.751 268 E+02 N/m)", FROM_MEMORY),
    _exact("UNI-14", "kgf", 9.80665, "N"),
    _unit("UNI-15", 36, "psi", 2.4821, "bar", 5e-5, f"from {SP811} factors", DERIVED),
    Row(
        "UNI-16",
        lambda: [convert(end, "km/h", "mph") for end in (85.5, 94.5)],
        [53, 59],
        0.5,
        "OpenStax College Physics 2e 1.3 (85 to 95 km/h is 53 to 59 mi/h)",
        CONFIRMED,
    ),
]

NOT_USED: dict[str, str] = {}

PARTLY = {"UNI-16": "90 km/h +-5 % is 85.5 to 94.5 km/h: no calculation here takes a speedometer's tolerance"}
"""Published rows of which only a part is checked, each with what is left out."""


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()


def test_every_figure_is_accounted_for() -> None:
    assert accounted("UNI", 16, ROWS, NOT_USED)


def test_exact_definitions_hold_to_the_last_bit() -> None:
    assert convert(1, "psi", "Pa") == float(Decimal("4.4482216152605") / Decimal("0.0254") ** 2)
    assert convert(1, "lbf", "N") == 4.4482216152605
    assert convert(1, "US gal", "l") == 3.785411784
    assert convert(1, "PS", "W") == 735.49875
    assert convert(-40, "C", "F") == -40.0


@functools.cache
def registry() -> Any:
    return pint.UnitRegistry()


PAIRS = [
    (old, new)
    for old, new in itertools.permutations((unit for unit in TABLE.values() if unit.pint), 2)
    if old.dimension == new.dimension and not (old.reciprocal or new.reciprocal)
]

# Below this a float has fewer digits the smaller it is.
finite = st.floats(1e-6, 1e9) | st.floats(-1e9, -1e-6) | st.just(0.0)


def pint_says(number: float, old: Unit, new: Unit) -> float:
    return float(registry().Quantity(number, old.pint).to(new.pint).magnitude)


@every(
    ("old", "new"), [pytest.param(*pair, id=f"{pair[0].spelling} to {pair[1].spelling}") for pair in PAIRS]
)
def test_one_and_a_thousand_of_every_unit_agree_with_pint(old: Unit, new: Unit) -> None:
    for number in (1.0, -7.0, 1000.0):
        ours = convert(number, old.spelling, new.spelling)

        assert ours == pytest.approx(pint_says(number, old, new), rel=1e-12, abs=1e-12)


@given(finite, st.sampled_from(PAIRS))
@examples(100)
def test_any_number_of_any_unit_agrees_with_pint(number: float, pair: tuple[Unit, Unit]) -> None:
    old, new = pair
    # An offset is known to pint only to the last digits of its own sums.
    slack = 1e-9 if old.dimension == "temperature" else 0

    ours = convert(number, old.spelling, new.spelling)

    assert ours == pytest.approx(pint_says(number, old, new), rel=1e-12, abs=slack)


@given(finite, st.sampled_from(PAIRS))
@examples(25)
def test_there_and_back_is_the_same_number(number: float, pair: tuple[Unit, Unit]) -> None:
    old, new = (unit.spelling for unit in pair)
    slack = 1e-9 if pair[0].dimension == "temperature" else 0

    assert convert(convert(number, old, new), new, old) == pytest.approx(number, rel=1e-15, abs=slack)


@given(finite, st.permutations(["C", "F", "K"]))
@examples(25)
def test_a_difference_of_temperature_agrees_with_pint(number: float, units: list[str]) -> None:
    deltas = {"C": "delta_degC", "F": "delta_degF", "K": "kelvin"}
    old, new, _ = units

    theirs = registry().Quantity(number, deltas[old]).to(deltas[new]).magnitude

    assert difference(number, old, new) == pytest.approx(theirs, rel=1e-12)


@given(st.floats(0.1, 500), st.sampled_from([unit for unit in TABLE.values() if unit.reciprocal]))
@examples(25)
def test_distance_per_volume_is_the_reciprocal_by_pint(number: float, unit: Unit) -> None:
    theirs = 100 * (1 / registry().Quantity(number, unit.pint)).to("l/km").magnitude

    assert convert(number, unit.spelling, "l/100km") == pytest.approx(theirs, rel=1e-12)
    assert convert(theirs, "l/100km", unit.spelling) == pytest.approx(number, rel=1e-12)


@given(st.floats(1, 500))
@examples(25)
def test_a_us_mile_per_gallon_is_fewer_imperial_ones_by_the_gallons(number: float) -> None:
    assert convert(number, "mpg US", "mpg imp") == pytest.approx(number * 4.54609 / 3.785411784, rel=1e-12)


def test_every_unit_that_pint_knows_has_its_dimension_alone_or_in_company() -> None:
    without = {unit.spelling for unit in TABLE.values() if unit.pint is None}

    assert without == {"l/100km", "dB(A)", "click", "turn", "tooth"}
