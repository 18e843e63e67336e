"""What has to be kept: weight and moments on two wheels, air in a tyre, work of a thrust, litres."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.anti_squat import chain_pull_n
from paddock_tui.calc.balance import Balance, axle_loads
from paddock_tui.calc.centre_of_mass import Centre, together
from paddock_tui.calc.chain import pitch_diameter_mm
from paddock_tui.calc.fuel_volume import litres_after
from paddock_tui.calc.longitudinal import rear_lift_m_s2, wheelie_m_s2
from paddock_tui.calc.road_load import Resistance, powered_top_speed_m_s
from paddock_tui.calc.springs import G_M_S2
from paddock_tui.calc.steering import GeometryChange, Steering, SteeringGeometry, Swingarm, after
from paddock_tui.calc.tyre_air import absolute_kpa, kelvin
from paddock_tui.calc.tyre_pressure import Ambient, cold_for_hot_kpa_gauge, hot_expected_kpa_gauge
from paddock_tui.calc.warmers import TyreAir, hot_from_warmers, on_warmers_for_hot
from tests.examples import examples

few = examples(20)
BALANCES = st.builds(Balance, st.floats(1.2, 1.7), st.floats(0.45, 0.85), st.floats(0.5, 0.9))


@few
@given(BALANCES, st.floats(120, 400), st.floats(-9, 9))
def test_both_wheels_carry_the_weight_and_their_moments_balance(
    bike: Balance, mass: float, rate: float
) -> None:
    found = axle_loads(bike, mass, rate)

    assert found.total_n == pytest.approx(mass * G_M_S2)
    # Moments about the rear contact: the front's load, the weight, and the inertia at its height.
    inertia = mass * rate * bike.centre_height_m
    assert found.front_n * bike.wheelbase_m + inertia == pytest.approx(mass * G_M_S2 * bike.centre_ahead_m)


@few
@given(BALANCES, st.floats(-0.2, 0.2))
def test_a_wheel_lifts_where_its_load_is_gone_and_a_mirrored_bike_lifts_the_other(
    bike: Balance, slope: float
) -> None:
    assert axle_loads(bike, 250.0, wheelie_m_s2(bike)).front_n == pytest.approx(0.0, abs=1e-6)
    assert axle_loads(bike, 250.0, -rear_lift_m_s2(bike)).rear_n == pytest.approx(0.0, abs=1e-6)
    mirrored = Balance(bike.wheelbase_m, bike.centre_height_m, bike.centre_behind_m)
    assert rear_lift_m_s2(bike, slope) == pytest.approx(wheelie_m_s2(mirrored, -slope))


@few
@given(st.floats(0.4, 0.8), st.floats(0.5, 0.9), st.floats(0.7, 1.2), st.floats(0.3, 0.8), st.floats(40, 130))
def test_bike_and_rider_together_keep_mass_and_moments(
    high: float, ahead: float, rider_high: float, rider_ahead: float, rider_kg: float
) -> None:
    mass, both = together(Centre(high, ahead), 180.0, Centre(rider_high, rider_ahead), rider_kg)

    assert mass == 180.0 + rider_kg
    assert mass * both.height_m == pytest.approx(180.0 * high + rider_kg * rider_high)
    assert mass * both.ahead_m == pytest.approx(180.0 * ahead + rider_kg * rider_ahead)


@few
@given(st.floats(120, 280), st.floats(-5, 40), st.floats(45, 110), st.floats(70, 103), st.floats(70, 103))
def test_the_air_in_the_tyre_is_kept_from_cold_to_hot_and_over_the_warmers(
    cold: float, cold_c: float, hot_c: float, before: float, later: float
) -> None:
    ambient = Ambient(before, later)
    hot = hot_expected_kpa_gauge(cold, cold_c, hot_c, ambient)

    # p / T is the amount of air in a volume that does not grow.
    amounts = (absolute_kpa(cold, before) / kelvin(cold_c), absolute_kpa(hot, later) / kelvin(hot_c))
    assert amounts[0] == pytest.approx(amounts[1])
    assert cold_for_hot_kpa_gauge(hot, cold_c, hot_c, ambient) == pytest.approx(cold)
    air = TyreAir(60.0, hot_c)
    over = on_warmers_for_hot(hot, air, Ambient(later, later)).best
    assert hot_from_warmers(over, air, Ambient(later, later)).best == pytest.approx(hot)


@few
@given(st.floats(500, 4000), st.integers(36, 50))
def test_the_chain_turns_the_wheel_by_as_much_as_the_thrust_holds_it(thrust: float, teeth: int) -> None:
    pull = chain_pull_n(thrust, 0.31, teeth, 15.875)

    assert pull * pitch_diameter_mm(teeth, 15.875) / 2000.0 == pytest.approx(thrust * 0.31)


@few
@given(st.floats(30_000, 150_000), st.floats(0.25, 0.6), st.floats(-10, 10))
def test_at_the_top_speed_the_work_of_the_engine_is_that_of_the_road(
    power: float, area: float, wind: float
) -> None:
    road = Resistance(area, 1.2, 260.0, 0.018, 0.0, wind)
    top = powered_top_speed_m_s(power, road)

    assert road.force_n(top) * top == pytest.approx(power, rel=1e-6)


@few
@given(st.floats(-8, 8), st.floats(-8, 8), st.floats(-15, 15))
def test_a_change_keeps_the_swingarm_and_both_wheels_on_the_ground(
    through: float, up: float, back: float
) -> None:
    bike = SteeringGeometry(1420.0, 315.0, Steering(24.0, 30.0, 300.0), Swingarm(580.0, 390.0))
    found = after(bike, GeometryChange(through, up, back))

    assert found.swingarm is not None
    assert found.swingarm.length_mm == 580.0 + back
    assert (found.rear_radius_mm, found.steering.radius_mm, found.steering.offset_mm) == (315.0, 300.0, 30.0)
    assert abs(found.steering.rake_deg - 24.0) < math.degrees(20.0 / 1400.0)


@few
@given(st.floats(5, 25), st.floats(-10, 45), st.floats(-10, 45), st.floats(-10, 45))
def test_a_fill_measures_the_same_over_any_way_of_temperatures(
    litres: float, first: float, second: float, third: float
) -> None:
    over = litres_after(litres_after(litres, first, second, 745.0), second, third, 745.0)

    assert over == pytest.approx(litres_after(litres, first, third, 745.0))
