"""The state of each tyre: what was last seen on it and what air it was left with, each with where from."""

from typing import Any

import attrs
import pytest

from paddock_tui.calc.outside_pressure import AirMoves
from paddock_tui.facts.past import History
from paddock_tui.facts.tyre_state import _STATES, cold_left, last_look
from paddock_tui.limits import Limits
from tests.rules.situations import went_before

MOVES = AirMoves.of(Limits())


def read(bar: str, **more: Any) -> dict[str, Any]:
    return {"pressures": {"cold": {"front": bar, "temperature": "20 C", **more}}}


def history(*sessions: dict[str, Any]) -> History:
    sets = {"may": {"front": {"kind": "track-day"}}, "june": {"front": {"continues": "may"}}}
    return went_before(*sessions, tyres=sets, hot_read=False)


def test_a_tyre_has_the_air_that_it_was_left_with_absolute_and_where_it_was_read() -> None:
    past = history(read("2.10 bar"), read("2.30 bar", set_to_front="2.00 bar"), {"pressures": {}})
    found = cold_left(past, "may", "front")
    assert found is not None
    assert (str(found.read.left_at), found.past.id, found.let) == ("2.00 bar", "before-2", False)
    # No place is known: the air outside is that of the sea, 101.325 kPa, ISO 2533.
    assert found.absolute_kpa(MOVES) == pytest.approx(200.0 + 101.325)
    high = found._replace(past=attrs.evolve(found.past, altitude_m=1000.0))
    # ISO 2533, 1000 m: 89.874 kPa.
    assert high.absolute_kpa(MOVES) == pytest.approx(200.0 + 89.874, abs=0.01)
    assert cold_left(past, "june", "front") is None


def test_air_that_was_let_out_since_is_said() -> None:
    bled = {"pressures": {"hot": {"front": "2.60 bar", "set_to_front": "2.40 bar"}}}
    found = cold_left(history(read("2.10 bar"), bled), "may", "front")
    assert found is not None
    assert (found.past.id, found.let) == ("before-1", True)


def test_a_look_goes_with_the_tyre_into_another_set_and_names_its_session() -> None:
    cord = {"look.front.seen": ["cord"]}
    past = history(cord, {"tyres": "june"}, {"tyres": "june", "look.rear.seen": ["graining"]})
    found = last_look(past, "june", "front")
    assert found is not None
    assert (found.looks, found.past.id) == (("cord",), "before-1")
    assert last_look(past, "may", "rear") is None


def test_going_on_is_the_same_as_going_through_it_all_and_goes_through_what_is_new_alone() -> None:
    whole = history(read("2.10 bar"), {"look.front.seen": ["cut"]}, read("2.20 bar"))
    begun = History(whole.past[:2], whole.tyre_sets).on_line(whole.line)
    cold_left(begun, "may", "front")
    steps = _STATES.steps
    found = cold_left(whole, "may", "front")

    assert _STATES.steps - steps == 1
    assert found == cold_left(History(whole.past, whole.tyre_sets), "may", "front")
