"""Where the centre of mass is, by three weighings: level, and with one end raised."""

from collections.abc import Iterable

from paddock_tui.advice import figures
from paddock_tui.advice.about import About
from paddock_tui.advice.calculators import (
    Answer,
    Answered,
    Calculator,
    FilledInput,
    Input,
    Inputs,
    Method,
    filled,
    if_known,
    told,
)
from paddock_tui.advice.forces import WHEELBASE
from paddock_tui.calc.centre_of_mass import AxleWeighing, Centre, ScaleErrors, centre_of_mass, together
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Number, Word

METHOD = Method(
    "share x = reading / mass; height = rear radius + (ahead cos(t) - front share x apart cos(rise)) "
    "/ sin(t), "
    "t the angle by which the raised axle turns the bike",
    "suspension locked, brakes off, wheels free to roll, tank as for the level weighing, a helper at "
    "each side",
    "turned by 2 deg or more; the more it is raised, the smaller the error",
    "plane statics; Jazar, Vehicle Dynamics, chapter 2",
)
RIDER = Method(
    "sum of mass x place over the whole mass",
    "the rider's own place is a guess unless it was weighed: about the navel, sitting as on the straight",
    "bike and rider upright",
    "moments; OpenStax University Physics 1, 9.6",
)
INPUTS = (
    WHEELBASE,
    Input(
        "front", "level, front wheel", c.WET_MASS, "both wheels at one height", "front wheel's level reading"
    ),
    Input("rear", "level, rear wheel", c.WET_MASS, "both wheels at one height", "rear wheel's level reading"),
    Input("raised", "raised end", Word("front", "rear"), "", "end that was raised"),
    Input(
        "reading", "other wheel then", c.WET_MASS, "under the wheel that stays down", "reading with it raised"
    ),
    Input("lift", "axle raised by", c.LENGTH, "over where it was", "height by which the axle was raised"),
    Input("front_radius", "front axle, height", c.LENGTH, "loaded: axle to ground", "front axle's height"),
    Input("rear_radius", "rear axle, height", c.LENGTH, "loaded: axle to ground", "rear axle's height"),
    Input("scale_error", "scale may be off", Number(0.05, 10, step=0.1, unit="kg"), "either way"),
    Input("length_error", "lengths may be off", Number(0.5, 50, step=0.5, unit="mm"), "either way"),
    Input("rider", "rider in kit", c.MASS, "", "rider's weight in kit"),
    Input(
        "rider_height", "rider's centre, height", c.LENGTH, "above the ground", "height of the rider's centre"
    ),
    Input(
        "rider_ahead", "rider's centre, ahead", c.LENGTH, "of the rear axle", "place of the rider's centre"
    ),
)
_NEEDS = ("wheelbase", "front", "rear", "raised", "reading", "lift", "front_radius", "rear_radius")
_ERRORS = ("scale_error", "length_error")


def weighing(about: About) -> Calculator:
    """Return the calculator of the centre of mass, filled with the bike's weighing where one is recorded."""
    bike, rider = about.situation.bike, about.situation.rider
    found = {
        "scale_error": FilledInput(0.5, "assumed: half a kilogram"),
        "length_error": FilledInput(3.0, "assumed: by tape"),
    }
    if bike is not None:
        where, read = f"bike {about.id_of('bike')}", bike.weighing
        found |= filled(
            wheelbase=if_known(bike.chassis.wheelbase, where),
            front=if_known(read.front, where),
            rear=if_known(read.rear, where),
            raised=if_known(read.raised, where),
            reading=if_known(read.reading, where),
            lift=if_known(read.lift, where),
            front_radius=if_known(read.front_radius, where),
            rear_radius=if_known(read.rear_radius, where),
        )
    if rider is not None and rider.weight is not None:
        found["rider"] = FilledInput(rider.weight, f"rider {about.id_of('rider')}")
    return Calculator("weighing", "centre of mass by weighing", INPUTS, found, _compute)


