"""What a walk along a history holds: sessions, keys and figures, and nothing that a rider wrote."""

import datetime as dt
from collections.abc import Iterator, Mapping
from typing import Any

import attrs
import pytest

from paddock_tui.facts.past import WALKS, History, Lineage, PastSession
from paddock_tui.records.session import Session
from tests.facts._bygone import NAMES, Long, ask_all, long_ones

PLAIN = (type(None), bool, int, float, dt.date, dt.time)
"""What is held as it is; of these types alone, and of none that is made of them."""

GROUNDS = ("track", "road")
SURFACES = ("dry", "damp", "wet")


def wrong_in(state: Any, known: frozenset[str], past: tuple[PastSession, ...]) -> Iterator[object]:
    """Give what no walk may hold."""
    kind = type(state)
    if kind is str:
        if not known.issuperset(state.split(" ")):
            yield state
    elif kind is PastSession:
        if not any(state is one for one in past):
            yield state
    elif isinstance(state, dict | frozenset | tuple) and (
        kind in (dict, frozenset) or issubclass(kind, tuple)
    ):
        values = state.values() if isinstance(state, dict) else ()
        for one in (*state, *values):
            yield from wrong_in(one, known, past)
    elif attrs.has(kind) and kind.__module__.startswith("paddock_tui.calc."):
        assert kind.__setattr__ is not object.__setattr__, f"{kind} is not frozen"
        for one in attrs.fields(kind):
            yield from wrong_in(getattr(state, one.name), known, past)
    elif kind not in PLAIN:
        yield state


def known_in(long: Long) -> frozenset[str]:
    """Return what a walk may name: ids, the keys of tables, the bike's modes and surfaces."""
    found = {"", *GROUNDS, *SURFACES}
    for one in long.past:
        ids = (one.id, one.rider, one.tyres, one.venue, one.session.setup.mode)
        found |= {name for name in ids if name is not None}
        found |= {*keys_of(one.session), *keys_of(one.entry)}
    return frozenset(found)


def keys_of(held: Any) -> Iterator[str]:
    """Give the keys of a record and of all its tables, those of its parts too."""
    if isinstance(held, Mapping):
        yield from map(str, held)
        for one in held.values():
            yield from keys_of(one)
    elif attrs.has(type(held)):
        for field in attrs.fields(type(held)):
            yield field.name
            yield from keys_of(getattr(held, field.name))


@pytest.mark.parametrize("name", NAMES)
def test_a_walk_holds_sessions_keys_and_figures_alone(name: str) -> None:
    long = long_ones()[name]
    # The walks of a family are made when they are asked for.
    ask_all(long.situation)
    known, sets, riders = known_in(long), long.situation.history.tyre_sets, long.situation.history.riders
    line = Lineage()
    for length in range(len(long.past) + 1):
        history = History(long.past[:length], sets, riders).on_line(line)
        wrong = {
            name: found
            for name, walk in WALKS.items()
            if (found := list(wrong_in(walk.of(history), known, long.past)))
        }
        assert wrong == {}


def test_each_walk_holds_something_of_one_of_the_histories() -> None:
    told = {
        name for long in long_ones().values() for name, walk in WALKS.items() if ends_elsewhere(walk, long)
    }
    assert told == set(WALKS)


def ends_elsewhere(walk: Any, long: Long) -> bool:
    """Return whether a walk ends in another state than the one it starts in."""
    return bool(walk.of(long.situation.history) != walk.of(History()))


@pytest.mark.parametrize(
    "held",
    ["said by the rider", ("ok", ["list"]), {"ok": dt.timedelta(1)}, PastSession("1", Session()), Session()],
    ids=str,
)
def test_what_may_not_be_held_is_found(held: Any) -> None:
    assert list(wrong_in(held, frozenset({"ok"}), ()))
