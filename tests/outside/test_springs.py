"""Springs, preload and sag against textbooks and published set-up sheets."""

import math

from paddock_tui.calc.preload import PreloadAdjuster, preload_for_sag, preload_mm, preload_of_turns_mm
from paddock_tui.calc.sag import sag_of_lengths
from paddock_tui.calc.spring_choice import (
    SpringFit,
    Windows,
    judge_rate,
)
from paddock_tui.calc.springs import (
    deflection_mm,
    pair_rate_n_per_mm,
    rate_from_load_n_per_mm,
    rate_from_two_loads,
    vertical_rate_n_per_mm,
    wheel_rate_n_per_mm,
)
from paddock_tui.limits import Limit
from paddock_tui.limits.sag import ROAD, TRACK, TRACK_LONG
from tests.every import every
from tests.outside.rows import Row, accounted, params

G = 9.8
OPENSTAX = "OpenStax University Physics 1, chapter 15"
SHEET = "public suspension set-up sheet"


def _two_loads() -> list[float]:
    first_n, second_n = 0.3 * G, 1.95 * G
    both = rate_from_two_loads(first_n, second_n, 550.0)
    return [both.rate_n_per_mm * 1000.0, (200.0 - both.first_deflection_mm) / 1000.0]


def _rate_and_period() -> list[float]:
    rate = rate_from_load_n_per_mm(8.0 * G, 250.0) * 1000.0
    return [rate, math.tau * math.sqrt(8.0 / rate)]


def _one_turn_of_a_plain_collar() -> float:
    adjuster = PreloadAdjuster(least=0.0, most=10.0, mm_per_turn=1.0)
    return 30.0 - preload_for_sag(30.0, 29.0, 5.0, adjuster).sag_after_mm


def _inside(low: float, high: float, window: tuple[float, float]) -> bool:
    return window[0] <= low <= high <= window[1]


def _declared(window: tuple[Limit, Limit]) -> tuple[float, float]:
    return window[0].value, window[1].value


OFF_ROAD = Windows(95.0, 110.0, 25.0, 45.0)

ROWS = [
    Row(
        "SPR-01",
        lambda: deflection_mm(1000 * G, pair_rate_n_per_mm(65.0, 65.0)) / 10.0,
        7.54,
        0.005,
        OPENSTAX,
        "CONFIRMED",
    ),
    Row("SPR-02", lambda: pair_rate_n_per_mm(9.0, 9.0), 18.0, 1e-9, "k = k1 + k2", "DERIVED"),
    Row("SPR-03", lambda: rate_from_load_n_per_mm(120 * G, 7.5) * 1e3, 157000.0, 500, OPENSTAX, "CONFIRMED"),
    Row("SPR-04", lambda: rate_from_load_n_per_mm(80 * G, 120.0) * 1e3, 6530.0, 5, OPENSTAX, "CONFIRMED"),
    Row("SPR-05", _rate_and_period, [314, 1.0], 0.005, OPENSTAX, "CONFIRMED", True),
    Row("SPR-06", _two_loads, [29.4, 0.1], 0.002, OPENSTAX, "DERIVED", True),
    Row("SPR-07", lambda: sag_of_lengths(120, 84, 88).sag_mm, 34.0, 1e-9, "L1 - (L2 + L3) / 2", "DERIVED"),
    Row("SPR-08", lambda: preload_mm(50, 35), 15, 1e-9, "public magazine text", "CONFIRMED"),
    Row("SPR-09", _one_turn_of_a_plain_collar, 1, 0.5, "public magazine text", "CONFIRMED"),
    Row("SPR-10", lambda: preload_of_turns_mm(2, 1.5), 3.0, 1e-9, "ISO 68-1/261", "DERIVED"),
    Row("SPR-11", lambda: _inside(25, 30, _declared(TRACK)), True, 0, SHEET, "CONFIRMED"),
    Row("SPR-13", lambda: _inside(30, 35, _declared(ROAD)), True, 0, SHEET, "CONFIRMED"),
    Row("SPR-15", lambda: _inside(25, 25, _declared(TRACK_LONG)), True, 0, SHEET, "CONFIRMED"),
    Row(
        "SPR-17",
        lambda: (_inside(30, 30, _declared(ROAD)), _inside(25, 25, _declared(TRACK))),
        (True, True),
        0,
        "public magazine text",
        "CONFIRMED",
    ),
    Row(
        "SPR-18",
        lambda: judge_rate(100.0, 20.0, OFF_ROAD, top_out_springs=False).rate,
        SpringFit.TOO_SOFT,
        0,
        "public off-road magazine text",
        "CONFIRMED",
    ),
    Row(
        "SPR-19",
        lambda: wheel_rate_n_per_mm(72, 0.5),
        18.0,
        1e-9,
        "Barton & Fieldhouse eq. 3.33",
        "CONFIRMED",
    ),
    Row("SPR-20", lambda: vertical_rate_n_per_mm(18, 24), 21.57, 0.01, "Cossalter 2006", "DERIVED"),
]

NOT_USED = {
    "SPR-12": "rear free sag of 0 to 5 mm: authors differ (2 to 17, 5 to 15), the window here is 3 to 15",
    "SPR-14": "rear free sag of 0 to 5 mm: authors differ, the window here is 3 to 15",
    "SPR-16": "25 to 33 % on the road: the window here is 28 to 35 %",
}


@every("row", params(ROWS))
def test_published_figures(row: Row) -> None:
    row.check()


def test_every_figure_is_accounted_for() -> None:
    assert accounted("SPR", 20, ROWS, NOT_USED)


@every(
    ("free_sag_mm", "rate"),
    [(20.0, SpringFit.TOO_SOFT), (35.0, SpringFit.RIGHT), (50.0, SpringFit.TOO_STIFF)],
)
def test_off_road_rule_by_free_sag(free_sag_mm: float, rate: SpringFit) -> None:
    """With rider sag right: little free sag is too soft, much is too stiff, 25 to 45 between is right."""
    assert judge_rate(100.0, free_sag_mm, OFF_ROAD, top_out_springs=False).rate is rate
