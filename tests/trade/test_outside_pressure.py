"""The pressure outside: the best of what is known, the same for both times at one place, else refused."""

import datetime as dt

import attrs
import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.trade.outside_pressure import (
    DISAGREE_KPA,
    DRIFT_KPA,
    WEATHER_KPA,
    AirObserved,
    PressureOrigin,
    contradicts,
    meant_at_altitude_kpa,
    outside_at_both,
    outside_pressure,
)
from paddock_tui.trade.standard_air import SEA_LEVEL_KPA, pressure_at_altitude_kpa

MAY, JUNE = dt.date(2026, 5, 16), dt.date(2026, 6, 20)
HIGH = AirObserved(altitude_m=1000.0, place="high", day=MAY)
ISO_AT_1000_M = 89.8746
"""ISO 2533:1975, table: 898.746 hPa at a geopotential altitude of 1000 m."""


@pytest.mark.parametrize(
    ("seen", "kpa", "origin", "error"),
    [
        (AirObserved(), SEA_LEVEL_KPA, PressureOrigin.SEA_LEVEL, 10.0),
        (AirObserved(altitude_m=1000.0), ISO_AT_1000_M, PressureOrigin.ALTITUDE, WEATHER_KPA),
        (AirObserved(90.5, 1000.0, 89.0), 90.5, PressureOrigin.MEASURED, 0.1),
        (AirObserved(None, 1000.0, 89.0), 89.0, PressureOrigin.SAME_DAY, DRIFT_KPA),
        (AirObserved(None, 1000.0, None, SEA_LEVEL_KPA), ISO_AT_1000_M, PressureOrigin.REDUCED, 0.5),
    ],
)
def test_the_best_of_what_is_known_counts(
    seen: AirObserved, kpa: float, origin: PressureOrigin, error: float
) -> None:
    found = outside_pressure(seen)

    assert found.kpa == pytest.approx(kpa, abs=0.001)
    assert (found.origin, found.error_kpa) == (origin, error)


def test_a_reading_reduced_to_the_sea_is_set_aside_and_said() -> None:
    found = outside_pressure(AirObserved(101.3, 1000.0))

    assert found.kpa == pytest.approx(ISO_AT_1000_M, abs=0.001)
    assert found.words().startswith("899 hPa (1013 hPa cannot be of that altitude, reduced to the sea?")
    meant = meant_at_altitude_kpa(101.3, 1000.0)
    assert meant == pytest.approx(ISO_AT_1000_M, abs=0.05)
    assert meant_at_altitude_kpa(70.0, 1000.0) is None
    assert meant_at_altitude_kpa(90.0, 1000.0) is None


@given(st.floats(-400, 4900), st.floats(60, 110))
def test_a_reading_is_used_unless_it_contradicts_its_altitude(metres: float, kpa: float) -> None:
    found = outside_pressure(AirObserved(kpa, metres))

    usual = pressure_at_altitude_kpa(metres)
    assert contradicts(kpa, metres) == (abs(kpa - usual) > DISAGREE_KPA)
    assert found.kpa == (usual if contradicts(kpa, metres) else kpa)


@pytest.mark.parametrize(("day", "error"), [(MAY, DRIFT_KPA), (JUNE, WEATHER_KPA)])
def test_a_barometer_read_once_serves_both_times_at_one_place(day: dt.date, error: float) -> None:
    read, other = attrs.evolve(HIGH, reading_kpa=90.9), attrs.evolve(HIGH, day=day)

    for pair, not_read in (((read, other), 1), ((other, read), 0)):
        both = outside_at_both(*pair)
        assert both is not None
        assert [one.kpa for one in both] == [90.9, 90.9]
        assert both[not_read].error_kpa == error
        assert both[1 - not_read].error_kpa == 0.1


def test_one_altitude_stands_for_both_times_and_the_sea_where_nothing_is_known() -> None:
    nowhere = AirObserved(place="high", day=MAY)

    for seen in (HIGH, nowhere):
        both = outside_at_both(seen, seen)
        assert both is not None
        assert both[0].kpa == both[1].kpa == outside_pressure(seen).kpa


def test_two_places_need_a_figure_each() -> None:
    low = AirObserved(altitude_m=0.0, place="low", day=MAY)

    both = outside_at_both(low, HIGH)

    assert both is not None
    assert [one.kpa for one in both] == pytest.approx([SEA_LEVEL_KPA, ISO_AT_1000_M], abs=0.001)
    assert outside_at_both(attrs.evolve(low, altitude_m=None), HIGH) is None
    assert outside_at_both(HIGH, attrs.evolve(low, altitude_m=None)) is None
    assert outside_at_both(AirObserved(day=MAY), AirObserved(day=JUNE)) is None
