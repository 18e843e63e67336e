"""What the sessions show of one tyre, followed through the sets that it was in."""

import pytest

from paddock_tui.facts.past import History
from paddock_tui.facts.tyre_counts import tyre_count
from tests.advice.given import past, tyres

RIDDEN = "parked = 10:20:00\nwent_out = 10:00:00\nridden_laps = 8\n"
OLD = tyres('[front]\ncycles_before = 3\ndistance_before = "100 km"\n')
NEW = tyres('[front]\ncontinues = "set"\n[rear]\ncycles_before = 1\n')


def test_only_ridden_sessions_on_this_tyre_count() -> None:
    history = History((past(1, RIDDEN), past(2, "planned_laps = 8\n")), {"set": OLD})

    found = tyre_count(history, "set", "front", OLD)

    assert (found.sessions, found.cycles, found.all_cycles) == (1, 1, 4)
    assert (found.km, found.all_km) == (32.0, 132.0)
    assert found.hours == pytest.approx(1 / 3)
    assert tyre_count(history, "other", "rear", NEW).sessions == 0


def test_a_tyre_that_goes_on_takes_start_and_sessions_of_its_first_set() -> None:
    history = History((past(1, RIDDEN),), {"set": OLD, "new": NEW})

    front, rear = (tyre_count(history, "new", end, NEW) for end in ("front", "rear"))

    assert (front.first, front.all_cycles, front.sessions) == ("set", 4, 1)
    assert (rear.first, rear.all_cycles, rear.sessions) == ("new", 1, 0)


def test_warmers_in_time_keep_one_cycle_going() -> None:
    warm = 'warmers = "used"\nwarmers_on = 10:25:00\nparked = 11:20:00\n'
    history = History((past(1, RIDDEN), past(2, warm)), {"set": OLD})

    assert tyre_count(history, "set", "front", OLD).cycles == 1


def test_what_nobody_wrote_down_is_told_apart_from_nothing() -> None:
    history = History((past(1, "parked = 10:20:00\n"),), {"set": OLD})

    found = tyre_count(history, "set", "front", OLD)

    assert (found.without_km, found.without_hours, found.km, found.hours) == (1, 1, 0.0, 0.0)
