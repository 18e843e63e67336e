"""Statistics against certified data sets and textbooks, and over ranges against a library."""

import math
import random
from collections import Counter
from collections.abc import Callable

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from paddock_tui.calc.chances import above_normal, above_student, normal_quantile
from paddock_tui.calc.descriptive import (
    absolute_deviation,
    autocorrelation,
    deviation,
    mean,
    quantile,
    spread,
)
from paddock_tui.calc.permutation import permutation
from paddock_tui.calc.ranks import mann_whitney
from paddock_tui.calc.regression import least_squares, theil_sen
from paddock_tui.calc.shifts import two_samples
from tests.every import every
from tests.examples import examples
from tests.later import Later
from tests.outside.certified import LEW, MAVRO, NORRIS_X, NORRIS_Y
from tests.outside.rows import Row, accounted, params

stats = Later("scipy.stats")

HOLLANDER = "Hollander and Wolfe 1973"
PAIRED = (
    [1.83, 0.5, 1.62, 2.48, 1.68, 1.88, 1.55, 3.06, 1.3],
    [0.878, 0.647, 0.598, 2.05, 1.06, 1.29, 1.06, 3.14, 1.29],
)
DIFFERENCES = [x - y for x, y in zip(*PAIRED, strict=True)]
PERMEABLE = (
    [0.8, 0.83, 1.89, 1.04, 1.45, 1.38, 1.91, 1.64, 0.73, 1.46],
    [1.15, 0.88, 0.9, 0.74, 1.21],
)
AGES = ([19.0, 22.0, 16.0, 29.0, 24.0], [20.0, 11.0, 17.0, 12.0])
SWIMMERS = [9.0, *[9.5] * 2, *[10.0] * 4, *[10.5] * 4, *[11.0] * 6, *[11.5] * 3]
EXAMS = (
    [65.0, 67, 71, 71, 66, 75, 67, 70, 71, 69, 69],
    [175.0, 133, 185, 163, 126, 198, 153, 163, 159, 151, 159],
)
PLANTS = (
    [4.17, 5.58, 5.18, 6.11, 4.5, 4.61, 5.17, 4.53, 5.33, 5.14],
    [4.81, 4.17, 4.41, 3.59, 5.87, 3.83, 6.03, 4.89, 4.32, 4.69],
)


def _described(values: list[float]) -> list[float]:
    return [mean(values), deviation(values)]


def _in_series(values: list[float]) -> list[float]:
    return [*_described(values), autocorrelation(values)]


def _norris() -> list[float | None]:
    line = least_squares(NORRIS_X, NORRIS_Y)
    return [
        line.intercept,
        line.slope,
        line.intercept_sd,
        line.slope_sd,
        line.residual_sd,
        line.r_squared,
        line.f,
    ]


def _exams() -> list[float | None]:
    line = least_squares(*EXAMS)
    return [line.slope, line.intercept, line.r, line.r_squared]


def _permeable() -> list[float]:
    found = mann_whitney(*PERMEABLE, side="greater", exact=False, continuity=False)
    return [found.statistic, found.chance]


def _ages() -> list[float]:
    found = mann_whitney(*AGES)
    assert found.exact
    return [found.statistic, found.chance]


def _mixed() -> float:
    found = permutation(*AGES)
    assert (found.exact, found.tried) == (True, 126)
    return found.chance


def _plants() -> list[float]:
    control, treated = map(mean, PLANTS)
    within = math.sqrt(mean([deviation(one) ** 2 for one in PLANTS]))  # groups of one size
    return [control, treated, treated - control, within]


NORRIS = [
    -0.262323073774029,
    1.00211681802045,
    0.232818234301152,
    0.000429796848199937,
    0.884796396144373,
    0.999993745883712,
    5436385.54079785,
]

NUM_ACC_4 = [10000000.2, *[10000000.1, 10000000.3] * 500]

