"""A review of one session looks into the sessions just before it, and into few of the earlier ones."""

from collections.abc import Iterator

import attrs
import pytest

from paddock_tui.facts.past import WALKS, Lineage
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp
from tests.facts._bygone import Long, Noted, ask_all, long_ones

LATE = 40
"""So many sessions before it may all be looked into: a walk goes on through them."""

FEW = 10
"""So many older ones may be looked into beside."""


def in_hand(long: Long) -> Iterator[Session]:
    """Give sessions that ask for different things: as planned, on the road, in the wet, of whoever, bare."""
    session = long.situation.session
    assert session is not None
    yield session
    yield attrs.evolve(session, kind="road", setup=SetUp())
    yield attrs.evolve(session, kind="race", surface="wet", tyres=None)
    yield attrs.evolve(session, rider=None, surface="dry", setup=SetUp())
    yield attrs.evolve(session, tyres="unheard-of", sag={}, pressures={})
    yield attrs.evolve(session, parked=None, laps={}, ridden_laps=None, checks={}, surface=None)


@pytest.mark.parametrize("name", long_ones())
def test_no_fact_and_no_rule_looks_into_all_of_a_history(name: str) -> None:
    long = long_ones()[name]
    into: set[str] = set()
    past = [Noted(one, into) for one in long.past]
    old = {one.id for one in long.past[:-LATE]}
    assert len(old) > 4 * FEW
    for session in in_hand(long):
        line = Lineage()
        before, situation = long.at(past[:-LATE], session)
        ask_all(attrs.evolve(situation, history=before.on_line(line)))
        for walk in WALKS.values():
            walk.of(before)
        into.clear()
        now, situation = long.at(past, session)
        ask_all(attrs.evolve(situation, history=now.on_line(line)))
        assert into, "nothing was looked into: the test looks at nothing"
        assert len(into & old) <= FEW, f"{len(into & old)} of {len(old)}"
