"""What a tank gives: never more than its litres, rounded down, the reserve kept."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.fuel_range import Rate, distance_km, tank_laps


@given(st.floats(0, 25), st.floats(0, 5), st.floats(4, 20), st.floats(1, 8), st.floats(0, 3))
def test_the_laps_fit_into_the_tank_and_one_more_does_not(
    tank: float, reserve: float, rate: float, lap: float, other: float
) -> None:
    found = tank_laps(tank, reserve, Rate(rate, rate, rate), lap, 100.0, other)
    used = (found.laps + other) * lap * rate / 100.0
    if found.laps:
        assert used <= tank - reserve + 1e-6
    assert used + lap * rate / 100.0 > tank - reserve - 1e-6
    assert found.minutes == pytest.approx(found.laps * 100.0 / 60.0)


def test_what_is_promised_is_at_the_high_end_of_the_rate() -> None:
    found = tank_laps(16.5, 2.0, Rate(10.0, 8.5, 12.0), 4.0, 105.0, 2.0)
    assert (found.laps, found.best_laps) == (28, 34)
    assert distance_km(1.5, 2.0, 10.0) == 0.0
    with pytest.raises(OutOfRange):
        Rate(10.0, 11.0, 12.0)
