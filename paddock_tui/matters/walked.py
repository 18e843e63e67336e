"""The walk through the record as far as it is the same as last time: only what comes after is walked anew."""

import threading
from collections.abc import Callable, Iterable
from typing import Generic, TypeVar

from paddock_tui.matters.days import Together
from paddock_tui.records.day import DayEntry

State = TypeVar("State")

_MOST = 6
"""Walks that are remembered: of the bike looked at, of the one in hand, and what was tried beside them."""

LATEST = 60
EACH = 50
"""States remembered: behind each of the latest steps, and behind each so many of those before.

A state holds what is open on every bike and tyre, so that all of many seasons' would be most of the memory.
"""


class Walks(Generic[State]):
    """Gives where a walk leads, and remembers the states behind its steps.

    `advance` is the step: pure, so that the same outings lead to the same state. `steps` counts them.
    What changed long ago is walked anew from the nearest state that is remembered.
    """

    def __init__(self, start: State, advance: Callable[[State, Together], State]) -> None:
        self._start, self._advance = start, advance
        self._walks: dict[tuple[str | None, str | None] | None, list[tuple[Together, State | None]]] = {}
        self.steps = 0
        self._lock = threading.Lock()

    def through(self, groups: Iterable[Together]) -> State:
        """Walk through outings in their order, those of one place in it together."""
        wanted = list(groups)
        last = wanted[-1][-1].session if wanted else None
        # Whoever rides has what happened to them on other bikes among the outings of this one.
        whose = (last.bike, last.rider) if last is not None else None
        with self._lock:  # another thread walks for itself meanwhile
            known = self._walks.pop(whose, [])
        same = 0
        for (group, behind), other in zip(known, wanted, strict=False):
            if group is not other:
                if not _is_same(group, other):
                    break
                known[same] = other, behind
            same += 1
        del known[same:]
        at = next((place for place in range(same, 0, -1) if known[place - 1][1] is not None), 0)
        behind = known[at - 1][1] if at else None
        state = self._start if behind is None else behind
        del known[at:]
        for group in wanted[at:]:
            state = self._advance(state, group)
            known.append((group, state))
            self.steps += 1
            older = len(known) - 1 - LATEST
            if older >= 0 and (older + 1) % EACH:
                known[older] = known[older][0], None
        with self._lock:
            self._walks[whose] = known
            if len(self._walks) > _MOST:
                del self._walks[next(iter(self._walks))]
        return state


def _is_same(group: Together, other: Together) -> bool:
    """Return whether outings are the same, to the letter: of what is equal the words may differ."""
    return len(group) == len(other) and all(
        one is its
        or (
            one.session is its.session
            and (one.entry is its.entry or one.entry == its.entry == _NO_ENTRY)
            and one == its
        )
        for one, its in zip(group, other, strict=True)
    )


_NO_ENTRY = DayEntry()
