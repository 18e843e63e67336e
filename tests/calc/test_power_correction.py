"""Power corrected for the air of the day."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.power_correction import Correction, Standard, correction, expected_power_kw
from tests.every import every
from tests.examples import examples


@pytest.mark.parametrize("standard", Standard)
@examples(25)
@given(st.floats(75, 104), st.floats(0, 45), st.floats(0, 95), st.floats(0.5, 5))
def test_thinner_warmer_or_damper_air_never_gives_more_power(
    standard: Standard, kpa: float, celsius: float, humidity: float, more: float
) -> None:
    here = correction(standard, kpa, celsius, humidity).share_percent

    assert correction(standard, kpa - more, celsius, humidity).share_percent < here
    assert correction(standard, kpa, celsius + more, humidity).share_percent < here
    assert correction(standard, kpa, celsius, humidity + more).share_percent <= here


@examples(25)
@given(st.floats(20, 250), st.sampled_from(Standard), st.floats(80, 104), st.floats(-10, 45))
def test_power_on_the_day_corrected_is_the_rated_power(
    rated_kw: float, standard: Standard, kpa: float, celsius: float
) -> None:
    found = correction(standard, kpa, celsius, 40.0)

    assert expected_power_kw(rated_kw, found) * found.factor == pytest.approx(rated_kw)


@every(
    ("standard", "factor", "in_band"),
    [
        (Standard.SAE_J1349, 1.05, True),
        (Standard.SAE_J1349, 1.051, False),
        (Standard.ISO_1585, 0.93, True),
        (Standard.ISO_1585, 0.929, False),
        (Standard.DIN_70020, 1.2, True),
    ],
)
def test_each_standard_has_its_own_band(standard: Standard, factor: float, in_band: bool) -> None:
    assert Correction(standard, factor).in_band is in_band


def test_air_that_cannot_be_is_refused() -> None:
    with pytest.raises(OutOfRange, match="air pressure"):
        correction(Standard.DIN_70020, 49.0, 20.0, 50.0)
    with pytest.raises(OutOfRange, match="air temperature"):
        correction(Standard.ISO_1585, 100.0, 56.0, 50.0)
    with pytest.raises(OutOfRange, match="rated power"):
        expected_power_kw(0.0, Correction(Standard.ISO_1585, 1.0))
