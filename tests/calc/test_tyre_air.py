"""The gas law, gauge and absolute."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.tyre_air import (
    absolute_kpa,
    gauge_kpa,
    kelvin,
    pressure_after_kpa_abs,
    saturation_kpa,
    temperature_after_c,
    wet_pressure_after_kpa_abs,
)
from tests.every import every
from tests.examples import examples

few = examples(25)
pressures = st.floats(100.0, 600.0)
temperatures = st.floats(-20.0, 100.0)


@few
@given(pressures, st.floats(60.0, 105.0))
def test_gauge_and_absolute_are_inverse(kpa: float, ambient_kpa: float) -> None:
    assert absolute_kpa(gauge_kpa(kpa, ambient_kpa), ambient_kpa) == pytest.approx(kpa)


@few
@given(pressures, temperatures, temperatures)
def test_pressure_and_temperature_are_inverse(kpa: float, before_c: float, after_c: float) -> None:
    after_kpa = pressure_after_kpa_abs(kpa, before_c, after_c)

    assert pressure_after_kpa_abs(after_kpa, after_c, before_c) == pytest.approx(kpa)
    assert temperature_after_c(kpa, before_c, after_kpa) == pytest.approx(after_c, abs=1e-6)


@few
@given(pressures, temperatures, st.floats(0.1, 40.0))
def test_warmer_gas_has_more_pressure(kpa: float, before_c: float, rise_k: float) -> None:
    assert pressure_after_kpa_abs(kpa, before_c, before_c + rise_k) > kpa


@few
@given(pressures, st.floats(5.0, 30.0), st.floats(5.0, 70.0))
def test_liquid_water_only_adds(kpa: float, before_c: float, rise_k: float) -> None:
    after_c = before_c + rise_k

    assert wet_pressure_after_kpa_abs(kpa, before_c, after_c) > pressure_after_kpa_abs(kpa, before_c, after_c)


def test_water_boils_at_a_hundred_at_sea_level() -> None:
    assert saturation_kpa(99.974) == pytest.approx(101.325, rel=1e-4)


@pytest.mark.parametrize("temperature_c", [-41.0, 151.0])
def test_temperature_outside_the_estimate_is_refused(temperature_c: float) -> None:
    with pytest.raises(OutOfRange, match="temperature"):
        kelvin(temperature_c)


@every("kpa", [0.0, -1.0, 1001.0])
def test_pressure_that_cannot_be_is_refused(kpa: float) -> None:
    with pytest.raises(OutOfRange, match="absolute pressure"):
        pressure_after_kpa_abs(kpa, 20.0, 30.0)


def test_more_vapour_than_pressure_is_refused() -> None:
    with pytest.raises(OutOfRange, match="dry part"):
        wet_pressure_after_kpa_abs(1.0, 20.0, 80.0)


@pytest.mark.parametrize("temperature_c", [-1.0, 151.0])
def test_ice_is_not_water(temperature_c: float) -> None:
    with pytest.raises(OutOfRange):
        saturation_kpa(temperature_c)


def test_outside_air_that_cannot_be_is_refused() -> None:
    with pytest.raises(OutOfRange, match="outside"):
        absolute_kpa(210.0, 10.0)
