"""Week and year on a tyre, and the age that follows."""

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.date_code import Made, age_years, read_date_code
from paddock_tui.calc.errors import Inconsistent
from tests.every import every
from tests.examples import examples


@examples(25)
@given(st.integers(1, 53), st.integers(0, 26), st.integers(0, 3000))
def test_a_day_later_is_a_day_older(week: int, year: int, days: int) -> None:
    code = f"{week:02}{year:02}"
    first = read_date_code(code).first_day

    assert read_date_code(code) == Made(week, 2000 + year)
    assert age_years(code, first) == 0.0
    assert age_years(code, first + dt.timedelta(days=days + 1)) > age_years(
        code, first + dt.timedelta(days=days)
    )


def test_a_tyre_of_week_26_is_three_years_old_three_summers_later() -> None:
    assert age_years("2623", dt.date(2026, 6, 26)) == pytest.approx(3.0, abs=0.01)


def test_week_53_is_the_week_after_the_last_of_a_year_with_52() -> None:
    assert read_date_code("5320").first_day == dt.date(2020, 12, 28)
    assert read_date_code("5321").first_day == dt.date(2022, 1, 3)


@every(
    ("code", "words"),
    [
        ("0023", "names week 0"),
        ("5422", "names week 54"),
        ("409", "before 2000"),
        ("26233", "four digits"),
        ("２６２３", "four digits"),
        ("", "four digits"),
    ],
)
def test_what_is_no_code_is_refused_with_the_reason(code: str, words: str) -> None:
    with pytest.raises(Inconsistent, match=words):
        read_date_code(code)


def test_a_tyre_that_is_made_after_the_day_is_refused() -> None:
    with pytest.raises(Inconsistent, match="week 26 of 2023 is after 2023-06-01"):
        age_years("2623", dt.date(2023, 6, 1))
