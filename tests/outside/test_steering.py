"""Rake, trail and wheelbase against published geometry and an independent solution of the pitch."""

import math

import pytest

from paddock_tui.calc.steering import GeometryChange, Steering, SteeringGeometry, after, offset_of_trail_mm
from tests.every import every
from tests.outside.rows import Row, params

TRAIL = "a = (R sin e - d) / cos e, an = R sin e - d: printed; Meijaard and others 2007"
PITCH = "rigid plane pitch about the contacts, solved as a root"
BIKE = SteeringGeometry(1410.0, 315.0, Steering(24.0, 30.0, 300.0))


def _benchmark() -> list[float]:
    offset = offset_of_trail_mm(18.0, 80.0, 350.0)
    return [Steering(18.0, offset, 350.0).normal_trail_mm / 1000.0, offset / 1000.0]


def _trails(rake: float, offset: float) -> list[float]:
    found = Steering(rake, offset, 300.0)
    return [found.trail_mm, found.normal_trail_mm]


def _flop() -> float:
    return Steering(24.0, offset_of_trail_mm(24.0, 100.0, 300.0), 300.0).flop_mm


def _moved(move: GeometryChange) -> list[float]:
    found = after(BIKE, move)
    return [found.steering.rake_deg, found.steering.trail_mm, found.wheelbase_mm]


def _taller() -> float:
    return Steering(24.0, 30.0, 305.0).trail_mm - Steering(24.0, 30.0, 300.0).trail_mm


ROWS = [
    Row("GEO-02", _benchmark, [0.076085, 0.032072], 1e-6, TRAIL, "DERIVED"),
    Row("GEO-04", lambda: _trails(24.0, 30.0), [100.73, 92.02], 0.01, TRAIL, "DERIVED"),
    Row("GEO-05", lambda: _trails(23.0, 27.0), [98.01, 90.22], 0.01, TRAIL, "DERIVED"),
    Row("GEO-08", _flop, 37.16, 0.01, "f = b sin t cos t, printed", "DERIVED"),
    Row(
        "GEO-10",
        lambda: _moved(GeometryChange(fork_through_mm=5.0)),
        [23.814, 99.61, 1407.93],
        0.01,
        PITCH,
        "DERIVED",
    ),
    Row(
        "GEO-12",
        lambda: _moved(GeometryChange(fork_through_mm=-5.0, rear_up_mm=-5.0)),
        [24.388, 103.07, 1412.17],
        0.01,
        PITCH,
        "DERIVED",
    ),
    Row("GEO-14", _taller, 2.226, 1e-3, "da/dR = tan e", "DERIVED"),
]

NOT_USED = {"GEO-03": "typical rakes by kind of bike: nothing here judges a rake by them"}
ELSEWHERE = {"GEO-01": "test_the_published_trail_comes_back"}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()


def test_the_published_trail_comes_back() -> None:
    offset = offset_of_trail_mm(18.0, 80.0, 350.0)

    assert Steering(18.0, offset, 350.0).trail_mm == pytest.approx(80.0)
    assert offset == pytest.approx(350.0 * math.sin(math.radians(18.0)) - 76.085, abs=5e-4)
