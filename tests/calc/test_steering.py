"""What fork, ride height, axle and tyres do to rake, trail and wheelbase: ways, ways back, and refusals."""

import attrs
import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.steering import GeometryChange, Steering, SteeringGeometry, Swingarm, after
from tests.every import every
from tests.examples import examples

BIKE = SteeringGeometry(1410.0, 315.0, Steering(24.0, 30.0, 300.0))
WITH_ARM = attrs.evolve(BIKE, swingarm=Swingarm(580.0, 390.0))


@examples(25)
@given(st.floats(-15, 15), st.floats(-15, 15))
def test_a_lower_front_or_a_higher_rear_steepens_and_the_way_back_is_the_way_there(
    through: float, up: float
) -> None:
    found = after(BIKE, GeometryChange(fork_through_mm=through, rear_up_mm=up))
    level = through * 0.914 + up
    assert (found.steering.rake_deg - 24.0) * level <= 1e-9 or abs(level) < 0.2
    back = after(found, GeometryChange(fork_through_mm=-through, rear_up_mm=-up))
    assert back.steering.rake_deg == pytest.approx(24.0, abs=0.02)
    assert back.wheelbase_mm == pytest.approx(1410.0, abs=0.6)


def test_nothing_moved_is_nothing_changed() -> None:
    found = after(WITH_ARM, GeometryChange())
    assert found.wheelbase_mm == pytest.approx(1410.0)
    assert found.steering.rake_deg == pytest.approx(24.0)
    assert found.swingarm is not None
    assert found.swingarm.pivot_height_mm == pytest.approx(390.0)


def test_ride_height_raises_the_pivot_and_steepens_the_swingarm() -> None:
    low, high = (after(WITH_ARM, GeometryChange(rear_up_mm=mm)).swingarm_deg for mm in (-5.0, 5.0))
    assert WITH_ARM.swingarm_deg is not None
    assert low is not None
    assert high is not None
    assert low < WITH_ARM.swingarm_deg < high


def test_the_axle_back_lengthens_the_wheelbase_by_nearly_as_much_and_flattens_the_arm() -> None:
    found = after(WITH_ARM, GeometryChange(axle_back_mm=10.0))

    assert found.wheelbase_mm - 1410.0 == pytest.approx(10.0, abs=0.2)
    assert found.swingarm is not None
    assert found.swingarm.length_mm == 590.0


def test_a_taller_front_tyre_lifts_the_front() -> None:
    found = after(BIKE, GeometryChange(front_radius_mm=5.0))
    assert found.steering.rake_deg > 24.0
    assert found.steering.trail_mm > BIKE.steering.trail_mm


@every(
    "make",
    [
        lambda: Steering(50.0, 30.0, 300.0),
        lambda: attrs.evolve(BIKE, wheelbase_mm=14.1),
        lambda: attrs.evolve(BIKE, swingarm=Swingarm(300.0, 600.0)),
        lambda: GeometryChange(fork_through_mm=200.0),
    ],
)
def test_figures_that_cannot_be_are_refused(make: object) -> None:
    assert callable(make)
    with pytest.raises((Inconsistent, OutOfRange)):
        make()
