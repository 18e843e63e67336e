"""Drag, rolling and thrust against textbooks; top speed against the roots of its cubic."""

import math

import pytest

from paddock_tui.calc.road_load import Resistance, drag_n, powered_top_speed_m_s
from paddock_tui.calc.thrust import power_kw, upshifts
from paddock_tui.calc.wheelie_gears import drive_force_n
from tests.every import every
from tests.later import Later
from tests.outside.rows import Row, params

np, optimize = Later("numpy"), Later("scipy.optimize")

OPENSTAX = "OpenStax College Physics, 5.2"
POWER = "P = (rho CdA (v + w)^2 / 2 + m g crr) v"
CURVE = tuple((float(n), 110.0 - 2.0e-6 * (n - 9000.0) ** 2) for n in range(5000, 15001, 50))


def _falls_at_m_s(mass_kg: float, area_m2: float, coefficient: float) -> float:
    """Return the speed at which drag carries a weight, g being 9.8 as the book has it."""
    return float(
        optimize.brentq(lambda v: drag_n(coefficient * area_m2, 1.21, v) - mass_kg * 9.8, 0.1, 300.0)
    )


def _top_km_h(density: float, headwind: float = 0.0) -> float:
    return 3.6 * powered_top_speed_m_s(110_000.0, Resistance(0.34, density, 265.0, 0.018, 0.0, headwind))


def _head_first() -> list[float]:
    speed = _falls_at_m_s(75.0, 0.18, 0.7)
    return [speed, 3.6 * speed]


def _power() -> list[float]:
    kw = power_kw(110.0, 11000.0)
    return [kw, kw * 1000.0 / 745.6998715822702]


ROWS = [
    Row("LOD-02", _head_first, [98.0, 350.0], (0.5, 5.0), OPENSTAX, "CONFIRMED"),
    Row("LOD-03", lambda: _falls_at_m_s(85.0, 0.7, 1.0), 44.0, 0.5, f"{OPENSTAX}, example", "CONFIRMED"),
    Row("LOD-04", lambda: [_falls_at_m_s(0.56, 0.0144, 1.0)], [25.1], 0.05, OPENSTAX, "CONFIRMED"),
    Row(
        "LOD-05",
        lambda: 300.0 / drag_n(2.07, 101325.0 / (287.0 * 293.15), 95.0 / 3.6),
        0.35,
        0.005,
        "Cengel and Cimbala, example 11-1",
        "DERIVED",
    ),
    Row(
        "LOD-07",
        lambda: drag_n(2.6 * 0.3, 1.2, 120.0 / 3.6) * 120.0 / 3.6,
        17333.0,
        1.0,
        "national engineering exam, P = rho Cd A v^3 / 2",
        "DERIVED",
    ),
    Row("LOD-11", lambda: _top_km_h(1.05), 302.66, 0.02, POWER, "DERIVED"),
    Row("LOD-13", lambda: _top_km_h(1.2, 5.0), 277.9, 0.02, POWER, "DERIVED"),
    Row("LOD-14", lambda: drive_force_n(110.0, 10.0, 0.315, 0.92), 3212.7, 0.1, "F = M i eta / R", "DERIVED"),
    Row(
        "LOD-15",
        lambda: upshifts((1.3, 1.1), CURVE, 15000.0)[0].before_rpm,
        12134.0,
        1.0,
        "M(n) ia = M(n ib / ia) ib",
        "DERIVED",
    ),
    Row("LOD-16", _power, [126.71, 169.92], 0.01, "P = M 2 pi n / 60", "DERIVED"),
]

NOT_USED = {"LOD-08": "rolling resistance of a heavy truck by its speed: not a motorcycle's"}
PARTLY = {"LOD-04": "its fall through a vacuum, which has nothing to do with a motorcycle"}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()


@every(("density", "headwind", "slope"), [(1.2, 0.0, 0.0), (1.05, -8.0, 0.02), (1.25, 6.0, -0.03)])
def test_top_speed_is_the_root_of_its_cubic(density: float, headwind: float, slope: float) -> None:
    found = powered_top_speed_m_s(90_000.0, Resistance(0.33, density, 260.0, 0.016, slope, headwind))
    k, angle = density * 0.33 / 2.0, math.atan(slope)
    weight = 260.0 * 9.80665 * (0.016 * math.cos(angle) + math.sin(angle))
    cubic = [k, 2.0 * k * headwind, k * headwind**2 + weight, -90_000.0]
    roots = [root.real for root in np.roots(cubic) if abs(root.imag) < 1e-9 and root.real > 0.0]

    assert found == pytest.approx(max(roots), abs=1e-6)
