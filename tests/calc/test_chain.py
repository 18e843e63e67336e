"""Chain length, centre distance, and sizes by number."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.chain import centre_mm, chain_size, links_even, links_exact, pitch_diameter_mm
from paddock_tui.calc.errors import Inconsistent, OutOfRange
from tests.examples import examples

few = examples(25)
fronts = st.integers(13, 18)
rears = st.integers(36, 50)
centres = st.floats(520.0, 720.0)


@few
@given(fronts, rears, centres)
def test_links_and_centre_are_inverse(front: int, rear: int, centre: float) -> None:
    links = links_exact(front, rear, centre, 15.875)

    assert centre_mm(front, rear, links, 15.875) == pytest.approx(centre)


@few
@given(fronts, rears, centres)
def test_links_to_buy_are_even_and_long_enough(front: int, rear: int, centre: float) -> None:
    links = links_even(front, rear, centre, 15.875)
    exact = links_exact(front, rear, centre, 15.875)

    assert links % 2 == 0
    assert exact <= links < exact + 2


def test_an_even_length_is_not_rounded_further() -> None:
    assert links_even(16, 43, centre_mm(16, 43, 114, 15.875), 15.875) == 114


@few
@given(fronts, rears, centres)
def test_more_teeth_take_more_chain(front: int, rear: int, centre: float) -> None:
    assert links_exact(front, rear + 1, centre, 15.875) > links_exact(front, rear, centre, 15.875)


@few
@given(st.integers(10, 60))
def test_more_teeth_are_wider(teeth: int) -> None:
    assert pitch_diameter_mm(teeth + 1, 15.875) > pitch_diameter_mm(teeth, 15.875)


@pytest.mark.parametrize("number", [428, 532])
def test_the_odd_numbers_tell_no_width(number: int) -> None:
    assert chain_size(number).inner_width_mm is None


def test_too_few_links_are_refused() -> None:
    with pytest.raises(Inconsistent, match="too few"):
        centre_mm(15, 60, 45, 15.875)


def test_sprockets_that_would_touch_are_refused() -> None:
    with pytest.raises(OutOfRange, match="centre distance"):
        links_exact(16, 43, 100.0, 15.875)


@pytest.mark.parametrize("number", [320, 720])
def test_another_series_is_refused(number: int) -> None:
    with pytest.raises(OutOfRange, match="chain number"):
        chain_size(number)
