"""Where to start: every aid at once from the table of groups and surfaces, and a set-up for somebody else."""

import attrs

from paddock_tui.advice.about import ENDS, About, End
from paddock_tui.advice.answered import answered
from paddock_tui.advice.levels import levels
from paddock_tui.advice.sag import adjuster_of
from paddock_tui.advice.sag_of_another_rider import riders
from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.preload import PreloadAdjuster as Turning
from paddock_tui.calc.preload import preload_for_sag
from paddock_tui.calc.sag import for_other_rider
from paddock_tui.records.bike import Bike, BikeEnd
from paddock_tui.records.people import Rider
from paddock_tui.rules.core import SetValue


@attrs.frozen
class StartingPoint:
    """Values to start with, and for what nothing can be said, why."""

    puts: tuple[SetValue, ...]
    left: tuple[str, ...] = ()


def starting_point(about: About) -> StartingPoint:
    """Return the level of every aid for this rider, surface and tyre, in the bike's own numbers."""
    puts: list[SetValue] = []
    left: list[str] = []
    for answer in answered(about, levels).values():
        if answer.puts:
            puts += answer.puts
        else:
            left.append(f"{answer.label}: {answer.text}")
    return StartingPoint(tuple(puts), tuple(left))


def preload_for(about: About, other: Rider) -> StartingPoint:
    """Return preload for another rider's weight at both ends, from the sag measured with this one.

    What preload makes up is the rest of the sag that the other weight would change; where sag, weights,
    the adjuster or its travel for each turn is not known, it is left as it is and said so.
    """
    puts: list[SetValue] = []
    left: list[str] = []
    for end in ENDS:
        found = _preload(about, other, end)
        if isinstance(found, str):
            left.append(f"{end} preload: {found}")
        else:
            puts.append(found)
    return StartingPoint(tuple(puts), tuple(left))


def _preload(about: About, other: Rider, end: End) -> SetValue | str:
    filled = riders(about).filled
    needed = (f"{end}_free", f"{end}_rider", "measured")
    missing = [key for key in needed if key not in filled]
    if missing or other.weight is None:
        return "sag and both weights are needed; left as it is, measure sag first"
    free, rider, measured = (filled[key].value for key in needed)
    try:
        found = for_other_rider(free.to("mm"), rider.to("mm"), measured.to("kg"), other.weight.to("kg"))
    except (Inconsistent, OutOfRange) as refused:
        return refused.sentence()
    named = adjuster_of(about, end)
    bike_end = _end_of(about, end)
    if named is None or bike_end.preload_per_turn is None or bike_end.motion_ratio is None:
        return "its adjuster, travel for each turn or motion ratio is not known: measure sag first"
    name, adjuster = named
    now = about.setup.adjusters.get(name)
    if now is None or adjuster.range is None or adjuster.counted_from is None or adjuster.unit != "turn":
        return f"{name} has no value, no range, or does not turn: measure sag first"
    low, high = sorted(adjuster.range)
    mirror = adjuster.counted_from == "closed"
    try:
        turning = Turning(
            low, high, bike_end.preload_per_turn.to("mm"), adjuster.step or 0.25, bike_end.motion_ratio
        )
        plan = preload_for_sag(
            found.rider_sag_mm, rider.to("mm"), low + high - now if mirror else now, turning
        )
    except (Inconsistent, OutOfRange) as refused:
        return refused.sentence()
    if not plan.reachable:
        return f"{name} has not enough range for this weight: another spring, see sag in the calculators"
    wanted = round(low + high - plan.set_to if mirror else plan.set_to, 6)
    return SetValue(("setup", "adjusters", name), int(wanted) if wanted == int(wanted) else wanted)


def _end_of(about: About, end: End) -> BikeEnd:
    bike = about.situation.bike or Bike()
    return bike.front if end == "front" else bike.rear


def for_another_rider(about: About, other: Rider) -> StartingPoint:
    """Return what another rider starts with on this bike: preload for the weight, aids for the group."""
    situation = attrs.evolve(about.situation, rider=other)
    as_other = attrs.evolve(about, situation=situation)
    aids, preload = starting_point(as_other), preload_for(about, other)
    return StartingPoint((*aids.puts, *preload.puts), (*preload.left, *aids.left))
