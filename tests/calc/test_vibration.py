"""Frequency and damping: what makes an end faster or firmer, and peaks that cannot be."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.vibration import (
    critical_damping_n_s_per_m,
    damping_ratio,
    damping_ratio_of,
    decrement,
    friction_n,
    natural_frequency_hz,
    undamped_hz,
)
from tests.every import every


@given(st.floats(5, 60), st.floats(40, 200))
def test_four_times_the_rate_is_twice_the_frequency_and_critical_damping_has_the_ratio_one(
    rate: float, mass: float
) -> None:
    assert natural_frequency_hz(4 * rate, mass) == pytest.approx(2 * natural_frequency_hz(rate, mass))
    assert damping_ratio_of(critical_damping_n_s_per_m(rate, mass), rate, mass) == pytest.approx(1.0)


@given(st.floats(5, 60), st.floats(0.05, 0.9), st.integers(1, 9))
def test_a_ratio_lies_between_none_and_critical_and_fewer_swings_damp_more(
    first: float, left: float, swings: int
) -> None:
    found = damping_ratio(first, first * left, swings)
    assert 0.0 < found < 1.0
    assert damping_ratio(first, first * left, swings + 1) < found


@every(("first", "last"), [(10.0, 12.0), (10.0, 10.0), (10.0, 0.0), (10.0, -3.0)])
def test_a_swing_that_grows_or_is_nothing_is_refused(first: float, last: float) -> None:
    with pytest.raises(Inconsistent):
        decrement(first, last, 1)


def test_friction_is_half_the_gap_and_what_is_beyond_is_refused() -> None:
    assert friction_n(10.0, 18.0) == 90.0
    with pytest.raises(OutOfRange):
        friction_n(-1.0, 18.0)
    with pytest.raises(OutOfRange):
        undamped_hz(3.0, 1.0)
