"""Gearing against worked problems of textbooks."""

import math

from paddock_tui.calc.gearing import GearTrain, overall_ratio, revs_at_speed_rpm, speed_at_revs_m_s
from paddock_tui.calc.tyre_size import circumference_of_diameter_m
from tests.every import every
from tests.outside.rows import Row, accounted, params

INCH = 0.0254
MPH = 0.44704
ELEMENTARY = "v = revs x circumference / (60 x overall ratio)"


def _bicycle_mph(crank_rpm: float, front: int, rear: int, wheel_in: float) -> float:
    circumference_m = circumference_of_diameter_m(wheel_in * INCH)
    return speed_at_revs_m_s(crank_rpm, overall_ratio(1.0, 1.0, front, rear), circumference_m) / MPH


def _car_ratio_and_speed() -> list[float]:
    overall = overall_ratio(1.0, 29 / 30, 20, 88)
    circumference_m = circumference_of_diameter_m(0.63)
    return [overall, 3.6 * (speed_at_revs_m_s(4000, overall, circumference_m))]


def _wheel_turning() -> list[float]:
    revs = revs_at_speed_rpm(32.0, 1.0, circumference_of_diameter_m(0.84))
    return [revs * math.tau / 60.0, revs]


def _motorcycle() -> list[float]:
    drive = GearTrain(1.9, (1.0,), 16, 43, 1.979)
    return [drive.overall(1), 3.6 * (drive.speed_m_s(12000, 1))]


ROWS = [
    Row("GEA-01", lambda: _bicycle_mph(130, 40, 12, 26), 33.5, 0.05, ELEMENTARY, "CONFIRMED"),
    Row("GEA-02", lambda: _bicycle_mph(60, 52, 12, 20), 15.45, 0.03, ELEMENTARY, "CONFIRMED"),
    Row(
        "GEA-03",
        lambda: 3.6 * (speed_at_revs_m_s(1500, 13.579, circumference_of_diameter_m(0.6))),
        12.5,
        0.05,
        ELEMENTARY,
        "CONFIRMED",
    ),
    Row(
        "GEA-04",
        lambda: revs_at_speed_rpm(130 * MPH, 2.5, math.tau * 12.6 * INCH, slip=0.03),
        4469,
        1,
        "Mannering & Washburn, problem 2.7",
        "DERIVED",
    ),
    Row("GEA-05", _car_ratio_and_speed, [4.253, 111.7], 0.05, ELEMENTARY, "DERIVED"),
    Row(
        "GEA-06",
        lambda: 200000 * circumference_of_diameter_m(1.15) / 1000.0,
        723,
        0.6,
        "OpenStax College Physics 2e 6.1",
        "CONFIRMED",
    ),
    Row("GEA-07", _wheel_turning, [76.2, 728], 1e-3, "OpenStax College Physics 2e 6.1", "CONFIRMED", True),
    Row("GEA-08", _motorcycle, [5.1063, 279.0], 0.1, ELEMENTARY, "DERIVED"),
]

NOT_USED: dict[str, str] = {}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()


def test_every_figure_is_accounted_for() -> None:
    assert accounted("GEA", 8, ROWS, NOT_USED)
