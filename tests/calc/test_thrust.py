"""Shift points, thrust and ratios for a wanted speed."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.gearing import speed_at_revs_m_s
from paddock_tui.calc.thrust import (
    most_power_kw,
    overall_for_speed,
    power_kw,
    thrust_per_gear,
    torque_at_n_m,
    upshifts,
)
from tests.every import every
from tests.examples import examples

CURVE = ((4000.0, 70.0), (8000.0, 110.0), (10000.0, 115.0), (13000.0, 95.0), (14500.0, 60.0))
GEARS = (2.6, 2.05, 1.7, 1.46, 1.29, 1.17)


def test_thrusts_are_equal_at_a_crossing_and_the_next_gear_pushes_harder_after_it() -> None:
    for shift, (low, high) in zip(upshifts(GEARS, CURVE, 14500.0), pairwise(GEARS), strict=True):
        assert not shift.at_limiter
        for off, harder in ((-50.0, False), (0.0, None), (50.0, True)):
            now = (torque_at_n_m(CURVE, shift.before_rpm + off) or 0.0) * low
            then = (torque_at_n_m(CURVE, (shift.before_rpm + off) * high / low) or 0.0) * high
            assert now == pytest.approx(then, rel=1e-6) if harder is None else (then > now) is harder


def test_a_flat_curve_or_a_low_limiter_shifts_at_the_limiter() -> None:
    flat = ((4000.0, 100.0), (14000.0, 100.0))
    for found in (upshifts(GEARS, flat, 13500.0), upshifts(GEARS, CURVE, 11000.0)):
        assert all(one.at_limiter for one in found)


@examples(20)
@given(st.floats(20, 90), st.floats(3000, 14000), st.floats(1.8, 2.1))
def test_the_ratio_for_a_speed_gives_that_speed(speed: float, revs: float, rolled: float) -> None:
    overall = overall_for_speed(speed, revs, rolled)
    assert speed_at_revs_m_s(revs, min(overall, 100.0), rolled) == pytest.approx(
        max(speed, revs / 6000 * rolled)
    )


def test_thrust_times_speed_is_the_power_that_reaches_the_wheel() -> None:
    for one in thrust_per_gear((12.0, 9.0, 7.0), CURVE, 1.95, 0.9):
        assert one.thrust_n * one.speed_m_s == pytest.approx(900.0 * power_kw(115.0, 10000.0))


def test_most_power_lies_after_most_torque_and_inside_the_curve() -> None:
    power, revs = most_power_kw(CURVE)
    assert 10000.0 < revs <= 14500.0
    assert power == pytest.approx((torque_at_n_m(CURVE, revs) or 0.0) * 2 * math.pi * revs / 60000)


@every("curve", [(), ((9000.0, 100.0),), ((9000.0, 100.0), (8000.0, 90.0))])
def test_a_curve_that_is_none_is_refused(curve: tuple[tuple[float, float], ...]) -> None:
    with pytest.raises(Inconsistent):
        upshifts(GEARS, curve, 13000.0)
    assert torque_at_n_m(curve, 3000.0) is None
