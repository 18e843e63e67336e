"""Chi-square and the interval of a deviation against a library, and by simulated samples."""

import random

import pytest

from paddock_tui.calc.chi_square import below_chi_square, chi_square_quantile, deviation_band
from paddock_tui.calc.descriptive import deviation
from tests.every import every
from tests.later import Later

stats = Later("scipy.stats")


@every("freedom", [1, 2, 5, 19, 120])
@every("chance", [0.001, 0.025, 0.5, 0.975, 0.999])
def test_quantiles_are_those_of_a_library(freedom: int, chance: float) -> None:
    found = chi_square_quantile(chance, freedom)
    assert found == pytest.approx(stats.chi2.ppf(chance, freedom), rel=1e-8)
    assert below_chi_square(found, freedom) == pytest.approx(chance)


def test_the_interval_holds_the_true_deviation_as_often_as_it_says() -> None:
    draw, band = random.Random(7), deviation_band(1.0, 6, 0.9)
    found = [deviation([draw.gauss(100.0, 0.4) for _ in range(6)]) for _ in range(400)]

    assert 0.86 <= sum(one * band.low <= 0.4 <= one * band.high for one in found) / 400 <= 0.94
