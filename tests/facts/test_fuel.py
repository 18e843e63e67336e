"""Fuel: the rate and where it comes from, what is in the tank, and the plan in laps or minutes."""

import datetime as dt
from typing import Any

import pytest

from paddock_tui.facts.core import NotKnown
from paddock_tui.facts.fuel import FuelAhead, in_tank, laps_around, rate_of, warm_up_laps
from paddock_tui.facts.past import NOTHING
from paddock_tui.facts.situation import Situation
from paddock_tui.records.session import Session
from tests.every import every
from tests.rules.cases.fuel import ADDED, LEARNT, MINUTES, TIMED, tank
from tests.rules.situations import Change, files, put, situation, without


def made(*changes: Change, **more: Any) -> Situation:
    return situation(files(*changes), **more)


def ahead(*changes: Change, **more: Any) -> FuelAhead:
    found = made(*changes, **more).facts().get("fuel_ahead")
    assert isinstance(found, FuelAhead)
    return found


def test_eight_laps_are_ten_with_the_ones_out_and_in() -> None:
    found = ahead()

    assert found.plan.distance_km == pytest.approx(40.0)
    assert found.plan.needed_l == pytest.approx(6.4)
    assert found.left_l == pytest.approx(10.6)


def test_minutes_over_the_usual_lap_are_laps_and_hold_those_out_and_in() -> None:
    found = ahead(*MINUTES, history=TIMED)

    assert found.plan.distance_km == pytest.approx(40.0)


def test_a_race_has_a_warm_up_lap() -> None:
    assert ahead(put("session", "kind", "race")).plan.distance_km == pytest.approx(44.0)
    assert warm_up_laps(Session(kind="practice")) == 0
    assert laps_around(Session()) == 0


def test_laps_around_a_race_are_its_own_then_those_of_the_class() -> None:
    race = put("session", "kind", "race")
    rules = put("day", "classes.open", {"warm_up_laps": 2, "slow_down_laps": 1})

    assert ahead(race, rules).plan.distance_km == pytest.approx((8 + 2 + 3) * 4.0)
    own = put("session", "race", {"warm_up_laps": 1, "slow_down_laps": 0})
    assert ahead(race, rules, own).plan.distance_km == pytest.approx((8 + 2 + 1) * 4.0)
    assert ahead(rules).plan.distance_km == pytest.approx(40.0), "a track day has no class"


def test_a_restart_counts_what_was_ridden_the_part_distance_and_the_ways_in_and_out() -> None:
    flag = put("session", "events.1", {"what": "red flag", "laps_ridden": 3, "laps_left": 4})
    wait = put("session", "events.1", {"what": "wait in the lane"})
    uncounted = put("session", "events.1", {"what": "red flag", "laps_left": 4})

    assert ahead(flag).plan.distance_km == pytest.approx((3 + 4 + 2 + 2) * 4.0)
    race = put("session", "kind", "race")
    assert ahead(flag, race).plan.distance_km == pytest.approx((3 + 4 + 4 + 2) * 4.0), "two warm-up laps"
    assert ahead(uncounted).plan.distance_km == pytest.approx((8 + 4 + 4) * 4.0), "it errs toward more"
    assert ahead(wait).plan.distance_km == pytest.approx(40.0)


def test_the_rate_is_learnt_before_it_is_given_and_given_before_it_is_common() -> None:
    bike, session = made(put("bike", "tank.consumption", "12 l/100km")).bike, made(ADDED).session
    assert session is not None

    learnt = rate_of(session, "open", bike, LEARNT)
    assert learnt.learnt
    assert learnt.l_per_100km == pytest.approx(16.0)
    given = rate_of(session, "open", bike, NOTHING)
    assert (given.l_per_100km, given.learnt) == (12.0, False)
    common = rate_of(session, "open", None, NOTHING)
    assert (common.l_per_100km, common.learnt) == (16.0, False)


def test_a_tank_without_a_capacity_or_a_brim_is_not_known() -> None:
    session = made(without("session", "filled_to_brim")).session
    assert session is not None

    assert in_tank(session, None, NOTHING, 16.0) is None
    assert in_tank(session, made().bike, NOTHING, 16.0) is None


def test_what_is_in_the_tank_is_counted_from_the_last_brim_and_never_over_the_capacity() -> None:
    few = ahead(
        without("session", "filled_to_brim"), put("session", "fuel_added", "1 l"), tank(14), history=LEARNT
    )
    many = ahead(
        without("session", "filled_to_brim"), put("session", "fuel_added", "20 l"), tank(14), history=LEARNT
    )

    assert few.tank.litres == pytest.approx(14.0 - 6.4 + 1.0)
    assert many.tank.litres == 14.0


def test_it_says_what_it_was_reckoned_from() -> None:
    said = str(ahead(put("rider", "limits.fuel_reserve", "3 l")))

    assert said == (
        "17.0 l in the tank; 6.4 l for 40 km at 16.0 l/100km, no own rate, the most of 10 to 16: paddock "
        "practice, unpublished; own reserve 3 l"
    )


@every(
    "change",
    [
        put("bike", "tank.capacity", "60 l"),
        put("venue", "length", "0 km"),
        put("venue", "length", "900 km"),
    ],
)
def test_figures_that_cannot_be_are_not_reckoned_with(change: Change) -> None:
    found = made(change).facts().get("fuel_ahead")

    assert isinstance(found, NotKnown)


def test_the_road_has_filling_stations() -> None:
    road = made(put("session", "kind", "road"), put("session", "date", dt.date(2026, 5, 16)))

    assert not isinstance(road.facts().get("fuel_ahead"), NotKnown | FuelAhead)
