"""What standards and rule books print: noise, date codes; the rest is what a garage's own records hold."""

import math

from paddock_tui.calc.date_code import Made, read_date_code
from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.noise import DISTANCE_M, counted_db, level_at_db, revs_of_test_rpm
from tests.every import every
from tests.outside.rows import Row, accounted, params

FIM = "FIM noise control, static test"
CODE = "49 CFR 574.5; 64 FR 36807"


def _made(code: str) -> tuple[int, int]:
    made = read_date_code(code)
    return made.week, made.year


def _refused(code: str) -> bool:
    try:
        read_date_code(code)
    except Inconsistent:
        return True
    return False


def _double_and_a_fifth() -> list[float]:
    """Intensity goes with the inverse square: double at a distance of 1 for sqrt(2), a fifth at sqrt(5)."""
    return [level_at_db(90.0, math.sqrt(2.0), 1.0), level_at_db(90.0, 1.0, math.sqrt(5.0))]


ROWS = [
    Row("REG-05", lambda: DISTANCE_M, 0.5, 0, FIM, "CONFIRMED"),
    Row("REG-06", lambda: revs_of_test_rpm(55.0, 11.0), 6000, 1, FIM, "DERIVED"),
    Row("REG-09", lambda: counted_db(100.9, 2, 5.0), 97, 0, FIM, "DERIVED"),
    Row("REG-16", lambda: _made("4012"), (40, 2012), 0, CODE, "CONFIRMED"),
    Row("REG-17", lambda: _made("2623"), (26, 2023), 0, CODE, "DERIVED"),
    Row("REG-18", lambda: _refused("5422"), True, 0, CODE, "DERIVED"),
    Row("REG-26", lambda: level_at_db(0.0, 1.0, 2.0), -6.0, 0.05, "20 log10(r2/r1)", "CONFIRMED"),
    Row("REG-27", lambda: level_at_db(105.0, 0.5, 20.0), 73.0, 0.05, "20 log10(r2/r1)", "DERIVED"),
    Row("REG-28", _double_and_a_fifth, [93, 83], 0.05, "OpenStax College Physics 17.3", "CONFIRMED"),
]

PARTLY = {
    "REG-05": "angle and height of the microphone: the organiser's own words stand in the day",
}
"""Rows of which only a part is checked, each with what is left out."""

_POSTED = "a limit of one organiser: the day holds what is posted, no figure is built in"
_CHECKLIST = "equipment of the bike: an item for the checklist in the organiser's own words"
_KIT = "a class of protection: kit is inspected by the organiser, nothing is calculated from it"

NOT_USED = {
    "REG-01": _POSTED,
    "REG-02": "a penalty of one race meeting: nothing here hands out penalties",
    "REG-03": "a penalty of one race meeting: nothing here hands out penalties",
    "REG-04": "a penalty of one race meeting: nothing here hands out penalties",
    "REG-07": _POSTED,
    "REG-08": _POSTED,
    "REG-10": _POSTED,
    "REG-11": _CHECKLIST,
    "REG-12": _CHECKLIST,
    "REG-13": _CHECKLIST,
    "REG-14": _CHECKLIST,
    "REG-15": "a checklist item: plain water and what the organiser allows",
    "REG-19": "the whole number on the side wall: only its date code is asked for",
    "REG-20": _KIT,
    "REG-21": _KIT,
    "REG-22": _KIT,
    "REG-23": _KIT,
    "REG-24": _KIT,
    "REG-25": _KIT,
}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()


def test_every_figure_is_accounted_for() -> None:
    assert accounted("REG", 28, ROWS, NOT_USED)


def test_the_week_of_a_code_comes_first() -> None:
    assert read_date_code("2623") == Made(week=26, year=2023)
