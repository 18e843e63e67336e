"""Loads and rates of springs."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.springs import (
    deflection_mm,
    pair_rate_n_per_mm,
    rate_from_load_n_per_mm,
    rate_from_two_loads,
    series_rate_n_per_mm,
    spring_for_wheel_rate_n_per_mm,
    vertical_rate_n_per_mm,
    weight_n,
    wheel_rate_n_per_mm,
)
from tests.examples import examples

few = examples(25)
rates = st.floats(1.0, 200.0)


@few
@given(rates, st.floats(0.3, 1.2))
def test_wheel_rate_and_spring_are_inverse(rate: float, ratio: float) -> None:
    wheel = wheel_rate_n_per_mm(rate, ratio)

    assert spring_for_wheel_rate_n_per_mm(wheel, ratio) == pytest.approx(rate)


@few
@given(rates, st.floats(10.0, 3000.0))
def test_load_and_deflection_are_inverse(rate: float, load_n: float) -> None:
    assert rate_from_load_n_per_mm(load_n, deflection_mm(load_n, rate)) == pytest.approx(rate)


@few
@given(rates, st.floats(100.0, 900.0), st.floats(50.0, 900.0))
def test_two_loads_find_the_spring(rate: float, first_n: float, more_n: float) -> None:
    found = rate_from_two_loads(first_n, first_n + more_n, more_n / rate)

    assert found.rate_n_per_mm == pytest.approx(rate)
    assert found.first_deflection_mm == pytest.approx(first_n / rate)


@few
@given(rates, rates)
def test_a_pair_is_stiffer_and_a_stack_softer_than_either(first: float, second: float) -> None:
    assert pair_rate_n_per_mm(first, second) > max(first, second)
    assert series_rate_n_per_mm(first, second) < min(first, second)


@few
@given(rates, st.floats(0.0, 40.0), st.floats(0.1, 5.0))
def test_more_rake_is_stiffer_upright(rate: float, rake: float, more: float) -> None:
    assert rate <= vertical_rate_n_per_mm(rate, rake) < vertical_rate_n_per_mm(rate, rake + more)


def test_weight_of_a_mass() -> None:
    assert weight_n(80.0) == pytest.approx(784.532)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(OutOfRange, match="rate"):
        pair_rate_n_per_mm(0.0, 9.0)
    with pytest.raises(OutOfRange, match="ratio"):
        wheel_rate_n_per_mm(90.0, 2.0)
    with pytest.raises(OutOfRange, match="rake"):
        vertical_rate_n_per_mm(18.0, 60.0)
    with pytest.raises(OutOfRange, match="deflection"):
        rate_from_load_n_per_mm(100.0, 0.0)
    with pytest.raises(OutOfRange, match="second load"):
        rate_from_two_loads(500.0, 400.0, 5.0)
