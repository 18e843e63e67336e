"""Figures that rules quote where the data is there; without it nothing is said, and nothing waits for it."""

import math
from collections.abc import Mapping

from paddock_tui.calc import wheelie_gears
from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.gearing import overall_ratio
from paddock_tui.calc.wet_grip import wet_words
from paddock_tui.facts import physics
from paddock_tui.facts.core import fact
from paddock_tui.records.bike import Bike
from paddock_tui.records.kinds import Record
from paddock_tui.records.people import Rider
from paddock_tui.records.setup import SetUp


@fact("what the wet leaves of the dry, to be quoted")
def wet_said(surface: str) -> str:
    """Wet to dry with its assumption, as an end of a sentence; empty in the dry."""
    words = wet_words(surface)
    return f" {words[:1].upper()}{words[1:].rstrip('.')}." if words else ""


@fact("the gears that lift the front wheel, to be quoted")
def lifting_said(bike: Bike, setup: SetUp, records: Mapping[str, Record]) -> str:
    """Return the gears that can lift the front on torque alone, as a sentence; empty where that is not
    known.
    """
    rider = records.get("rider")
    mass = bike.wet_mass, rider.weight if isinstance(rider, Rider) else None
    centre = bike.chassis.centre_ahead, bike.chassis.centre_height
    numbers = bike.drive.primary, physics.front_teeth(setup, bike), physics.rear_teeth(setup, bike)
    torque, rolled = physics.torque_points(bike), physics.rear_rolled_m(bike, records)
    known = [one for one in (*mass, *centre) if one is not None]
    figures = [float(one) for one in (*numbers, rolled) if isinstance(one, int | float)]
    if len(known) < 4 or len(figures) < 4 or not torque or not bike.drive.gearbox:
        return ""
    kg = known[0].to("kg") + known[1].to("kg")
    primary, front, rear, rolled_m = figures
    try:
        force_n = wheelie_gears.lift_force_n(kg, known[2].to("m"), known[3].to("m"))
        ratios = [overall_ratio(primary, gear, int(front), int(rear)) for gear in bike.drive.gearbox]
        gears = wheelie_gears.gears_that_lift(ratios, torque, rolled_m / math.tau, force_n)
    except (Inconsistent, OutOfRange):
        return ""
    words = wheelie_gears.in_words(gears)
    return f" Rider still, road level: {words} can lift the front on torque alone." if words else ""
