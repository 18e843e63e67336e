"""Fuel planned, carried and weighed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.fuel import (
    FILLED_IN_L,
    cans_for_day,
    fuel_mass,
    fuel_mass_kg,
    laps_from_minutes,
    litres_for_distance,
    plan_fuel,
    reserve_l,
    to_add_l,
)
from tests.every import every
from tests.examples import examples

few = examples(25)


def test_out_in_and_warm_up_laps_are_ridden_too() -> None:
    plan = plan_fuel(10, 4.0, 12.0, out_in_laps=2, warm_up_laps=1)

    assert plan.distance_km == pytest.approx(52.0)
    assert plan.needed_l == pytest.approx(6.24)


@every(("needed", "reserve"), [(0.0, 2.0), (13.0, 2.0), (20.0, 3.0)])
def test_the_reserve_is_a_least_or_a_share(needed: float, reserve: float) -> None:
    assert reserve_l(needed, 2.0, 0.15) == pytest.approx(reserve)


@few
@given(st.floats(1.0, 40.0), st.floats(1.0, 7.0), st.floats(5.0, 25.0), st.floats(0.0, 24.0))
def test_what_is_added_leaves_the_reserve(laps: float, lap_km: float, rate: float, tank: float) -> None:
    left = plan_fuel(laps, lap_km, rate).at_flag_l(tank)
    reserve = reserve_l(tank - left, 2.0, 0.15)
    added = to_add_l(left, reserve)

    assert added % FILLED_IN_L == 0.0
    assert left + added >= reserve - 1e-6
    assert added == 0.0 or left + added < reserve + FILLED_IN_L


@few
@given(st.floats(1.0, 40.0), st.floats(1.0, 7.0), st.floats(5.0, 25.0))
def test_another_lap_needs_more(laps: float, lap_km: float, rate: float) -> None:
    assert plan_fuel(laps + 1, lap_km, rate).needed_l > plan_fuel(laps, lap_km, rate).needed_l


def test_left_at_the_flag_may_be_below_zero() -> None:
    assert plan_fuel(10, 4.0, 15.0, out_in_laps=0).at_flag_l(5.0) == pytest.approx(-1.0)


def test_laps_of_planned_minutes() -> None:
    assert laps_from_minutes(20, 100.0) == pytest.approx(12.0)


@every(("planned", "tank", "cans"), [(42, 12, 3), (32, 12, 2), (32.1, 12, 3), (10, 12, 0)])
def test_cans_are_whole(planned: float, tank: float, cans: int) -> None:
    assert cans_for_day(planned, tank, 10).cans == cans


@few
@given(st.floats(0.1, 25.0), st.floats(0.720, 0.775))
def test_mass_lies_in_its_band(litres: float, density: float) -> None:
    band = fuel_mass(litres)

    assert band.low_kg - 1e-9 <= fuel_mass_kg(litres, density) <= band.high_kg + 1e-9


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(OutOfRange, match="density"):
        fuel_mass_kg(10, 0.80)
    with pytest.raises(OutOfRange, match="usual lap"):
        laps_from_minutes(20, 0.0)
    with pytest.raises(OutOfRange, match="consumption"):
        litres_for_distance(100.0, 0.0)
    with pytest.raises(OutOfRange, match="lap length"):
        plan_fuel(10, 0.0, 12.0)
    with pytest.raises(OutOfRange, match="tank"):
        plan_fuel(10, 4.0, 12.0).at_flag_l(-1.0)
