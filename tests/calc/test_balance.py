"""Centre of mass, axle loads and load transfer, against moments solved as a system."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.balance import Balance, axle_loads, centre_ahead_m, load_transfer_n
from paddock_tui.calc.errors import Inconsistent, OutOfRange
from tests.every import every
from tests.examples import examples
from tests.later import Later

np = Later("numpy")
few = examples(25)
G = 9.80665


@st.composite
def balances(draw: st.DrawFn) -> Balance:
    """Draw the balance of anything that is ridden, from a child's bike to a tourer."""
    wheelbase = draw(st.floats(1.0, 1.8))
    return Balance(wheelbase, draw(st.floats(0.4, 0.9)), wheelbase * draw(st.floats(0.3, 0.7)))


@few
@given(balances(), st.floats(100, 500), st.floats(-12, 12))
def test_loads_are_those_of_forces_and_moments_in_balance(balance: Balance, mass: float, rate: float) -> None:
    """F + R = m g; about the centre of mass: F (p - b) - R b + m a h = 0."""
    matrix = np.array([[1.0, 1.0], [balance.centre_behind_m, -balance.centre_ahead_m]])
    right = np.array([mass * G, -mass * rate * balance.centre_height_m])
    front, rear = np.linalg.solve(matrix, right)

    found = axle_loads(balance, mass, rate)

    assert found.front_n == pytest.approx(front, abs=1e-6)
    assert found.rear_n == pytest.approx(rear, abs=1e-6)


@few
@given(balances(), st.floats(100, 500), st.floats(-12, 12))
def test_what_one_wheel_loses_the_other_gains(balance: Balance, mass: float, rate: float) -> None:
    still, moving = axle_loads(balance, mass), axle_loads(balance, mass, rate)

    assert moving.total_n == pytest.approx(still.total_n) == pytest.approx(mass * G)
    assert moving.rear_n - still.rear_n == pytest.approx(load_transfer_n(balance, mass, rate), abs=1e-6)


@few
@given(balances(), st.floats(100, 500))
def test_scales_under_the_wheels_find_the_centre_again(balance: Balance, mass: float) -> None:
    loads = axle_loads(balance, mass)

    found = centre_ahead_m(balance.wheelbase_m, loads.front_n / G, loads.rear_n / G)

    assert found == pytest.approx(balance.centre_ahead_m)


def test_a_centre_of_mass_outside_the_axles_cannot_be() -> None:
    with pytest.raises(Inconsistent, match="between the axles"):
        Balance(1.4, 0.6, 1.4)


@every("lengths", [(0.0, 0.6, 0.7), (1.4, 0.0, 0.7), (1.4, 0.6, 0.0), (1.4, 9.0, 0.7)])
def test_lengths_that_no_bike_has_are_refused(lengths: tuple[float, float, float]) -> None:
    with pytest.raises(OutOfRange):
        Balance(*lengths)


def test_nothing_on_a_wheel_is_no_weighing() -> None:
    with pytest.raises(OutOfRange, match="front wheel"):
        centre_ahead_m(1.4, 0.0, 200.0)
