"""The standing noise test."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.noise import (
    counted_db,
    level_at_db,
    margin,
    revs_of_test_rpm,
)
from tests.every import every
from tests.examples import examples


@examples(25)
@given(st.floats(30, 110), st.floats(0.5, 10))
def test_a_longer_stroke_is_tested_at_fewer_revs(stroke_mm: float, more_mm: float) -> None:
    assert revs_of_test_rpm(stroke_mm + more_mm) < revs_of_test_rpm(stroke_mm)


@every(
    ("reading", "meter", "air_c", "counted"),
    [
        (100.9, 1, 20.0, 99.0),
        (100.0, 1, 20.0, 99.0),
        (100.9, 2, 10.0, 98.0),
        (100.9, 2, 9.9, 97.0),
        (100.9, 2, 0.0, 97.0),
        (100.9, 2, -0.1, 96.0),
    ],
)
def test_a_reading_is_rounded_down_then_corrected(
    reading: float, meter: int, air_c: float, counted: float
) -> None:
    assert counted_db(reading, meter, air_c) == counted


def test_a_meter_is_of_type_one_or_two() -> None:
    with pytest.raises(Inconsistent, match="meter"):
        counted_db(100.0, 3, 20.0)


@examples(25)
@given(st.floats(60, 120), st.floats(0.3, 20), st.floats(0.3, 100))
def test_there_and_back_is_the_same_level(level: float, near_m: float, far_m: float) -> None:
    there = level_at_db(level, near_m, far_m)

    assert level_at_db(there, far_m, near_m) == pytest.approx(level)
    if abs(far_m / near_m - 1.0) > 1e-9:
        assert (there < level) == (far_m > near_m)


@every(
    ("reading", "over", "close"),
    [
        (102.1, True, False),
        (102.0, False, True),
        (100.1, False, True),
        (100.0, False, True),
        (99.9, False, False),
    ],
)
def test_at_the_limit_is_not_over_it(reading: float, over: bool, close: bool) -> None:
    found = margin(reading, 102.0)

    assert (found.over, found.close(2.0)) == (over, close)


def test_a_stroke_no_engine_has_is_refused() -> None:
    with pytest.raises(OutOfRange, match="stroke"):
        revs_of_test_rpm(19.0)
