"""A walk through many seasons: where it leads, how many steps it takes anew, and how many states it keeps."""

from types import SimpleNamespace
from typing import Any

import attrs
import pytest

from paddock_tui.matters import walked
from paddock_tui.matters.core import Outing
from paddock_tui.matters.days import Course
from paddock_tui.matters.walked import EACH, LATEST, Walks

Step = Any


def _group(name: int) -> Step:
    return (SimpleNamespace(session=SimpleNamespace(bike="magpie", rider="ines"), entry=None, name=name),)


def _course(groups: list[Step], on: Course | None = None) -> Course | None:
    for one in groups[on.count if on is not None else 0 :]:
        on = Course.on(on, one)
    return on


def _advance(state: tuple[int, int], group: Step) -> tuple[int, int]:
    """Return how many were walked, and a figure that tells their order."""
    return state[0] + 1, (state[1] * 31 + group[0].name) % 1_000_003


def _whole(groups: list[Step]) -> tuple[int, int]:
    state = (0, 0)
    for one in groups:
        state = _advance(state, one)
    return state


def test_a_change_long_ago_is_walked_anew_from_the_nearest_state_and_leads_where_the_whole_does() -> None:
    groups = [_group(one) for one in range(LATEST + 8 * EACH)]
    walks = Walks((0, 0), _advance)
    assert walks.through(_course(groups)) == _whole(groups)
    assert walks.steps == len(groups)

    for at in (len(groups) - 1, len(groups) - LATEST, len(groups) - LATEST - 1, 3 * EACH + 7, EACH, 0):
        groups[at] = _group(-at - 1)
        before = walks.steps
        assert walks.through(_course(groups)) == _whole(groups)
        anew = walks.steps - before
        assert len(groups) - at <= anew < len(groups) - at + EACH
        if at >= len(groups) - LATEST:
            assert anew == len(groups) - at


def test_one_more_session_is_one_step_and_few_states_are_kept() -> None:
    groups = [_group(one) for one in range(LATEST + 20 * EACH)]
    walks = Walks((0, 0), _advance)
    course = _course(groups)
    walks.through(course)
    before = walks.steps
    groups.append(_group(5))
    assert walks.through(_course(groups, course)) == _whole(groups)
    assert walks.steps == before + 1
    (walk,) = walks._walks.values()
    assert sum(state is not None for _, state in walk.known) <= LATEST + 1 + len(groups) // EACH


def test_outings_are_compared_in_all_that_they_hold() -> None:
    assert Outing.__match_args__ == tuple(one.name for one in attrs.fields(Outing))


def test_what_two_ways_have_in_common_is_not_looked_through_again(monkeypatch: pytest.MonkeyPatch) -> None:
    groups = [_group(one) for one in range(LATEST + 20 * EACH)]
    walks, seen = Walks((0, 0), _advance), list[Step]()
    course = _course(groups)
    walks.through(course)
    same = walked._is_same

    def looked_at(one: Step, other: Step) -> bool:
        seen.append(other)
        return same(one, other)

    monkeypatch.setattr(walked, "_is_same", looked_at)
    groups += [_group(5), _group(6)]
    assert walks.through(_course(groups, course)) == _whole(groups)
    assert seen == []

    groups[-1] = _group(7)
    assert walks.through(_course(groups, course)) == _whole(groups)
    assert seen == groups[-2:]
