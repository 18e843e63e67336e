"""Sag measured, and carried to another rider."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.sag import (
    for_other_rider,
    percent_of_travel,
    sag_of_lengths,
    sag_shift_mm,
    wheel_rate_from_sags_n_per_mm,
    wheel_rate_to_serve_n_per_mm,
)
from tests.every import every
from tests.examples import examples

few = examples(25)
free_sags = st.floats(2.0, 30.0)
further = st.floats(5.0, 40.0)
riders = st.floats(50.0, 120.0)


@few
@given(st.floats(300.0, 700.0), st.floats(5.0, 60.0), st.floats(0.0, 5.0))
def test_stiction_is_averaged_out(extended: float, sag: float, half_gap: float) -> None:
    found = sag_of_lengths(extended, extended - sag - half_gap, extended - sag + half_gap)

    assert found.sag_mm == pytest.approx(sag)
    assert found.stiction_mm == pytest.approx(2 * half_gap, abs=1e-9)


def test_a_settled_length_above_the_extended_one_is_refused() -> None:
    with pytest.raises(OutOfRange, match="after the lift"):
        sag_of_lengths(500, 480, 501)


def test_share_of_travel() -> None:
    assert percent_of_travel(30.0, 120.0) == pytest.approx(25.0)
    with pytest.raises(OutOfRange, match="sag"):
        percent_of_travel(130.0, 120.0)


@few
@given(free_sags, further, st.floats(100.0, 800.0))
def test_rate_from_sags_gives_the_sags_back(free: float, more: float, share_n: float) -> None:
    rate = wheel_rate_from_sags_n_per_mm(free, free + more, share_n)

    assert share_n / rate == pytest.approx(more)


@few
@given(free_sags, further, riders, riders)
def test_other_rider_there_and_back(free: float, more: float, first_kg: float, second_kg: float) -> None:
    other = for_other_rider(free, free + more, first_kg, second_kg)
    back = for_other_rider(free, other.rider_sag_mm, second_kg, first_kg)

    assert back.rider_sag_mm == pytest.approx(free + more)
    assert back.make_up_mm == pytest.approx(-other.make_up_mm, abs=1e-9)


@few
@given(free_sags, further, riders, st.floats(1.0, 60.0))
def test_a_heavier_rider_sags_more(free: float, more: float, rider_kg: float, extra_kg: float) -> None:
    assert for_other_rider(free, free + more, rider_kg, rider_kg + extra_kg).make_up_mm > 0.0


def test_proportion_agrees_with_the_rate() -> None:
    """The shift by proportion is that of the extra weight on the rate that the sags imply."""
    share = 0.5
    rate = wheel_rate_from_sags_n_per_mm(10.0, 30.0, 80.0 * 9.80665 * share)

    assert for_other_rider(10.0, 30.0, 80.0, 100.0).make_up_mm == pytest.approx(
        sag_shift_mm(20.0, share, rate)
    )


def test_a_stiffer_spring_serves_a_smaller_difference() -> None:
    assert wheel_rate_to_serve_n_per_mm(10, 30, 400) == pytest.approx(20.0)
    assert wheel_rate_to_serve_n_per_mm(10, 25, 400) > wheel_rate_to_serve_n_per_mm(10, 30, 400)


@every(("free", "rider"), [(0.0, 30.0), (30.0, 30.0), (31.0, 30.0)])
def test_no_free_sag_or_no_difference_tells_no_rate(free: float, rider: float) -> None:
    with pytest.raises(OutOfRange):
        wheel_rate_from_sags_n_per_mm(free, rider, 400.0)


def test_a_rider_who_cannot_be_is_refused() -> None:
    with pytest.raises(OutOfRange, match="rider"):
        for_other_rider(10.0, 30.0, 80.0, 20.0)
