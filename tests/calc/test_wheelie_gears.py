"""Gears that lift the front on torque alone, against the balance of the whole bike."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.balance import Balance, axle_loads
from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.longitudinal import wheelie_m_s2
from paddock_tui.calc.wheelie_gears import GearTorque, drive_force_n, gears_that_lift, in_words, lift_force_n
from tests.calc.test_balance import balances, few
from tests.every import every
from tests.later import Later

optimize = Later("scipy.optimize")

OVERALL = (12.0, 9.6, 8.2, 7.1, 6.4, 5.9)
CURVE: GearTorque = ((4000, 70), (8000, 110), (10000, 115), (13000, 95))


@few
@given(balances(), st.floats(100, 400))
def test_the_force_is_the_one_that_takes_the_last_load_off_the_front(balance: Balance, mass: float) -> None:
    force = lift_force_n(mass, balance.centre_ahead_m, balance.centre_height_m)

    assert axle_loads(balance, mass, force / mass).front_n == pytest.approx(0, abs=1e-6)
    assert force == pytest.approx(mass * wheelie_m_s2(balance))


@few
@given(st.lists(st.floats(2, 20), min_size=2, max_size=8, unique=True), st.floats(1000, 5000))
def test_force_falls_with_the_gear_and_the_gears_that_lift_are_the_lowest(
    ratios: list[float], lift: float
) -> None:
    found = gears_that_lift(sorted(ratios, reverse=True), CURVE, 0.32, lift)

    forces = [one.force_n for one in found]
    assert forces == sorted(forces, reverse=True)
    lifting = [one.lifts for one in found]
    assert lifting == sorted(lifting, reverse=True)


def test_figures_by_hand() -> None:
    """115 N m x 12 x 0.9 / 0.3 m = 4140 N in first; 200 kg x 9.80665 x 0.7 / 0.65 = 2112 N lift it."""
    first = gears_that_lift(OVERALL, CURVE, 0.3, lift_force_n(200, 0.7, 0.65))[0]

    assert first.force_n == pytest.approx(4140)
    assert first.share == pytest.approx(4140 / (200 * 9.80665 * 0.7 / 0.65))
    assert drive_force_n(115, 12, 0.3, 0.9) == pytest.approx(4140)


@few
@given(st.floats(2200, 4100))
def test_between_the_revs_given_the_curve_is_enough_and_outside_it_is_not(lift: float) -> None:
    def torque(revs: float) -> float:
        for (low, first), (high, second) in pairwise(CURVE):
            if low <= revs <= high:
                return first + (second - first) * (revs - low) / (high - low)
        raise AssertionError(revs)

    first = gears_that_lift(OVERALL, CURVE, 0.3, lift)[0]

    def spare(revs: float) -> float:
        return drive_force_n(torque(revs), OVERALL[0], 0.3, 0.9) - lift

    assert first.from_rpm is not None
    assert first.to_rpm is not None
    below = 4000.0 if spare(4000) >= 0 else optimize.brentq(spare, 4000, 10000)
    above = 13000.0 if spare(13000) >= 0 else optimize.brentq(spare, 10000, 13000)
    assert [first.from_rpm, first.to_rpm] == pytest.approx([below, above])


def test_a_peak_alone_is_enough_to_name_the_gears() -> None:
    found = gears_that_lift(OVERALL, ((10000, 115),), 0.3, 2800)

    assert [one.lifts for one in found] == [True, True, True, False, False, False]
    assert found[0].from_rpm == found[0].to_rpm == 10000
    assert (found[5].from_rpm, found[5].to_rpm) == (None, None)


@every(
    ("lift", "words"),
    [(9000, ""), (4000, "1st"), (3000, "1st and 2nd"), (2500, "1st to 3rd"), (100, "1st to 6th")],
)
def test_gears_in_words(lift: float, words: str) -> None:
    assert in_words(gears_that_lift(OVERALL, CURVE, 0.3, lift)) == words


@every("curve", [(), ((8000.0, 100.0), (8000.0, 90.0)), ((9000.0, 1.0), (8000.0, 2.0))])
def test_a_curve_that_is_none_is_refused(curve: GearTorque) -> None:
    with pytest.raises(Inconsistent, match="torque curve"):
        gears_that_lift(OVERALL, curve, 0.3, 2500)


def test_figures_that_cannot_be_are_refused() -> None:
    for radius, efficiency in ((0.0, 0.9), (0.3, 0.0), (0.3, 1.2), (5.0, 0.9)):
        with pytest.raises(OutOfRange):
            gears_that_lift(OVERALL, CURVE, radius, 2500, efficiency)
    with pytest.raises(OutOfRange, match="mass"):
        lift_force_n(0, 0.7, 0.6)
