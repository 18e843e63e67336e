"""A bike: what it is and what it offers. No level, direction or name of a riding mode is in the code."""

import datetime as dt
from collections.abc import Mapping

import attrs

from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.answers import MatterAnswer
from paddock_tui.records.costs import BikeCost
from paddock_tui.records.electronics import Control, Mode
from paddock_tui.records.fields import NUMBERED, nested, one, table, tables, values
from paddock_tui.records.packing import BikeToDo
from paddock_tui.records.papers import Paper
from paddock_tui.records.shapes import Amount, Number, Series, TyreSizeMarking, Whole, Word
from paddock_tui.records.suspension import Adjuster, Damping


@attrs.frozen
class BikeEnd:
    """One end of the bike, front or rear."""

    tyre_size: str | None = one(
        TyreSizeMarking(), "tyre size", "the size this end is approved for, as marked"
    )
    circumference: Quantity | None = one(
        c.LENGTH,
        "tyre circumference",
        "measured by rolling the bike one turn with the rider on; instead of the size",
    )
    travel: Quantity | None = one(c.TRAVEL, "wheel travel", "from fully extended to the stop, at the axle")
    spring: Quantity | None = one(
        c.SPRING, "spring rate", "rate of one spring as delivered (each leg of a fork)"
    )
    motion_ratio: float | None = one(
        Number(0.2, 1.2, step=0.01),
        "motion ratio",
        "spring travel / wheel travel, 1 without a linkage; a manual's leverage ratio is its reciprocal",
    )
    top_out_springs: str | None = one(
        Word("fitted", "none"),
        "top-out springs",
        "springs that pull the fork or shock together when extended",
    )
    preload_per_turn: Quantity | None = one(
        Amount("length", "mm", 0.1, 5, step=0.1),
        "preload per turn",
        "spring length taken up by one turn of the adjuster",
    )
    highest_clear: Quantity | None = one(
        c.SMALL,
        "highest position clear",
        "the highest fork protrusion or rear ride height at which full bottoming was checked clear",
    )
    technician_free_sag: Quantity | None = one(
        c.SMALL, "technician, free sag", "free (static) sag: bike alone, as a technician set it"
    )
    technician_rider_sag: Quantity | None = one(
        c.SMALL, "technician, rider sag", "rider on, as a technician set it"
    )
    road_pressure: Quantity | None = one(
        c.TYRE_PRESSURE, "road pressure, cold", "the manual's figure for the road"
    )
    pads_start: Quantity | None = one(
        c.TREAD, "pads at the start", "pad thickness when the record was started"
    )


@attrs.frozen
class Chassis:
    """Where the mass is, for load transfer."""

    wheelbase: Quantity | None = one(c.LENGTH, "wheelbase", "axle to axle")
    centre_height: Quantity | None = one(
        c.LENGTH, "CG height", "of the centre of mass above the ground, rider on"
    )
    centre_ahead: Quantity | None = one(
        c.LENGTH, "CG to rear axle", "the centre of mass (CG), horizontal, ahead of the axle, rider on"
    )
    rake: Quantity | None = one(
        Amount("angle", "deg", 15, 40, step=0.1), "rake", "steering axis from the vertical"
    )
    trail: Quantity | None = one(c.LENGTH, "trail", "on the ground, as published for the standard height")
    swingarm: Quantity | None = one(c.LENGTH, "swingarm", "from its pivot to the rear axle")
    pivot_height: Quantity | None = one(c.LENGTH, "swingarm pivot, height", "above the ground, rider off")
    gearbox_ahead: Quantity | None = one(
        c.LENGTH, "front sprocket, ahead", "ahead of the swingarm pivot, centre to centre"
    )
    gearbox_height: Quantity | None = one(
        c.LENGTH, "front sprocket, height", "its centre above the ground, rider off"
    )


