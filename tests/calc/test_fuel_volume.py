"""Fuel that warms grows, and comes back to what it was."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.fuel_volume import litres_after


@given(st.floats(1, 40), st.floats(-10, 50), st.floats(-10, 50), st.floats(690, 770))
def test_warmer_is_more_and_the_way_back_is_the_way_there(
    litres: float, before: float, after: float, density: float
) -> None:
    found = litres_after(litres, before, after, density)
    assert litres_after(found, after, before, density) == pytest.approx(litres)
    assert (found - litres) * (after - before) >= 0.0


def test_a_brimmed_tank_grows_by_some_three_tenths_of_a_litre_in_fifteen_kelvin() -> None:
    assert litres_after(16.5, 15.0, 30.0, 745.0) - 16.5 == pytest.approx(0.31, abs=0.01)
    with pytest.raises(OutOfRange):
        litres_after(16.5, 15.0, 30.0, 820.0)
