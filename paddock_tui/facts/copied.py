"""Whose set-up this was: another rider's, or one made on another kind of tyre."""

from collections.abc import Mapping

import attrs

from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.facts.past import End, History
from paddock_tui.facts.sag import RiderSag
from paddock_tui.records.people import Rider
from paddock_tui.records.session import Session
from paddock_tui.records.tyres import TyreSet

_RAIN = ("wet", "intermediate")


@attrs.frozen
class WeightDifference:
    """How many kg lighter or heavier the rider is than the one whose set-up this was."""

    name: str
    kg: float

    def __str__(self) -> str:
        return f"{abs(self.kg):.0f} kg {'heavier' if self.kg > 0 else 'lighter'} than {self.name}"


@fact("sag of both ends as it stands", gathers=("rider_sag",))
def sags_now(rider_sag: Mapping[End, RiderSag]) -> bool | Absent:
    """Return True where rider sag was not measured at both ends; absent where it was."""
    return ABSENT if len(rider_sag) == 2 else True


@fact("the weight in kit of both riders", at="rider:weight", show=str)
def other_rider(
    session: Session, rider: Rider, source: Session | None, history: History
) -> WeightDifference | Unknown | Absent:
    """Return the rider from whose session the set-up was copied, where that was another one."""
    if source is None or session.taken_from is not None or None in (source.rider, session.rider):
        return ABSENT
    if source.rider == session.rider:
        return ABSENT
    found = weight_difference(history.riders.get(source.rider or ""), rider, source.rider or "")
    return UNKNOWN if found is None else found


def weight_difference(theirs: Rider | None, own: Rider | None, called: str) -> WeightDifference | None:
    """Return how much heavier a rider is than another one; None where a weight in kit is not known."""
    if theirs is None or own is None or theirs.weight is None or own.weight is None:
        return None
    return WeightDifference(theirs.name or called, own.weight.to("kg") - theirs.weight.to("kg"))


@fact("the kind of tyre that the set-up was made on", show=str)
def other_kind(session: Session, tyres: TyreSet, source: Session | None, history: History) -> str | Absent:
    """Return the kinds of tyre before and now where the set-up was never ridden on this kind; else absent.

    A swap for the weather is not judged here: it brings a set-up of its own.
    """
    before = history.tyre_sets.get(source.tyres or "") if source is not None else None
    if before is None or session.taken_from is not None:
        return ABSENT
    old, new = before.rear.kind, tyres.rear.kind
    if None in (old, new) or old == new or (old in _RAIN) != (new in _RAIN):
        return ABSENT
    if any(one.rear.kind == new for one in history.sets_ridden()):
        return ABSENT
    return f"from {old} tyres to {new}"
