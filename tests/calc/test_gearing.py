"""Speeds, revs and shifts by the gearing."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.gearing import (
    GearTrain,
    final_ratio,
    on_straight,
    revs_at_speed_rpm,
    revs_per_gear,
    shifts,
    speed_at_revs_m_s,
)
from tests.every import every
from tests.examples import examples

GEARS = (2.6, 2.0, 1.67, 1.44, 1.29, 1.15)
DRIVE = GearTrain(1.63, GEARS, 16, 43, 1.98)
few = examples(25)


@few
@given(st.floats(1.0, 15000.0), st.floats(4.0, 20.0), st.floats(1.5, 2.2), st.floats(0.0, 0.2))
def test_speed_and_revs_are_inverse(revs: float, overall: float, metres: float, slip: float) -> None:
    speed = speed_at_revs_m_s(revs, overall, metres, slip)

    assert revs_at_speed_rpm(speed, overall, metres, slip) == pytest.approx(revs)


@few
@given(st.floats(10.0, 90.0))
def test_a_higher_gear_turns_slower(speed_m_s: float) -> None:
    revs = [each.revs_rpm for each in revs_per_gear(DRIVE, speed_m_s)]

    assert len(revs) == 6
    assert revs == sorted(revs, reverse=True)


@few
@given(st.floats(1000.0, 15000.0))
def test_a_shift_keeps_the_road_speed(revs: float) -> None:
    for shift in shifts(GEARS, revs):
        before_m_s = DRIVE.speed_m_s(revs, shift.to_gear - 1)

        assert DRIVE.speed_m_s(shift.revs_after_rpm, shift.to_gear) == pytest.approx(before_m_s)
        assert shift.drop_rpm == pytest.approx(revs - shift.revs_after_rpm)
        assert shift.drop_rpm > 0


def test_a_tooth_more_at_the_rear_is_shorter() -> None:
    shorter = GearTrain(1.63, GEARS, 16, 44, 1.98)

    assert shorter.speed_m_s(12000, 6) < DRIVE.speed_m_s(12000, 6)


def test_one_tooth_at_the_front_is_about_three_at_the_rear() -> None:
    """Common practice, no source: 2.5 to 3.5 teeth."""
    wanted = final_ratio(15, 43)

    assert 2.5 <= wanted * 16 - 43 <= 3.5


def test_the_limiter_against_the_longest_straight() -> None:
    limiter_m_s = DRIVE.speed_m_s(14000, 6)
    near = on_straight(DRIVE, 14000, limiter_m_s * 0.97)

    assert near.limiter_m_s == pytest.approx(limiter_m_s)
    assert near.spare_rpm == pytest.approx(0.03 * 14000)
    assert not near.reaches_limiter
    assert on_straight(DRIVE, 14000, limiter_m_s * 1.01).reaches_limiter


def test_pit_lane_revs_of_first_gear() -> None:
    first = revs_per_gear(DRIVE, 60 / 3.6)[0]

    assert first.revs_rpm == pytest.approx(60 / 3.6 * 60 * 1.63 * 2.6 * 43 / 16 / 1.98)


def test_gears_must_fall() -> None:
    with pytest.raises(Inconsistent, match="fall"):
        GearTrain(1.63, (2.0, 2.6), 16, 43, 1.98)
    with pytest.raises(Inconsistent, match="none"):
        GearTrain(1.63, (), 16, 43, 1.98)


@every(("revs", "overall", "metres"), [(-1, 5, 2), (31000, 5, 2), (9000, 0, 2), (9000, 5, 0)])
def test_what_cannot_be_is_refused(revs: float, overall: float, metres: float) -> None:
    with pytest.raises(OutOfRange):
        speed_at_revs_m_s(revs, overall, metres)


def test_a_gear_the_bike_has_not_is_refused() -> None:
    with pytest.raises(OutOfRange, match="gear"):
        DRIVE.overall(7)
