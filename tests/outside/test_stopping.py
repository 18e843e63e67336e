"""Stopping distances and friction against road codes, design manuals and textbooks."""

import math

import pytest

from paddock_tui.calc import stopping
from paddock_tui.calc.longitudinal import sliding_m_s2
from paddock_tui.calc.stopping import braking_m, reaction_m, stopping_m
from paddock_tui.calc.wet_grip import RUBBER_DRY, RUBBER_DRY_SLIDING, wet_ratios
from paddock_tui.quantities import convert
from tests.every import every
from tests.outside.rows import Row, accounted, params

M_S_PER_MPH = 0.44704
CODE = "UK Highway Code, rules 126 and 227"
AASHTO = "AASHTO Green Book, stopping sight distance"
OPENSTAX = "OpenStax University Physics 1, chapters 3 and 6"
AGENCY = "Finnish road-safety agency, motorcycles: 1 s, 7 m/s2 dry, 3.5 wet, 10 best case, rounded up to 1 m"
CONFIRMED, MEMORY = "CONFIRMED", "FROM MEMORY; formula CONFIRMED"
DERIVED = "DERIVED; formula CONFIRMED or elementary"

CODE_S, CODE_M_S2 = 0.67, 6.5
"""What the road code's table stands for: 0.3 m for each mile an hour, and braking at about 6.5 m/s2."""


def _code(mph: float) -> list[int]:
    """Thinking and braking to the whole metre, and the sum of what is printed."""
    speed = mph * M_S_PER_MPH
    thinking, braking = round(reaction_m(speed, CODE_S)), round(braking_m(speed, CODE_M_S2))
    return [thinking, braking, thinking + braking]


def _sight_m(km_h: float) -> list[float]:
    """0.278 V t + 0.039 V2 / a: the distances here with the constants as the source rounds them."""
    speed = km_h / 3.6
    rounded = reaction_m(speed, 2.5) * 0.278 * 3.6 + braking_m(speed, 3.4) * 0.039 * 2 * 3.6**2
    return [rounded, _up_to_five(stopping_m(speed, 2.5, 3.4))]


def _feet(metres: float) -> float:
    return convert(metres, "m", "ft")


FT_S_PER_MPH = 5280 / 3600


def _sight_ft(mph: float) -> list[float]:
    """1.47 V t + 1.075 V2 / a in feet: the distances here with the constants as the source rounds them."""
    speed, rate = mph * M_S_PER_MPH, 11.2 * 0.3048
    reaction, braking = _feet(reaction_m(speed, 2.5)), _feet(braking_m(speed, rate))
    rounded = reaction * 1.47 / FT_S_PER_MPH + braking * 1.075 * 2 / FT_S_PER_MPH**2
    return [rounded, _up_to_five(_feet(stopping_m(speed, 2.5, rate)))]


def _up_to_five(distance: float) -> int:
    return math.ceil(distance / 5) * 5


def _garber_hoel_ft() -> float:
    """1.47 u t + u2 / (30 x 0.35): with gravity such that 30 is exact, and 1.47 as the source rounds it."""
    speed = 60 * M_S_PER_MPH
    g = 30 * FT_S_PER_MPH**2 / 2 * 0.3048
    braking = _feet(braking_m(speed, 0.35 * g, 0.0, g))
    return _feet(reaction_m(speed, 2.5)) * 1.47 / FT_S_PER_MPH + braking


def _agency(km_h: float) -> list[int]:
    speed = km_h / 3.6
    rates = (stopping.MEAN_DRY_M_S2, stopping.MEAN_WET_M_S2)
    return [math.ceil(stopping_m(speed, stopping.REACTION_S, rate)) for rate in rates]


def _locked_m() -> float:
    return braking_m(100 / 3.6, sliding_m_s2(0.5, g_m_s2=9.8))


ROWS = [
    Row("STP-01", lambda: _code(20), [6, 6, 12], 0, CODE, CONFIRMED),
    Row("STP-02", lambda: _code(30), [9, 14, 23], 0, CODE, CONFIRMED),
    Row("STP-03", lambda: _code(50), [15, 38, 53], 0, CODE, CONFIRMED),
    Row("STP-04", lambda: _code(70), [21, 75, 96], 0, CODE, MEMORY),
    Row("STP-05", lambda: 9.0 / reaction_m(30 * M_S_PER_MPH, 1.0), 0.67, 0.01, CODE, CONFIRMED),
    Row("STP-06", lambda: wet_ratios().lower.stopping, 2.0, 0, CODE, CONFIRMED),
    Row("STP-07", lambda: _sight_m(50), [63.5, 65], 0.15, AASHTO, MEMORY),
    Row("STP-08", lambda: _sight_m(100), [184.2, 185], 0.15, AASHTO, MEMORY),
    Row("STP-09", lambda: _sight_m(120), [248.6, 250], 0.15, AASHTO, MEMORY),
    Row("STP-10", lambda: _sight_ft(30), [196.7, 200], 0.15, AASHTO, MEMORY),
    Row("STP-11", lambda: _sight_ft(70), [727.6, 730], 0.15, AASHTO, MEMORY),
    Row("STP-12", _garber_hoel_ft, 563.36, 0.01, "Garber and Hoel eq. 3.27", CONFIRMED),
    Row("STP-13", lambda: braking_m(30, 7.0), 64.3, 0.05, OPENSTAX, CONFIRMED),
    Row("STP-14", lambda: braking_m(30, 5.0), 90.0, 0.05, OPENSTAX, CONFIRMED),
    Row("STP-15", _locked_m, 78.7, 0.1, OPENSTAX, CONFIRMED),
    Row("STP-16", lambda: _agency(50), [28, 42], 0, AGENCY, DERIVED),
    Row("STP-17", lambda: _agency(80), [58, 93], 0, AGENCY, DERIVED),
    Row("STP-18", lambda: _agency(120), [113, 193], 0, AGENCY, DERIVED),
    Row(
        "STP-19",
        lambda: [stopping.MEAN_DRY_M_S2, stopping.MEAN_WET_M_S2, stopping.BEST_M_S2],
        [7.0, 3.5, 10.0],
        0,
        AGENCY,
        CONFIRMED,
    ),
    Row(
        "STP-20",
        lambda: stopping.HALF_OF_RIDERS_USE * 100,
        56.0,
        1e-9,
        "Ecker and others, International Motorcycle Safety Conference 2001",
        CONFIRMED,
    ),
    Row(
        "STP-21",
        lambda: [RUBBER_DRY, RUBBER_DRY_SLIDING],
        [1.0, 0.7],
        0,
        "OpenStax College Physics, table 5.1",
        CONFIRMED,
    ),
]

NOT_USED: dict[str, str] = {}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()


def test_every_figure_is_accounted_for() -> None:
    assert accounted("STP", 21, ROWS, NOT_USED)


def test_a_stop_on_a_slope_agrees_with_the_textbook_to_the_first_order() -> None:
    """Garber and Hoel: u2 / (2 g (a/g + G)), G the slope."""
    for slope in (-0.06, -0.03, 0.03, 0.06):
        by_book = 30.0**2 / (2 * 9.80665 * (0.35 + slope))
        assert braking_m(30.0, 0.35 * 9.80665, slope) == pytest.approx(by_book, rel=2e-3)
