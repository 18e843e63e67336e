"""Balance: what each wheel carries, and how hard the bike drives and brakes before one lifts."""

import math
from collections.abc import Iterable

from paddock_tui.advice import figures
from paddock_tui.advice.about import About
from paddock_tui.advice.calculators import Answer, Answered, Calculator, Input, Inputs, Method, told
from paddock_tui.advice.forces import (
    AHEAD,
    BALANCE,
    BIKE_MASS,
    BOOKS,
    FRICTION,
    HEIGHT,
    RIDER_MASS,
    SLOPE,
    WHEELBASE,
    balance_of,
    filled_chassis,
    in_g,
    slope_of,
)
from paddock_tui.calc.balance import axle_loads, centre_ahead_m, load_transfer_n
from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.longitudinal import (
    By,
    LongitudinalLimit,
    braking_limit,
    driving_limit,
    rear_lift_m_s2,
    wheelie_m_s2,
)
from paddock_tui.calc.springs import G_M_S2
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Number

LIFTS = Method(
    "front lifts at g (b/h cos - sin), rear lifts at g ((p - b)/h cos + sin), of the road's angle",
    "one rigid body: rider still, suspension at rest, no air; aids and tyres left out",
    "wheelbase up to 5 m, slope up to 50 %",
    BOOKS,
)
GRIP = Method(
    "rear drive: mu (p - b) / (p - mu h); both brakes: mu; a wheel that lifts first governs",
    "one friction for both tyres, both brakes used to the full; a wet or a cold tyre has another",
    "friction up to 2",
    BOOKS,
)
LOADS = Method(
    "front share b / p; braking or driving moves m a h / p",
    "as measured, with the rider sitting as then",
    "one rigid body",
    BOOKS,
)
SCALES = Method(
    "ahead = wheelbase x front / (front + rear)",
    "both wheels on scales at the same height, rider on, bike upright",
    "any bike",
    "moments about the rear axle; OpenStax University Physics 1, example 12.1",
)
INPUTS = (
    WHEELBASE,
    HEIGHT,
    AHEAD,
    BIKE_MASS,
    RIDER_MASS,
    SLOPE,
    FRICTION,
    Input("braking", "braking at", Number(0.05, 1.5, step=0.05, unit="g"), "of gravity", "braking in g"),
    Input("front_scale", "scales, front wheel", c.WET_MASS, "rider on", "front wheel's scales"),
    Input("rear_scale", "scales, rear wheel", c.WET_MASS, "rider on", "rear wheel's scales"),
)


def balance(about: About) -> Calculator:
    """Return the calculator of balance and lifting wheels, filled from bike and rider."""
    return Calculator(
        "balance", "balance, wheelie and stoppie limit", INPUTS, filled_chassis(about), _compute
    )


def _compute(inputs: Inputs) -> Iterable[Answer]:
    return (_lifts(inputs), _grip(inputs), _at_rest(inputs), _moved(inputs), _scales(inputs))


def _lifts(inputs: Inputs) -> Answer:
    def make() -> Answered:
        found, slope = balance_of(inputs), slope_of(inputs)
        front, rear = wheelie_m_s2(found, slope), rear_lift_m_s2(found, slope)
        sine, cosine = _road(slope)
        base, high, ahead = (
            f"{one:.3f} m" for one in (found.wheelbase_m, found.centre_height_m, found.centre_ahead_m)
        )
        steps = (
            f"front: {ahead} / {high} x {cosine:.3f} - {sine:.3f} = {in_g(front)}",
            f"rear: ({base} - {ahead}) / {high} x {cosine:.3f} + {sine:.3f} = {in_g(rear)}",
        )
        text = f"{in_g(front)} of drive lifts the front, {in_g(rear)} of braking the rear"
        return Answered(text, steps=steps)

    return told(inputs, "lifts", "wheels lift at", BALANCE, LIFTS, make, ("slope",))


