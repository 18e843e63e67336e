"""What bike, rider and gearing can do, and what the wet leaves: worked out only where it is asked for."""

import math
from collections.abc import Mapping

from paddock_tui.calc import wheelie_gears
from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.gearing import overall_ratio
from paddock_tui.calc.wet_grip import wet_words
from paddock_tui.calc.wheelie_gears import GearLift, GearTorque
from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.facts.past import tyre_of
from paddock_tui.facts.wheel_circumference import rear_rolled
from paddock_tui.records.bike import Bike
from paddock_tui.records.kinds import Record
from paddock_tui.records.people import Rider
from paddock_tui.records.setup import SetUp
from paddock_tui.records.tyres import TyreSet


@fact("the height of the centre of mass", at="bike:chassis.centre_height")
def centre_height_m(bike: Bike) -> float | Unknown:
    """Height of the centre of mass above the ground in m, rider on."""
    found = bike.chassis.centre_height
    return UNKNOWN if found is None else found.to("m")


@fact("how far the centre of mass is ahead of the rear axle", at="bike:chassis.centre_ahead")
def centre_ahead_m(bike: Bike) -> float | Unknown:
    """Return the distance of the centre of mass ahead of the rear axle in m, rider on."""
    found = bike.chassis.centre_ahead
    return UNKNOWN if found is None else found.to("m")


@fact("the wet mass", at="bike:wet_mass")
def wet_mass_kg(bike: Bike) -> float | Unknown:
    """Return the mass of the bike ready to ride in kg."""
    return UNKNOWN if bike.wet_mass is None else bike.wet_mass.to("kg")


@fact("the rider's weight in kit", at="rider:weight")
def rider_kg(rider: Rider) -> float | Unknown:
    """Return the mass of the rider in kit in kg."""
    return UNKNOWN if rider.weight is None else rider.weight.to("kg")


@fact("the front sprocket", at="session:setup.front_sprocket")
def front_teeth(setup: SetUp, bike: Bike) -> int | Unknown:
    """Return teeth of the front sprocket as fitted, else as delivered."""
    found = setup.front_sprocket if setup.front_sprocket is not None else bike.drive.front_sprocket
    return UNKNOWN if found is None else found


@fact("the rear sprocket", at="session:setup.rear_sprocket")
def rear_teeth(setup: SetUp, bike: Bike) -> int | Unknown:
    """Return teeth of the rear sprocket as fitted, else as delivered."""
    found = setup.rear_sprocket if setup.rear_sprocket is not None else bike.drive.rear_sprocket
    return UNKNOWN if found is None else found


@fact("the primary ratio", at="bike:drive.primary")
def primary_ratio(bike: Bike) -> float | Unknown:
    """Crankshaft turns per clutch turn."""
    return UNKNOWN if bike.drive.primary is None else bike.drive.primary


@fact("the gearbox", at="bike:drive.gearbox")
def gear_ratios(bike: Bike) -> tuple[float, ...] | Unknown:
    """Ratio of each gear, first gear first."""
    return bike.drive.gearbox or UNKNOWN


@fact("the rear tyre's circumference or size", at="tyres:rear.circumference")
def rear_rolled_m(bike: Bike, records: Mapping[str, Record]) -> float | Unknown:
    """Return how far the rear wheel rolls in one turn in m; of the bike's own tyre where no set is known."""
    tyres = records.get("tyres")
    found = rear_rolled(tyre_of(tyres if isinstance(tyres, TyreSet) else None, "rear"), bike)
    return UNKNOWN if found is None else found.length.to("m")


@fact("the torque curve or the peak torque", at="bike:drive.peak_torque")
def torque_curve(bike: Bike) -> GearTorque | Unknown:
    """Torque at the crankshaft by revs, the peak alone where there is no curve."""
    return torque_points(bike) or UNKNOWN


def torque_points(bike: Bike) -> GearTorque:
    """Return the torque curve of a bike, rising by revs; its peak alone, at 0 where its revs are not
    known.
    """
    if bike.torque_curve:
        return tuple(sorted((float(revs), torque.to("N m")) for revs, torque in bike.torque_curve.items()))
    peak, at = bike.drive.peak_torque, bike.drive.peak_torque_at
    return () if peak is None else ((0.0 if at is None else at.to("rpm"), peak.to("N m")),)


@fact("the overall ratio of each gear")
def overall_ratios(
    primary_ratio: float, gear_ratios: tuple[float, ...], front_teeth: int, rear_teeth: int
) -> tuple[float, ...] | Unknown:
    """Return turns of the engine for one of the rear wheel, first gear first."""
    try:
        return tuple(overall_ratio(primary_ratio, gear, front_teeth, rear_teeth) for gear in gear_ratios)
    except OutOfRange:
        return UNKNOWN


@fact("the force that lifts the front wheel")
def front_lift_n(
    centre_height_m: float, centre_ahead_m: float, wet_mass_kg: float, rider_kg: float
) -> float | Unknown:
    """Return the force at the rear wheel in N from which on the front wheel carries nothing, rider still,
    road
    level.
    """
    try:
        return wheelie_gears.lift_force_n(wet_mass_kg + rider_kg, centre_ahead_m, centre_height_m)
    except OutOfRange:
        return UNKNOWN


def _lifting_words(gears: tuple[GearLift, ...]) -> str:
    words = wheelie_gears.in_words(gears)
    return (
        f"{words} can lift the front on torque alone" if words else "no gear lifts the front on torque alone"
    )


@fact("the gears that can lift the front wheel", show=_lifting_words)
def gears_that_lift(
    overall_ratios: tuple[float, ...], torque_curve: GearTorque, rear_rolled_m: float, front_lift_n: float
) -> tuple[GearLift, ...] | Unknown:
    """Return every gear with its force at the rear wheel against the one that lifts the front."""
    try:
        radius_m = rear_rolled_m / math.tau
        return wheelie_gears.gears_that_lift(overall_ratios, torque_curve, radius_m, front_lift_n)
    except (Inconsistent, OutOfRange):
        return UNKNOWN


@fact("what the wet leaves of the dry", show=str)
def wet_ratio_words(surface: str) -> str | Absent:
    """Return ratios of wet to dry in one line with their assumption; absent on a dry track."""
    return wet_words(surface) or ABSENT
