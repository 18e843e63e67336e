"""Where walks along a bike's sessions begin that go on from earlier ones, and where they are to be kept.

Behind the first so many sessions, all of them of days that are over, the states of all walks were kept:
what follows goes on from there. What the fold of open matters rests on beside the sessions themselves comes
with it, so that it counts only where that is the same.
"""

import contextlib
import datetime as dt
from collections.abc import Callable
from typing import Any, NamedTuple

from paddock_tui.matters.fold import Folded
from paddock_tui.matters.walked import Beginning


class NotCarried(Exception):
    """A state holds what cannot be written without words, or something was written otherwise than here."""


class Distance(NamedTuple):
    """Behind so many last sessions states are kept under a name, where so many sessions more are worth it."""

    name: str
    back: int
    worth: int

    def of(self, bike: str) -> str:
        """Return what the states of a bike are called."""
        return f"{self.name}-{bike}"

    def place(self, dates: Callable[[int], dt.date], end: int) -> int:
        """Return behind how many of so many sessions states are to be kept: behind a day. `dates` of each."""
        at = max(end - self.back, 0)
        while at and dates(at) == dates(at - 1):
            at -= 1
        return at


FAR = Distance("before", 40, 60)
"""What is edited later is mostly among these: what is kept here stands for long."""

NEAR = Distance("just-before", 3, 3)
"""Little is left to be read: the day in hand, and what is only just over, which may be put right yet. An edit
further back takes it away, and what is kept far back stands.
"""


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

    `states` are those of the walks by their names, `folds` those of the fold by riders. `name` is what that
    is called. `has` are the riders whose fold was kept there by an earlier run; None where nothing was.
    """

    def __init__(self, count: int, up_to: dt.date, name: str, has: frozenset[str] | None = None) -> None:
        self.count, self.up_to, self.name, self.has = count, up_to, name, has
        self.states: dict[str, Any] = {}
        self.folds: dict[str, FoldToKeep] = {}

    def wants(self, rider: str) -> bool:
        """Return whether a rider's fold is not kept there yet."""
        return self.has is None or rider not in self.has

    @property
    def is_new(self) -> bool:
        """Whether there is anything that an earlier run did not keep."""
        return self.has is None or bool(self.folds)


class FoldToKeep(NamedTuple):
    """The fold of one rider: what it rests on, the sessions elsewhere among that, and its state."""

    rests_on: RestsOn
    elsewhere: tuple[Any, ...]
    state: Folded


class KeptFold(NamedTuple):
    """The fold of one rider as it was kept, `at` so many sessions up to a day, and how it is taken up."""

    at: int
    up_to: dt.date
    rests_on: RestsOn
    take: Callable[[], Any]


class FoldBegun(NamedTuple):
    """Where the fold of one rider goes on: behind how many sessions, and from what."""

    at: int
    begins: Beginning[Folded]


class Begun:
    """The states behind the first so many sessions, each taken up when it is asked for.

    `earlier` gives what was kept further back: shorter histories go on from that.
    """

    def __init__(
        self,
        count: int,
        up_to: dt.date,
        states: dict[str, Callable[[], Any]],
        folds: dict[str, KeptFold],
        earlier: Callable[[], "Begun | None"],
    ) -> None:
        self.count, self.up_to, self._earlier = count, up_to, earlier
        self._states, self._folds = states, folds
        self._taken: dict[str, tuple[Any] | None] = {}
        self._folded: dict[str, FoldBegun | None] = {}

    @property
    def has(self) -> frozenset[str]:
        """The riders whose fold was kept here, and no further back."""
        return frozenset(rider for rider, one in self._folds.items() if one.at == self.count)

    def by(self, count: int) -> "Begun | None":
        """Return this, or what was kept further back, that is behind no more than so many sessions."""
        found: Begun | None = self
        while found is not None and found.count > count:
            found = found._earlier()
        return found

    def state(self, name: str) -> tuple[Any] | None:
        """Return the state of a walk, alone in a tuple; None where there is none."""
        if name not in self._taken:
            take = self._states.get(name)
            try:
                self._taken[name] = (take(),) if take is not None else None
            except NotCarried:
                self._taken[name] = None
        return self._taken[name]

    def folded(self, rider: str, rests_on: Callable[[dt.date], RestsOn]) -> FoldBegun | None:
        """Return where the fold of a rider goes on, the same one each time; None where it rests on others.

        `rests_on` says what it rests on up to a day.
        """
        kept = self._folds.get(rider)
        if kept is None or kept.rests_on != rests_on(kept.up_to):
            return None
        if rider not in self._folded:
            self._folded[rider] = None
            with contextlib.suppress(NotCarried):
                state = kept.take()
                if isinstance(state, Folded):
                    self._folded[rider] = FoldBegun(kept.at, Beginning(kept.up_to, state))
        return self._folded[rider]
