"""Tyre sizes, load index and speed symbol against the regulation's tables."""

import pytest

from paddock_tui.calc.tyre_ratings import load_kg, speed_rating
from paddock_tui.calc.tyre_size import circumference, parse_tyre_size
from tests.every import every
from tests.outside.rows import Row, accounted, params

SIZES = "UN R75 6.1.2 / ISO 5751-1"
LOADS = "UN R75 annex 4 / ISO 4223-1"
SPEEDS = "UN R75 par. 2 / ISO 4223-1"
ELEMENTARY = "DERIVED; formula FROM MEMORY"


def _height_and_diameter(marking: str) -> list[float]:
    size = parse_tyre_size(marking)
    return [size.section_height_mm, size.diameter_mm]


def _over(symbol: str) -> tuple[int, bool]:
    rating = speed_rating(symbol)
    return rating.km_h, rating.over


ROWS = [
    Row("TYR-01", lambda: _height_and_diameter("120/70-17"), [84, 600], 1, SIZES, "CONFIRMED"),
    Row("TYR-02", lambda: _height_and_diameter("180/55-17"), [99, 630], 1, SIZES, "CONFIRMED"),
    Row("TYR-03", lambda: _height_and_diameter("180/60-17"), [108, 648], 1, SIZES, "CONFIRMED"),
    Row("TYR-04", lambda: _height_and_diameter("190/55-17"), [104.5, 641], 1.5, SIZES, ELEMENTARY),
    Row("TYR-05", lambda: _height_and_diameter("200/55-17"), [110, 652], 1, SIZES, ELEMENTARY),
    Row(
        "TYR-06",
        lambda: circumference(parse_tyre_size("180/55 ZR17")).metres * 1000.0,
        1979,
        1,
        "pi D",
        "DERIVED",
    ),
    Row("TYR-07", lambda: load_kg(55), 218, 0, LOADS, "CONFIRMED"),
    Row("TYR-08", lambda: load_kg(58), 236, 0, LOADS, "CONFIRMED"),
    Row("TYR-09", lambda: load_kg(73), 365, 0, LOADS, "CONFIRMED"),
    Row("TYR-10", lambda: load_kg(75), 387, 0, LOADS, "CONFIRMED"),
    Row("TYR-11", lambda: load_kg(90), 600, 0, LOADS, "CONFIRMED"),
    Row("TYR-12", lambda: _over("P"), (150, False), 0, SPEEDS, "CONFIRMED"),
    Row("TYR-13", lambda: _over("T"), (190, False), 0, SPEEDS, "CONFIRMED"),
    Row("TYR-14", lambda: _over("H"), (210, False), 0, SPEEDS, "CONFIRMED"),
    Row("TYR-15", lambda: _over("W"), (270, False), 0, SPEEDS, "CONFIRMED"),
    Row("TYR-16", lambda: _over("(W)"), (270, True), 0, SPEEDS, "CONFIRMED"),
]

NOT_USED = {
    "TYR-17": "a laboratory's measuring pressure, which must not be taken for a setting",
    "TYR-18": "a laboratory's measuring pressure, which must not be taken for a setting",
}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()


def test_every_figure_is_accounted_for() -> None:
    assert accounted("TYR", 18, ROWS, NOT_USED)


@every("index", range(20, 91))
def test_load_index_follows_its_geometric_series(index: int) -> None:
    """The table is 45 kg times 10^(index/80), rounded: a slip in any one entry would stand out."""
    assert load_kg(index) == pytest.approx(45.0 * 10.0 ** (index / 80.0), rel=0.02)
