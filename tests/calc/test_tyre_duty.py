"""Ratings of a tyre against the mass on it and the speed reached."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.tyre_duty import axle_loads, load_duty, speed_duty
from tests.every import every
from tests.examples import examples


@examples(25)
@given(st.floats(150, 500), st.floats(1200, 1700), st.floats(0.1, 0.9))
def test_both_axles_carry_all_of_it(mass_kg: float, base_mm: float, share: float) -> None:
    found = axle_loads(mass_kg, base_mm, base_mm * share)

    assert found.front_kg + found.rear_kg == pytest.approx(mass_kg)
    assert found.front_kg == pytest.approx(mass_kg * share)


def test_a_centre_of_mass_ahead_of_the_front_axle_is_refused() -> None:
    with pytest.raises(OutOfRange, match="centre of mass"):
        axle_loads(280.0, 1400.0, 1401.0)


@every(("asked", "spare"), [(236.0, 0.0), (150.0, 86.0), (240.0, -4.0)])
def test_a_load_index_is_compared_with_the_mass_on_it(asked: float, spare: float) -> None:
    assert load_duty(58, asked).spare_kg == pytest.approx(spare)


@every(
    ("symbol", "km_h", "enough"),
    [("H", 210.0, True), ("H", 211.0, False), ("W", 270.0, True), ("(W)", 271.0, None), ("Z", 250.0, None)],
)
def test_beyond_a_rating_without_an_end_only_its_maker_knows(
    symbol: str, km_h: float, enough: bool | None
) -> None:
    assert speed_duty(symbol, km_h).enough is enough
