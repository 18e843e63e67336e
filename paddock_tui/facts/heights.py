"""Ride height at both ends, and how far up it was checked clear."""

from collections.abc import Mapping

import attrs

from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.facts.past import Along, End, History, PastSession
from paddock_tui.facts.sag import end_of
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.setup import SetUp


@attrs.frozen
class Raised:
    """How far one end is raised, and under which key it is written."""

    key: str
    height: Quantity

    def __str__(self) -> str:
        return f"{'fork protrusion' if self.key == 'fork_height' else 'rear ride height'} {self.height}"


@fact("the height of the {subject}", per="end", show=str)
def raised_by(end: End, setup: SetUp) -> Raised | Absent:
    """Return the fork's or the rear's height where it is written down and above nought."""
    key = _KEYS[0] if end == "front" else _KEYS[1]
    height = getattr(setup, key)
    return ABSENT if height is None or height.to("mm") <= 0 else Raised(key, height)


@fact(
    "the highest position of the {subject} checked clear",
    at="bike:{subject}.highest_clear",
    per="end",
    show=lambda found: f"clear up to {found}",
)
def clear_to(end: End, raised_by: Raised, bike: Bike, history: History) -> Quantity | Unknown | Absent:
    """Up to where full bottoming was checked clear; absent where nobody ticked it but it was ridden so."""
    ticked = end_of(bike, end).highest_clear
    if ticked is not None:
        return ticked
    now_mm = raised_by.height.to("mm")
    highest = _HIGHEST.of(history).get(raised_by.key)
    return ABSENT if highest is not None and highest >= now_mm else UNKNOWN


_KEYS = ("fork_height", "rear_height")


def _higher(so_far: Mapping[str, float], one: PastSession) -> Mapping[str, float]:
    if not one.ridden:
        return so_far
    held = ((key, getattr(one.session.setup, key)) for key in _KEYS)
    now = {key: height.to("mm") for key, height in held if height is not None}
    new = {key: mm for key, mm in now.items() if key not in so_far or mm > so_far[key]}
    return {**so_far, **new} if new else so_far


_HIGHEST: Along[Mapping[str, float]] = Along("highest", {}, _higher)
"""How far up each end was ridden at most, in mm, by the key that it is written under."""
