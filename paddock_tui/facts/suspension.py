"""What the suspension is set to, and what the damping mode leaves of it."""

import attrs

from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.records.bike import Bike
from paddock_tui.records.calls import place_of
from paddock_tui.records.in_force import closed_by
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.records.suspension import BY_HAND, Adjuster


@attrs.frozen
class AdjusterShown:
    """An adjuster with its value: 'front rebound 12 clicks (range 0-24)'."""

    name: str
    value: float
    adjuster: Adjuster

    def __str__(self) -> str:
        unit = self.adjuster.unit or ""
        plural = f"{unit}s" if unit in ("click", "turn") and self.value != 1 else unit
        bounds = ""
        if self.adjuster.range is not None:
            low, high = self.adjuster.range
            bounds = f" (range {show_number(low)}-{show_number(high)})"
        return f"{label_of(self.name)} {show_number(self.value)} {plural}{bounds}".replace("  ", " ")


@fact("the bike's suspension (listed or none)", at="bike:suspension")
def suspension(bike: Bike) -> str | Unknown:
    """Return whether the adjusters of the bike are all in its file."""
    return bike.suspension or UNKNOWN


@fact("what {subject} is set to", at="session:setup.adjusters.{subject}", per="adjuster", show=str)
def adjuster_value(subject: str, adjuster: Adjuster, setup: SetUp) -> AdjusterShown | Absent:
    """Return the value of an adjuster; one that was not written down is left alone by the rules about
    values.
    """
    value = setup.adjusters.get(subject)
    return ABSENT if value is None else AdjusterShown(subject, value, adjuster)


@fact("the range of {subject}", at="bike:adjusters.{subject}.range", per="adjuster")
def adjuster_range(adjuster: Adjuster) -> tuple[float, float] | Unknown:
    """Lowest and highest number that an adjuster can be set to."""
    if adjuster.range is None:
        return UNKNOWN
    low, high = adjuster.range
    return min(low, high), max(low, high)


def what_of(name: str, adjuster: Adjuster) -> tuple[str, str]:
    """Return the end of an adjuster and what it adjusts, the leg of a fork left out of its name."""
    end, what = place_of(name, adjuster)
    return end, what if adjuster.what else what.removesuffix(" left").removesuffix(" right")


def damping_unused(name: str, setup: SetUp, bike: Bike) -> bool:
    """Return whether the damping mode in use leaves an adjuster without effect."""
    return bool(closed_by(name, setup, bike))


@fact("the damping mode", at="session:setup.damping", show=lambda found: f"damping {found}")
def damping_mode(bike: Bike, setup: SetUp) -> str | Unknown | Absent:
    """Return the damping mode in use; by hand where the bike has no other."""
    if not bike.damping:
        return UNKNOWN if bike.suspension is None else BY_HAND
    if setup.damping is None:
        return UNKNOWN
    return setup.damping if setup.damping == BY_HAND or setup.damping in bike.damping else UNKNOWN