ROWS = [
    Row(
        "STA-01",
        lambda: _described([10000001.0, 10000003.0, 10000002.0]),
        [10000002.0, 1.0],
        1e-15,
        "NIST StRD NumAcc1",
        "CONFIRMED",
        True,
    ),
    Row(
        "STA-02",
        lambda: _described([1.2, *[1.1, 1.3] * 500]),
        [1.2, 0.1],
        1e-14,
        "NIST StRD NumAcc2",
        "CONFIRMED",
        True,
    ),
    # The mean to 1e-15 in a test of its own: one tolerance a row.
    Row(
        "STA-03",
        lambda: _described(NUM_ACC_4),
        [10000000.2, 0.1],
        1e-7,
        "NIST StRD NumAcc4",
        "CONFIRMED",
        True,
    ),
    Row(
        "STA-04",
        lambda: _in_series(LEW),
        [-177.435, 277.332168044316, -0.307304800605679],
        1e-13,
        "NIST StRD Lew",
        "CONFIRMED",
        True,
    ),
    Row(
        "STA-05",
        lambda: _in_series(MAVRO),
        [2.001856, 0.000429123454003053, 0.937989183438248],
        1e-11,
        "NIST StRD Mavro",
        "CONFIRMED",
        True,
    ),
    Row("STA-06", _norris, NORRIS, 1e-11, "NIST StRD Norris", "CONFIRMED", True),
    Row("STA-08", _permeable, [35, 0.1103], 5e-5, f"{HOLLANDER}, p. 69", "CONFIRMED"),
    Row("STA-09", _ages, [17, 0.1111], 5e-5, "Shier 2004, sheet 2.3", "CONFIRMED"),
    Row("STA-11", lambda: two_samples(*AGES).shift, 7.0, 1e-9, "definition", "DERIVED"),
    Row("STA-12", _mixed, 0.079365, 1e-6, "all 126 splits", "LIBRARY"),
    Row(
        "STA-13",
        lambda: absolute_deviation([1, 1, 2, 2, 4, 6, 9]),
        1,
        0.0,
        "common textbook example",
        "FROM MEMORY",
    ),
    Row(
        "STA-14",
        lambda: _described(SWIMMERS),
        [10.525, 0.7159],
        5e-5,
        "OpenStax Introductory Statistics 2.7",
        "CONFIRMED",
    ),
    Row(
        "STA-15",
        _exams,
        [4.8273, -173.513, 0.663, 0.43969],
        5e-4,
        "OpenStax Introductory Statistics 12.3",
        "CONFIRMED",
    ),
    Row("STA-16", _plants, [5.032, 4.661, -0.371, 0.6964], 5e-5, "Dobson 1990, p. 9", "CONFIRMED"),
]

NOT_USED = {
    "STA-07": "paired samples by signed ranks: changes are judged by whole sessions instead",
    "STA-10": "the shift of one sample by signed ranks: the luck of sessions is learnt from the record",
}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()


def test_every_figure_is_accounted_for() -> None:
    assert accounted("STA", 16, ROWS, NOT_USED)


def test_the_mean_of_large_numbers_with_a_small_spread_keeps_all_its_digits() -> None:
    assert mean(NUM_ACC_4) == pytest.approx(10000000.2, rel=1e-15)


LAP = st.floats(60.0, 150.0).map(lambda one: round(one, 3))
PLAIN = st.lists(LAP, min_size=2, max_size=12, unique=True)
TIED = st.lists(st.integers(100, 106).map(float), min_size=2, max_size=12)
SIDES: tuple[str, ...] = ("two-sided", "greater", "less")


@examples(25)
@given(x=PLAIN, y=PLAIN, side=st.sampled_from(SIDES))
def test_ranks_without_ties_agree_with_the_library(x: list[float], y: list[float], side: str) -> None:
    y = [one + 0.0001 for one in y]
    found = mann_whitney(x, y, side)  # type: ignore[arg-type]
    wanted = stats.mannwhitneyu(x, y, alternative=side, method="exact")

    assert found.exact
    assert (found.statistic, found.chance) == pytest.approx((wanted.statistic, wanted.pvalue), rel=1e-9)


@examples(25)
@given(x=TIED, y=TIED, side=st.sampled_from(SIDES), continuity=st.booleans())
def test_ranks_with_ties_agree_with_the_library(
    x: list[float], y: list[float], side: str, continuity: bool
) -> None:
    found = mann_whitney(x, y, side, exact=False, continuity=continuity)  # type: ignore[arg-type]
    if len({*x, *y}) == 1:
        assert found.chance == 1.0
        return
    wanted = stats.mannwhitneyu(x, y, alternative=side, method="asymptotic", use_continuity=continuity)

    assert (found.statistic, found.chance) == pytest.approx((wanted.statistic, wanted.pvalue), rel=1e-9)


