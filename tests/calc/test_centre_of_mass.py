"""Three weighings: the height that statics started from comes back with its error, bad readings do not."""

import contextlib
import math
from typing import Any

import attrs
import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.centre_of_mass import (
    Axle,
    AxleWeighing,
    Centre,
    ScaleErrors,
    centre_height_m,
    centre_of_mass,
    together,
)
from paddock_tui.calc.errors import Inconsistent, OutOfRange
from tests.every import every
from tests.examples import examples

ERRORS = ScaleErrors(0.5, 0.003, 0.002, 0.003)
BIKE = AxleWeighing(1.41, 102.0, 98.0, "rear", 114.3, 0.35, 0.3, 0.315)


def weighed(
    height: float, ahead: float, raised: Axle, lift: float, radii: tuple[float, float]
) -> AxleWeighing:
    """Weigh a bike of 200 kg and 1.41 m by turning it as a whole about the wheel that stays down."""
    front, rear = radii
    apart, level = math.hypot(1.41, front - rear), math.atan2(front - rear, 1.41)
    turned = math.asin((front - rear + (lift if raised == "front" else -lift)) / apart) - level
    over = ahead * math.cos(turned) - (height - rear) * math.sin(turned)
    share = over / (apart * math.cos(level + turned))
    down = share if raised == "rear" else 1.0 - share
    front_kg = 200.0 * ahead / 1.41
    return AxleWeighing(1.41, front_kg, 200.0 - front_kg, raised, 200.0 * down, lift, front, rear)


@examples(30)
@given(
    st.floats(0.45, 0.8),
    st.floats(0.55, 0.85),
    st.sampled_from(["front", "rear"]),
    st.floats(0.15, 0.5),
    st.tuples(st.floats(0.28, 0.33), st.floats(0.28, 0.33)),
)
def test_the_height_comes_back(
    height: float, ahead: float, raised: Axle, lift: float, radii: tuple[float, float]
) -> None:
    found = centre_of_mass(weighed(height, ahead, raised, lift, radii), ERRORS)

    assert (found.height_m, found.ahead_m) == pytest.approx((height, ahead), abs=1e-9)
    assert 0.0 < found.height_error_m < 0.1


def test_half_a_kilogram_is_some_twelve_millimetres_and_more_lift_is_less_error() -> None:
    scale = ScaleErrors(0.5, 0.0, 0.0, 0.0)
    off = abs(centre_height_m(attrs.evolve(BIKE, down_kg=114.8)) - centre_height_m(BIKE))

    assert off == pytest.approx(0.0137, abs=5e-4)
    low, high = (centre_of_mass(weighed(0.64, 0.72, "rear", lift, (0.3, 0.3)), scale) for lift in (0.2, 0.5))
    assert low.height_error_m > 2.0 * high.height_error_m


@every(
    ("change", "why"),
    [
        ({"down_kg": 201.0}, "under the 200 kg"),
        ({"raise_m": 0.02, "front_radius_m": 0.315}, "raise it more"),
        ({"down_kg": 60.0}, "weigh again"),
    ],
)
def test_readings_that_cannot_be_are_refused(change: dict[str, Any], why: str) -> None:
    with pytest.raises(Inconsistent, match=why):
        centre_of_mass(attrs.evolve(BIKE, **change), ERRORS)


@examples(30)
@given(
    st.floats(-10, 3),
    st.floats(-10, 500),
    st.floats(-10, 500),
    st.floats(-10, 500),
    st.floats(-1, 3),
    st.floats(-1, 2),
)
def test_any_reading_gives_a_finite_height_or_a_reason(
    base: float, front: float, rear: float, down: float, lift: float, radius: float
) -> None:
    found = 1.0
    with contextlib.suppress(Inconsistent, OutOfRange):
        found = centre_of_mass(
            AxleWeighing(base, front, rear, "rear", down, lift, radius, radius), ERRORS
        ).height_m

    assert 0.0 < found <= 2.0


def test_a_rider_moves_the_centre_between_the_two() -> None:
    bike, rider = Centre(0.6, 0.73, 0.02, 0.003), Centre(0.95, 0.55)
    mass, both = together(bike, 170.0, rider, 80.0)

    assert mass == 250.0
    assert bike.height_m < both.height_m < rider.height_m
    assert both.height_error_m < bike.height_error_m
    assert together(bike, 170.0, rider, 0.0)[1].height_m == pytest.approx(bike.height_m)
