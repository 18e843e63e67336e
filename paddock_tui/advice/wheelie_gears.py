"""Which gears can lift the front wheel on torque alone, with this gearing and this rider."""

import functools
import math
from collections.abc import Iterable
from decimal import Decimal

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
    told,
)
from paddock_tui.advice.forces import AHEAD, BIKE_MASS, BOOKS, HEIGHT, RIDER_MASS, filled_chassis
from paddock_tui.advice.gearing import INPUTS as GEARING
from paddock_tui.advice.gearing import gearing
from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.gearing import overall_ratio
from paddock_tui.calc.wheelie_gears import (
    CRANK_TO_WHEEL,
    GearLift,
    GearTorque,
    gears_that_lift,
    in_words,
    lift_force_n,
)
from paddock_tui.facts.physics import torque_points
from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Number

METHOD = Method(
    "torque x overall ratio x efficiency / rolling radius against m g b / h",
    "level road, rider still, no aerodynamic drag, no inertia of engine and wheels; full tank and rider",
    "torque alone: crest, dip, clutch and body lift it in more gears than these",
    f"{BOOKS}; the efficiency is paddock practice, unpublished",
)
_DRIVE = ("front", "rear", "primary", "gears", "round")
_NEEDS = (*_DRIVE, "peak", "share", "bike", "rider", "height", "ahead")

INPUTS = (
    *(one for one in GEARING if one.key in _DRIVE),
    Input("peak", "peak torque", c.TORQUE, "at the crankshaft"),
    Input(
        "share", "reaches the wheel", Number(0.5, 1, step=0.01), "share of the torque", "share of the torque"
    ),
    BIKE_MASS,
    RIDER_MASS,
    HEIGHT,
    AHEAD,
)


def lifting(about: About) -> Calculator:
    """Return the calculator of gears that lift the front, filled from set-up, bike, tyres and rider."""
    bike = about.situation.bike
    curve = torque_points(bike) if bike is not None else ()
    compute = functools.partial(_compute, curve)
    return Calculator("lifting", "gears that lift the front", INPUTS, _filled(about, curve), compute)


def _filled(about: About, curve: GearTorque) -> dict[str, FilledInput]:
    found = {key: one for key, one in gearing(about).filled.items() if key in _DRIVE}
    chassis = filled_chassis(about)
    found |= {key: chassis[key] for key in ("bike", "rider", "height", "ahead") if key in chassis}
    if curve:
        peak = max(torque for _, torque in curve)
        where = "torque curve" if len(curve) > 1 else "peak"
        found["peak"] = FilledInput(
            Quantity(Decimal(f"{peak:.6g}"), "N m"), f"{where}, bike {about.id_of('bike')}"
        )
    found["share"] = FilledInput(CRANK_TO_WHEEL, "assumed: paddock practice, unpublished")
    return found


def _compute(curve: GearTorque, inputs: Inputs) -> Iterable[Answer]:
    return (_gears(curve, inputs), _shares(curve, inputs), _revs(curve, inputs))


def _judged(curve: GearTorque, inputs: Inputs) -> tuple[GearLift, ...]:
    """Judge every gear; the bike's curve is taken as high as the peak that is given."""
    peak = inputs.amount("peak", "N m")
    highest = max((torque for _, torque in curve), default=0.0)
    points = (
        tuple((revs, torque * peak / highest) for revs, torque in curve) if highest > 0 else ((0.0, peak),)
    )
    front, rear = int(inputs.number("front")), int(inputs.number("rear"))
    primary = inputs.number("primary")
    overall = [overall_ratio(primary, gear, front, rear) for gear in inputs.value("gears")]
    mass = inputs.amount("bike", "kg") + inputs.amount("rider", "kg")
    lift = lift_force_n(mass, inputs.amount("ahead", "m"), inputs.amount("height", "m"))
    radius = inputs.amount("round", "m") / math.tau
    return gears_that_lift(overall, points, radius, lift, inputs.number("share"))


def _gears(curve: GearTorque, inputs: Inputs) -> Answer:
    def make() -> Answered:
        words = in_words(_judged(curve, inputs))
        said = f"{words or 'no gear'} can lift the front on torque alone"
        more = ("assumed: level road, rider still, no aerodynamic drag",)
        return Answered(said, said, (), more, (*_push_steps(curve, inputs), f"100 % or more: {said}"))

    return told(inputs, "gears", "lift the front", _NEEDS, METHOD, make)


def _shares(curve: GearTorque, inputs: Inputs) -> Answer:
    def make() -> Answered:
        shares = " ".join(f"{one.share * 100:.0f}" for one in _judged(curve, inputs))
        steps = (*_push_steps(curve, inputs), f"first to top = {shares} %")
        return Answered(f"{shares} % of what lifts it, first to top", steps=steps)

    return told(inputs, "shares", "push, by gear", _NEEDS, METHOD, make)


def _revs(curve: GearTorque, inputs: Inputs) -> Answer:
    def make() -> Answered:
        if len(curve) < 2:
            raise Inconsistent("torque", "only its peak is known: the bike's file can hold the curve")
        found = [
            f"{in_words((one,))} {_span(one.from_rpm, one.to_rpm)}"
            for one in _judged(curve, inputs)
            if one.from_rpm is not None and one.to_rpm is not None
        ]
        said = ", ".join(found) or "at no revs of the curve"
        return Answered(said, steps=(*_push_steps(curve, inputs), f"where the curve is over that = {said}"))

    return told(inputs, "revs", "between", _NEEDS, METHOD, make)


def _push_steps(curve: GearTorque, inputs: Inputs) -> tuple[str, ...]:
    """Write what lifts the front, and each gear's push, with the numbers put in."""
    mass = inputs.amount("bike", "kg") + inputs.amount("rider", "kg")
    ahead, height = inputs.amount("ahead", "m"), inputs.amount("height", "m")
    lift, radius = lift_force_n(mass, ahead, height), inputs.amount("round", "m") / math.tau
    peak, share = inputs.amount("peak", "N m"), inputs.number("share")
    lifts = f"m g b / h = {mass:g} kg x 9.81 m/s2 x {ahead:.3f} m / {height:.3f} m = {lift:.0f} N"
    each = (
        f"gear {one.gear}: {one.force_n * radius / (peak * share):.2f} x {peak:g} N m x {share:g} / "
        f"{radius:.3f} m"
        f" = {one.force_n:.0f} N, {one.share * 100:.0f} %"
        for one in _judged(curve, inputs)
    )
    return (lifts, *each)


def _span(low: float, high: float) -> str:
    return f"{figures.revs(low).removesuffix(' rpm')}-{figures.revs(high)}"
