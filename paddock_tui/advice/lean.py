"""Lean: for a speed and a corner, with the tyre's width, and what is left for the brakes."""

import functools
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
from paddock_tui.records import common as c
from paddock_tui.records.people import Venue
from paddock_tui.records.shapes import Number
from paddock_tui.trade.beyond_estimate import Beyond
from paddock_tui.trade.combined_grip import share_left
from paddock_tui.trade.lean import (
    friction_needed,
    friction_share,
    lean_deg,
    radius_at_lean_m,
    real_lean_deg,
    speed_at_lean_m_s,
)

METHOD = Method(
    "tan(lean) = v2 / (g r); a tyre of crown radius t adds asin(t sin(lean) / (h - t))",
    "steady speed, rider in the plane of the bike; without the tyre's width it is always too little",
    "up to 540 km/h, radius up to 10 km",
    f"OpenStax University Physics 1, 6.3; {BOOKS}",
)
ROAD = Method(
    "friction = tan(lean - bank)",
    "steady speed, no braking or drive, both tyres alike; the friction is the one that was typed",
    "a track or a tyre may hold less than it did a lap ago: nothing here says what holds",
    "OpenStax College Physics 2e, 6.3",
)
CIRCLE = Method(
    "share left = sqrt(1 - (tan(lean) / mu)2)",
    "the friction circle; a real tyre's is an oval, and a wheel may lift first",
    "level road, thin tyres",
    BOOKS,
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
        _speed(inputs),
        _radius(inputs),
        _left(inputs),
        _corners(radii, inputs),
    )


def _leans(inputs: Inputs) -> Answer:
    def make() -> Answered:
        thin = lean_deg(inputs.amount("speed", "m/s"), inputs.amount("radius", "m"))
        if not inputs.known("crown", "height"):
            return Answered(f"{thin:.0f} deg, and more for the width of the tyre")
        wide = real_lean_deg(thin, inputs.amount("crown", "m"), inputs.amount("height", "m"))
        return Answered(f"{wide:.0f} deg, {thin:.0f} without the tyre's width")

    return told(inputs, "lean", "lean", ("speed", "radius"), METHOD, make, ("crown", "height"))


def _friction(inputs: Inputs) -> Answer:
    def make() -> Answered:
        bank = inputs.number("bank") if inputs.known("bank") else 0.0
        needed = friction_needed(inputs.amount("speed", "m/s"), inputs.amount("radius", "m"), bank)
        said = f"friction of at least {abs(needed):.2f}"
        if not inputs.known("friction"):
            return Answered(said)
        assumed = inputs.number("friction")
        share = friction_share(needed, assumed)
        if isinstance(share, Beyond):
            return Answered(share.sentence())
        return Answered(f"{said}, {share * 100:.0f} % of the {assumed:g} assumed")

    return told(
        inputs, "friction", "asks of the tyres", ("speed", "radius"), ROAD, make, ("bank", "friction")
    )


def _speed(inputs: Inputs) -> Answer:
    def make() -> Answered:
        speed = speed_at_lean_m_s(inputs.number("lean"), inputs.amount("radius", "m"))
        return Answered(f"{figures.speed(speed, inputs.units)}, thin tyres")

    return told(inputs, "speed", "speed for the lean", ("lean", "radius"), METHOD, make)


def _radius(inputs: Inputs) -> Answer:
    def make() -> Answered:
        radius = radius_at_lean_m(inputs.number("lean"), inputs.amount("speed", "m/s"))
        return Answered(f"{radius:.0f} m, thin tyres")

    return told(inputs, "radius", "radius for the lean", ("lean", "speed"), METHOD, make)


def _left(inputs: Inputs) -> Answer:
    def make() -> Answered:
        mu = inputs.number("friction")
        left = share_left(mu, inputs.number("lean"))
        if isinstance(left, Beyond):
            return Answered(left.sentence())
        return Answered(f"{left * 100:.0f} % of the upright braking, if friction {mu:g}")

    return told(inputs, "left", "left for the brakes", ("lean", "friction"), CIRCLE, make)


def _corners(radii: dict[str, float], inputs: Inputs) -> Answer:
    def make() -> Answered:
        if not radii:
            return Answered("no radius is known of this venue's corners")
        speeds = (speed_at_lean_m_s(inputs.number("lean"), radius) for radius in radii.values())
        said = [figures.speed(one, inputs.units).partition(" ") for one in speeds]
        pairs = ", ".join(f"{name}: {one[0]}" for name, one in zip(radii, said, strict=True))
        return Answered(f"corner {pairs} {said[0][2]}, thin tyres")

    return told(inputs, "corners", "that lean, by corner", ("lean",), METHOD, make)
