"""The friction circle: what a lean leaves for the brakes."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.beyond_estimate import Beyond
from paddock_tui.calc.combined_grip import braking_left_m_s2, share_left
from paddock_tui.calc.errors import OutOfRange
from tests.calc.test_balance import G, few
from tests.every import every


@few
@given(st.floats(0.3, 1.5), st.floats(0, 80))
def test_both_together_use_the_friction_up(friction: float, lean: float) -> None:
    sideways = G * math.tan(math.radians(lean))

    left = braking_left_m_s2(friction, lean)

    if isinstance(left, Beyond):
        assert sideways > friction * G
    else:
        assert math.hypot(left, sideways) == pytest.approx(friction * G)


@few
@given(st.floats(0.8, 1.5), st.floats(0, 35), st.floats(0, 35))
def test_more_lean_leaves_less(friction: float, one: float, other: float) -> None:
    less, more = sorted((one, other))
    upright, leaned = share_left(friction, less), share_left(friction, more)

    assert isinstance(upright, float)
    assert isinstance(leaned, float)
    assert 0 <= leaned <= upright <= 1


def test_upright_everything_is_left() -> None:
    assert share_left(0.9, 0) == 1
    assert braking_left_m_s2(0.9, 0) == pytest.approx(0.9 * G)


def test_a_lean_beyond_the_friction_is_beyond_the_estimate_not_an_error() -> None:
    found = braking_left_m_s2(0.8, 45)

    assert isinstance(found, Beyond)
    assert found.asked == pytest.approx(1.0)
    assert found.sentence().startswith("beyond this estimate")


@every(("friction", "lean"), [(0, 30), (3, 30), (1, -1), (1, 90)])
def test_what_cannot_be_is_refused(friction: float, lean: float) -> None:
    with pytest.raises(OutOfRange):
        share_left(friction, lean)