@attrs.frozen
class Weighing:
    """Three weighings of the bike without a rider: level, and with one end raised."""

    front: Quantity | None = one(c.WET_MASS, "level, front wheel", "both wheels at one height")
    rear: Quantity | None = one(c.WET_MASS, "level, rear wheel", "both wheels at one height")
    raised: str | None = one(Word("front", "rear"), "raised end", "which end was then raised")
    reading: Quantity | None = one(
        c.WET_MASS, "other wheel then", "under the wheel that stayed down, suspension locked"
    )
    lift: Quantity | None = one(c.LENGTH, "axle raised by", "how much higher the raised axle was")
    front_radius: Quantity | None = one(c.LENGTH, "front axle, height", "axle to ground, loaded")
    rear_radius: Quantity | None = one(c.LENGTH, "rear axle, height", "axle to ground, loaded")


@attrs.frozen
class Tank:
    """Fuel the bike can carry, and what it uses."""

    capacity: Quantity | None = one(c.VOLUME, "tank", "usable litres from empty to the brim")
    reserve: Quantity | None = one(c.VOLUME, "reserve", "litres left when the fuel light comes on")
    consumption: Quantity | None = one(
        c.CONSUMPTION, "default consumption", "used until refills to the brim have taught a rate"
    )
    road_consumption: Quantity | None = one(
        c.CONSUMPTION, "consumption, road", "for the ride home; a track's is never taken for it"
    )


@attrs.frozen
class Drive:
    """Engine and gears."""

    primary: float | None = one(
        Number(0.5, 5, step=0.001), "primary ratio", "crankshaft turns per clutch turn"
    )
    gearbox: tuple[float, ...] | None = one(
        Series(1, 8, "the ratios of the gears, first gear first"),
        "gearbox",
        "ratio of each gear, first gear first",
    )
    chain: str | None = one(
        Word("415", "420", "428", "520", "525", "530", "532"), "chain", "the chain's code"
    )
    links: int | None = one(c.LINKS, "links, stock", "number of links of the standard chain")
    chain_gauge: int | None = one(
        Whole(2, 60, unit="links"), "links to measure", "over how many links the manual measures wear"
    )
    chain_longest: Quantity | None = one(
        Amount("length", "mm", 20, 1200, step=0.1), "longest over them", "the manual's wear limit"
    )
    slack_least: Quantity | None = one(c.SMALL, "chain slack, least", "the manual's figure, tight point")
    slack_most: Quantity | None = one(c.SMALL, "chain slack, most", "the manual's figure, tight point")
    slack_stance: str | None = one(
        c.STANCE, "chain slack, bike on", "how the bike stands for the manual's figure"
    )
    shift_pattern: str | None = one(
        Word("standard", "reversed"), "shift pattern", "standard: first gear down; reversed: first gear up"
    )
    coolant: str | None = one(
        Word("plain water", "water with additive", "antifreeze"),
        "coolant",
        "what is in it; many tracks ask for plain water, or water with additive",
    )
    front_sprocket: int | None = one(c.TEETH, "front sprocket, stock", "teeth, on the gearbox")
    rear_sprocket: int | None = one(c.TEETH, "rear sprocket, stock", "teeth, on the wheel")
    rev_limit: Quantity | None = one(c.REVS, "rev limit", "where the limiter cuts")
    stroke: Quantity | None = one(
        Amount("length", "mm", 20, 120, step=0.1), "stroke", "for the noise test's revs"
    )
    cylinders: int | None = one(Whole(1, 8), "cylinders", "number of cylinders")
    power: Quantity | None = one(c.POWER, "power", "peak power")
    peak_torque: Quantity | None = one(c.TORQUE, "peak torque", "at the crankshaft")
    peak_torque_at: Quantity | None = one(c.REVS, "peak torque at", "revs of the peak torque")


@attrs.frozen
class Fastener:
    """A fastener that wheel or brake work undoes."""

    torque: Quantity | None = one(c.TORQUE, "torque", "tightening torque")
    source: str | None = one(c.TEXT, "source", "where the figure comes from, the manual's page")


