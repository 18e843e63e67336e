"""Chain pull and anti-squat of a bike that stands upright, by the geometry of its drive."""

import math
from collections.abc import Iterable

from paddock_tui.advice.about import About
from paddock_tui.advice.calculators import (
    Answer,
    Answered,
    Calculator,
    Input,
    Inputs,
    Method,
    filled,
    if_known,
    told,
)
from paddock_tui.advice.forces import BOOKS, HEIGHT, WHEELBASE, filled_chassis
from paddock_tui.advice.geometry import geometry
from paddock_tui.advice.sprockets import sprockets
from paddock_tui.calc.anti_squat import ChainLine, Point, anti_squat, chain_pull_n
from paddock_tui.calc.chain import chain_size
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Number, Word

METHOD = Method(
    "tan(squat line) / (h / p), the line from the rear contact to where chain and swingarm meet",
    "upright, driving steadily, rigid swingarm, chain without slack; lean and tyre growth left out",
    "as the bike stands with those heights: with the swingarm pressed up the figure falls",
    f"{BOOKS}; checked by the balance of moments about the pivot",
)
PULL = Method(
    "pull = thrust x wheel radius / (pitch / (2 sin(pi / teeth)))",
    "steady drive, no losses at the chain",
    "pitch circle of a new chain",
    "ASME B29.1 for the pitch circle; elementary",
)
INPUTS = (
    WHEELBASE,
    HEIGHT,
    Input("rear_radius", "rear axle, height", c.LENGTH, "above the ground", "height of the rear axle"),
    Input("swingarm", "swingarm, length", c.LENGTH, "pivot to rear axle"),
    Input("pivot_height", "swingarm pivot, height", c.LENGTH, "above the ground"),
    Input(
        "gearbox_ahead",
        "front sprocket, ahead",
        c.LENGTH,
        "of the swingarm pivot",
        "place of the front sprocket",
    ),
    Input(
        "gearbox_height",
        "front sprocket, height",
        c.LENGTH,
        "above the ground",
        "height of the front sprocket",
    ),
    Input("front", "front sprocket", c.TEETH),
    Input("rear", "rear sprocket", c.TEETH),
    Input("chain", "chain's code", Word("415", "420", "428", "520", "525", "530", "532")),
    Input(
        "thrust", "rear wheel's thrust", Number(0, 10000, step=100, unit="N"), "", "thrust of the rear wheel"
    ),
)
_LINE = (
    "rear_radius",
    "swingarm",
    "pivot_height",
    "gearbox_ahead",
    "gearbox_height",
    "front",
    "rear",
    "chain",
)


def chain_pull(about: About) -> Calculator:
    """Return the calculator of chain pull and anti-squat, filled from bike and set-up."""
    bike = about.situation.bike
    chassis = {key: one for key, one in filled_chassis(about).items() if key in ("wheelbase", "height")}
    stands = {
        key: one
        for key, one in geometry(about).filled.items()
        if key in ("rear_radius", "swingarm", "pivot_height")
    }
    drive = {key: one for key, one in sprockets(about).filled.items() if key in ("front", "rear", "chain")}
    found = chassis | stands | drive
    if bike is not None:
        where = f"bike {about.id_of('bike')}"
        found |= filled(
            gearbox_ahead=if_known(bike.chassis.gearbox_ahead, where),
            gearbox_height=if_known(bike.chassis.gearbox_height, where),
        )
    return Calculator("chain-pull", "chain pull and anti-squat", INPUTS, found, _compute)


def _compute(inputs: Inputs) -> Iterable[Answer]:
    return (
        _squat(inputs, "squat", "anti-squat, upright", 0, 0),
        _squat(inputs, "squat_rear", "one rear tooth more", 0, 1),
        _squat(inputs, "squat_front", "one front tooth less", -1, 0),
        _pull(inputs),
    )


def _line(inputs: Inputs, front: int, rear: int) -> ChainLine:
    axle, pivot = inputs.amount("rear_radius", "mm"), inputs.amount("pivot_height", "mm")
    length = inputs.amount("swingarm", "mm")
    ahead = math.sqrt(max(length**2 - (pivot - axle) ** 2, 0.0))
    gearbox = Point(ahead + inputs.amount("gearbox_ahead", "mm"), inputs.amount("gearbox_height", "mm"))
    teeth = int(inputs.number("front")) + front, int(inputs.number("rear")) + rear
    pitch = chain_size(int(inputs.value("chain"))).pitch_mm
    return ChainLine(axle, Point(ahead, pivot), gearbox, *teeth, pitch)


def _squat(inputs: Inputs, key: str, label: str, front: int, rear: int) -> Answer:
    def make() -> Answered:
        base, height = inputs.amount("wheelbase", "mm"), inputs.amount("height", "mm")
        found = anti_squat(_line(inputs, front, rear), base, height)
        said = f"{found.percent:.0f} %"
        steps = (
            f"swingarm rises {found.swingarm_deg:.1f} deg, upper chain run {found.chain_deg:.1f} deg, "
            f"squat line {found.squat_line_deg:.1f} deg",
            f"tan({found.squat_line_deg:.1f} deg) / ({height:g} mm / {base:g} mm) = {said}",
        )
        side = "extends" if found.percent > 100.0 else "squats"
        return Answered(f"{said}: under drive the rear {side}", f"anti-squat {said}", steps=steps)

    return told(inputs, key, label, (*_LINE, "wheelbase", "height"), METHOD, make)


def _pull(inputs: Inputs) -> Answer:
    def make() -> Answered:
        thrust, radius = inputs.number("thrust"), inputs.amount("rear_radius", "m")
        line = _line(inputs, 0, 0)
        found = chain_pull_n(thrust, radius, line.rear_teeth, line.pitch_mm)
        said = f"{found:.0f} N"
        step = f"{thrust:g} N x {radius * 1000:.0f} mm / {line.rear_pitch_radius_mm:.1f} mm = {said}"
        return Answered(f"{said} in the upper run", steps=(step,))

    return told(inputs, "pull", "chain pull", (*_LINE, "thrust"), PULL, make)
