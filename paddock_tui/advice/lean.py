"""Lean: for a speed and a corner, with the tyre's width, and what is left for the brakes."""

import functools
import math
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
    told,
)
from paddock_tui.advice.forces import BOOKS, FRICTION, HEIGHT, filled_chassis
from paddock_tui.calc.beyond_estimate import Beyond
from paddock_tui.calc.combined_grip import braking_left_m_s2, share_left
from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.lean import (
    corner_speed_m_s,
    friction_needed,
    friction_share,
    lean_deg,
    radius_at_lean_m,
    real_lean_deg,
    speed_at_lean_m_s,
    thin_lean_deg,
)
from paddock_tui.calc.longitudinal import MOST_FRICTION
from paddock_tui.records import common as c
from paddock_tui.records.people import Venue
from paddock_tui.records.shapes import Number

METHOD = Method(
    "tan(lean) = v^2 / (g r) with the tyre's width ignored; a tyre of crown radius t, the centre of mass at "
    "h, leans more: tan(thin) = (h - t) sin(lean) / (t + (h - t) cos(lean))",
    "steady speed, rider in the plane of the bike; without the tyre's width speeds come out too fast",
    "up to 400 km/h, radius up to 2 km",
    f"OpenStax University Physics 1, 6.3; {BOOKS}",
)
ROAD = Method(
    "friction = tan(atan(v^2 / (g r)) - bank)",
    "steady speed, no braking or drive, both tyres the same; the friction is the one that was typed",
    "a track or a tyre may hold less than it did a lap ago: nothing here says what holds",
    "OpenStax College Physics 2e, 6.3",
)
CIRCLE = Method(
    "share left = sqrt(1 - (tan(thin lean) / mu)^2)",
    "the friction circle; a real tyre's is an oval, and a wheel may lift first",
    "level road",
    BOOKS,
)
GRIP = Method(
    "v = sqrt(g r tan(atan(mu) + bank))",
    "steady speed, no braking or drive; the friction is the one that was typed: no source gives yours",
    "the most that this friction holds: to ride at it leaves nothing for a bump or a mistake",
    "OpenStax College Physics 2e, 6.3",
)
INPUTS = (
    Input("speed", "speed in the corner", c.SPEED),
    Input("radius", "radius", c.RADIUS, "", "radius of the corner"),
    Input("lean", "lean", Number(1, 75, step=1, unit="deg"), "from upright"),
    Input("bank", "bank", Number(-20, 60, step=1, unit="deg"), "above 0 helps, flat where left out"),
    Input("crown", "tyre's crown radius", c.TRAVEL, "about half of the tyre's width"),
    HEIGHT,
    FRICTION,
)


_WIDE = ("crown", "height")


def lean(about: About) -> Calculator:
    """Return the calculator of lean, filled with the tightest corner of the venue and the bike's height."""
    venue = about.situation.venue
    found = {key: one for key, one in filled_chassis(about).items() if key == HEIGHT.key}
    radii = _radii(venue)
    if radii and venue is not None:
        number = min(radii, key=lambda one: radii[one])
        radius = venue.corners[number].radius
        found["radius"] = FilledInput(
            radius, f"corner {number}, the tightest known, venue {about.id_of('venue')}"
        )
    return Calculator("lean", "lean in a corner", INPUTS, found, functools.partial(_compute, radii))


def _radii(venue: Venue | None) -> dict[str, float]:
    """List the radii in m that are known of a venue's corners, in order of their numbers."""
    corners = venue.corners if venue is not None else {}
    found = {name: one.radius.to("m") for name, one in corners.items() if one.radius is not None}
    return dict(sorted(found.items(), key=lambda one: int(one[0])))


def _compute(radii: dict[str, float], inputs: Inputs) -> Iterable[Answer]:
    return (
        _leans(inputs),
        _friction(inputs),
        _most(inputs),
        _speed(inputs),
        _radius(inputs),
        _left(inputs),
        _corners(radii, inputs),
    )


def _leans(inputs: Inputs) -> Answer:
    def make() -> Answered:
        speed, radius = inputs.amount("speed", "m/s"), inputs.amount("radius", "m")
        thin = lean_deg(speed, radius)
        put_in = f"({speed:.2f} m/s)^2 / (9.81 m/s2 x {radius:g} m)"
        step = f"thin = atan(v^2 / (g r)) = atan({put_in}) = {thin:.0f} deg"
        if not inputs.known(*_WIDE):
            return Answered(f"{thin:.0f} deg, and more for the width of the tyre", steps=(step,))
        crown, height = (inputs.amount(key, "m") for key in _WIDE)
        wide = real_lean_deg(thin, crown, height)
        more = f"thin + asin(t sin(thin) / (h - t)) = {thin:.1f} deg + {wide - thin:.1f} deg = {wide:.0f} deg"
        return Answered(f"{wide:.0f} deg, {thin:.0f} without the tyre's width", steps=(step, more))

    return told(inputs, "lean", "lean", ("speed", "radius"), METHOD, make, _WIDE)


def _bank(inputs: Inputs) -> float:
    return inputs.number("bank") if inputs.known("bank") else 0.0


