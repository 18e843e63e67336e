"""Moist air and the air in a tyre against equations of state of real gases."""

from paddock_tui.calc.moist_air import density_kg_per_m3, humidity_from_wet_bulb_percent
from paddock_tui.calc.tyre_air import pressure_after_kpa_abs
from tests.every import every
from tests.outside.rows import Row, params

MOIST = "open moist-air package, CIPM-type formula"
COOLPROP = "CoolProp 8, dry air at constant density"


def _by_wet_bulb() -> float:
    return density_kg_per_m3(101.325, 20.0, humidity_from_wet_bulb_percent(20.0, 18.0, 101.325))


ROWS = [
    Row("RGA-01", lambda: density_kg_per_m3(101.325, 20.0), 1.2044776705, 6e-4, MOIST, "CONFIRMED", True),
    Row(
        "RGA-02", lambda: density_kg_per_m3(101.325, 20.0, 70.0), 1.1971436092, 6e-4, MOIST, "CONFIRMED", True
    ),
    Row("RGA-03", _by_wet_bulb, 1.1958191858, 6e-4, MOIST, "CONFIRMED", True),
    Row("RGA-08", lambda: pressure_after_kpa_abs(310.0, 15.0, 65.0), 364.206, 0.7, COOLPROP, "LIBRARY"),
    Row("RGA-09", lambda: pressure_after_kpa_abs(350.0, 25.0, 90.0), 426.913, 0.7, COOLPROP, "LIBRARY"),
]

NOT_USED = {
    "RGA-05": "how far air is from an ideal gas at 3.5 bar: 0.1 %, which the tolerance of RGA-08 holds",
    "RGA-07": "how far air is from an ideal gas in a bottle of 200 bar: no tyre is there",
    "RGA-12": "liquid water in a tyre in grams: no answer asks for it",
    "RGA-13": "humidity of compressor air after it expands: no answer asks for it",
}

PARTLY = {
    "RGA-08": "to 0.7 kPa: the ideal gas law is used, and its error is said beside it",
    "RGA-09": "to 0.7 kPa: the ideal gas law is used, and its error is said beside it",
    "RGA-01": "to 0.06 %: ideal gases are used, which is far within a barometer's error",
    "RGA-02": "to 0.06 %: ideal gases are used, which is far within a barometer's error",
    "RGA-03": "to 0.06 %: ideal gases are used, which is far within a barometer's error",
}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()
