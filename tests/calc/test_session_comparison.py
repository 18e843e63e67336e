"""Comparing two sessions, shifts with intervals, and how many laps it would take."""

import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.descriptive import autocorrelation, deviation, mean
from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.laps_needed import laps_to_see
from paddock_tui.calc.permutation import permutation
from paddock_tui.calc.ranks import mann_whitney, ways
from paddock_tui.calc.regression import least_squares, theil_sen
from paddock_tui.calc.session_comparison import compared
from paddock_tui.calc.shifts import two_samples
from tests.every import every

TIMES = st.lists(st.floats(90.0, 130.0), min_size=3, max_size=12)


def test_a_faster_session_is_below_zero_with_its_interval_and_chances() -> None:
    found = compared([105.0, 105.2, 105.1, 104.9, 105.3], [104.2, 104.0, 104.1, 104.3, 104.4])

    assert found is not None
    assert found.shift_s == pytest.approx(-0.9)
    assert found.low_s is not None
    assert found.high_s is not None
    assert found.low_s < -0.9 < found.high_s < 0.0
    assert found.exact
    assert found.chance == pytest.approx(2 / 252)


@every("laps", [[], [104.0], [104.0, 105.0]])
def test_fewer_than_three_laps_are_not_compared(laps: list[float]) -> None:
    assert compared(laps, [104.0, 104.1, 104.2]) is None
    assert compared([104.0, 104.1, 104.2], laps) is None


@given(TIMES, TIMES)
def test_comparing_the_other_way_round_turns_the_sign(first: list[float], second: list[float]) -> None:
    there, back = compared(first, second), compared(second, first)

    assert there is not None
    assert back is not None
    assert there.shift_s == pytest.approx(-back.shift_s, abs=1e-9)
    assert there.chance == pytest.approx(back.chance)
    assert 0.0 < there.chance <= 1.0
    assert there.low_s is None or there.low_s <= there.shift_s + 1e-9


def test_intervals_cover_what_they_say() -> None:
    draw = random.Random(3)
    inside = 0
    for _ in range(400):
        x = [draw.gauss(0.0, 1.0) for _ in range(7)]
        y = [draw.gauss(0.5, 1.0) for _ in range(8)]
        found = two_samples(y, x)
        assert found.covers is not None
        assert found.covers >= 0.95
        inside += (found.low or 0.0) <= 0.5 <= (found.high or 0.0)

    assert inside >= 400 * (0.95 - 3 * (0.95 * 0.05 / 400) ** 0.5)


def test_too_few_numbers_have_no_interval() -> None:
    assert two_samples([1.0, 2.0], [3.0]).low is None


def test_large_samples_are_given_an_interval_too() -> None:
    many = [float(one) for one in range(60)]

    found = two_samples(many, [one + 1.0 for one in many])
    assert found.low is not None
    assert found.low < -1.0 < (found.high or 0.0)


def test_orders_are_counted_whole() -> None:
    assert ways(2, 2) == (1, 1, 2, 1, 1)
    for n, m in ((1, 6), (5, 4), (7, 9), (40, 40)):
        assert sum(ways(n, m)) == math.comb(n + m, n)


def test_an_exact_count_in_spite_of_ties_is_refused() -> None:
    with pytest.raises(Inconsistent, match="the same"):
        mann_whitney([1.0, 2.0], [2.0], exact=True)


def test_what_is_empty_or_all_alike_is_refused_in_words() -> None:
    with pytest.raises(Inconsistent):
        mean([])
    with pytest.raises(Inconsistent):
        deviation([1.0])
    with pytest.raises(Inconsistent):
        autocorrelation([2.0, 2.0, 2.0])
    with pytest.raises(Inconsistent):
        permutation([], [1.0])
    with pytest.raises(Inconsistent):
        theil_sen([1.0, 1.0], [2.0, 3.0])
    with pytest.raises(Inconsistent):
        least_squares([1.0, 2.0], [2.0])
    with pytest.raises(OutOfRange):
        mean([1.0, math.nan])


def test_a_line_through_two_points_has_no_deviations() -> None:
    found = least_squares([1.0, 2.0], [3.0, 5.0])

    assert (found.slope, found.intercept, found.slope_sd, found.f) == (2.0, 1.0, None, None)
    assert least_squares([1.0, 2.0, 3.0], [4.0, 4.0, 4.0]).r_squared is None


def test_laps_needed_are_the_textbook_figure_over_the_efficiency_of_ranks() -> None:
    # 2 (1.95996 + 0.84162)^2 (0.5 / 0.3)^2 = 43.6, times pi / 3.
    assert laps_to_see(0.3, 0.5) == 46
    assert laps_to_see(0.3, 0.0) == 3


def test_that_many_laps_find_the_difference_four_times_in_five() -> None:
    draw = random.Random(5)
    n, found = laps_to_see(0.3, 0.25), 0
    for _ in range(400):
        a = [draw.gauss(104.0, 0.25) for _ in range(n)]
        b = [draw.gauss(104.3, 0.25) for _ in range(n)]
        found += mann_whitney(a, b).chance <= 0.05

    assert 0.72 <= found / 400 <= 0.9


@given(st.floats(0.05, 2.0), st.floats(0.01, 3.0))
def test_more_scatter_never_needs_fewer_laps(difference: float, scatter: float) -> None:
    assert laps_to_see(difference, scatter) <= laps_to_see(difference, 1.5 * scatter)


@every("difference", [0.0, -0.3, math.nan])
def test_a_difference_of_nothing_cannot_be_seen(difference: float) -> None:
    with pytest.raises(OutOfRange, match=r"\bpower\b"):
        laps_to_see(0.5, 0.25, power=0.4)
    with pytest.raises(OutOfRange):
        laps_to_see(difference, 0.3)
