"""Choosing: the first cause that speaks, why those before it did not, and what waits behind it."""

from collections.abc import Iterable

import attrs

from paddock_tui.advice.about import About
from paddock_tui.advice.next_change.cause_pressure import beside
from paddock_tui.advice.next_change.cause_table import proposals
from paddock_tui.advice.next_change.causes import CAUSES, Cause
from paddock_tui.advice.next_change.gate import Looked, looked_at
from paddock_tui.advice.next_change.given import Given
from paddock_tui.advice.next_change.learnt import learnt
from paddock_tui.advice.next_change.words import Kind, Passed, Proposal

_NOTHING_WAITS = (Kind.MEND, Kind.REST)


@attrs.frozen
class Silent:
    """A cause that comes earlier and did not speak, and why."""

    label: str
    reason: str


@attrs.frozen
class Advised:
    """The one proposal, the cause that made it, and why the earlier ones did not speak.

    `waiting` are the proposals behind it, `looked_at` how things stand that come before any change, `beside`
    what is said without being in the way, `learnt` what came of the last step.
    """

    proposal: Proposal
    cause: str = ""
    silent: tuple[Silent, ...] = ()
    waiting: tuple[Proposal, ...] = ()
    looked_at: tuple[Looked, ...] = ()
    beside: tuple[str, ...] = ()
    learnt: tuple[str, ...] = ()


def next_change(about: About) -> Advised:
    """Return the one next change for a session that was ridden, or none, and why."""
    given = Given(about)
    cause, proposal, silent = _first(given, CAUSES)
    waiting = () if proposal.kind in _NOTHING_WAITS else _waiting(given, proposal)
    return Advised(
        proposal,
        cause.id,
        silent,
        waiting,
        looked_at(about),
        tuple(beside(given)),
        tuple(learnt(given)),
    )


def _first(given: Given, causes: Iterable[Cause]) -> tuple[Cause, Proposal, tuple[Silent, ...]]:
    silent: list[Silent] = []
    for cause in causes:
        said = cause.says(given)
        if isinstance(said, Passed):
            silent.append(Silent(cause.label, said.reason))
        else:
            return cause, said, tuple(silent)
    raise AssertionError("the last cause always speaks")


def _waiting(given: Given, spoke: Proposal) -> tuple[Proposal, ...]:
    return tuple(
        one
        for one in proposals(given)
        if (one.kind, one.text, one.symptom) != (spoke.kind, spoke.text, spoke.symptom)
        and not (one.move is not None and set(one.move.about) & set(spoke.decides))
    )
