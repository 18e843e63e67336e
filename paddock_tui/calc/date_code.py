"""The date moulded on a tyre: week and year in four digits, and the age that follows.

Source: 49 CFR 574.5; four digits since the tyres of 2000 (64 FR 36807), three before, which do not tell
their decade. A tyre ages in storage too; the maker's own limit comes before any figure.
"""

import datetime as dt
import re

import attrs

from paddock_tui.calc.errors import Inconsistent

_DAYS_A_YEAR = 365.2425


@attrs.frozen
class Made:
    """When a tyre was made: week 1 to 53 of a year, and the first day of that week."""

    week: int
    year: int

    @property
    def first_day(self) -> dt.date:
        """Monday of that week; week 53 of a year with 52 is the week after its last."""
        return dt.date.fromisocalendar(self.year, 1, 1) + dt.timedelta(weeks=self.week - 1)


def read_date_code(code: str) -> Made:
    """Read a code such as 2623, week 26 of 2023; raises Inconsistent where it is none."""
    text = code.strip()
    if re.fullmatch(r"[0-9]{3}", text, re.ASCII):
        raise Inconsistent("date code", f"{text} has three digits: made before 2000, the decade is not told")
    if not re.fullmatch(r"[0-9]{4}", text, re.ASCII):
        raise Inconsistent("date code", "it is four digits, week and year")
    week, year = int(text[:2]), 2000 + int(text[2:])
    if not 1 <= week <= 53:
        raise Inconsistent("date code", f"{text} names week {week}; a year has 53 at most")
    return Made(week, year)


def age_years(code: str, on: dt.date) -> float:
    """Return the age of a tyre in years on a day, from the first day of its week; a later week is refused."""
    made = read_date_code(code)
    days = (on - made.first_day).days
    if days < 0:
        raise Inconsistent("date code", f"week {made.week} of {made.year} is after {on:%Y-%m-%d}")
    return days / _DAYS_A_YEAR
