"""Limits of driving and braking, against the forces of both wheels searched numerically."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.balance import Balance, axle_loads
from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.longitudinal import (
    By,
    braking_limit,
    driving_limit,
    rear_lift_m_s2,
    sliding_m_s2,
    wheelie_m_s2,
)
from tests.calc.test_balance import G, balances, few
from tests.every import every
from tests.later import Later

optimize = Later("scipy.optimize")

frictions = st.floats(0.1, 1.8)
slopes = st.floats(-0.2, 0.2)


def _on_the_rear_n(balance: Balance, accelerating: float, slope: float) -> tuple[float, float, float]:
    """Load of the front, load of the rear and thrust for 1 kg, from moments about the rear contact."""
    angle = math.atan(slope)
    thrust = accelerating + G * math.sin(angle)
    front = (G * math.cos(angle) * balance.centre_ahead_m - thrust * balance.centre_height_m) / (
        balance.wheelbase_m
    )
    return front, G * math.cos(angle) - front, thrust


@few
@given(balances(), frictions, slopes)
def test_the_driving_limit_is_where_the_front_lifts_or_the_rear_slides(
    balance: Balance, friction: float, slope: float
) -> None:
    def spare(accelerating: float) -> float:
        front, rear, thrust = _on_the_rear_n(balance, accelerating, slope)
        return min(front, friction * rear - thrust)

    searched = optimize.brentq(spare, -G, 40.0)

    found = driving_limit(balance, friction, slope)
    assert found.m_s2 == pytest.approx(searched, abs=1e-6)
    assert (found.by is By.LIFT) == (friction >= balance.centre_ahead_m / balance.centre_height_m)


@few
@given(balances(), frictions, slopes)
def test_the_braking_limit_is_where_the_rear_lifts_or_both_slide(
    balance: Balance, friction: float, slope: float
) -> None:
    def spare(decelerating: float) -> float:
        _, rear, thrust = _on_the_rear_n(balance, -decelerating, slope)
        return min(rear, friction * G * math.cos(math.atan(slope)) + thrust)

    found = braking_limit(balance, friction, slope)

    assert found.m_s2 == pytest.approx(optimize.brentq(spare, -G, 40.0), abs=1e-6)


@few
@given(balances())
def test_at_its_own_limit_a_wheel_carries_nothing(balance: Balance) -> None:
    assert axle_loads(balance, 200, wheelie_m_s2(balance)).front_n == pytest.approx(0, abs=1e-6)
    assert axle_loads(balance, 200, -rear_lift_m_s2(balance)).rear_n == pytest.approx(0, abs=1e-6)


@few
@given(balances(), frictions, frictions)
def test_more_friction_never_takes_anything_away(balance: Balance, one: float, other: float) -> None:
    less, more = sorted((one, other))

    assert driving_limit(balance, more).m_s2 >= driving_limit(balance, less).m_s2 - 1e-9
    assert braking_limit(balance, more).m_s2 >= braking_limit(balance, less).m_s2 - 1e-9


def test_uphill_takes_drive_and_gives_braking() -> None:
    balance = Balance(1.4, 0.64, 0.7)

    assert driving_limit(balance, 0.8, 0.1).m_s2 < driving_limit(balance, 0.8).m_s2
    assert braking_limit(balance, 0.8, 0.1).m_s2 > braking_limit(balance, 0.8).m_s2


def test_a_slope_can_be_more_than_the_tyres_hold() -> None:
    assert sliding_m_s2(0.05, -0.2) < 0
    assert driving_limit(Balance(1.4, 0.64, 0.7), 0.05, 0.2).m_s2 < 0


@every("friction", [0.0, -1.0, 2.1, math.nan])
def test_friction_that_cannot_be_is_refused(friction: float) -> None:
    with pytest.raises(OutOfRange, match="friction"):
        braking_limit(Balance(1.4, 0.64, 0.7), friction)


def test_a_road_like_a_wall_is_refused() -> None:
    with pytest.raises(OutOfRange, match="slope"):
        wheelie_m_s2(Balance(1.4, 0.64, 0.7), 0.6)
