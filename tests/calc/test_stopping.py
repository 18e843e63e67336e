"""Stopping distances, against the motion integrated step by step."""

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.longitudinal import sliding_m_s2
from paddock_tui.calc.stopping import (
    braking_m,
    on_slope_m_s2,
    reaction_m,
    speed_to_stop_in_m_s,
    stopping_m,
)
from tests.calc.test_balance import G, few
from tests.every import every
from tests.later import Later

integrate, np = Later("scipy.integrate"), Later("numpy")

speeds = st.floats(1.0, 90.0)
rates = st.floats(2.5, 12.0)
slopes = st.floats(-0.15, 0.15)


@few
@given(speeds, rates, slopes)
def test_braking_agrees_with_the_motion_integrated(speed: float, rate: float, slope: float) -> None:
    slowing = rate + G * math.sin(math.atan(slope))

    def motion(_: float, state: Any) -> list[float]:
        return [state[1], -slowing]

    def stands(_: float, state: Any) -> float:
        return float(state[1])

    stands.terminal = True  # type: ignore[attr-defined]
    ran = integrate.solve_ivp(motion, (0, 200), [0.0, speed], events=stands, rtol=1e-9, atol=1e-9)

    assert braking_m(speed, rate, slope) == pytest.approx(float(ran.y[0][-1]), rel=1e-6)


@few
@given(speeds, st.floats(0, 3), rates)
def test_a_stop_is_reaction_and_braking(speed: float, reaction: float, rate: float) -> None:
    assert stopping_m(speed, reaction, rate) == reaction_m(speed, reaction) + braking_m(speed, rate)
    assert stopping_m(speed, 0, rate) == braking_m(speed, rate)


@few
@given(speeds, st.floats(0.2, 1.5), st.floats(0.2, 1.5))
def test_more_friction_never_lengthens_a_stop(speed: float, one: float, other: float) -> None:
    less, more = sorted((one, other))

    assert braking_m(speed, sliding_m_s2(more)) <= braking_m(speed, sliding_m_s2(less))


@few
@given(speeds, st.floats(0, 3), rates, slopes)
def test_the_speed_for_a_distance_is_the_inverse(
    speed: float, reaction: float, rate: float, slope: float
) -> None:
    distance = stopping_m(speed, reaction, rate, slope)
    if distance > 5000:
        return

    assert speed_to_stop_in_m_s(distance, reaction, rate, slope) == pytest.approx(speed)


def test_twice_the_speed_is_four_times_the_braking() -> None:
    assert braking_m(60, 8) == pytest.approx(4 * braking_m(30, 8))


def test_downhill_steeper_than_the_brakes_hold_is_no_stop() -> None:
    with pytest.raises(Inconsistent, match="downhill"):
        braking_m(20, 1.0, -0.2)


def test_uphill_gravity_helps() -> None:
    assert on_slope_m_s2(5, 0.1) == pytest.approx(5 + G * 0.1 / math.sqrt(1.01))


@every(
    ("speed", "reaction", "rate", "slope"),
    [(-1, 1, 5, 0), (20, -1, 5, 0), (20, 1, 0, 0), (20, 1, 50, 0), (20, 1, 5, 0.9)],
)
def test_what_cannot_be_is_refused(speed: float, reaction: float, rate: float, slope: float) -> None:
    with pytest.raises(OutOfRange):
        stopping_m(speed, reaction, rate, slope)
