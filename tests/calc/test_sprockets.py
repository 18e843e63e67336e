"""Sprocket pairs by ratio, with links and axle."""

import attrs
import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.sprockets import ChainFit, Fitted, axle_move_mm, chain_for, sprocket_pairs
from tests.every import every
from tests.examples import examples

FITTED = Fitted(16, 43, 114, 15.875, back_mm=10.0, forward_mm=5.0)


def test_longest_gearing_first() -> None:
    ratios = [pair.ratio for pair in sprocket_pairs((15, 16, 17), range(41, 46), FITTED)]

    assert len(ratios) == 15
    assert ratios == sorted(ratios)


def test_the_fitted_pair_moves_nothing() -> None:
    (pair,) = sprocket_pairs([16], [43], FITTED)

    assert (pair.change_percent, pair.chain) == (0.0, ChainFit(114, 0.0, True))


@every(("rear", "links"), [(44, 114), (42, 114), (48, 118), (38, 112)])
def test_the_fitted_chain_stays_where_it_fits_else_one_that_does(rear: int, links: int) -> None:
    found = chain_for(attrs.evolve(FITTED, back_mm=12.0), 16, rear)

    assert (found.fits, found.links) == (True, links)


def test_where_none_fits_the_least_room_that_is_missing_is_said() -> None:
    tight = attrs.evolve(FITTED, back_mm=1.0, forward_mm=1.0)

    found = chain_for(tight, 16, 45)
    # 8.5 mm forward with the fitted chain, 7.4 mm back with two links more.
    assert (found.links, found.fits) == (116, False)
    assert found.short_mm == pytest.approx(found.axle_mm - 1.0)


def test_unknown_room_is_not_judged() -> None:
    found = chain_for(Fitted(16, 43, 114, 15.875), 16, 45)

    assert (found.fits, found.links, found.short_mm) == (None, 114, 0.0)


@examples(25)
@given(st.integers(14, 18), st.integers(38, 48))
def test_more_rear_teeth_pull_the_axle_forward(front: int, rear: int) -> None:
    assert axle_move_mm(FITTED, front, rear + 1) < axle_move_mm(FITTED, front, rear)


@examples(25)
@given(st.integers(14, 18), st.integers(38, 48), st.floats(0, 20), st.floats(0, 20))
def test_what_is_said_to_fit_has_the_room(front: int, rear: int, back: float, forward: float) -> None:
    found = chain_for(Fitted(16, 43, 114, 15.875, back, forward), front, rear)

    room = back if found.axle_mm > 0 else forward
    assert found.fits is (abs(found.axle_mm) <= room + 1e-9)
    assert found.short_mm == pytest.approx(max(abs(found.axle_mm) - room, 0.0), abs=1e-6)
    assert found.links % 2 == 0


def test_no_sprockets_no_pairs() -> None:
    with pytest.raises(Inconsistent):
        sprocket_pairs([], [43], FITTED)
