"""One start pressure for the next session: on its row, on the bench, and as the next change proposes it."""

import attrs
import pytest

from paddock_tui.advice.about import About, PastSession
from paddock_tui.advice.beside_setup import beside_setup
from paddock_tui.advice.next_change import next_change
from paddock_tui.advice.pressures import pressures
from paddock_tui.facts.past import History
from paddock_tui.records.session import is_ridden
from tests.advice.next_change.cases import about, hot
from tests.advice.next_change.told.given import WET, Expected
from tests.advice.next_change.told.pressures import PRESSURES
from tests.every import every
from tests.rules.situations import Change, put

START = {"front": ("setup", "front_start"), "rear": ("setup", "rear_start")}


def the_next(ridden: About) -> About:
    """Give the session to come after a ridden one: its set-up, tyres, surface and air, nothing measured."""
    past = PastSession("ridden", ridden.session, ridden.id_of("venue"))
    history = History((*ridden.history.past, past), ridden.history.tyre_sets, ridden.history.riders)
    to_come = attrs.evolve(ridden.session, laps={}, parked=None, pressures={}, symptoms={}, number=4)
    assert not is_ridden(to_come)
    situation = attrs.evolve(ridden.situation, session=to_come, history=history)
    return attrs.evolve(ridden, situation=situation, history=history)


@every("one", [each for each in PRESSURES if each.puts and each.cause == "pressure"])
def test_row_bench_and_next_change_say_the_same_start(one: Expected) -> None:
    ridden = about(*one.changes)
    move = next_change(ridden).proposal.move
    assert move is not None
    coming = the_next(ridden)
    bench = {put.path: put.value for each in pressures(coming).answers(coming.units) for put in each.puts}
    rows = {path: row.puts[0].value for path, row in beside_setup(coming).items() if row.puts}
    for proposed in move.puts:
        assert bench[proposed.path] == proposed.value
        assert rows[proposed.path] == proposed.value


@pytest.mark.parametrize("changes", [(WET,), (put("session", "tyres", "june"),)])
def test_nothing_is_carried_to_another_surface_or_tyre(changes: tuple[Change, ...]) -> None:
    """What the dry laps on one set taught the air says nothing of another surface or another tyre."""
    coming = the_next(about(hot("2.60 bar", "2.20 bar")))
    assert beside_setup(coming)[START["front"]].puts
    path, value = changes[0][1], changes[0][2]
    other = attrs.evolve(coming.session, **{path[0]: value})
    refs = dict(coming.situation.refs)
    if path[0] == "tyres":
        refs["tyres"] = refs["tyres"]._replace(id="june")
    situation = attrs.evolve(coming.situation, session=other, refs=refs)
    assert not beside_setup(attrs.evolve(coming, situation=situation))[START["front"]].puts


def test_below_the_division_of_a_gauge_it_is_no_step() -> None:
    """The start stands 0.01 bar beside what the bench puts it at: nothing is turned for that."""
    far = (hot("2.60 bar", "2.20 bar"),)
    proposed = next_change(about(*far)).proposal.move
    assert proposed is not None
    assert proposed.puts[0].value == "1.95 bar"

    for start, kind in (("1.96 bar", None), ("1.97 bar", "1.95 bar")):
        found = next_change(about(*far, put("session", "setup.front_start", start)))
        move = found.proposal.move if found.cause == "pressure" else None
        assert (str(move.puts[0].value) if move is not None else None) == kind