def _friction(inputs: Inputs) -> Answer:
    def make() -> Answered:
        speed, radius = inputs.amount("speed", "m/s"), inputs.amount("radius", "m")
        needed = friction_needed(speed, radius, _bank(inputs))
        if abs(needed) > MOST_FRICTION:
            raise Inconsistent("speed and radius", "they ask more than any tyre on any road holds")
        put_in = f"atan(({speed:.2f} m/s)^2 / (9.81 m/s2 x {radius:g} m)) - {_bank(inputs):g} deg"
        step = f"mu = tan({put_in}) = {abs(needed):.2f}"
        said = f"friction of at least {abs(needed):.2f}"
        if not inputs.known("friction"):
            return Answered(said, steps=(step,))
        assumed = inputs.number("friction")
        share = friction_share(needed, assumed)
        if isinstance(share, Beyond):
            return Answered(share.sentence(), steps=(step,))
        used = f"{abs(needed):.2f} / {assumed:g} = {share * 100:.0f} %"
        return Answered(f"{said}, {share * 100:.0f} % of the {assumed:g} assumed", steps=(step, used))

    return told(
        inputs, "friction", "asks of the tyres", ("speed", "radius"), ROAD, make, ("bank", "friction")
    )


def _most(inputs: Inputs) -> Answer:
    def make() -> Answered:
        mu, radius, bank = inputs.number("friction"), inputs.amount("radius", "m"), _bank(inputs)
        found = corner_speed_m_s(mu, radius, bank)
        said = figures.speed_at_most(found, inputs.units)
        step = (
            f"v = sqrt(9.81 m/s2 x {radius:g} m x tan(atan({mu:g}) + {bank:g} deg)) = {found:.2f} m/s, "
            f"rounded down: {said}"
        )
        return Answered(f"{said} if friction {mu:g}, with nothing left over", steps=(step,))

    return told(inputs, "most", "friction carries", ("friction", "radius"), GRIP, make, ("bank",))


def _thin(inputs: Inputs) -> tuple[float, tuple[str, ...], str]:
    """Return the lean of a thin tyre that stands for the lean typed, how it was found, and a remark."""
    lean = inputs.number("lean")
    if not inputs.known(*_WIDE):
        return lean, (), ", less by the width of the tyre"
    crown, height = (inputs.amount(key, "m") for key in _WIDE)
    thin = thin_lean_deg(lean, crown, height)
    over = f"({height:.3f} m - {crown:.3f} m)"
    step = (
        f"thin = atan({over} sin({lean:g} deg) / ({crown:.3f} m + {over} cos({lean:g} deg))) = {thin:.1f} deg"
    )
    return thin, (step,), ""


def _speed(inputs: Inputs) -> Answer:
    def make() -> Answered:
        radius, (thin, steps, remark) = inputs.amount("radius", "m"), _thin(inputs)
        found = speed_at_lean_m_s(thin, radius)
        said = figures.speed_at_most(found, inputs.units)
        put_in = f"sqrt(9.81 m/s2 x {radius:g} m x tan({thin:.1f} deg))"
        step = f"v = sqrt(g r tan(thin)) = {put_in} = {found:.2f} m/s, rounded down: {said}"
        return Answered(f"{said}{remark}", steps=(*steps, step))

    return told(inputs, "speed", "speed for the lean", ("lean", "radius"), METHOD, make, _WIDE)


def _radius(inputs: Inputs) -> Answer:
    def make() -> Answered:
        speed, (thin, steps, remark) = inputs.amount("speed", "m/s"), _thin(inputs)
        found = figures.metres_at_least(radius_at_lean_m(thin, speed))
        more = remark.replace("less", "more")
        step = f"r = v^2 / (g tan(thin)) = ({speed:.2f} m/s)^2 / (9.81 m/s2 x tan({thin:.1f} deg)) = {found}"
        return Answered(f"{found}{more}", steps=(*steps, step))

    return told(inputs, "radius", "radius for the lean", ("lean", "speed"), METHOD, make, _WIDE)


def _left(inputs: Inputs) -> Answer:
    def make() -> Answered:
        mu, (thin, steps, _) = inputs.number("friction"), _thin(inputs)
        left = share_left(mu, thin)
        if isinstance(left, Beyond):
            return Answered(left.sentence(), steps=steps)
        said = f"{math.floor(left * 100 + 1e-9)} %"
        rate = braking_left_m_s2(mu, thin)
        brakes = "" if isinstance(rate, Beyond) else f", {rate:.1f} m/s2 at most"
        step = f"sqrt(1 - (tan({thin:.1f} deg) / {mu:g})^2) = {left:.3f}{brakes}, rounded down: {said}"
        return Answered(f"{said} of the upright braking, if friction {mu:g}", steps=(*steps, step))

    return told(inputs, "left", "left for the brakes", ("lean", "friction"), CIRCLE, make, _WIDE)


def _corners(radii: dict[str, float], inputs: Inputs) -> Answer:
    def make() -> Answered:
        if not radii:
            raise Inconsistent("corners", "no radius is known of this venue's")
        thin, steps, remark = _thin(inputs)
        speeds = [speed_at_lean_m_s(thin, radius) for radius in radii.values()]
        said = [figures.speed_at_most(one, inputs.units).partition(" ") for one in speeds]
        pairs = ", ".join(f"{name}: {one[0]}" for name, one in zip(radii, said, strict=True))
        each = (
            f"corner {name}: v = sqrt(9.81 m/s2 x {radius:g} m x tan({thin:.1f} deg)) = {one[0]} {one[2]}"
            for (name, radius), one in zip(radii.items(), said, strict=True)
        )
        return Answered(f"corner {pairs} {said[0][2]}{remark}", steps=(*steps, *each))

    return told(inputs, "corners", "that lean, by corner", ("lean",), METHOD, make, _WIDE)
