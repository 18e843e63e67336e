"""Fuel against the standard's density band and textbook exercises."""

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.fuel import (
    DENSITY_KG_PER_L,
    fuel_mass,
    fuel_mass_kg,
    litres_for_distance,
    plan_fuel,
    reserve_l,
)
from tests.every import every
from tests.outside.rows import Row, accounted, params


def _mass_band() -> list[float]:
    mass = fuel_mass(17.0)
    return [mass.low_kg, mass.high_kg]


def _refuses_density() -> bool:
    try:
        fuel_mass_kg(1.0, 0.680)
    except OutOfRange:
        return True
    return False


def _with_two_litres() -> float:
    needed = plan_fuel(12, 4.2, 9.5, out_in_laps=0).needed_l
    return needed + reserve_l(needed, 2.0, 0.0)


ROWS = [
    Row(
        "FUE-01",
        lambda: [1000.0 * density for density in DENSITY_KG_PER_L],
        [720, 775],
        1e-9,
        "EN 228:2012 table 2",
        "CONFIRMED",
    ),
    Row("FUE-03", _mass_band, [12.24, 13.175], 0.005, "EN 228 limits", "DERIVED"),
    Row(
        "FUE-04",
        lambda: litres_for_distance(100.0, 10.0) / 3600.0 * 1000.0,
        2.78,
        0.005,
        "OpenStax College Physics 12.1",
        "CONFIRMED",
    ),
    Row("FUE-05", _refuses_density, True, 0, "OpenStax table 11.1: 680 kg/m3, below EN 228", "CONFIRMED"),
    Row("FUE-09", _with_two_litres, 6.79, 0.005, "arithmetic", "DERIVED"),
]

NOT_USED = {
    "FUE-02": "limits of ethanol and oxygen: nothing is calculated from them",
    "FUE-06": "a physics text's expansion of gasoline: the petroleum trade's tables say a quarter more",
    "FUE-07": "ethanol's energy: consumption is learnt from refills with the fuel that was bought",
    "FUE-08": "energy of a gallon: nothing is calculated from it",
}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()


def test_every_figure_is_accounted_for() -> None:
    assert accounted("FUE", 9, ROWS, NOT_USED)
