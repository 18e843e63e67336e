"""What the errors of instruments make of a figure: both ends, nothing between them outside."""

import itertools
from collections.abc import Mapping

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.instruments import band
from paddock_tui.calc.moist_air import dew_point_c
from paddock_tui.calc.sag import sag_of_lengths


def _sag(one: Mapping[str, float]) -> float:
    return sag_of_lengths(one["extended"], one["pushed"], one["lifted"]).sag_mm


def test_three_lengths_a_millimetre_wrong_are_two_millimetres_of_sag() -> None:
    at = {"extended": 120.0, "pushed": 96.0, "lifted": 100.0}

    assert band(_sag, at, dict.fromkeys(at, 1.0)) == (20.0, 24.0)


@given(
    celsius=st.floats(-20, 50),
    humidity=st.floats(5, 100),
    kelvin=st.floats(0, 3),
    percent=st.floats(0, 10),
)
def test_no_reading_within_the_errors_gives_a_dew_point_outside_the_band(
    celsius: float, humidity: float, kelvin: float, percent: float
) -> None:
    at, either = {"air": celsius, "humidity": humidity}, {"air": kelvin, "humidity": percent}
    low, high = band(
        lambda one: dew_point_c(one["air"], one["humidity"]), at, either, {"humidity": (1.0, 100.0)}
    )

    for share, other in itertools.product((-1.0, -0.5, 0.0, 0.3, 1.0), repeat=2):
        damp = min(max(humidity + other * percent, 1.0), 100.0)
        assert low - 1e-9 <= dew_point_c(celsius + share * kelvin, damp) <= high + 1e-9


def test_ends_that_the_method_refuses_are_passed_over_and_a_refusal_of_all_is_the_figure_itself() -> None:
    no_sag = {"extended": 100.0, "pushed": 100.0, "lifted": 100.0}

    low, high = band(_sag, no_sag, dict.fromkeys(no_sag, 1.0))

    assert (low, high) == (0.0, 2.0)
    assert band(_sag, no_sag, {}) == (0.0, 0.0)


def test_what_is_not_among_the_inputs_has_no_error() -> None:
    assert band(lambda one: one["a"], {"a": 1.0}, {"b": 5.0}) == (1.0, 1.0)
    assert band(lambda one: one["a"], {"a": 1.0}, {"a": 5.0}, {"a": (0.0, 4.0)}) == pytest.approx((0.0, 4.0))
