"""Chain wear against makers' texts and a printed formula."""

from paddock_tui.calc.chain_wear import elongation, most_elongation_percent, pin_to_pin_mm
from tests.every import every
from tests.outside.rows import Row, params


def _by_rollers() -> float:
    return elongation(pin_to_pin_mm(312.0, 328.0), 20, 15.875).percent


def _inches_per_foot() -> list[float]:
    """Return the growth of a foot in inches at 1.5 and 3 percent, found back from the length."""
    foot = 24 * 12.7
    return [foot * percent / 100.0 / 25.4 for percent in (1.5, elongation(foot * 1.03, 24, 12.7).percent)]


ROWS = [
    Row(
        "WEA-03", lambda: most_elongation_percent(67, 3.0), 2.99, 0.01, "200 / z from 67 teeth up", "DERIVED"
    ),
    Row("WEA-04", lambda: most_elongation_percent(80, 3.0), 2.5, 0.01, "200 / z from 67 teeth up", "DERIVED"),
    Row("WEA-06", _inches_per_foot, [0.18, 0.36], 1e-3, "arithmetic on a printed pair", "DERIVED"),
    Row("WEA-08", _by_rollers, 0.787, 1e-3, "L = (L1 + L2) / 2, e = (L - n p) / (n p)", "DERIVED"),
]

NOT_USED = {
    "WEA-01": "the general limit itself: the maker's figure for this chain is entered instead",
    "WEA-02": "limit of a drive with fixed centres: a motorcycle's axle moves",
    "WEA-09": "pads at one country's road test: the rider enters the maker's figure",
    "WEA-10": "brake linings of passenger cars: the rider enters the maker's figure",
    "WEA-12": "eccentricity of a rim at a road test: nothing here measures it",
}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()
