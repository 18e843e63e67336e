"""What is learnt from a history session by session: of a longer one only what is new is gone through."""

from collections.abc import Callable
from itertools import islice
from typing import Generic, TypeVar

from paddock_tui.facts.past import History, PastSession

Reached = TypeVar("Reached")

_MOST = 3
"""Ends that are remembered of one line: the session in hand, the one looked at, and one beside them."""


class Along(Generic[Reached]):
    """Gives where a walk along a history leads: the same whether it was walked at once or in pieces.

    `step` is pure. Histories on one line are beginnings of one another (`History.on_line`), so that the walk
    goes on from the longest that is not longer. `steps` counts the sessions gone through.
    """

    def __init__(self, start: Reached, step: Callable[[Reached, PastSession], Reached]) -> None:
        self._start, self._step = start, step
        self.steps = 0

    def of(self, history: History) -> Reached:
        """Return the state behind the last session."""
        past, reached = history.past, history.line.reached
        ends: tuple[tuple[int, Reached], ...] = reached.get(self, ())
        at, state = max((one for one in ends if one[0] <= len(past)), default=(0, self._start), key=_length)
        if at < len(past):
            for one in islice(past, at, None):
                state = self._step(state, one)
            self.steps += len(past) - at
            reached[self] = ((len(past), state), *ends)[:_MOST]
        return state


def _length(end: tuple[int, object]) -> int:
    return end[0]
