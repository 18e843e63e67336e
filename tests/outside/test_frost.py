"""Vapour over ice and the frost point against tables and a formula of reference."""

from paddock_tui.calc.frost import frost_point_c, saturation_over_ice_kpa
from paddock_tui.calc.moist_air import dew_point_c, saturation_vapour_kpa
from tests.every import every
from tests.later import Later
from tests.outside.rows import Row, params

optimize = Later("scipy.optimize")

ASHRAE = "ASHRAE Handbook of Fundamentals 2017, chapter 1"
MANUAL = "hygrometer manual, table over ice"
WMO = "WMO-No. 8, annex 4.B"
_MMHG_KPA = 0.133322387415


def _points(celsius: float, humidity: float) -> list[float]:
    return [dew_point_c(celsius, humidity), frost_point_c(celsius, humidity)]


def _widest_c() -> float:
    gap = optimize.minimize_scalar(
        lambda t: saturation_over_ice_kpa(t) - saturation_vapour_kpa(t),
        bounds=(-40.0, -1.0),
        method="bounded",
    )
    return float(gap.x)


def _row(id_: str, celsius: float, humidity: float, expected: list[float]) -> Row:
    return Row(id_, lambda: _points(celsius, humidity), expected, 0.02, WMO, "DERIVED")


ROWS = [
    Row(
        "ICE-01",
        lambda: saturation_over_ice_kpa(-60.0) * 1000.0,
        1.08,
        0.01,
        f"{ASHRAE}, table 3",
        "CONFIRMED",
    ),
    Row(
        "ICE-08", lambda: saturation_over_ice_kpa(-10.0) / _MMHG_KPA, 1.95, 0.0025, MANUAL, "CONFIRMED", True
    ),
    Row(
        "ICE-09", lambda: saturation_over_ice_kpa(-5.0) / _MMHG_KPA, 3.013, 0.0025, MANUAL, "CONFIRMED", True
    ),
    Row(
        "ICE-11",
        lambda: saturation_over_ice_kpa(-10.0) * 1000.0,
        259.89,
        0.3,
        "Murphy and Koop 2005; the form used here differs by 0.1 %",
        "CONFIRMED",
    ),
    Row(
        "ICE-12", _widest_c, -12.0, 0.6, "public text: the gap of ice and water is widest there", "CONFIRMED"
    ),
    _row("ICE-13", -2.0, 70.0, [-6.75, -5.97]),
    _row("ICE-14", 2.0, 60.0, [-4.96, -4.38]),
    _row("ICE-15", 0.0, 90.0, [-1.45, -1.27]),
]

NOT_USED = {
    "ICE-04": "humidity ratio of saturated air over ice: no answer here asks for it",
    "ICE-05": "humidity ratio of saturated air over ice: no answer here asks for it",
}

PARTLY = {"ICE-11": "to 0.1 %: the simpler form of the WMO is used, not the one of reference"}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()
