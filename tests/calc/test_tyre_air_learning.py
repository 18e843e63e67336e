"""The gas temperature learnt from cold and hot readings."""

import statistics

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.tyre_air_learning import Observation, learn_gas_temperature
from paddock_tui.calc.tyre_pressure import cold_band_kpa_gauge, hot_expected_kpa_gauge
from tests.every import every
from tests.examples import examples


def _seen(gas_c: float, minutes: float = 1.0, cold_kpa: float = 210.0, cold_c: float = 20.0) -> Observation:
    return Observation(cold_kpa, cold_c, hot_expected_kpa_gauge(cold_kpa, cold_c, gas_c), minutes)


@examples(25)
@given(st.lists(st.floats(50.0, 100.0), min_size=1, max_size=12))
def test_the_middle_is_the_median(temperatures: list[float]) -> None:
    learnt = learn_gas_temperature([_seen(gas_c) for gas_c in temperatures])

    assert learnt is not None
    assert learnt.median_c == pytest.approx(statistics.median(temperatures), abs=1e-6)
    assert learnt.count == len(temperatures)
    assert (learnt.spread_k is None) == (len(temperatures) < 3)


def test_one_odd_reading_hardly_moves_it() -> None:
    learnt = learn_gas_temperature([_seen(gas_c) for gas_c in (68, 69, 70, 71, 110)])

    assert learnt is not None
    assert learnt.median_c == pytest.approx(70)
    assert learnt.spread_k == pytest.approx(1.4826, abs=1e-6)


def test_late_cold_and_unlikely_readings_are_kept_apart() -> None:
    unlikely = Observation(150, 20, 330, 1.0)
    learnt = learn_gas_temperature([_seen(70), _seen(50, 4.0), _seen(25), unlikely])

    assert learnt is not None
    assert (learnt.count, learnt.late, learnt.not_warm, learnt.unlikely) == (1, 1, 1, 1)
    assert learnt.median_c == pytest.approx(70)


@every(("minutes", "count"), [(2.9, 1), (3.0, 1), (3.1, 0)])
def test_hot_ends_three_minutes_after_parking(minutes: float, count: int) -> None:
    learnt = learn_gas_temperature([_seen(70, minutes)])

    assert (learnt.count if learnt else 0) == count


def test_nothing_hot_nothing_learnt() -> None:
    assert learn_gas_temperature([_seen(70, 20.0)]) is None


def test_air_set_hot_starts_the_next_outing() -> None:
    """Let out to 235 kPa at 70 C: that is the air the next hot reading is compared with."""
    first = Observation(210, 20, hot_expected_kpa_gauge(210, 20, 70), 1.0, set_to_kpa_gauge=235)
    set_kpa, set_c = first.air_after()
    second = Observation(set_kpa, set_c, hot_expected_kpa_gauge(235, 70, 74), 1.0, outside_c=20)

    learnt = learn_gas_temperature([first, second])

    assert learnt is not None
    assert [set_kpa, set_c] == pytest.approx([235, 70])
    assert [learnt.count, learnt.median_c] == pytest.approx([2, 72])


def test_air_left_alone_stays_the_cold_reading() -> None:
    assert _seen(70).air_after() == (210.0, 20.0)


def test_spread_becomes_a_band_of_pressure() -> None:
    learnt = learn_gas_temperature([_seen(gas_c) for gas_c in (66, 70, 74)])

    assert learnt is not None
    band = cold_band_kpa_gauge(240, 20, learnt.median_c, learnt.spread_k)
    assert band.low_kpa_gauge is not None
    assert band.low_kpa_gauge < band.best_kpa_gauge
    assert hot_expected_kpa_gauge(band.best_kpa_gauge, 20, 70) == pytest.approx(240)


def test_a_reading_before_parking_is_refused() -> None:
    with pytest.raises(OutOfRange, match="parking"):
        learn_gas_temperature([_seen(70, -1.0)])
