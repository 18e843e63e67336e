"""Preload toward a wanted sag."""

import inspect

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.preload import PreloadAdjuster, preload_for_sag, preload_mm, preload_of_turns_mm
from paddock_tui.calc.sag import for_other_rider
from tests.examples import examples

REAR = PreloadAdjuster(least=0.0, most=15.0, mm_per_turn=1.5, step=0.5, motion_ratio=0.5)
few = examples(25)


def test_too_much_sag_asks_for_more_preload() -> None:
    plan = preload_for_sag(36.0, 30.0, 6.0, REAR)

    assert (plan.change, plan.set_to, plan.reachable) == (2.0, 8.0, True)
    assert plan.sag_after_mm == pytest.approx(30.0)


@pytest.mark.parametrize(("now", "sag", "end"), [(14.0, 45.0, 15.0), (1.0, 15.0, 0.0)])
def test_beyond_the_range_says_so_and_gives_the_end(now: float, sag: float, end: float) -> None:
    plan = preload_for_sag(sag, 30.0, now, REAR)

    assert plan.set_to == end
    assert not plan.reachable


@few
@given(st.floats(20.0, 45.0), st.floats(20.0, 45.0), st.floats(0.0, 15.0))
def test_within_half_a_step_where_it_is_reachable(sag: float, wanted: float, now: float) -> None:
    plan = preload_for_sag(sag, wanted, now, REAR)

    assert REAR.least <= plan.set_to <= REAR.most
    assert plan.change == pytest.approx(plan.set_to - now)
    if plan.reachable:
        assert plan.sag_after_mm == pytest.approx(wanted, abs=REAR.step * REAR.sag_mm_per_turn)


@few
@given(st.floats(20.0, 40.0), st.floats(0.0, 10.0), st.floats(20.0, 40.0))
def test_more_sag_never_asks_for_less_preload(sag: float, more: float, wanted: float) -> None:
    assert (
        preload_for_sag(sag, wanted, 7.0, REAR).set_to
        <= preload_for_sag(sag + more, wanted, 7.0, REAR).set_to
    )


def test_preload_follows_the_riders_weight_whatever_does_the_damping() -> None:
    """Common practice, no source: automatic damping leaves preload to the hand, so no function here asks."""
    heavier = for_other_rider(10.0, 30.0, 75.0, 90.0)
    plan = preload_for_sag(heavier.rider_sag_mm, 30.0, 6.0, REAR)

    assert plan.change > 0.0
    assert not any("damping" in name for name in inspect.signature(preload_for_sag).parameters)


def test_preload_of_a_collar() -> None:
    assert preload_of_turns_mm(-2, 1.5) == -3.0
    with pytest.raises(OutOfRange):
        preload_of_turns_mm(2, 0.0)


def test_sag_beyond_the_compression_needs_negative_preload_and_is_refused() -> None:
    with pytest.raises(OutOfRange, match="preload"):
        preload_mm(30.0, 35.0)


def test_an_adjuster_without_range_is_refused() -> None:
    with pytest.raises(Inconsistent):
        PreloadAdjuster(least=5.0, most=5.0, mm_per_turn=1.0)


def test_a_place_outside_the_adjuster_is_refused() -> None:
    with pytest.raises(OutOfRange, match="preload now"):
        preload_for_sag(30.0, 30.0, 16.0, REAR)
