"""Let air out now, or wait."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.cooling_pressure import (
    Freshness,
    PressureAdvice,
    after_parking,
    at_gas_temperature,
    freshness,
)
from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.tyre_pressure import hot_expected_kpa_gauge
from tests.every import every
from tests.examples import examples

ENOUGH = 3.0
"""So near its target a reading is on it, in kPa."""


@every(
    ("minutes", "expected"),
    [
        (0, Freshness.HOT),
        (3, Freshness.HOT),
        (3.1, Freshness.WARM),
        (8, Freshness.WARM),
        (8.1, Freshness.LATE),
    ],
)
def test_freshness_by_minutes(minutes: float, expected: Freshness) -> None:
    assert freshness(minutes) is expected


@every(
    ("reading", "step"),
    [
        (250, PressureAdvice.LET_OUT),
        (243.1, PressureAdvice.LET_OUT),
        (243, PressureAdvice.LEAVE),
        (237, PressureAdvice.LEAVE),
        (236.9, PressureAdvice.PUT_IN),
        (230, PressureAdvice.PUT_IN),
    ],
)
def test_a_hot_reading_is_set_to_the_target(reading: float, step: PressureAdvice) -> None:
    parked = after_parking(reading, 240, 1.0, ENOUGH)

    assert parked.step is step
    assert parked.set_to_kpa_gauge == 240
    assert not parked.at_least


@pytest.mark.parametrize("minutes", [5.0, 30.0])
def test_cooled_and_still_too_high_is_certainly_too_high(minutes: float) -> None:
    parked = after_parking(250, 240, minutes, ENOUGH)

    assert (parked.step, parked.set_to_kpa_gauge, parked.at_least) == (PressureAdvice.LET_OUT, 240, True)


@every("reading", [243, 240, 200])
def test_cooled_and_not_too_high_tells_nothing(reading: float) -> None:
    parked = after_parking(reading, 240, 5.0, ENOUGH)

    assert parked.step is PressureAdvice.WAIT
    assert parked.set_to_kpa_gauge is None
    assert parked.at_least


def test_a_reading_before_parking_is_refused() -> None:
    with pytest.raises(OutOfRange):
        after_parking(240, 240, -1.0, ENOUGH)


@examples(25)
@given(st.floats(150, 280), st.floats(200, 260), st.floats(20, 60), st.floats(60, 90))
def test_the_figure_to_set_comes_out_on_target_when_hot(
    reading: float, target: float, now_c: float, hot_c: float
) -> None:
    parked = at_gas_temperature(reading, target, now_c, hot_c, 101.325, ENOUGH)

    if parked.set_to_kpa_gauge is not None:
        assert hot_expected_kpa_gauge(parked.set_to_kpa_gauge, now_c, hot_c) == pytest.approx(target)
    assert parked.hot_kpa_gauge == pytest.approx(hot_expected_kpa_gauge(reading, now_c, hot_c))


def test_air_hotter_now_than_it_gets_when_hot_is_refused() -> None:
    with pytest.raises(Inconsistent, match="a standing tyre only cools"):
        at_gas_temperature(240, 240, 90.0, 75.0, 101.325, ENOUGH)


def test_a_difference_within_the_doubt_waits() -> None:
    reading = hot_expected_kpa_gauge(246, 75, 45)

    assert at_gas_temperature(reading, 240, 45, 75, 101.325, ENOUGH).step is PressureAdvice.WAIT
    assert (
        at_gas_temperature(reading, 240, 45, 75, 101.325, ENOUGH, unsure_k=2.0).step is PressureAdvice.LET_OUT
    )
