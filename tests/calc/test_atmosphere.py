"""The standard atmosphere and what a pressure or density stands for."""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.atmosphere import (
    density_altitude_m,
    density_at_altitude_kg_per_m3,
    geopotential_m,
    pressure_altitude_m,
    station_pressure_kpa,
    temperature_at_altitude_c,
)
from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.standard_air import pressure_at_altitude_kpa
from tests.every import every
from tests.examples import examples

altitudes = st.floats(-450, 10900)


@examples(25)
@given(altitudes)
def test_pressure_and_density_lead_back_to_the_altitude(altitude_m: float) -> None:
    assert pressure_altitude_m(pressure_at_altitude_kpa(altitude_m)) == pytest.approx(altitude_m, abs=1e-6)
    density = density_at_altitude_kg_per_m3(altitude_m)
    assert density_altitude_m(density) == pytest.approx(altitude_m, abs=0.01)


@examples(25)
@given(st.floats(-450, 10000), st.floats(1, 900))
def test_higher_is_thinner_and_colder(altitude_m: float, further_m: float) -> None:
    higher = altitude_m + further_m

    assert density_at_altitude_kg_per_m3(higher) < density_at_altitude_kg_per_m3(altitude_m)
    assert temperature_at_altitude_c(higher) < temperature_at_altitude_c(altitude_m)


@examples(25)
@given(st.floats(95, 105), st.floats(0, 3000))
def test_a_forecasts_pressure_moves_the_whole_standard_atmosphere(reduced_kpa: float, up_m: float) -> None:
    """From the altitude at which standard air has the forecast's pressure, as far up as the venue lies."""
    at_the_venue = pressure_altitude_m(station_pressure_kpa(reduced_kpa, up_m))

    assert at_the_venue - pressure_altitude_m(reduced_kpa) == pytest.approx(up_m, abs=1e-6)


def test_a_height_is_a_little_more_than_its_geopotential() -> None:
    assert geopotential_m(3000.0) == pytest.approx(2998.6, abs=0.1)
    assert geopotential_m(0.0) == 0.0


@examples(25)
@given(st.floats(85, 110), st.floats(0, 3000))
def test_a_forecasts_pressure_is_higher_than_the_venues(reduced_kpa: float, altitude_m: float) -> None:
    """At the sea it is the same; standard air reduces to the sea's own figure."""
    assert station_pressure_kpa(reduced_kpa, altitude_m) <= reduced_kpa + 1e-9
    assert station_pressure_kpa(reduced_kpa, 0.0) == pytest.approx(reduced_kpa, rel=1e-9)
    assert station_pressure_kpa(101.325, altitude_m) == pytest.approx(pressure_at_altitude_kpa(altitude_m))


@every(
    ("call", "words"),
    [
        (lambda: geopotential_m(11001.0), "height above the sea"),
        (lambda: temperature_at_altitude_c(-501.0), "altitude"),
        (lambda: pressure_altitude_m(22.0), "air pressure"),
        (lambda: density_altitude_m(0.3), "air density"),
        (lambda: station_pressure_kpa(84.0, 0.0), "reduced to the sea"),
        (lambda: station_pressure_kpa(100.0, 5001.0), "altitude"),
    ],
)
def test_outside_the_layer_is_refused(call: Callable[[], float], words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        call()
