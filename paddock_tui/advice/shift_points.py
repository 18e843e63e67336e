"""Thrust of each gear: where to shift, top speed as geared and as powered, gearing for a wanted speed."""

import functools
import math
from collections.abc import Iterable

from paddock_tui.advice import figures
from paddock_tui.advice.about import About
from paddock_tui.advice.air_today import air_today
from paddock_tui.advice.answered import answered
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
from paddock_tui.advice.forces import BIKE_MASS, RIDER_MASS, filled_chassis
from paddock_tui.advice.gearing import INPUTS as GEARING
from paddock_tui.advice.gearing import gearing
from paddock_tui.calc.gearing import GearTrain, final_ratio, overall_ratio
from paddock_tui.calc.moist_air import density_kg_per_m3
from paddock_tui.calc.road_load import Resistance, drag_n, powered_top_speed_m_s
from paddock_tui.calc.standard_air import SEA_LEVEL_KPA
from paddock_tui.calc.thrust import most_power_kw, overall_for_speed, thrust_per_gear, upshifts
from paddock_tui.calc.wheelie_gears import CRANK_TO_WHEEL, GearTorque
from paddock_tui.facts.physics import torque_points
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Number

SHIFT = Method(
    "shift from where torque(n) x this ratio = torque(n x next / this) x next ratio",
    "the curve as entered, a straight line between its points; time of the shift and inertia left out",
    "between the ends of the curve; where the next gear never pushes harder, at the limiter",
    "Gillespie, Fundamentals of Vehicle Dynamics, chapter 2 (not checked in print)",
)
THRUST = Method(
    "torque x overall ratio x share / rolling radius",
    "at the peak of the torque curve; the share that reaches the wheel is paddock practice",
    "a wheel that lifts or slides has less",
    "Gillespie, Fundamentals of Vehicle Dynamics, chapter 2 (not checked in print)",
)
POWERED = Method(
    "power at the wheel = (rho CdA (v + wind)^2 / 2 + m g (rolling + slope)) v",
    "level unless a slope is given, all the power there at that speed; CdA errs by a tenth or more: "
    "both tried",
    "up to 540 km/h; the gearing may end it sooner",
    "OpenStax College Physics 2e, 5.2; Gillespie, chapter 4",
)
WANTED = Method(
    "overall = revs / 60 x circumference (1 - slip) / speed, final = overall / (primary x top gear)",
    "a loaded tyre rolls 1 to 3 % less than its marking says",
    "top gear",
    "elementary",
)
_DRIVE = ("front", "rear", "primary", "gears", "round")
INPUTS = (
    *(one for one in GEARING if one.key in (*_DRIVE, "limit")),
    Input("share", "reaches the wheel", Number(0.5, 1, step=0.01), "share of the torque"),
    Input("speed", "target speed in top", c.SPEED, "", "wanted speed"),
    Input("revs", "at revs", c.REVS, "", "revs at that speed"),
    Input("slip", "slip of the tyre", Number(0, 20, step=1, unit="%"), "none where left out"),
    Input("drag", "drag area CdA", Number(0.1, 1.5, step=0.01, unit="m2"), "tucked in; measure or guess it"),
    Input("density", "air density", Number(0.8, 1.5, step=0.01, unit="kg/m3")),
    Input("rolling", "rolling coefficient", Number(0.005, 0.05, step=0.001)),
    Input(
        "headwind", "headwind", Number(-60, 60, step=1, unit="km/h"), "below 0 from behind, none if left out"
    ),
    Input("slope", "slope", Number(-20, 20, step=1, unit="%"), "uphill above 0, level where left out"),
    BIKE_MASS,
    RIDER_MASS,
)
_AIR = ("drag", "density", "rolling", "bike", "rider")
_DRAG_MAY_BE_OFF = 0.1


def shift_points(about: About) -> Calculator:
    """Return the calculator of thrust and shifts, filled from gearing, torque curve, air and masses."""
    bike = about.situation.bike
    curve = torque_points(bike) if bike is not None else ()
    found = {key: one for key, one in gearing(about).filled.items() if key in (*_DRIVE, "limit")}
    found |= {key: one for key, one in filled_chassis(about).items() if key in ("bike", "rider")}
    found["share"] = FilledInput(CRANK_TO_WHEEL, "assumed: paddock practice, unpublished")
    found["rolling"] = FilledInput(0.018, "assumed: paddock practice, unpublished")
    found["density"] = _density(about)
    compute = functools.partial(_compute, curve)
    return Calculator("shift-points", "thrust and shift points", INPUTS, found, compute)


def _density(about: About) -> FilledInput:
    """Return the density of the session's air, else that of the standard's at the sea."""
    found = answered(about, air_today)["density"]
    if found.known:
        return FilledInput(float(found.text.split()[0]), f"the air of {about.place}")
    return FilledInput(round(density_kg_per_m3(SEA_LEVEL_KPA, 15.0), 3), "standard air at the sea")


def _compute(curve: GearTorque, inputs: Inputs) -> Iterable[Answer]:
    return (
        _shifts(curve, inputs),
        _thrust(curve, inputs),
        _geared(inputs),
        _powered(curve, inputs),
        _wanted(inputs),
    )


