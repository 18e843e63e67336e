"""Ice and frost: what each surface says, and that vapour over ice joins that over water at zero."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.frost import Ice, frost_point_c, ice_risk, saturation_over_ice_kpa, settles_at_c
from paddock_tui.calc.moist_air import dew_point_c, saturation_vapour_kpa
from tests.every import every


@given(st.floats(-25, -0.5), st.floats(30, 100))
def test_the_frost_point_lies_above_the_dew_point_and_not_above_the_air(
    celsius: float, humidity: float
) -> None:
    dew = dew_point_c(celsius, humidity)
    found = min(frost_point_c(celsius, humidity), 0.0)
    assert dew <= found + 1e-9
    assert saturation_over_ice_kpa(found) == pytest.approx(saturation_vapour_kpa(dew))


def test_over_ice_and_over_water_meet_at_zero_and_dew_goes_over_into_frost_there() -> None:
    assert saturation_over_ice_kpa(0.0) == saturation_vapour_kpa(0.0)
    assert settles_at_c(10.0, 60.0) > 0.0 > settles_at_c(3.0, 60.0)
    assert settles_at_c(3.0, 80.7) == pytest.approx(0.0, abs=0.02)
    with pytest.raises(OutOfRange):
        frost_point_c(10.0, 60.0)


@every(
    ("air", "humidity", "surface", "wet", "ice"),
    [
        (1.0, 80.0, -1.0, True, Ice.FREEZES),
        (1.0, 80.0, -3.0, False, Ice.HOAR),
        (1.0, 40.0, -1.0, False, Ice.NONE),
        (2.9, 90.0, None, True, Ice.BLACK_ICE),
        (2.9, 90.0, None, False, Ice.NONE),
        (3.0, 90.0, None, True, Ice.NONE),
        (6.0, 90.0, 2.0, True, Ice.BLACK_ICE),
        (12.0, 60.0, 15.0, True, Ice.NONE),
    ],
)
def test_each_surface_says_what_to_expect(
    air: float, humidity: float, surface: float | None, wet: bool, ice: Ice
) -> None:
    found = ice_risk(air, humidity, surface, wet, 3.0)
    assert found.ice is ice
    assert found.measured is (surface is not None)
