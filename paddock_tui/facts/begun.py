"""Where walks along a bike's sessions begin that go on from earlier ones, and where they are to be kept.

Behind the first so many sessions, all of them of days that are over, the states of all walks were kept:
what follows goes on from there. What the fold of open matters rests on beside the sessions themselves comes
with it, so that it counts only where that is the same.
"""

import datetime as dt
from collections.abc import Callable
from typing import Any, NamedTuple

from paddock_tui.matters.fold import Folded
from paddock_tui.matters.walked import Beginning


class NotCarried(Exception):
    """A state holds what cannot be written without words, or something was written otherwise than here."""


class RestsOn(NamedTuple):
    """What open matters rest on beside a bike's own sessions and what these name.

    `elsewhere` are the rider's sessions on other bikes in which something happened, each with what tells its
    file from any other; `fall_items` and `limits` are those in force.
    """

    elsewhere: tuple[tuple[str, str], ...]
    fall_items: frozenset[str]
    limits: tuple[tuple[str, str], ...]


class KeptAt:
    """Where states are to be kept: behind so many sessions, the last of them of a day that is over.

    `states` are those of the walks by their names, `folds` those of the fold by riders.
    """

    def __init__(self, count: int, up_to: dt.date) -> None:
        self.count, self.up_to = count, up_to
        self.states: dict[str, Any] = {}
        self.folds: dict[str, FoldToKeep] = {}


class FoldToKeep(NamedTuple):
    """The fold of one rider: what it rests on, the sessions elsewhere among that, and its state."""

    rests_on: RestsOn
    elsewhere: tuple[Any, ...]
    state: Folded


class KeptFold(NamedTuple):
    """The fold of one rider as it was kept: what it rests on, and how its state is taken up."""

    rests_on: RestsOn
    take: Callable[[], Any]


class Begun:
    """The states behind the first so many sessions, each taken up when it is asked for."""

    def __init__(
        self,
        count: int,
        up_to: dt.date,
        states: dict[str, Callable[[], Any]],
        folds: dict[str, KeptFold],
    ) -> None:
        self.count, self.up_to = count, up_to
        self._states, self._folds = states, folds
        self._taken: dict[str, tuple[Any] | None] = {}
        self._folded: dict[str, Beginning[Folded] | None] = {}

    def state(self, name: str) -> tuple[Any] | None:
        """Return the state of a walk, alone in a tuple; None where there is none."""
        if name not in self._taken:
            take = self._states.get(name)
            try:
                self._taken[name] = (take(),) if take is not None else None
            except NotCarried:
                self._taken[name] = None
        return self._taken[name]

    def folded(self, rider: str, rests_on: RestsOn) -> Beginning[Folded] | None:
        """Return where the fold of a rider goes on, the same one each time; None where it rests on others."""
        kept = self._folds.get(rider)
        if kept is None or kept.rests_on != rests_on:
            return None
        if rider not in self._folded:
            try:
                state = kept.take()
                self._folded[rider] = Beginning(self.up_to, state) if isinstance(state, Folded) else None
            except NotCarried:
                self._folded[rider] = None
        return self._folded[rider]
