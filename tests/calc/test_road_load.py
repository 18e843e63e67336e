"""What holds a bike back, and the speed at which power is used up: which way each figure moves them."""

import attrs
import pytest

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.road_load import Resistance, powered_top_speed_m_s

ON_THE_LEVEL = Resistance(0.34, 1.2, 265.0, 0.018)


def test_power_thin_air_and_wind_from_behind_raise_it_and_hills_lower_it() -> None:
    base = powered_top_speed_m_s(100_000.0, ON_THE_LEVEL)
    assert powered_top_speed_m_s(110_000.0, ON_THE_LEVEL) > base
    for change, faster in (
        ({"density_kg_per_m3": 1.1}, True),
        ({"headwind_m_s": -5.0}, True),
        ({"headwind_m_s": 5.0}, False),
        ({"slope": 0.03}, False),
        ({"mass_kg": 300.0}, False),
        ({"drag_area_m2": 0.4}, False),
    ):
        assert (powered_top_speed_m_s(100_000.0, attrs.evolve(ON_THE_LEVEL, **change)) > base) is faster


def test_all_power_is_used_at_the_top_speed() -> None:
    top = powered_top_speed_m_s(100_000.0, ON_THE_LEVEL)
    assert ON_THE_LEVEL.force_n(top) * top == pytest.approx(100_000.0)
    assert attrs.evolve(ON_THE_LEVEL, headwind_m_s=-30.0).force_n(10.0) < 0.0


def test_what_no_bike_does_is_refused() -> None:
    with pytest.raises(Inconsistent):
        powered_top_speed_m_s(400_000.0, attrs.evolve(ON_THE_LEVEL, drag_area_m2=0.05))
    with pytest.raises(OutOfRange):
        attrs.evolve(ON_THE_LEVEL, density_kg_per_m3=12.0)
