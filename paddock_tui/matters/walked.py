"""The walk through the record as far as it is the same as last time: only what comes after is walked anew."""

import threading
from collections.abc import Callable, Iterable
from typing import Generic, TypeVar

from paddock_tui.matters.core import Outing
from paddock_tui.records.day import DayEntry

State = TypeVar("State")
Together = tuple[Outing, ...]

_MOST = 4
"""Walks that are remembered: of the bike looked at, of the one in hand, and what was tried beside them."""


class Walks(Generic[State]):
    """Gives where a walk leads, and remembers the state behind each of its steps.

    `advance` is the step: pure, so that the same outings lead to the same state. `steps` counts them.
    """

    def __init__(self, start: State, advance: Callable[[State, Together], State]) -> None:
        self._start, self._advance = start, advance
        self._walks: dict[str | None, list[tuple[Together, State]]] = {}
        self.steps = 0
        self._lock = threading.Lock()

    def through(self, groups: Iterable[Together]) -> State:
        """Walk through outings in their order, those of one place in it together."""
        wanted = list(groups)
        bike = wanted[-1][-1].session.bike if wanted else None
        with self._lock:  # another thread walks for itself meanwhile
            known = self._walks.pop(bike, [])
        same = 0
        for (group, _), other in zip(known, wanted, strict=False):
            if not _is_same(group, other):
                break
            same += 1
        del known[same:]
        state = known[-1][1] if known else self._start
        for group in wanted[same:]:
            state = self._advance(state, group)
            known.append((group, state))
            self.steps += 1
        with self._lock:
            self._walks[bike] = known
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
