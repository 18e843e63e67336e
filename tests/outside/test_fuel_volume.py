"""How petrol grows with its temperature, against the tables of the petroleum trade."""

from paddock_tui.calc.fuel_volume import share_at_15_c
from tests.every import every
from tests.outside.rows import Row, params

TABLE_54B = "ASTM D1250 / API MPMS 11.1, table 54B, petrol"

ROWS = [
    Row("FUL-11", lambda: share_at_15_c(25.0, 745.0), 0.98783, 1e-5, TABLE_54B, "DERIVED"),
    Row("FUL-12", lambda: share_at_15_c(40.0, 745.0), 0.96941, 1e-5, TABLE_54B, "DERIVED"),
    Row("FUL-14", lambda: share_at_15_c(30.0, 725.0), 0.98093, 1e-5, TABLE_54B, "DERIVED"),
]

_ENERGY = "energy, density or mixture of fuels: no answer here asks for it"
NOT_USED = {
    **{f"FUL-{number:02}": _ENERGY for number in (2, 4, 5, 6, 8, 9, 10)},
    "FUL-15": "constants of the same table by degrees Fahrenheit: those by kelvin are used",
}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()
