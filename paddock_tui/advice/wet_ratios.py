"""What the wet leaves of the dry: ratios only, each with its assumption in the same line."""

from collections.abc import Iterable

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
from paddock_tui.advice.forces import (
    AHEAD,
    BALANCE,
    FRICTION,
    HEIGHT,
    WHEELBASE,
    balance_of,
    filled_chassis,
)
from paddock_tui.calc.wet_grip import (
    BEYOND_WORDS,
    RATIO_HIGH,
    RATIO_LOW,
    STANDING_WATER,
    Friction,
    WetRatios,
    percent,
    span,
    wet_ratios,
    wet_to_dry,
)
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Number

METHOD = Method(
    "k = wet / dry friction: corner speed sqrt(k), tangent of the lean k, braking distance 1 / k",
    "the same tyre and road but for the water; no reaction; what wet or race tyres do is not in it",
    "while the tyres set the limit, not on standing water; patches of a damp track count as wet",
    "0.5: a road-safety agency's mean decelerations and UK Highway Code 227; "
    "0.7: OpenStax table 5.1 (not checked in print)",
)
LIFTS = Method(
    "the lesser of what slides and what lifts, wet over dry",
    "one friction for both tyres, level road, rider still, both brakes",
    "friction up to 2",
    METHOD.source,
)
_RATIO = Number(0.05, 1, step=0.05)
_NEEDS = ("surface", "low", "high")

INPUTS = (
    Input("surface", "surface", c.SURFACE),
    Input("low", "wet friction, at worst", _RATIO, "of the dry one", "wet friction at worst"),
    Input("high", "wet friction, at best", _RATIO, "of the dry one", "wet friction at best"),
    FRICTION,
    WHEELBASE,
    HEIGHT,
    AHEAD,
)


def wet_to_dry_ratios(about: About) -> Calculator:
    """Return the calculator of wet-to-dry ratios, filled from the session's surface and the bike."""
    found = filled_chassis(about)
    found = {key: one for key, one in found.items() if key in BALANCE}
    if about.session.surface is not None:
        found["surface"] = FilledInput(about.session.surface, about.place)
    found["low"] = FilledInput(RATIO_LOW, "assumed: road-safety agency, road code")
    found["high"] = FilledInput(RATIO_HIGH, "assumed: textbook, rubber on concrete")
    return Calculator("wet", "wet against dry", INPUTS, found, _compute)


def _compute(inputs: Inputs) -> Iterable[Answer]:
    return (_words(inputs), _lean(inputs), _push(inputs))


def _ratios(inputs: Inputs) -> WetRatios | None:
    """Return the ratios; None where the surface lies beyond them."""
    if inputs.value("surface") == STANDING_WATER:
        return None
    return wet_ratios(inputs.number("low"), inputs.number("high"))


def _words(inputs: Inputs) -> Answer:
    def make() -> Answered:
        found = _ratios(inputs)
        if found is None:
            return Answered(BEYOND_WORDS, BEYOND_WORDS, steps=(BEYOND_WORDS,))
        said = found.sentence()
        low, high = inputs.number("low"), inputs.number("high")
        steps = (
            f"corner speed: sqrt({low:g}) to sqrt({high:g})",
            f"braking distance: 1 / {high:g} to 1 / {low:g}",
            said,
        )
        return Answered(said, "" if inputs.value("surface") == "dry" else said, steps=steps)

    return told(inputs, "words", "wet beside dry", _NEEDS, METHOD, make)


def _lean(inputs: Inputs) -> Answer:
    def make() -> Answered:
        found = _ratios(inputs)
        if found is None:
            return Answered(BEYOND_WORDS, steps=(BEYOND_WORDS,))
        tangents = found.lower.lean_tangent, found.higher.lean_tangent
        text = f"wet, if grip is {percent(found.low, found.high)}: tangent of the lean {percent(*tangents)}"
        return Answered(text, steps=(f"tan(wet) / tan(dry) = friction wet / dry = {percent(*tangents)}",))

    return told(inputs, "lean", "lean", _NEEDS, METHOD, make)


def _push(inputs: Inputs) -> Answer:
    def make() -> Answered:
        found = _ratios(inputs)
        if found is None:
            return Answered(BEYOND_WORDS, steps=(BEYOND_WORDS,))
        dry, bike = inputs.number("friction"), balance_of(inputs)
        low, high = (wet_to_dry(Friction(dry, dry * ratio), bike) for ratio in (found.low, found.high))
        wet = f"{dry * found.low:.2f} to {dry * found.high:.2f}"
        steps = (
            f"friction wet: {dry:g} x {span(found.low, found.high)} is {wet}",
            f"drive, the less of grip and lift, wet over dry: {percent(low.driving, high.driving)}",
            f"braking, the less of grip and lift, wet over dry: {percent(low.braking, high.braking)}",
        )
        return Answered(
            f"wet, if friction {dry:g} falls to {percent(found.low, found.high)}: drive "
            f"{percent(low.driving, high.driving)}, braking {percent(low.braking, high.braking)} of dry",
            steps=steps,
        )

    return told(inputs, "push", "drive and braking", (*_NEEDS, "friction", *BALANCE), LIFTS, make)
