"""The walk through the record as far as it is the same as last time: only what comes after is walked anew."""

import datetime as dt
import threading
from collections.abc import Callable
from operator import attrgetter
from typing import Generic, NamedTuple, TypeVar

from paddock_tui.matters.core import Outing
from paddock_tui.matters.days import Course, Together
from paddock_tui.records.day import NO_ENTRY

State = TypeVar("State")

_MOST = 6
"""Walks that are remembered: of the bike looked at, of the one in hand, and what was tried beside them."""

LATEST = 60
EACH = 50
"""States remembered: behind each of the latest steps, and behind each so many of those before.

A state holds what is open on every bike and tyre, so that all of many seasons' would be most of the memory.
"""


Whose = tuple[str | None, str | None]
"""Whose walk it is: the bike and the rider of the session that it leads to."""


class Beginning(NamedTuple, Generic[State]):
    """Where a walk begins that goes on from an earlier one: behind the last outing up to a day."""

    up_to: dt.date
    state: State


class Keeper(Generic[State]):
    """Is handed the state behind the last outing up to a day by a walk that goes past that."""

    def __init__(self, up_to: dt.date) -> None:
        self.up_to = up_to
        self.state: State | None = None


class _Walk(Generic[State]):
    """A walk as it is remembered: where it began, its steps, and the state that was asked to be kept."""

    def __init__(self, begins: Beginning[State] | None) -> None:
        self.begins = begins
        self.known: list[tuple[Course, State | None]] = []
        self.stop: tuple[int, Beginning[State]] | None = None
        """Behind so many steps."""

    def goes_with(self, wanted: Course | None) -> int:
        """Go as far as the same outings are wanted, by these from now on; gives how far that is."""
        known, here, new = self.known, wanted, list[Course]()
        while here is not None and not (here.count <= len(known) and known[here.count - 1][0] is here):
            new.append(here)
            here = here.before
        # Each that is known went on from what was the same as the course to it: so is all before this one.
        same = 0 if here is None else here.count
        for other in reversed(new):
            if same == len(known) or not _is_same(known[same][0].group, other.group):
                break
            known[same] = other, known[same][1]
            same += 1
        del known[same:]
        return same


class Walks(Generic[State]):
    """Gives where a walk leads, and remembers the states behind its steps.

    `advance` is the step: pure, so that the same outings lead to the same state. `steps` counts them.
    What changed long ago is walked anew from the nearest state that is remembered.
    """

    def __init__(self, start: State, advance: Callable[[State, Together], State]) -> None:
        self._start, self._advance = start, advance
        self._walks: dict[Whose | None, _Walk[State]] = {}
        self.steps = 0
        self._lock = threading.Lock()

    def through(
        self,
        wanted: Course | None,
        begins: Beginning[State] | None = None,
        keeper: Keeper[State] | None = None,
    ) -> State:
        """Walk through outings in their order, as far as a course goes.

        `begins` is where an earlier walk led that these go on from. `keeper` is handed its state where the
        walk goes past its day, or did when it went through the same outings before.
        """
        last = wanted.group[-1].session if wanted is not None else None
        # Whoever rides has what happened to them on other bikes among the outings of this one.
        whose = (last.bike, last.rider) if last is not None else None
        with self._lock:  # another thread walks for itself meanwhile
            walk = self._walks.pop(whose, None)
        if walk is None or walk.begins is not begins:
            walk = _Walk(begins)
        known, same = walk.known, walk.goes_with(wanted)
        at = next((place for place in range(same, 0, -1) if known[place - 1][1] is not None), 0)
        behind = known[at - 1][1] if at else None
        start = self._start if begins is None else begins.state
        state = start if behind is None else behind
        del known[at:]
        if walk.stop is not None and walk.stop[0] > at:
            walk.stop = None
        for course in wanted.after(at) if wanted is not None else ():
            if keeper is not None and _day(course.before) <= keeper.up_to < _day(course):
                walk.stop = course.count - 1, Beginning(keeper.up_to, state)
            state = self._advance(state, course.group)
            known.append((course, state))
            self.steps += 1
            older = len(known) - 1 - LATEST
            if older >= 0 and (older + 1) % EACH:
                known[older] = known[older][0], None
        if keeper is not None and walk.stop is not None and walk.stop[1].up_to == keeper.up_to:
            keeper.state = walk.stop[1].state
        with self._lock:
            self._walks[whose] = walk
            if len(self._walks) > _MOST:
                del self._walks[next(iter(self._walks))]
        return state


def _day(course: Course | None) -> dt.date:
    return dt.date.min if course is None else course.group[0].order[0]


def _is_same(group: Together, other: Together) -> bool:
    """Return whether outings are the same, to the letter: of what is equal the words may differ."""
    return len(group) == len(other) and all(
        one is its
        or (
            one.session is its.session
            and (one.entry is its.entry or one.entry == its.entry == NO_ENTRY)
            and _held(one) == _held(its)
        )
        for one, its in zip(group, other, strict=True)
    )


_held = attrgetter(*Outing.__match_args__)
"""What an outing holds: what is the very same in two is not compared value by value."""
