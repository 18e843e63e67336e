"""Fuel for what is planned: the rate, what is in the tank, and what is left at the flag."""

from collections.abc import Mapping
from typing import NamedTuple

import attrs

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.fuel import DEFAULT_RATE, FuelPlan, laps_from_minutes, plan_fuel, reserve_l, to_add_l
from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.facts.fuel_consumption import ROAD, TRACK, filled_l, fuel_learnt, tank_left
from paddock_tui.facts.pace import usual_lap
from paddock_tui.facts.past import History
from paddock_tui.facts.race import class_entered, laps_around_the_race, part_distance, red_flags
from paddock_tui.limits import Limits
from paddock_tui.limits.fuel import RESERVE, RESERVE_SHARE
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.day import RidingDay
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider, Venue
from paddock_tui.records.race import RaceClass
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp

MOST_LAPS = 500.0
"""What a plan can hold at most; a longer one is a slip."""


@attrs.frozen
class FuelRate:
    """A consumption in l/100 km, what it rests on, and whether refills have taught it."""

    l_per_100km: float
    where: str
    learnt: bool = False
    given: Quantity | None = None


@attrs.frozen
class InTank:
    """Litres in the tank before the outing, and how that is known."""

    litres: float
    where: str
    given: Quantity | None = None


@attrs.frozen
class FuelAhead:
    """The litres that a plan needs, those left at the flag, the reserve asked for there, and the rider's own.

    `left_l` is below zero where the tank runs dry before.
    """

    plan: FuelPlan
    tank: InTank
    rate: FuelRate
    left_l: float
    reserve_l: float
    capacity_l: float
    own_reserve_l: float | None = None

    @property
    def room_l(self) -> float:
        """Litres that the tank can still take."""
        return max(round(self.capacity_l - self.tank.litres, 6), 0.0)

    @property
    def to_add_l(self) -> float:
        """Litres to fill in so that the reserve is there at the flag."""
        return to_add_l(self.left_l, self.reserve_l)

    def __str__(self) -> str:
        needed, km, rate = self.plan.needed_l, self.plan.distance_km, self.rate
        kept = f"; own reserve {self.own_reserve_l:g} l" if self.own_reserve_l is not None else ""
        asks = f"{needed:.1f} l for {km:.0f} km at {rate.l_per_100km:.1f} l/100km, {rate.where}"
        return f"{self.tank.litres:.1f} l in the tank; {asks}{kept}"


def rate_of(session: Session, mode: str | None, bike: Bike | None, history: History) -> FuelRate:
    """Return the consumption: learnt in this mode, learnt at all, the bike's own, else the usual most."""
    ground = ROAD if session.kind == "road" else TRACK
    added = session.fuel_added
    filled = None if added is None else (added.to("l"), bool(session.filled_to_brim))
    learnt = fuel_learnt(history, ground, mode, filled)
    if learnt is not None:
        return FuelRate(learnt.learnt.rate_l_per_100km, learnt.where, learnt=True)
    if bike is not None and bike.tank.consumption is not None:
        given = bike.tank.consumption
        return FuelRate(given.to("l/100km"), "the bike's default", given=given)
    low, high = DEFAULT_RATE
    return FuelRate(high, f"no own rate, the most of {low:g} to {high:g}: paddock practice, unpublished")


def in_tank(session: Session, bike: Bike | None, history: History, rate: float) -> InTank | None:
    """Return what the tank holds before the outing: as entered, brimmed, or counted from that; else None."""
    if bike is None or bike.tank.capacity is None:
        return None
    capacity = bike.tank.capacity.to("l")
    known = filled_l(session, capacity)
    if known is not None:
        given = session.fuel_in_tank or bike.tank.capacity
        return InTank(known[0], "filled to the brim" if known[1] == "brim" else known[1], given)
    before = tank_left(history, capacity, rate)
    if before is None:
        return None
    added = session.fuel_added.to("l") if session.fuel_added is not None else 0.0
    return InTank(min(before.litres + added, capacity), str(before))


def reserve_at_flag_l(needed_l: float, own_l: float | None, limits: Limits) -> float:
    """Return the reserve: the rider's own litres where there are some, more where the share asks for more."""
    return reserve_l(needed_l, limits[RESERVE] if own_l is None else own_l, limits[RESERVE_SHARE])


def laps_around(session: Session) -> int:
    """Out and in laps on top of the plan: planned laps leave them out, a planned time holds them.

    After a red flag everybody rides in and out once more.
    """
    return (0 if session.planned_laps is None else 2) + 2 * red_flags(session)


def warm_up_laps(session: Session, entered: RaceClass | None = None) -> int:
    """Return laps of a race before its start and after its flag, before each restart once more."""
    before, after = laps_around_the_race(session, entered)
    return before * (1 + red_flags(session)) + after


@fact("the tank's capacity", at="bike:tank.capacity")
def tank_capacity(bike: Bike) -> Quantity | Unknown:
    """Return what the tank holds; without it nobody can tell what is in it."""
    return bike.tank.capacity or UNKNOWN


