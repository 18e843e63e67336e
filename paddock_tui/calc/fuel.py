"""Fuel for what is planned: litres to ride, the reserve on top, cans for the day, and the mass of it.

Never start on the estimate alone: brim the tank where weight does not matter. Litres, kilometres, l/100 km.
"""

import math
from typing import Final, NamedTuple

import attrs

from paddock_tui.calc.errors import above, within

FILLED_IN_L: Final = 0.5
"""What is filled in is told in steps of this: no can pours finer. Common practice, no source."""

DEFAULT_RATE: Final = (10.0, 16.0)
"""Track-day consumption in l/100 km from low to high where nothing is learnt. Common practice, no source."""

DENSITY_KG_PER_L: Final = (0.720, 0.775)
"""Petrol at 15 C, from low to high. Source: EN 228:2012, table 2."""


def laps_from_minutes(minutes: float, usual_lap_s: float) -> float:
    """Return laps that a planned time holds at the usual lap, not rounded: minutes over the usual lap."""
    planned_s = within("planned minutes", minutes, 0.0, 1440.0, "min") * 60.0
    return planned_s / within("usual lap", usual_lap_s, 10.0, 3600.0, "s")


def litres_for_distance(distance_km: float, rate_l_per_100km: float) -> float:
    """Return litres for a distance at a rate."""
    distance = within("distance", distance_km, 0.0, 5000.0, "km")
    return distance * above("consumption", rate_l_per_100km, 0.0, 60.0, "l/100 km") / 100.0


def reserve_l(needed_l: float, least_l: float, share: float) -> float:
    """Return litres that should be left at the flag: a least, or a share of those needed where that is more.

    Common practice, no source.
    """
    asked = within("share", share, 0.0, 1.0) * within("litres needed", needed_l, 0.0, 1000.0, "l")
    return max(within("reserve", least_l, 0.0, 40.0, "l"), round(asked, 6))


def to_add_l(left_l: float, wanted_l: float) -> float:
    """Return litres to add so that the reserve is there at the flag, in whole steps; none where it is."""
    missing = round(wanted_l - left_l, 6)
    return max(math.ceil(missing / FILLED_IN_L) * FILLED_IN_L, 0.0)


@attrs.frozen
class FuelPlan:
    """Litres to ride the distance, the reserve not among them, and the distance in km."""

    needed_l: float
    distance_km: float

    def at_flag_l(self, in_tank_l: float) -> float:
        """Return litres left at the flag, below zero where the tank runs dry before."""
        return within("fuel in the tank", in_tank_l, 0.0, 40.0, "l") - self.needed_l


def plan_fuel(
    laps: float, lap_km: float, rate_l_per_100km: float, out_in_laps: float = 2, warm_up_laps: float = 0
) -> FuelPlan:
    """Fuel for laps at a rate; out and in lap together are two laps on top, warm-up laps besides.

    A lap out of the pit lane counts as a whole one, so that the plan errs toward more.
    """
    counted = (("laps", laps), ("out and in laps", out_in_laps), ("warm-up laps", warm_up_laps))
    ridden = sum(within(what, number, 0.0, 500.0) for what, number in counted)
    distance = ridden * above("lap length", lap_km, 0.0, 30.0, "km")
    needed = litres_for_distance(distance, rate_l_per_100km)
    return FuelPlan(needed, distance)


class Cans(NamedTuple):
    """Litres to bring, and the cans of one size that hold them."""

    litres: float
    cans: int


def cans_for_day(planned_l: float, spare_in_tank_l: float, can_l: float) -> Cans:
    """Cans for a day: planned litres with the last reserve, less what the tank holds on arrival."""
    planned = within("litres for the day", planned_l, 0.0, 1000.0, "l")
    bring = max(planned - within("fuel in the tank", spare_in_tank_l, 0.0, 40.0, "l"), 0.0)
    return Cans(bring, math.ceil(bring / above("can", can_l, 0.0, 60.0, "l") - 1e-9))


class FuelMass(NamedTuple):
    """Mass of fuel in kg, from the lightest to the heaviest petrol that the standard allows."""

    low_kg: float
    high_kg: float


def fuel_mass(litres: float) -> FuelMass:
    """Return the mass of petrol of unknown density, at 15 C."""
    low, high = DENSITY_KG_PER_L
    return FuelMass(fuel_mass_kg(litres, low), fuel_mass_kg(litres, high))


def fuel_mass_kg(litres: float, density_kg_per_l: float) -> float:
    """Return the mass in kg at a known density, refused outside the band of EN 228."""
    low, high = DENSITY_KG_PER_L
    volume = within("litres", litres, 0.0, 1000.0, "l")
    return volume * within("density of petrol", density_kg_per_l, low, high, "kg/l")