def _grip(inputs: Inputs) -> Answer:
    def make() -> Answered:
        found, mu, slope = balance_of(inputs), inputs.number("friction"), slope_of(inputs)
        drive, brake = driving_limit(found, mu, slope), braking_limit(found, mu, slope)
        said = f"drive {_limit(drive, 'front')}, braking {_limit(brake, 'rear')}, if friction {mu:g}"
        lifts = (in_g(one) for one in (wheelie_m_s2(found, slope), rear_lift_m_s2(found, slope)))
        steps = (
            f"a wheel lifts: {' driving, '.join(lifts)} braking",
            f"drive: {mu:g} ({found.wheelbase_m:.3f} m - {found.centre_ahead_m:.3f} m) / "
            f"({found.wheelbase_m:.3f} m - "
            f"{mu:g} x {found.centre_height_m:.3f} m), the less of both = {_limit(drive, 'front')}",
            f"braking: {mu:g}, the less of both = {_limit(brake, 'rear')}",
        )
        return Answered(said, steps=steps)

    return told(inputs, "grip", "what comes first", (*BALANCE, "friction"), GRIP, make, ("slope",))


def _limit(limit: LongitudinalLimit, wheel: str) -> str:
    if limit.m_s2 < 0:
        return "none: the slope is too much"
    return f"{in_g(limit.m_s2)} ({f'{wheel} lifts' if limit.by is By.LIFT else 'slides'})"


def _mass_kg(inputs: Inputs) -> float:
    return inputs.amount("bike", "kg") + inputs.amount("rider", "kg")


def _at_rest(inputs: Inputs) -> Answer:
    def make() -> Answered:
        share, mass = balance_of(inputs).front_share, _mass_kg(inputs)
        front, rear = figures.mass(share * mass, inputs.units), figures.mass((1 - share) * mass, inputs.units)
        found = balance_of(inputs)
        steps = (
            f"b / p = {found.centre_ahead_m:.3f} m / {found.wheelbase_m:.3f} m = {share * 100:.0f} %",
            f"front: {share:.3f} x {mass:g} kg = {front}",
            f"rear: {mass:g} kg less that = {rear}",
        )
        return Answered(f"{front} front, {rear} rear, {share * 100:.0f} % on the front", steps=steps)

    return told(inputs, "rest", "static axle loads", (*BALANCE, "bike", "rider"), LOADS, make)


def _moved(inputs: Inputs) -> Answer:
    def make() -> Answered:
        found, mass, rate = balance_of(inputs), _mass_kg(inputs), inputs.number("braking") * G_M_S2
        if slope_of(inputs) != 0.0:
            raise Inconsistent("slope", "what braking moves is worked out on the level only: leave it out")
        moved = figures.mass(load_transfer_n(found, mass, rate) / G_M_S2, inputs.units)
        if rate > rear_lift_m_s2(found):
            return Answered(f"beyond this estimate: the rear lifts at {in_g(rear_lift_m_s2(found))}")
        at = axle_loads(found, mass, -rate)
        front, rear = (figures.mass(one / G_M_S2, inputs.units) for one in (at.front_n, at.rear_n))
        height, base = found.centre_height_m, found.wheelbase_m
        steps = (
            f"m a h / p = {mass:.1f} kg x {inputs.number('braking'):g} x {height:.3f} m / {base:.3f} "
            f"m = {moved}",
            f"then {front} on the front and {rear} on the rear, {at.total_n / G_M_S2:.1f} kg in all",
        )
        return Answered(f"{moved} more on the front, as much less on the rear", steps=steps[::-1])

    return told(
        inputs, "moved", "braking moves", (*BALANCE, "bike", "rider", "braking"), LOADS, make, ("slope",)
    )


def _scales(inputs: Inputs) -> Answer:
    needs = ("wheelbase", "front_scale", "rear_scale")

    def make() -> Answered:
        base, front, rear = (
            inputs.amount(key, unit) for key, unit in zip(needs, ("m", "kg", "kg"), strict=True)
        )
        ahead = centre_ahead_m(base, front, rear)
        said = figures.millimetres(ahead * 1000)
        step = f"{base * 1000:.0f} mm x {front:g} kg / ({front:g} kg + {rear:g} kg) = {said}"
        return Answered(f"centre of mass {said} ahead of the rear axle", steps=(step,))

    return told(inputs, "scales", "by the scales", needs, SCALES, make)


def _road(slope: float) -> tuple[float, float]:
    """Return sine and cosine of the road's angle, for the lines of the working."""
    angle = math.atan(slope)
    return math.sin(angle), math.cos(angle)
