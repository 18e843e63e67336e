"""Wear by trend: from four readings on, with an interval, and nothing promised from less."""

import random

import pytest

from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.wear import WearReading
from paddock_tui.calc.wear_trend import wear_trend
from tests.every import every


def readings(*mm: float, step: int = 3) -> list[WearReading]:
    return [WearReading(float(step * place), one) for place, one in enumerate(mm)]


def test_a_straight_wear_comes_to_its_limit_when_the_line_does() -> None:
    found = wear_trend(readings(6.0, 5.4, 4.8, 4.2), 3.0, 9.0)
    assert found.mm_per_session == pytest.approx(0.2)
    assert (found.soonest_sessions, found.latest_sessions) == (6, 6)
    assert wear_trend(readings(6.0, 5.4, 4.8, 4.2), 3.0, 11.0).soonest_sessions == 4


def test_a_scattered_wear_has_a_soonest_before_its_latest_and_grows_worse_unmeasured() -> None:
    found = wear_trend(readings(6.0, 5.2, 4.9, 4.2, 3.9), 3.0, 14.0)
    assert found.latest_sessions is not None
    assert found.soonest_sessions < found.latest_sessions
    assert found.least_mm < 3.9
    assert found.fastest_mm > found.mm_per_session > found.slowest_mm > 0.0


@every(
    ("given", "why"),
    [
        (readings(6.0, 5.0, 4.0), "it takes 4"),
        (readings(4.0, 3.5, 6.0, 5.0, 4.5), "3 readings"),
        (readings(5.0, 5.0, 5.0, 5.0), "no wear"),
    ],
)
def test_too_few_readings_or_new_parts_or_no_wear_give_a_reason(given: list[WearReading], why: str) -> None:
    with pytest.raises(Inconsistent, match=why):
        wear_trend(given, 2.0, 20.0)


def test_the_interval_holds_the_true_wear_about_as_often_as_it_says() -> None:
    draw = random.Random(5)
    inside = tried = 0
    for _ in range(300):
        given = [WearReading(2.0 * n, 6.0 - 0.3 * n + draw.gauss(0.0, 0.1)) for n in range(5)]
        found = wear_trend(given, 1.0, 8.0)
        tried += 1
        inside += found.slowest_mm <= 0.15 <= found.fastest_mm
    assert inside / tried >= 0.85
