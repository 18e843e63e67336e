"""The walk: the order of files is no matter, and going on from where it stood is the whole."""

import copy
import datetime as dt
from typing import Any

import attrs
import hypothesis.strategies as st
from hypothesis import given

from paddock_tui.matters import KINDS, Folded, MatterHistory, advance, matters
from paddock_tui.matters.days import in_order
from paddock_tui.matters.fold import WALKS, asked, shown
from tests.every import every
from tests.examples import examples
from tests.matters.row import QUIET, RIDDEN, Row
from tests.matters.rows import ROWS
from tests.matters.walk import outing, present

PARTS: list[dict[str, Any]] = [
    *(row.opens for row in ROWS),
    *(one for row in ROWS for one in row.later),
    *({**row.opens, **row.beside} for row in ROWS if row.beside),
    QUIET,
]

stories = st.lists(
    st.tuples(st.sampled_from(PARTS), st.booleans(), st.sampled_from(("ines", "tobin")), st.integers(1, 8)),
    min_size=1,
    max_size=8,
)


def told(story: list[tuple[dict[str, Any], bool, str, int]]) -> list[Any]:
    return [
        outing(number, {"rider": rider, **(RIDDEN if ridden else {}), **values})
        for values, ridden, rider, number in story
    ]


@given(stories, st.randoms(use_true_random=False))
@examples(30)
def test_the_order_of_files_never_matters(story: list[Any], random: Any) -> None:
    # Some numbers come twice: their order is not told, and has to give the same all the same.
    outings = [one.__class__(f"{place}", *_rest(one)) for place, one in enumerate(told(story))]
    now = present(outing(9, {}))
    mixed = random.sample(outings, len(outings))

    assert matters(MatterHistory(tuple(mixed)), now) == matters(MatterHistory(tuple(outings)), now)


def _rest(one: Any) -> tuple[Any, ...]:
    return one.session, one.entry, one.column, one.tyres


@given(stories)
@examples(30)
def test_going_on_from_where_the_walk_stood_is_the_whole(story: list[Any]) -> None:
    outings = {one.session.number: one for one in told(story)}
    ordered = [outings[number] for number in sorted(outings)]
    folded = Folded()
    for place, one in enumerate(ordered, 1):
        folded = advance(folded, (one,))
        now = present(one)
        assert shown(folded, {}, now) == matters(MatterHistory(tuple(ordered[:place])), now)


def test_only_what_comes_after_a_change_is_walked_again() -> None:
    outings = [outing(number, dict(RIDDEN)) for number in range(1, 13)]
    now = present(outings[-1])
    matters(MatterHistory(tuple(outings)), now)

    def steps(changed: list[Any]) -> int:
        before = WALKS.steps
        found = matters(MatterHistory(tuple(changed)), now)
        taken = WALKS.steps - before
        assert found == matters(MatterHistory(tuple(map(copy.deepcopy, changed))), now)
        matters(MatterHistory(tuple(outings)), now)
        return taken

    assert steps(outings) == 0
    assert steps([*outings, outing(13, dict(RIDDEN))]) == 1
    assert steps([*outings[:-1], outing(12, {})]) == 1
    assert steps([*outings[:4], outing(5, {}), *outings[5:]]) == 8


def test_outings_of_one_place_come_together() -> None:
    first, second, tied = outing(1, {}), outing(2, {}), outing(2, {"rider": "tobin"})
    assert [len(one) for one in in_order((tied, first, second))] == [1, 2]


def test_outings_without_a_number_go_by_their_start_and_without_either_come_together() -> None:
    def made(number: int | None, start: dt.time | None) -> Any:
        one = outing(number or 7, {})
        return attrs.evolve(one, session=attrs.evolve(one.session, number=number, start=start))

    early, late = dt.time(9, 0), dt.time(14, 0)
    first, unnumbered, untold = made(1, early), made(None, late), made(None, None)

    assert list(in_order((unnumbered, first))) == [(first,), (unnumbered,)]
    assert [len(one) for one in in_order((untold, first))] == [2]
    # Whatever else is not known of it, the session looked at comes after those before it.
    here = attrs.evolve(made(2, None), id="here")
    assert list(in_order((here, first), "here")) == [(first,), (here,)]


def _opened(outings: list[Any]) -> set[str]:
    """Walk through outings, and list the kinds that they open: what is not asked opens nothing."""
    folded, kinds, found = Folded(), asked(len(KINDS)), set()
    for one in outings:
        opens = {kind.id for kind in KINDS.values() if list(kind.opens(one, folded.seen))}
        assert opens <= {kind.id for kind in kinds.of(one)}
        found |= opens
        folded = advance(folded, (one,))
    return found


@given(stories)
@examples(60)
def test_a_kind_that_is_not_asked_opens_nothing(story: list[Any]) -> None:
    _opened(told(story))


@every("row", ROWS)
def test_what_opens_a_kind_has_it_asked(row: Row) -> None:
    assert row.kind in _opened(row.started())


def test_few_kinds_are_asked_of_an_outing_that_says_little() -> None:
    kinds = asked(len(KINDS))
    quiet, work = outing(1, dict(RIDDEN)), outing(2, {**RIDDEN, "work.1.what": "pads"})
    more = {kind.id for kind in kinds.of(work)} - {kind.id for kind in kinds.of(quiet)}

    assert len(kinds.of(quiet)) < len(KINDS) / 3
    assert more == {
        "wheel-work-not-looked-at-again",
        "oil-work-not-secured",
        "oil-work-not-checked-hot",
    }
