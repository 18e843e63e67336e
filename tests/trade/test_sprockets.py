"""Sprocket pairs by ratio, with links and axle."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paddock_tui.trade.errors import Inconsistent
from paddock_tui.trade.sprockets import Fitted, axle_move_mm, sprocket_pairs

FITTED = Fitted(16, 43, 114, 15.875, back_mm=10.0, forward_mm=5.0)


def test_longest_gearing_first() -> None:
    ratios = [pair.ratio for pair in sprocket_pairs((15, 16, 17), range(41, 46), FITTED)]

    assert len(ratios) == 15
    assert ratios == sorted(ratios)


def test_the_fitted_pair_moves_nothing() -> None:
    (pair,) = sprocket_pairs([16], [43], FITTED)

    assert (pair.axle_mm, pair.change_percent, pair.fits, pair.links) == (0.0, 0.0, True, 114)
    assert pair.axle_with_links_mm == 0.0


@pytest.mark.parametrize(("rear", "fits"), [(44, True), (45, False), (42, True), (40, False)])
def test_room_for_the_axle(rear: int, fits: bool) -> None:
    (pair,) = sprocket_pairs([16], [rear], FITTED)

    assert pair.fits is fits


def test_unknown_room_is_not_judged() -> None:
    (pair,) = sprocket_pairs([16], [45], Fitted(16, 43, 114, 15.875))

    assert pair.fits is None


@settings(max_examples=50, deadline=None)
@given(st.integers(14, 18), st.integers(38, 48))
def test_more_rear_teeth_pull_the_axle_forward(front: int, rear: int) -> None:
    assert axle_move_mm(FITTED, front, rear + 1) < axle_move_mm(FITTED, front, rear)


@settings(max_examples=50, deadline=None)
@given(st.integers(14, 18), st.integers(38, 48))
def test_the_chain_to_buy_moves_the_axle_back_by_less_than_a_pitch(front: int, rear: int) -> None:
    """An even number rounded up leaves less than two links over: less than one pitch at the axle."""
    (pair,) = sprocket_pairs([front], [rear], FITTED)

    assert -1e-6 <= pair.axle_with_links_mm < 15.875 * 1.05


def test_no_sprockets_no_pairs() -> None:
    with pytest.raises(Inconsistent):
        sprocket_pairs([], [43], FITTED)
