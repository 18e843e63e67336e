"""What rule books and road laws print: the few that are computed; the rest a garage's own records hold."""

import pytest

from paddock_tui.calc.noise import level_at_db
from tests.outside.rows import Row, params

ROWS = [
    Row("RUL-08", lambda: level_at_db(87.5, 20.0, 0.5), 119.5, 0.05, "20 log10(r2 / r1)", "DERIVED"),
]

_FACT = "a rule with a body and a date: it is entered in the day's record, never built in"
NOT_USED = {
    **{f"RUL-{number:02}": _FACT for number in (1, 3, 5, 6, 9, 10, 11, 13, 14, 15, 19)},
    "RUL-20": "seconds through a pit lane at its limit: no answer asks for them",
}


@pytest.mark.parametrize("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()
