"""A review of one session looks into the sessions just before it, and into few of the earlier ones."""

import operator
from collections.abc import Iterator

import attrs
import pytest

from paddock_tui.facts import outings
from paddock_tui.facts.past import WALKS, History, Lineage
from paddock_tui.records.session import Session
from tests.facts._bygone import NAMES, Long, Noted, NotedSets, ask_all, long_ones, planned, with_many_sets

LATE = 40
"""So many sessions before it may all be looked into: a walk goes on through them."""

FEW = 10
"""So many older ones may be looked into beside."""


FEW_SETS = 4
"""So many old tyre sets may be read."""


def in_hand(long: Long) -> Iterator[Session]:
    """Give sessions that ask for different things, and such as nothing stands in but who rides what."""
    session = long.situation.session
    assert session is not None
    bare = planned(session)
    for one in (session, attrs.evolve(bare, setup=session.setup), bare):
        yield attrs.evolve(one, surface="dry")
        yield attrs.evolve(one, kind="road")
        yield attrs.evolve(one, kind="race", surface="wet", tyres=None)
        yield attrs.evolve(one, rider=None, tyres="unheard-of")


@pytest.mark.parametrize("name", NAMES)
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


@pytest.mark.parametrize("name", [NAMES[0], NAMES[-1]])
def test_no_fact_and_no_rule_reads_all_tyre_sets(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    # Whether what was made before rests on the same tables: here it always is the very same one.
    monkeypatch.setattr(outings, "_same_records", operator.is_, raising=False)
    long = with_many_sets(long_ones()[name])
    read: set[str] = set()
    before = long.situation.history
    sets = NotedSets(before.tyre_sets, read)
    old = {one.tyres for one in long.past[:-LATE]}
    assert len(old) > 4 * FEW_SETS
    for one in in_hand(long):
        for session in (one, attrs.evolve(one, tyres=long.past[-1].tyres)):
            line = Lineage()
            for past in (long.past[:-LATE], long.past):
                read.clear()
                history = History(past, sets, before.riders).on_line(line)
                ask_all(attrs.evolve(long.situation, session=session, history=history))
            assert len(read & old) <= FEW_SETS, f"{sorted(read & old)} of {len(sets)}"
