"""What each symptom asks, and what is changed for it: one small thing, in the order in which it is tried.

Common practice, no source, throughout: which end, which way and how far. Where riders and technicians
disagree on the way, a question that tells the causes apart comes first.
"""

from collections.abc import Callable
from typing import Final

import attrs

from paddock_tui.advice.next_change import adjusters
from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.next_change.start_pressure import start_move
from paddock_tui.advice.next_change.words import CauseQuestion, Move, Refusal
from paddock_tui.limits.next_change import GAUGE_ERRS

Make = Callable[[Case], Move | Refusal]

PRESSED: Final = CauseQuestion(
    "Push that end down hard, front brake on for the fork: how does it come back?",
    (
        ("overshoots", "it comes up past its rest and bounces"),
        ("settles", "it comes up once and settles"),
        ("creeps", "it creeps up slowly"),
    ),
)


@attrs.frozen
class Option:
    """One thing to change; `needs` are the answers for which it is meant, all of them when empty.

    `if_` leaves it out where it does not fit the case. `concerns` are sag, pressure or safety: what a
    novice is offered too.
    """

    make: Make
    expect: str
    watch: str
    needs: tuple[str, ...] = ()
    if_: Callable[[Case], bool] = attrs.field(default=lambda _: True)
    concerns: str = ""


@attrs.frozen
class Cure:
    """What a symptom leads to. `otherwise` is said where no option fits: look, or ride it again.

    `end` is the one that the symptom is always about; `asks_end` is whether it has to be named first.
    """

    phase: int
    why: str
    options: tuple[Option, ...] = ()
    question: CauseQuestion | None = None
    otherwise: str = "nothing on the bike answers this: ride it again and note where it happens"
    first: int = 99
    end: str = ""
    asks_end: bool = False

    def end_of(self, case: Case) -> str:
        """Return the end that the question is asked about; empty where nobody named it."""
        return self.end or case.symptom.end or ""


BRAKING, TURNING, MIDDLE, DRIVING, STRAIGHT, ELSEWHERE = range(6)
"""The phases of a corner in the order in which they are put right: what comes earlier shapes what follows."""


def damping(what: str, clicks: float, end: str = "") -> Make:
    """Turn damping at the symptom's end, or at one that is given."""
    return lambda case: adjusters.damping(
        case, "rear" if (end or case.end) == "rear" else "front", what, clicks
    )


def preload(turns: float, end: str = "") -> Make:
    """Turn preload at the symptom's end, or at one that is given."""
    return lambda case: adjusters.preload(case, "rear" if (end or case.end) == "rear" else "front", turns)


def pressure(wanted: int = 0, end: str = "") -> Make:
    """Move the starting pressure of the symptom's end toward the hot target."""
    return lambda case: start_move(case, "rear" if (end or case.end) == "rear" else "front", wanted)


def cannot(reason: str) -> Make:
    """Refuse, with what is to be done instead."""
    return lambda _: Refusal(reason, own=True)


def off_target(end: str) -> Callable[[Case], bool]:
    """Return whether the hot reading of one tyre is known to be off its target, by more than a gauge errs."""

    def off(case: Case) -> bool:
        over = case.over_target_kpa("rear" if end == "rear" else "front")
        return over is not None and abs(over) > 100.0 * case.limits[GAUGE_ERRS]

    return off
