"""Mean figures of a run from one speed to another."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.acceleration import distance_m, mean_m_s2
from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.stopping import braking_m
from tests.calc.test_balance import few
from tests.every import every


@few
@given(st.floats(1, 90), st.floats(1, 20))
def test_a_stop_timed_is_a_stop_computed(speed: float, time: float) -> None:
    rate = -mean_m_s2(-speed, time)
    if not 0 < rate <= 20:
        return

    assert distance_m(speed, 0, time) == pytest.approx(braking_m(speed, rate))


def test_slowing_down_is_below_nothing() -> None:
    assert mean_m_s2(-30, 6) == -5


@every(("speed", "time"), [(30, 0), (30, -1), (500, 3)])
def test_no_time_and_no_such_speed_are_refused(speed: float, time: float) -> None:
    with pytest.raises(OutOfRange):
        mean_m_s2(speed, time)
