"""Ride height at both ends, and how far up it was checked clear."""

import attrs

from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.facts.past import End, History
from paddock_tui.facts.sag import end_of
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.session import is_ridden
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
    key = "fork_height" if end == "front" else "rear_height"
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
    ridden = (one.session for one in reversed(history.past) if is_ridden(one.session))
    heights = (getattr(one.setup, raised_by.key) for one in ridden)
    return ABSENT if any(one is not None and one.to("mm") >= now_mm for one in heights) else UNKNOWN
