"""Rules about what damping is set to: the ends of a range, fork legs that differ, a damper nearly closed."""

from paddock_tui.facts.damping_adjusters import Legs, SetBefore
from paddock_tui.facts.suspension import AdjusterShown
from paddock_tui.limits import Limits
from paddock_tui.limits.suspension import DAMPER_CLOSED, END_OF_RANGE
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.records.suspension import Adjuster
from paddock_tui.rules.core import (
    CAUTION,
    SERIOUS,
    SUSPENSION,
    RaisedFinding,
    Remedy,
    Result,
    SetValue,
    rule,
)

_ROUNDING = 1e-9


@rule(
    "damping-near-its-end",
    CAUTION,
    per="adjuster",
    when=("to_come",),
    at="setup:setup.adjusters.{subject}",
    limits=(END_OF_RANGE,),
    rank=SUSPENSION,
)
def damping_near_its_end(
    subject: str,
    own_damping: AdjusterShown,
    adjuster_range: tuple[float, float],
    set_before: SetBefore | None,
    limits: Limits,
) -> Result:
    """Damping in the last tenth of its range, at nobody's figure but the rider's own."""
    low, high = adjuster_range
    zone = limits[END_OF_RANGE] * (high - low) + _ROUNDING
    if not low <= own_damping.value <= high or min(own_damping.value - low, high - own_damping.value) > zone:
        return None
    return RaisedFinding(
        message=f"{_first(label_of(subject))} is near its end: {_value(own_damping)}.",
        why="No room is left that way: the oil, the valving or the spring is what does not suit.",
        remedy=_back(subject, set_before, adjuster_range, zone),
    )


def _back(subject: str, before: SetBefore | None, ends: tuple[float, float], zone: float) -> Remedy:
    """Speak to the one who turned it: where it was before, then what does not suit, then a technician."""
    look = "Then look at sag and spring, and ask a technician."
    low, high = ends
    if before is None or min(before.value - low, high - before.value) <= zone:
        return Remedy(f"Go back toward the middle. {look}")
    value = int(before.value) if before.value == int(before.value) else before.value
    put = SetValue(("setup", "adjusters", subject), value)
    return Remedy(f"Back to {show_number(before.value)}, where it was {before.when}. {look}", (put,))


@rule("fork-legs-differ", SERIOUS, at="setup:setup.adjusters", rank=SUSPENSION)
def fork_legs_differ(unequal_legs: tuple[Legs, ...]) -> Result:
    """The same adjuster is set differently in the two legs of the fork."""
    return [
        RaisedFinding(
            message=f"{_first(label_of(one.left.name))} and {label_of(one.right.name).split()[-1]} differ: "
            f"{show_number(one.left.value)} and {show_number(one.right.value)}.",
            why="One leg works against the other: the fork twists and binds, and the record fits neither.",
            remedy=Remedy("Turn both gently to the stop, count out the same on both sides, and enter it."),
            subject=one.left.name,
            path=("setup", "adjusters", one.right.name),
            facts=str(one),
        )
        for one in unequal_legs
    ]


@rule(
    "steering-damper-nearly-closed",
    SERIOUS,
    per="adjuster",
    when=("to_come",),
    at="setup:setup.adjusters.{subject}",
    limits=(DAMPER_CLOSED,),
    rank=SUSPENSION,
)
def steering_damper_nearly_closed(
    subject: str, adjuster: Adjuster, adjuster_value: AdjusterShown, damper_clicks_open: float, limits: Limits
) -> Result:
    """A steering damper within two clicks of closed."""
    if damper_clicks_open > limits[DAMPER_CLOSED]:
        return None
    puts: tuple[SetValue, ...] = ()
    if adjuster.range is not None:
        middle = float(round(sum(adjuster.range) / 2))
        puts = (SetValue(("setup", "adjusters", subject), int(middle)),)
    return RaisedFinding(
        message=f"{_first(label_of(subject))} is nearly closed: {_open(damper_clicks_open)}.",
        why="So firm it holds the bars against the rider: heavy, off the line, a slow weave.",
        remedy=Remedy(
            "Open it to the middle of its range. What shook the bars is found elsewhere: bearings, "
            "front tyre, alignment, geometry.",
            puts,
        ),
    )


def _open(clicks: float) -> str:
    return f"{show_number(clicks)} click{'s' * (clicks != 1)} open"


def _value(shown: AdjusterShown) -> str:
    return str(shown).removeprefix(f"{label_of(shown.name)} ")


def _first(text: str) -> str:
    return text[:1].upper() + text[1:]
