"""Air pressure by altitude."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.standard_air import pressure_at_altitude_kpa
from tests.every import every
from tests.examples import examples


@every(("altitude_m", "kpa"), [(0.0, 101.325), (1000.0, 89.8746), (2000.0, 79.4952), (3000.0, 70.1085)])
def test_figures_of_the_standard(altitude_m: float, kpa: float) -> None:
    """ISO 2533:1975, geopotential altitude."""
    assert pressure_at_altitude_kpa(altitude_m) == pytest.approx(kpa, rel=1e-5)


@examples(25)
@given(st.floats(-500.0, 10000.0), st.floats(1.0, 1000.0))
def test_higher_is_thinner(altitude_m: float, further_m: float) -> None:
    assert pressure_at_altitude_kpa(altitude_m + further_m) < pressure_at_altitude_kpa(altitude_m)


@pytest.mark.parametrize("altitude_m", [-501.0, 11001.0])
def test_outside_the_layer_is_refused(altitude_m: float) -> None:
    with pytest.raises(OutOfRange, match="altitude"):
        pressure_at_altitude_kpa(altitude_m)
