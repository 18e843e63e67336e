"""Cold and hot tyre pressures."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.standard_air import pressure_at_altitude_kpa
from paddock_tui.calc.tyre_pressure import (
    Ambient,
    cold_band_kpa_gauge,
    cold_for_hot_kpa_gauge,
    gas_temperature_c,
    hot_expected_kpa_gauge,
    same_air_kpa_gauge,
)
from tests.examples import examples

few = examples(25)
gauges = st.floats(120.0, 300.0)
colds = st.floats(0.0, 40.0)
hots = st.floats(45.0, 110.0)
airs = st.builds(Ambient, st.floats(80.0, 104.0), st.floats(80.0, 104.0))


@few
@given(gauges, colds, hots, airs)
def test_cold_and_hot_are_inverse(hot_kpa: float, cold_c: float, gas_c: float, air: Ambient) -> None:
    cold_kpa = cold_for_hot_kpa_gauge(hot_kpa, cold_c, gas_c, air)

    assert hot_expected_kpa_gauge(cold_kpa, cold_c, gas_c, air) == pytest.approx(hot_kpa)
    assert gas_temperature_c(cold_kpa, cold_c, hot_kpa, air) == pytest.approx(gas_c, abs=1e-6)


@few
@given(gauges, colds, hots, st.floats(0.1, 20.0))
def test_hotter_gas_asks_for_less_air(hot_kpa: float, cold_c: float, gas_c: float, more_k: float) -> None:
    assert cold_for_hot_kpa_gauge(hot_kpa, cold_c, gas_c + more_k) < cold_for_hot_kpa_gauge(
        hot_kpa, cold_c, gas_c
    )


def test_scaling_the_gauge_would_be_wrong() -> None:
    """22 psi cold at 20 C is about 29.5 psi with the gas at 80 C: the rise is of the absolute pressure."""
    psi = 6.894757
    assert hot_expected_kpa_gauge(22 * psi, 20, 80) / psi == pytest.approx(29.5, abs=0.05)


def test_ten_degrees_at_a_usual_cold_pressure() -> None:
    """2.1 bar warmed by 10 C gains about 0.11 bar: arithmetic of the trade."""
    assert same_air_kpa_gauge(210, 15, 25) - 210 == pytest.approx(11, abs=0.3)


def test_altitude_moves_the_gauge_one_to_one() -> None:
    """The same air at the same temperature reads higher by what the air outside lost."""
    up_kpa = pressure_at_altitude_kpa(700.0)

    assert same_air_kpa_gauge(210, 20, 20, 101.325, up_kpa) - 210 == pytest.approx(101.325 - up_kpa)


@few
@given(gauges, colds, st.floats(50.0, 90.0), st.floats(0.0, 20.0))
def test_the_band_holds_its_best(hot_kpa: float, cold_c: float, gas_c: float, spread_k: float) -> None:
    band = cold_band_kpa_gauge(hot_kpa, cold_c, gas_c, spread_k)

    assert band.low_kpa_gauge is not None
    assert band.high_kpa_gauge is not None
    assert band.low_kpa_gauge <= band.best_kpa_gauge <= band.high_kpa_gauge


def test_no_spread_no_band() -> None:
    band = cold_band_kpa_gauge(240, 20, 70, None)

    assert (band.low_kpa_gauge, band.high_kpa_gauge) == (None, None)


def test_readings_that_cannot_be_of_the_same_air_are_refused() -> None:
    with pytest.raises(OutOfRange, match="air temperature"):
        gas_temperature_c(150, 20, 330)
