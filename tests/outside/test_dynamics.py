"""Limits of driving and braking, load transfer and lean against textbooks and published figures."""

import math

from paddock_tui.calc.acceleration import distance_m, mean_m_s2
from paddock_tui.calc.balance import Balance, centre_ahead_m, load_transfer_n
from paddock_tui.calc.lean import (
    corner_speed_m_s,
    friction_needed,
    lean_deg,
    radius_at_lean_m,
    speed_at_lean_m_s,
    wide_tyre_deg,
)
from paddock_tui.calc.longitudinal import rear_lift_m_s2, wheelie_m_s2
from tests.every import every
from tests.outside.rows import Row, accounted, params

G = 9.8
OPENSTAX = "OpenStax University Physics 1 and College Physics, chapter 6"
BOOKS = "Cossalter, Motorcycle Dynamics 2nd ed. 2006; Foale 2nd ed. 2006"
DERIVED = "DERIVED; formula CONFIRMED or elementary"


def _rear_lift_downhill_g() -> float:
    """A bike whose rear lifts at 0.7 g on the level, on a road that falls by a tenth."""
    return rear_lift_m_s2(Balance(1.4, 1.0, 0.7), -0.1, g_m_s2=1.0)


def _both_limits() -> list[float]:
    balance = Balance(1.4, 0.64, 0.7)
    return [wheelie_m_s2(balance), rear_lift_m_s2(balance)]


def _upright_bicycle_in_published_range() -> bool:
    """Wheelbase 42, centre of mass 45 high and 17 ahead of the rear axle, in inches, as in the book."""
    bicycle = Balance(42 * 0.0254, 45 * 0.0254, 17 * 0.0254)
    return 0.5 <= rear_lift_m_s2(bicycle, g_m_s2=1.0) <= 0.67


def _slow_on_a_bank() -> float:
    """Slower than the bank is made for: friction holds the vehicle up, which is a figure below nothing."""
    return -friction_needed(20.0 / 3.6, 100.0, 15.0, g_m_s2=G)


ROWS = [
    Row("DYN-01", _rear_lift_downhill_g, 0.6, 0.005, "braking article 2005", "CONFIRMED"),
    Row("DYN-02", lambda: centre_ahead_m(2.5, 52.0, 48.0), 1.3, 0.005, OPENSTAX + ", ex. 12.1", "CONFIRMED"),
    Row("DYN-03", lambda: wheelie_m_s2(Balance(1.4, 0.5, 0.6), g_m_s2=9.81), 11.77, 0.01, BOOKS, DERIVED),
    Row("DYN-04", _both_limits, [10.73, 10.73], 0.01, BOOKS, DERIVED),
    Row("DYN-05", lambda: load_transfer_n(Balance(1.4, 0.64, 0.7), 260, 8.0), 950.9, 0.1, BOOKS, DERIVED),
    Row(
        "DYN-06",
        _upright_bicycle_in_published_range,
        True,
        0,
        "Wilson, Bicycling Science 3rd ed. 2004; the bicycle's dimensions from memory",
        "CONFIRMED; order of magnitude only",
    ),
    Row("DYN-07", lambda: lean_deg(12.0, 30.0, g_m_s2=G), 26.1, 0.05, OPENSTAX, DERIVED),
    Row("DYN-08", lambda: speed_at_lean_m_s(65, 100, g_m_s2=G), 45.8, 0.05, OPENSTAX, "CONFIRMED"),
    Row("DYN-09", lambda: speed_at_lean_m_s(15, 100, g_m_s2=G), 16.2, 0.05, OPENSTAX, "CONFIRMED"),
    Row("DYN-10", lambda: radius_at_lean_m(75, 30, g_m_s2=G), 24.6, 0.05, OPENSTAX, "CONFIRMED"),
    Row("DYN-11", lambda: friction_needed(25, 500, g_m_s2=G), 0.13, 0.005, OPENSTAX, "CONFIRMED"),
    Row("DYN-12", lambda: corner_speed_m_s(0.7, 65, g_m_s2=G), 21, 0.5, OPENSTAX, "CONFIRMED"),
    Row("DYN-13", _slow_on_a_bank, 0.234, 0.001, OPENSTAX, "CONFIRMED"),
    Row("DYN-14", lambda: wide_tyre_deg(45, 0.09, 0.6), 7.2, 0.05, BOOKS, "DERIVED; formula FROM MEMORY"),
    Row(
        "DYN-15",
        lambda: [mean_m_s2(26.8, 3.9), distance_m(0.0, 26.8, 3.9)],
        [6.87, 52.26],
        0.01,
        "OpenStax University Physics 1, chapter 3",
        "CONFIRMED",
    ),
    Row(
        "DYN-16",
        lambda: mean_m_s2(30.0, 4.2) / 0.32,
        22.3,
        0.05,
        "OpenStax College Physics ex. 10.2: the rate of the rim over its radius",
        "CONFIRMED",
    ),
]

NOT_USED: dict[str, str] = {}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()


def test_every_figure_is_accounted_for() -> None:
    assert accounted("DYN", 16, ROWS, NOT_USED)


def test_the_slope_changes_a_braking_limit_by_its_own_share_of_gravity() -> None:
    """The article's a(s) = a(0) + s g is the first order of the figure here."""
    balance = Balance(1.4, 0.64, 0.7)
    for slope in (-0.05, -0.01, 0.02, 0.05):
        first_order = rear_lift_m_s2(balance) + slope * 9.80665
        assert math.isclose(rear_lift_m_s2(balance, slope), first_order, abs_tol=9.80665 * slope**2)
