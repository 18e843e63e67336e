"""What the adjusters of damping are at: both legs of a fork, the ends of a range, the steering damper."""

import attrs

from paddock_tui.facts.changes import is_damping
from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.facts.past import Along, History, PastSession
from paddock_tui.facts.suspension import AdjusterShown, damping_unused, what_of
from paddock_tui.records.bike import Bike
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp
from paddock_tui.records.suspension import Adjuster


@attrs.frozen
class Legs:
    """Two adjusters of one fork that do the same thing, one in each leg."""

    left: AdjusterShown
    right: AdjusterShown

    def __str__(self) -> str:
        return f"{self.left}; {self.right}"


@fact("fork legs that differ")
def unequal_legs(setup: SetUp, bike: Bike) -> tuple[Legs, ...] | Absent:
    """Return pairs of adjusters in both legs that do the same and are not set alike; absent without one.

    A fork that splits its duties has another thing to adjust in each leg, so nothing of it is a pair.
    """
    legs: dict[tuple[str, str], dict[str, AdjusterShown]] = {}
    for name, adjuster in bike.adjusters.items():
        value = setup.adjusters.get(name)
        if adjuster.leg in ("left", "right") and value is not None and not damping_unused(name, setup, bike):
            legs.setdefault(what_of(name, adjuster), {})[adjuster.leg] = AdjusterShown(name, value, adjuster)
    pairs = tuple(Legs(one["left"], one["right"]) for one in legs.values() if len(one) == 2)
    return tuple(one for one in pairs if one.left.value != one.right.value) or ABSENT


@fact("how near {subject} is to its end", per="adjuster", show=str)
def own_damping(
    subject: str, adjuster: Adjuster, adjuster_value: AdjusterShown, setup: SetUp, bike: Bike
) -> AdjusterShown | Absent:
    """Return a damping adjuster in use at a figure of the rider's own; absent for a manual's or a
    technician's.
    """
    theirs = adjuster.source in ("manual", "technician")
    used = is_damping(subject, bike) and not damping_unused(subject, setup, bike)
    return adjuster_value if used and not theirs else ABSENT


@fact("which end {subject} is counted from", at="bike:adjusters.{subject}.counted_from", per="adjuster")
def damper_clicks_open(
    subject: str, adjuster: Adjuster, adjuster_value: AdjusterShown, setup: SetUp, bike: Bike
) -> float | Unknown | Absent:
    """Clicks that a steering damper stands open; absent for what is no damper, or has no clicks."""
    steering = adjuster.end == "steering" or what_of(subject, adjuster)[1] == "damper"
    if not steering or adjuster.unit != "click" or damping_unused(subject, setup, bike):
        return ABSENT
    if adjuster.counted_from is None or (adjuster.counted_from == "open" and adjuster.range is None):
        return UNKNOWN
    if adjuster.counted_from == "closed":
        return adjuster_value.value - (min(adjuster.range) if adjuster.range is not None else 0.0)
    return max(adjuster.range or (0.0,)) - adjuster_value.value


@attrs.frozen
class SetBefore:
    """What an adjuster was at before it was turned last, and when that was ridden."""

    value: float
    when: str


@fact("what {subject} was at before", per="adjuster")
def set_before(subject: str, setup: SetUp, session: Session, history: History) -> SetBefore | None:
    """Return the last other value of this rider's on this bike; None where nobody turned it."""
    now = setup.adjusters.get(subject)
    for value, earlier in _SET.of(history).get((session.rider, subject), ()):
        if value == now:
            continue
        if earlier.date != session.date and earlier.date is not None:
            return SetBefore(value, f"on {earlier.date:%d %b}")
        start, number = earlier.session.start, earlier.session.number
        return SetBefore(value, f"at {start:%H:%M}" if start is not None else f"in session {number}")
    return None


_LastSet = dict[tuple[str | None, str], tuple[tuple[float, PastSession], ...]]
"""What each rider last had each adjuster at, and what other value before, with the last session of each."""


def _set_again(so_far: _LastSet, one: PastSession) -> _LastSet:
    rider = one.rider
    for name, value in one.session.setup.adjusters.items():
        before = so_far.get((rider, name), ())
        others = tuple(held for held in before if held[0] != value)[:1]
        so_far[rider, name] = ((value, one), *others)
    return so_far


_SET: Along[_LastSet] = Along("adjusters", {}, _set_again, dict)