@fact("the fuel in the tank: litres, filled to the brim, or added since", at="session:fuel_in_tank")
def fuel_in_tank(
    session: Session, setup: SetUp, bike: Bike, history: History, tank_capacity: Quantity
) -> InTank | Unknown:
    """Return litres before the outing."""
    rate = rate_of(session, setup.mode, bike, history)
    return in_tank(session, bike, history, rate.l_per_100km) or UNKNOWN


@fact("the planned laps or time", at="session:planned_time")
def planned_time_or_laps(session: Session) -> Quantity | int | Unknown:
    """Return what is planned: laps where they are, else time."""
    return part_distance(session) or session.planned_laps or session.planned_time or UNKNOWN


@fact("the usual lap here: laps timed before, or the planned laps", at="session:planned_laps")
def planned_laps(
    session: Session, planned_time_or_laps: Quantity | int, history: History, refs: Mapping[str, Ref]
) -> float | Unknown:
    """Return the laps that are planned, from minutes by the usual lap of this rider here."""
    if not isinstance(planned_time_or_laps, Quantity):
        return float(planned_time_or_laps)
    venue = refs["venue"].id if "venue" in refs else None
    found = usual_lap(history, session.rider, venue)
    minutes = planned_time_or_laps.to("min")
    if found is None or not 10.0 <= found.seconds <= 3600.0 or not 0.0 < minutes <= 1440.0:
        return UNKNOWN
    return min(laps_from_minutes(minutes, found.seconds), MOST_LAPS)


@fact("the length of a lap", at="venue:length")
def lap_km(venue: Venue) -> float | Unknown:
    """Return kilometres of one lap."""
    return UNKNOWN if venue.length is None else venue.length.to("km")


@fact("whether fuel has to last for laps", at="session:kind")
def laps_to_ride(session: Session) -> bool | Absent:
    """Return True for everything but a ride on the road, where there are filling stations."""
    return ABSENT if session.kind == "road" else True


@fact("fuel figures that can be: tank, consumption, lap length", at="bike:tank.consumption", show=str)
def fuel_ahead(
    session: Session,
    setup: SetUp,
    bike: Bike,
    history: History,
    laps_to_ride: bool,
    tank_capacity: Quantity,
    fuel_in_tank: InTank,
    planned_laps: float,
    lap_km: float,
    records: Mapping[str, Record],
    limits: Limits,
) -> FuelAhead | Unknown:
    """Return what is left of the fuel when the plan is ridden; the rider's own reserve where one is set."""
    rate = rate_of(session, setup.mode, bike, history)
    rider = records.get("rider")
    kept = rider.limits.fuel_reserve if isinstance(rider, Rider) else None
    own = kept.to("l") if kept is not None else None
    entered = class_entered(session, records.get("day"))
    around, warm_up = laps_around(session), warm_up_laps(session, entered)
    try:
        plan = plan_fuel(min(planned_laps, MOST_LAPS), lap_km, rate.l_per_100km, around, warm_up)
        left = round(plan.at_flag_l(fuel_in_tank.litres), 6)
        reserve = reserve_at_flag_l(plan.needed_l, own, limits)
    except OutOfRange:
        return UNKNOWN
    return FuelAhead(plan, fuel_in_tank, rate, left, reserve, tank_capacity.to("l"), own)


class HomeAhead(NamedTuple):
    """The way home by road, how far the tank goes beside the reserve, and what both rest on."""

    way: Quantity
    goes_km: float
    where: str

    def __str__(self) -> str:
        return f"{self.way} home; {self.where}"


@fact("the way home and the fuel for it", at="day:distance_home", show=str)
def home_ahead(
    session: Session, bike: Bike, history: History, records: Mapping[str, Record], limits: Limits
) -> HomeAhead | Absent:
    """Return how far the tank goes toward home; absent off the road, and where distance, tank or a rate of
    the road is not on record: a track's rate is never taken for it.
    """
    day, rider = records.get("day"), records.get("rider")
    way = day.distance_home if isinstance(day, RidingDay) else None
    given = bike.tank.road_consumption
    learnt = fuel_learnt(history, ROAD, None)
    rate = learnt.learnt.rate_l_per_100km if learnt is not None else given.to("l/100km") if given else 0.0
    tank = in_tank(session, bike, history, rate) if rate > 0 else None
    if session.kind != "road" or way is None or tank is None:
        return ABSENT
    kept = rider.limits.fuel_reserve if isinstance(rider, Rider) else None
    reserve = kept.to("l") if kept is not None else limits[RESERVE]
    goes = max(tank.litres - reserve, 0.0) / rate * 100.0
    where = f"{tank.litres:.1f} l, {tank.where}; {rate:.1f} l/100km"
    return HomeAhead(way, goes, f"{where}, {learnt.where if learnt is not None else 'as entered'}")
