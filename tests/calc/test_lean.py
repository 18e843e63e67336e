"""Lean, corner speed and friction: one another's inverse, and in balance."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.beyond_estimate import Beyond
from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.lean import (
    corner_speed_m_s,
    friction_needed,
    friction_share,
    lean_deg,
    radius_at_lean_m,
    real_lean_deg,
    speed_at_lean_m_s,
    wide_tyre_deg,
)
from tests.calc.test_balance import G, few
from tests.every import every
from tests.later import Later

optimize = Later("scipy.optimize")

speeds = st.floats(5.0, 90.0)
radii = st.floats(10.0, 500.0)
leans = st.floats(1.0, 65.0)


@few
@given(leans, radii)
def test_lean_speed_and_radius_are_inverse(lean: float, radius: float) -> None:
    speed = speed_at_lean_m_s(lean, radius)

    assert lean_deg(speed, radius) == pytest.approx(lean)
    assert radius_at_lean_m(lean, speed) == pytest.approx(radius)


@few
@given(speeds, radii, st.floats(-10, 40))
def test_the_friction_needed_is_the_share_of_the_forces_along_and_across_the_road(
    speed: float, radius: float, bank: float
) -> None:
    """Forces on 1 kg, split along and across a road that is banked."""
    angle, across = math.radians(bank), speed**2 / radius
    along_road = across * math.cos(angle) - G * math.sin(angle)
    onto_road = across * math.sin(angle) + G * math.cos(angle)
    if onto_road <= 0.1:
        return

    assert friction_needed(speed, radius, bank) == pytest.approx(along_road / onto_road, abs=1e-9)


@few
@given(st.floats(0.2, 1.5), radii, st.floats(0, 30))
def test_the_speed_of_a_friction_needs_just_that_friction(
    friction: float, radius: float, bank: float
) -> None:
    speed = corner_speed_m_s(friction, radius, bank)
    if speed > 150:
        return

    assert friction_needed(speed, radius, bank) == pytest.approx(friction)


@few
@given(st.floats(0.2, 1.0), st.floats(0.2, 1.0), radii)
def test_more_friction_is_never_slower(one: float, other: float, radius: float) -> None:
    less, more = sorted((one, other))

    assert corner_speed_m_s(less, radius) <= corner_speed_m_s(more, radius)


@few
@given(leans, st.floats(0.02, 0.12), st.floats(0.5, 0.8))
def test_a_wide_tyre_leans_until_the_centre_stands_over_where_the_line_of_force_meets_the_road(
    thin: float, crown: float, height: float
) -> None:
    """The contact runs round the crown: the line from it to the centre leans as a thin tyre would."""

    def off(real: float) -> float:
        sideways = (height - crown) * math.sin(real)
        upward = crown + (height - crown) * math.cos(real)
        return sideways * math.cos(force) - upward * math.sin(force)

    force = math.radians(thin)
    searched = math.degrees(optimize.brentq(off, force, force + math.pi / 2))

    assert real_lean_deg(thin, crown, height) == pytest.approx(searched, abs=1e-6)


def test_a_thin_tyre_adds_nothing_and_an_upright_one_neither() -> None:
    assert wide_tyre_deg(45, 0.0, 0.6) == 0
    assert wide_tyre_deg(0, 0.09, 0.6) == 0


def test_within_what_was_assumed_a_share_beyond_it_a_marker_that_says_so() -> None:
    assert friction_share(0.5, 1.0) == 0.5
    assert friction_share(-0.5, 1.0) == 0.5
    beyond = friction_share(1.2, 1.0)
    assert beyond == Beyond("it asks a friction of", 1.2, 1.0)
    assert isinstance(beyond, Beyond)
    assert beyond.sentence() == "beyond this estimate: it asks a friction of 1.20, assumed 1.00"


def test_banks_that_hold_at_every_speed_or_at_none_are_refused_in_words() -> None:
    with pytest.raises(Inconsistent, match="every speed"):
        corner_speed_m_s(1.0, 50, 46)
    with pytest.raises(Inconsistent, match="even at a stand"):
        corner_speed_m_s(0.2, 50, -20)
    with pytest.raises(Inconsistent, match="any friction"):
        friction_needed(90, 20, -30)


def test_a_tyre_too_wide_for_the_height_is_refused() -> None:
    with pytest.raises(Inconsistent, match="crown radius"):
        wide_tyre_deg(60, 0.3, 0.55)


@every(("speed", "radius"), [(-1, 50), (200, 50), (20, 0), (20, -3), (math.nan, 50)])
def test_speeds_and_radii_that_cannot_be_are_refused(speed: float, radius: float) -> None:
    with pytest.raises(OutOfRange):
        lean_deg(speed, radius)


def test_no_radius_is_ridden_upright() -> None:
    with pytest.raises(OutOfRange, match="lean"):
        radius_at_lean_m(0, 20)
