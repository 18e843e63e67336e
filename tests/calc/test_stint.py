"""The laps of a session: what is set aside and why, and figures that are never made up."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.stint import Stint, TimedLap, stint
from tests.every import every

MARKS = ("", "", "", "out", "in", "traffic")
LAPS = st.lists(st.tuples(st.floats(30.0, 300.0), st.sampled_from(MARKS)), max_size=25)


def of(*laps: float | tuple[float, str]) -> Stint:
    pairs = [one if isinstance(one, tuple) else (one, "") for one in laps]
    return stint(TimedLap(number, seconds, mark) for number, (seconds, mark) in enumerate(pairs, 1))


def test_marked_laps_and_slow_ones_are_set_aside_with_the_reason() -> None:
    found = of((118.0, "out"), 104.5, 104.3, 104.6, 104.4, 107.0, (106.0, "traffic"), (117.0, "in"))

    assert [one.number for one in found.clean] == [2, 3, 4, 5]
    assert [(one.lap.number, one.why) for one in found.aside] == [
        (1, "out lap"),
        (6, "2.50 s over the median"),
        (7, "traffic"),
        (8, "in lap"),
    ]


def test_a_fast_lap_is_never_set_aside_and_fewer_than_four_are_all_kept() -> None:
    assert [one.number for one in of(104.5, 104.3, 98.0, 104.6, 104.4).clean] == [1, 2, 3, 4, 5]
    assert len(of(104.0, 104.1, 140.0).clean) == 3


def test_laps_read_alike_leave_room_of_a_thousandth() -> None:
    found = of(100.0, 100.0, 100.0, 100.0, 100.2, 101.0)

    assert [one.lap.number for one in found.aside] == [6]


def test_best_usual_spread_and_fall_off() -> None:
    found = of((120.0, "out"), 100.0, 100.1, 100.2, 100.3, 100.4)

    assert found.best_s == 100.0
    assert found.usual_s == pytest.approx(100.2)
    assert found.spread_s == pytest.approx(0.14826)
    assert found.fall_off is not None
    assert found.fall_off.slope == pytest.approx(0.1)


def test_the_best_lap_may_be_one_in_traffic_but_not_one_through_the_pits() -> None:
    assert of((99.0, "in"), (100.0, "traffic"), 101.0).best_s == 100.0
    assert of((99.0, "in")).best_s is None


@pytest.mark.parametrize("laps", [(), ((100.0, "traffic"), (101.0, "out"))])
def test_without_a_clean_lap_there_are_no_figures(laps: tuple[tuple[float, str], ...]) -> None:
    found = of(*laps)

    assert found.clean == ()
    assert (found.usual_s, found.spread_s, found.deviation_s, found.fall_off) == (None, None, None, None)


def test_one_lap_has_a_time_and_no_spread() -> None:
    found = of(104.0)

    assert (found.best_s, found.usual_s, found.spread_s, found.deviation_s) == (104.0, 104.0, None, None)


@every("seconds", [0.0, -1.0, math.nan, math.inf])
def test_a_lap_that_cannot_be_is_refused(seconds: float) -> None:
    with pytest.raises(OutOfRange):
        of(seconds)


@given(LAPS)
def test_every_lap_is_either_clean_or_set_aside_and_nothing_is_nan(laps: list[tuple[float, str]]) -> None:
    found = of(*laps)
    numbers = sorted([one.number for one in found.clean] + [one.lap.number for one in found.aside])
    figures = [found.best_s, found.usual_s, found.spread_s, found.deviation_s]

    assert numbers == list(range(1, len(laps) + 1))
    assert not any(one is not None and not math.isfinite(one) for one in figures)
    assert all(not lap.mark for lap in found.clean)