@examples(12)
@given(
    x=st.lists(LAP, min_size=2, max_size=5),
    y=st.lists(LAP, min_size=2, max_size=5),
    side=st.sampled_from(SIDES),
)
def test_all_splits_agree_with_the_library(x: list[float], y: list[float], side: str) -> None:
    def parted(a: list[float], b: list[float]) -> float:
        return math.fsum(a) / len(a) - math.fsum(b) / len(b)

    found = permutation(x, y, side)  # type: ignore[arg-type]
    wanted = stats.permutation_test((x, y), parted, vectorized=False, n_resamples=math.inf, alternative=side)

    assert found.exact
    assert found.chance == pytest.approx(wanted.pvalue, abs=1e-12)


def test_drawn_splits_come_near_the_library_and_are_the_same_each_time() -> None:
    draw = random.Random(7)
    x = [draw.gauss(104.4, 0.3) for _ in range(14)]
    y = [draw.gauss(104.6, 0.3) for _ in range(14)]
    found = permutation(x, y)
    wanted = stats.ttest_ind(x, y)

    assert (found.exact, found.tried) == (False, 10_000)
    assert found.chance == pytest.approx(wanted.pvalue, abs=0.02)
    assert permutation(x, y) == found


def _ties(values: list[float]) -> int:
    """Kendall's term for values that are alike."""
    return sum(count * (count - 1) * (2 * count + 5) for count in Counter(values).values())


@examples(25)
@given(st.lists(st.tuples(st.integers(1, 30), LAP), min_size=3, max_size=20))
def test_lines_agree_with_the_library(points: list[tuple[int, float]]) -> None:
    x, y = [float(one) for one, _ in points], [lap for _, lap in points]
    # Where nearly all points are tied in both, the library's variance of the slope's rank falls under zero.
    assume(len(set(x)) > 1 and len(set(y)) > 1 and _ties(x) + _ties(y) < _ties([0.0] * len(x)))
    found, wanted = least_squares(x, y), stats.linregress(x, y)
    robust, expected = theil_sen(x, y), stats.theilslopes(y, x)

    assert (found.slope, found.intercept, found.r) == pytest.approx(
        (wanted.slope, wanted.intercept, wanted.rvalue), rel=1e-6, abs=1e-7
    )
    assert (robust.slope, robust.intercept) == pytest.approx((expected[0], expected[1]), rel=1e-9, abs=1e-9)
    if robust.low is not None and robust.high is not None:
        assert (robust.low, robust.high) == pytest.approx((expected[2], expected[3]), rel=1e-9, abs=1e-9)


@examples(25)
@given(st.lists(LAP, min_size=1, max_size=25), st.floats(0.0, 1.0))
def test_the_robust_spread_and_quantiles_agree_with_the_library(laps: list[float], share: float) -> None:
    assert absolute_deviation(laps) == pytest.approx(stats.median_abs_deviation(laps), abs=1e-12)
    assert spread(laps) == pytest.approx(
        stats.median_abs_deviation(laps, scale="normal"), rel=1e-4, abs=1e-12
    )
    assert quantile(laps, share) == pytest.approx(stats.mstats.mquantiles(laps, [share], 1, 1)[0])


FREEDOM = st.integers(1, 200)


@examples(25)
@given(t=st.floats(-30.0, 30.0), freedom=FREEDOM, chance=st.floats(0.001, 0.999))
def test_chances_agree_with_the_library(t: float, freedom: int, chance: float) -> None:
    t = t if abs(t) > 1e-6 else 0.0
    tail: Callable[..., float] = stats.t.sf

    assert above_student(t, freedom) == pytest.approx(tail(t, freedom), rel=1e-8)
    assert above_normal(t) == pytest.approx(stats.norm.sf(t), rel=1e-9)
    assert normal_quantile(chance) == pytest.approx(stats.norm.ppf(chance), rel=1e-8, abs=1e-9)