@attrs.frozen
class Service:
    """One item of service: how often, and when last."""

    every_hours: Quantity | None = one(c.HOURS, "every, hours", "engine hours between two services")
    every_distance: Quantity | None = one(
        c.DISTANCE, "every, distance", "distance between two services, as on the road"
    )
    every: Quantity | None = one(Amount("age", "months", 1, 240), "every", "time between two services")
    last_hours: Quantity | None = one(c.HOURS, "last at, hours", "engine hours at the last service")
    last_distance: Quantity | None = one(
        c.DISTANCE, "last at, distance", "distance covered at the last service"
    )
    last: dt.date | None = one(c.DAY, "last on", "date of the last service")


@attrs.frozen
class CounterStart:
    """Counters at the time the record was started; sessions are added to them."""

    on: dt.date | None = one(c.DAY, "counted from", "the date of these start values")
    hours: Quantity | None = one(c.HOURS, "engine hours", "engine hours at that date")
    kilometres: Quantity | None = one(c.DISTANCE, "distance", "distance covered at that date")


@attrs.frozen
class Bike:
    """What a bike is: its electronics, suspension, drive, tank, and what wears."""

    name: str | None = one(c.TEXT, "name", "what you call this bike")
    note: str | None = one(c.TEXT, "note", "anything worth knowing")
    retired: dt.date | None = one(
        c.DAY, "retired", "hidden from lists since this date; references still resolve"
    )
    electronics: str | None = one(
        Word("listed", "none"),
        "electronics",
        "listed once every control is in this file; none on a bike without aids",
    )
    suspension: str | None = one(
        Word("listed", "none"),
        "suspension",
        "listed once every adjuster is in this file; none where nothing adjusts",
    )
    steering_damper: str | None = one(
        Word("none", "fixed", "adjustable", "automatic"), "steering damper", "what kind is fitted"
    )
    lap_timer: str | None = one(Word("none", "fitted"), "lap timer", "whether a lap timer is on the bike")
    wet_mass: Quantity | None = one(c.WET_MASS, "wet mass", "ready to ride, full tank")
    chassis: Chassis = table(Chassis, "chassis")
    weighing: Weighing = table(Weighing, "weighing")
    front: BikeEnd = table(BikeEnd, "front")
    rear: BikeEnd = table(BikeEnd, "rear")
    tank: Tank = table(Tank, "fuel")
    drive: Drive = table(Drive, "engine and gears")
    torque_curve: Mapping[str, Quantity] = values(
        c.TORQUE, "torque curve", "torque at the crankshaft, by revs", keyed_by="revs", keys=r"[1-9]\d{2,4}"
    )
    controls: Mapping[str, Control] = tables(Control, "controls", keyed_by="control")
    modes: Mapping[str, Mode] = tables(Mode, "riding modes", keyed_by="riding mode")
    adjusters: Mapping[str, Adjuster] = tables(Adjuster, "adjusters", keyed_by="adjuster")
    damping: Mapping[str, Damping] = tables(Damping, "damping modes", keyed_by="damping mode")
    fasteners: Mapping[str, Fastener] = tables(Fastener, "fasteners", keyed_by="fastener")
    service: Mapping[str, Service] = tables(Service, "service", keyed_by="service item")
    start: CounterStart = table(CounterStart, "counters at the start")
    papers: Mapping[str, Paper] = tables(Paper, "papers", keyed_by="paper")
    costs: Mapping[str, BikeCost] = tables(BikeCost, "costs", keyed_by="number", keys=NUMBERED)
    todos: Mapping[str, BikeToDo] = tables(BikeToDo, "to do", keyed_by="number", keys=NUMBERED)
    answers: Mapping[str, Mapping[str, MatterAnswer]] = nested(
        MatterAnswer, "answers", keyed_by="what and number", keys=("[a-z0-9-]+", NUMBERED)
    )
