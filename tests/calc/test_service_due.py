"""Service by hours, by distance and by months."""

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.service_due import due_date, hours_to_go, km_to_go
from tests.every import every
from tests.examples import examples


@examples(25)
@given(st.floats(1, 100), st.floats(0, 1000), st.floats(0, 50))
def test_an_hour_run_is_an_hour_less_to_go(every: float, last: float, run: float) -> None:
    assert hours_to_go(every, last, last + run) == pytest.approx(every - run)


@examples(25)
@given(st.floats(1, 100_000), st.floats(0, 100_000), st.floats(0, 50_000))
def test_a_kilometre_run_is_a_kilometre_less_to_go(every: float, last: float, run: float) -> None:
    assert km_to_go(every, last, last + run) == pytest.approx(every - run, abs=1e-6)
    with pytest.raises(OutOfRange):
        km_to_go(0.0, last, run)


@every(
    ("last", "months", "due"),
    [
        (dt.date(2026, 3, 7), 12, dt.date(2027, 3, 7)),
        (dt.date(2025, 10, 18), 24, dt.date(2027, 10, 18)),
        (dt.date(2026, 1, 31), 1, dt.date(2026, 2, 28)),
        (dt.date(2023, 8, 31), 6, dt.date(2024, 2, 29)),
        (dt.date(2026, 12, 15), 1, dt.date(2027, 1, 15)),
    ],
)
def test_a_month_that_is_too_short_ends_it_on_its_last_day(last: dt.date, months: int, due: dt.date) -> None:
    assert due_date(last, months) == due


def test_an_interval_of_nothing_is_refused() -> None:
    with pytest.raises(OutOfRange, match="hours between services"):
        hours_to_go(0.0, 10.0, 12.0)
    with pytest.raises(OutOfRange, match="months between services"):
        due_date(dt.date(2026, 1, 1), 0)
