"""The pressure outside: the best of what is known, the same for both times at one place, else refused."""

import datetime as dt
from decimal import Decimal

import attrs
import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.outside_pressure import (
    AirMoves,
    AirObserved,
    PressureOrigin,
    apart_error_kpa,
    contradicts,
    meant_at_altitude_kpa,
    outside_at_both,
    outside_pressure,
)
from paddock_tui.calc.standard_air import SEA_LEVEL_KPA, pressure_at_altitude_kpa
from paddock_tui.limits import Limits
from paddock_tui.quantities import Quantity
from tests.every import every

MAY, JUNE = dt.date(2026, 5, 16), dt.date(2026, 6, 20)
HIGH = AirObserved(altitude_m=1000.0, place="high", day=MAY)
MOVES = AirMoves(1.0, 3.0, 5.0)
ISO_AT_1000_M = 89.8746
"""ISO 2533:1975, table: 898.746 hPa at a geopotential altitude of 1000 m."""


@every(
    ("seen", "kpa", "origin", "error"),
    [
        (AirObserved(), SEA_LEVEL_KPA, PressureOrigin.SEA_LEVEL, 10.0),
        (AirObserved(altitude_m=1000.0), ISO_AT_1000_M, PressureOrigin.ALTITUDE, 3.0),
        (AirObserved(90.5, 1000.0, 89.0), 90.5, PressureOrigin.MEASURED, 0.1),
        (AirObserved(None, 1000.0, 89.0), 89.0, PressureOrigin.SAME_DAY, 1.0),
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
    meant = meant_at_altitude_kpa(101.3, 1000.0, MOVES)
    assert meant == pytest.approx(ISO_AT_1000_M, abs=0.05)
    assert meant_at_altitude_kpa(70.0, 1000.0, MOVES) is None
    assert meant_at_altitude_kpa(90.0, 1000.0, MOVES) is None


@given(st.floats(-400, 4900), st.floats(60, 110), st.floats(2, 15))
def test_a_reading_is_used_unless_it_contradicts_its_altitude(
    metres: float, kpa: float, at_odds: float
) -> None:
    moves = attrs.evolve(MOVES, at_odds_kpa=at_odds)
    found = outside_pressure(AirObserved(kpa, metres), moves)

    usual = pressure_at_altitude_kpa(metres)
    assert contradicts(kpa, metres, moves) == (abs(kpa - usual) > at_odds)
    assert found.kpa == (usual if contradicts(kpa, metres, moves) else kpa)


@pytest.mark.parametrize(("day", "error"), [(MAY, 1.0), (JUNE, 3.0)])
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


def test_how_far_a_place_moves_is_what_the_owner_says_and_stands_in_the_words() -> None:
    drift, weather = Quantity(Decimal(15), "hPa"), Quantity(Decimal(45), "hPa")
    restless = AirMoves.of(Limits({"pressure-lost": {"air_drifts": drift, "weather_moves": weather}}))
    assert (restless.drift_kpa, restless.weather_kpa) == (1.5, 4.5)
    assert AirMoves.of(Limits()) == MOVES

    by_height = outside_pressure(AirObserved(altitude_m=1000.0), restless)
    earlier = outside_pressure(AirObserved(None, 1000.0, 89.0), restless)
    assert (by_height.error_kpa, earlier.error_kpa) == (4.5, 1.5)
    assert "the weather moves it by some 45 hPa" in by_height.words()
    assert "it may have drifted by some 15 hPa" in earlier.words()


@every(
    ("then", "now", "error"),
    [
        # At one place the height is the same both times, and only what moved between is not known.
        (HIGH, HIGH, 1.0),
        (HIGH, attrs.evolve(HIGH, day=JUNE), 3.0),
        (attrs.evolve(HIGH, reading_kpa=90.0), attrs.evolve(HIGH, day=JUNE), 3.0),
        # A barometer read both times errs by itself alone.
        (attrs.evolve(HIGH, reading_kpa=90.0), attrs.evolve(HIGH, reading_kpa=90.4), 0.1 * 2**0.5),
        (HIGH, AirObserved(altitude_m=0.0, place="low", day=MAY), 3.0 * 2**0.5),
    ],
)
def test_the_difference_of_two_times_may_be_off_by_what_moved_between(
    then: AirObserved, now: AirObserved, error: float
) -> None:
    assert apart_error_kpa(then, now, MOVES) == pytest.approx(error)
