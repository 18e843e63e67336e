"""Heat index and wind chill against the tables that the weather services print."""

from paddock_tui.calc.comfort import heat_index, wind_chill
from tests.every import every
from tests.outside.rows import Row, accounted, params

ROTHFUSZ = "NWS heat index (Rothfusz 1990, SR 90-23)"
NWS = "NWS 2001 wind chill"
CANADA = "Environment Canada 2001 wind chill"
KM_H_PER_MPH = 1.609344


def _c(fahrenheit: float) -> float:
    return (fahrenheit - 32.0) / 1.8


def _heat_f(fahrenheit: float, humidity: float) -> float:
    return heat_index(_c(fahrenheit), humidity).celsius * 1.8 + 32.0


def _chill_f(fahrenheit: float, mph: float) -> float:
    return wind_chill(_c(fahrenheit), mph * KM_H_PER_MPH).celsius * 1.8 + 32.0


def _chill(celsius: float, km_h: float) -> float:
    return wind_chill(celsius, km_h).celsius


ROWS = [
    Row("WXR-01", lambda: _heat_f(80, 40), 80, 0.6, ROTHFUSZ, "CONFIRMED"),
    Row("WXR-02", lambda: _heat_f(92, 70), 112, 0.6, ROTHFUSZ, "CONFIRMED"),
    Row("WXR-03", lambda: _heat_f(86, 88), 104, 0.6, ROTHFUSZ, "CONFIRMED"),
    Row("WXR-04", lambda: _heat_f(96, 65), 121, 0.6, ROTHFUSZ, "CONFIRMED"),
    Row("WXR-05", lambda: _heat_f(111, 27), 121, 0.6, ROTHFUSZ, "CONFIRMED"),
    Row("WXR-06", lambda: heat_index(35, 70).celsius, 50.34, 0.01, ROTHFUSZ, "CONFIRMED"),
    Row("WXR-07", lambda: _heat_f(94, 10), 88.6, 0.1, ROTHFUSZ, "LIBRARY; formula CONFIRMED"),
    Row("WXR-08", lambda: _chill_f(40, 5), 36, 0.6, NWS, "CONFIRMED"),
    Row("WXR-09", lambda: _chill_f(-45, 25), -84, 0.6, NWS, "CONFIRMED"),
    Row("WXR-10", lambda: _chill_f(20, 15), 6, 0.6, NWS, "CONFIRMED"),
    Row("WXR-11", lambda: _chill(5, 5), 4, 0.5, CANADA, "CONFIRMED"),
    Row("WXR-12", lambda: _chill(5, 20), 1, 0.5, CANADA, "CONFIRMED"),
    Row("WXR-13", lambda: _chill(0, 40), -7, 0.5, CANADA, "CONFIRMED"),
    Row("WXR-14", lambda: _chill(0, 80), -10, 0.5, CANADA, "CONFIRMED"),
    Row("WXR-15", lambda: _chill(-10, 20), -18, 0.5, CANADA, "CONFIRMED"),
    Row("WXR-16", lambda: _chill(-10, 60), -23, 0.5, CANADA, "CONFIRMED"),
    Row("WXR-17", lambda: _chill(-20, 80), -38, 0.5, CANADA, "CONFIRMED"),
]

NOT_USED: dict[str, str] = {}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()


def test_every_figure_is_accounted_for() -> None:
    assert accounted("WXR", 17, ROWS, NOT_USED)