def _shifts(curve: GearTorque, inputs: Inputs) -> Answer:
    def make() -> Answered:
        found = upshifts(tuple(inputs.value("gears")), curve, inputs.amount("limit", "rpm"))
        said = " ".join(figures.revs(one.before_rpm).partition(" ")[0] for one in found)
        steps = tuple(
            f"into {one.to_gear}: {figures.revs(one.before_rpm)} x "
            f"{inputs.value('gears')[one.to_gear - 1]:g} / "
            f"{inputs.value('gears')[one.to_gear - 2]:g} = {figures.revs(one.after_rpm)}"
            f"{', no crossing before it' if one.at_limiter else ', where both push equally'}"
            for one in found
        )
        last = f"from first up = {said} rpm"
        return Answered(f"{said} rpm, from first up", f"shift at {said} rpm", steps=(*steps, last))

    return told(inputs, "shifts", "shift at", ("gears", "limit"), SHIFT, make)


def _overall(inputs: Inputs) -> tuple[float, ...]:
    front, rear = int(inputs.number("front")), int(inputs.number("rear"))
    return tuple(overall_ratio(inputs.number("primary"), gear, front, rear) for gear in inputs.value("gears"))


def _thrust(curve: GearTorque, inputs: Inputs) -> Answer:
    def make() -> Answered:
        overall, rolled = _overall(inputs), inputs.amount("round", "m")
        found = thrust_per_gear(overall, curve, rolled, inputs.number("share"))
        said = " ".join(f"{round(one.thrust_n, -1):.0f}" for one in found)
        torque = max(torque for _, torque in curve)
        steps = tuple(
            f"gear {one.gear}: {torque:g} N m x {ratio:.2f} x {inputs.number('share'):g} / "
            f"{rolled / math.tau:.3f} m = {round(one.thrust_n, -1):.0f} N at "
            f"{figures.speed(one.speed_m_s, inputs.units)}"
            for one, ratio in zip(found, overall, strict=True)
        )
        return Answered(f"{said} N, first to top", steps=(*steps, f"first to top = {said} N"))

    return told(inputs, "thrust", "thrust, by gear", (*_DRIVE, "share"), THRUST, make)


def _top_geared_m_s(inputs: Inputs) -> float:
    train = GearTrain(
        inputs.number("primary"),
        tuple(inputs.value("gears")),
        int(inputs.number("front")),
        int(inputs.number("rear")),
        inputs.amount("round", "m"),
    )
    return train.speed_m_s(inputs.amount("limit", "rpm"), len(train.gears))


def _geared(inputs: Inputs) -> Answer:
    def make() -> Answered:
        top = _top_geared_m_s(inputs)
        low, high = (figures.speed(top * share, inputs.units) for share in (0.97, 1.0))
        step = (
            f"{figures.revs(inputs.amount('limit', 'rpm'))} in top = {high}, 3 % less as the tyre "
            f"may roll: {low}"
        )
        return Answered(f"{low} to {high} at the limiter", steps=(step,))

    return told(inputs, "geared", "top speed as geared", (*_DRIVE, "limit"), WANTED, make)


def _powered(curve: GearTorque, inputs: Inputs) -> Answer:
    def make() -> Answered:
        power, revs = most_power_kw(curve)
        at_wheel = power * inputs.number("share")
        mass = inputs.amount("bike", "kg") + inputs.amount("rider", "kg")
        wind = inputs.number("headwind") / 3.6 if inputs.known("headwind") else 0.0
        slope = inputs.number("slope") / 100.0 if inputs.known("slope") else 0.0
        area, rho = inputs.number("drag"), inputs.number("density")

        def top(share: float) -> float:
            road = Resistance(area * share, rho, mass, inputs.number("rolling"), slope, wind)
            return powered_top_speed_m_s(at_wheel * 1000.0, road)

        low, best, high = (top(1.0 + off) for off in (_DRAG_MAY_BE_OFF, 0.0, -_DRAG_MAY_BE_OFF))
        said = f"{figures.speed(low, inputs.units)} to {figures.speed(high, inputs.units)}"
        drag = drag_n(area, rho, abs(best + wind))
        steps = (
            f"{power:.1f} kW at {figures.revs(revs)} x {inputs.number('share'):g} = {at_wheel:.1f} kW "
            "at the wheel",
            f"{rho:g} kg/m3 x {area:g} m2 x ({best + wind:.1f} m/s)^2 / 2 = {drag:.0f} N of drag",
            f"CdA a tenth more and less: {said}",
        )
        return Answered(f"{said}, if the gearing lets it", steps=steps)

    uses = ("headwind", "slope")
    return told(inputs, "powered", "top speed as powered", ("share", *_AIR), POWERED, make, uses)


def _wanted(inputs: Inputs) -> Answer:
    def make() -> Answered:
        speed, revs = inputs.amount("speed", "m/s"), inputs.amount("revs", "rpm")
        slip = inputs.number("slip") / 100.0 if inputs.known("slip") else 0.0
        overall = overall_for_speed(speed, revs, inputs.amount("round", "m"), slip)
        gears, front = tuple(inputs.value("gears")), int(inputs.number("front"))
        final = overall / (inputs.number("primary") * gears[-1])
        rear = round(final * front)
        have = final_ratio(front, max(rear, 6))
        said = f"final {final:.3f}"
        steps = (
            f"overall = {revs:g} rpm / 60 x {inputs.amount('round', 'm'):.3f} m x (1 - {slip:.3f}) / "
            f"{speed:.2f} m/s"
            f" = {overall:.3f}",
            f"{overall:.3f} / ({inputs.number('primary'):g} x {gears[-1]:g}) = {said}",
        )
        return Answered(f"{said}; with {front} in front {rear} behind come nearest ({have:.3f})", steps=steps)

    needs = ("speed", "revs", "round", "primary", "gears", "front")
    return told(inputs, "wanted", "ratio for that speed", needs, WANTED, make, ("slip",))