def _compute(inputs: Inputs) -> Iterable[Answer]:
    return (_place(inputs), _height(inputs), _with_rider(inputs))


def _weighing(inputs: Inputs) -> AxleWeighing:
    return AxleWeighing(
        inputs.amount("wheelbase", "m"),
        inputs.amount("front", "kg"),
        inputs.amount("rear", "kg"),
        "front" if inputs.value("raised") == "front" else "rear",
        inputs.amount("reading", "kg"),
        inputs.amount("lift", "m"),
        inputs.amount("front_radius", "m"),
        inputs.amount("rear_radius", "m"),
    )


def _found(inputs: Inputs) -> Centre:
    length = inputs.amount_or("length_error", "mm", 3.0) / 1000.0
    scale = inputs.amount_or("scale_error", "kg", 0.5)
    return centre_of_mass(_weighing(inputs), ScaleErrors(scale, length, length, length))


def _within(value_m: float, error_m: float) -> str:
    return f"{value_m * 1000:.0f} mm, give or take {error_m * 1000:.0f} mm"


def _place(inputs: Inputs) -> Answer:
    def make() -> Answered:
        read, found = _weighing(inputs), _found(inputs)
        said = _within(found.ahead_m, found.ahead_error_m)
        step = (
            f"wheelbase x front / (front + rear) = {read.wheelbase_m * 1000:.0f} mm x {read.front_kg:g} kg / "
            f"{read.mass_kg:g} kg = {said}"
        )
        return Answered(f"{said} ahead of the rear axle", steps=(step,))

    return told(inputs, "ahead", "CG to rear axle", _NEEDS, METHOD, make, _ERRORS)


def _height(inputs: Inputs) -> Answer:
    def make() -> Answered:
        read, found = _weighing(inputs), _found(inputs)
        said = _within(found.height_m, found.height_error_m)
        steps = (
            f"share = {read.down_kg:g} kg / {read.mass_kg:g} kg = {read.down_kg / read.mass_kg:.4f} on the "
            f"{'rear' if read.raised == 'front' else 'front'} wheel",
            f"the {read.raised} axle {read.raise_m * 1000:.0f} mm up over {read.wheelbase_m * 1000:.0f} mm",
            f"height = rear radius {read.rear_radius_m * 1000:.0f} mm + "
            f"{(found.height_m - read.rear_radius_m) * 1000:.0f} mm = {said}",
        )
        return Answered(
            f"{said} above the ground",
            f"weighed {found.height_m * 1000:.0f} +-{found.height_error_m * 1000:.0f} mm",
            steps=steps,
        )

    return told(inputs, "height", "CG height", _NEEDS, METHOD, make, _ERRORS)


def _with_rider(inputs: Inputs) -> Answer:
    needs = (*_NEEDS, "rider", "rider_height", "rider_ahead")

    def make() -> Answered:
        bike_kg, rider_kg = _weighing(inputs).mass_kg, inputs.amount("rider", "kg")
        rider = Centre(inputs.amount("rider_height", "m"), inputs.amount("rider_ahead", "m"))
        found = _found(inputs)
        mass, both = together(found, bike_kg, rider, rider_kg)
        height, ahead = _within(both.height_m, both.height_error_m), f"{both.ahead_m * 1000:.0f} mm"
        steps = (
            f"ahead = ({bike_kg:g} kg x {found.ahead_m * 1000:.0f} mm + {rider_kg:g} kg x "
            f"{rider.ahead_m * 1000:.0f} mm) / {mass:g} kg = {ahead}",
            f"height = ({bike_kg:g} kg x {found.height_m * 1000:.0f} mm + {rider_kg:g} kg x "
            f"{rider.height_m * 1000:.0f} mm) / {mass:g} kg = {height}",
        )
        text = f"{figures.mass(mass, inputs.units)}: {ahead} ahead, {height} high"
        return Answered(text, steps=steps)

    return told(inputs, "both", "bike with rider", needs, RIDER, make, _ERRORS)
