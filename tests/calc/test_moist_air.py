"""Vapour, dew point and density of moist air."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.moist_air import (
    density_kg_per_m3,
    dew_point_c,
    dry_kpa,
    humidity_from_wet_bulb_percent,
    saturation_vapour_kpa,
    vapour_kpa,
)
from tests.examples import examples

temperatures, humidities = st.floats(-20, 55), st.floats(1, 100)


@examples(25)
@given(temperatures, humidities)
def test_the_vapour_of_the_dew_point_is_the_vapour_there_is(celsius: float, humidity: float) -> None:
    """Round trip; the dew point is never above the air, and equals it when the air is saturated."""
    dew = dew_point_c(celsius, humidity)

    assert dew <= celsius + 1e-9
    if dew > -45.0:
        assert saturation_vapour_kpa(dew) == pytest.approx(vapour_kpa(celsius, humidity), rel=1e-9)
    assert dew_point_c(celsius, 100.0) == pytest.approx(celsius, abs=1e-9)


@examples(25)
@given(temperatures, st.floats(1, 95), st.floats(0.5, 4.9))
def test_damper_air_is_lighter_and_its_dew_point_higher(celsius: float, humidity: float, more: float) -> None:
    assert dew_point_c(celsius, humidity + more) > dew_point_c(celsius, humidity)
    assert density_kg_per_m3(100.0, celsius, humidity + more) < density_kg_per_m3(100.0, celsius, humidity)


@examples(25)
@given(st.floats(-20, 50), st.floats(0.5, 5), humidities, st.floats(70, 105))
def test_warmer_air_is_lighter_and_holds_more(
    celsius: float, more: float, humidity: float, kpa: float
) -> None:
    warmer = celsius + more

    assert density_kg_per_m3(kpa, warmer, humidity) < density_kg_per_m3(kpa, celsius, humidity)
    assert dry_kpa(kpa, warmer, humidity) < dry_kpa(kpa, celsius, humidity)


@examples(25)
@given(st.floats(5, 50), st.floats(0.5, 5), st.floats(80, 105))
def test_a_colder_wet_bulb_is_drier_air(celsius: float, below_k: float, kpa: float) -> None:
    saturated = humidity_from_wet_bulb_percent(celsius, celsius, kpa)

    assert saturated == pytest.approx(100.0)
    assert humidity_from_wet_bulb_percent(celsius, celsius - below_k + 0.4, kpa) < 100.0


def test_what_no_air_can_be_is_refused() -> None:
    with pytest.raises(OutOfRange, match="humidity"):
        dew_point_c(20.0, 0.0)
    with pytest.raises(OutOfRange, match="humidity"):
        vapour_kpa(20.0, 101.0)
    with pytest.raises(OutOfRange, match="air temperature"):
        saturation_vapour_kpa(61.0)
    with pytest.raises(OutOfRange, match="wet bulb"):
        humidity_from_wet_bulb_percent(20.0, 21.0, 101.325)
    with pytest.raises(Inconsistent, match="drier than dry"):
        humidity_from_wet_bulb_percent(50.0, 5.0, 101.325)
