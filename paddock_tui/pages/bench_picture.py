"""The gears as a picture on the bench: speed over revs as fitted, and with the sprockets that are tried."""

from collections.abc import Mapping
from typing import Any

from paddock_tui.advice.calculators import Calculator, FilledInput, Inputs
from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.gearing import GearTrain
from paddock_tui.pages.pictured import on_top, picture_row
from paddock_tui.pages.pictures.gears import gears_chart
from paddock_tui.pages.rows import Section
from paddock_tui.records.common import Units

_NEEDS = ("front", "rear", "primary", "gears", "round", "limit")


def with_gears(section: Section, calculator: Calculator, typed: Mapping[str, Any], units: Units) -> Section:
    """Put the gears on top of the section of gearing; the section as it is where too little is known.

    The other sprockets are those tried here, else one tooth more at the rear.
    """
    tried = calculator.with_typed(typed)
    fitted = dict(tried) | {key: one for key, one in calculator.filled.items() if key in ("front", "rear")}
    now, limit = _train(calculator, fitted, units)
    if now is None:
        return section
    other, _ = _train(calculator, tried, units)
    if other is None or (other.front_teeth, other.rear_teeth) == (now.front_teeth, now.rear_teeth):
        more = {**fitted, "rear": FilledInput(now.rear_teeth + 1, "one tooth more")}
        other, _ = _train(calculator, more, units)
    others = f"{other.front_teeth}/{other.rear_teeth}" if other is not None else ""
    chart = gears_chart(now, other, limit, others)
    note = f"{now.front_teeth}/{now.rear_teeth}, dots {others}" if others else ""
    return on_top(section, picture_row("speed over revs", chart), note)


def _train(
    calculator: Calculator, filled: Mapping[str, FilledInput], units: Units
) -> tuple[GearTrain | None, float]:
    inputs = Inputs(calculator.inputs, filled, units)
    if inputs.missing(_NEEDS) or inputs.beyond(_NEEDS):
        return None, 0.0
    try:
        train = GearTrain(
            inputs.number("primary"),
            tuple(float(one) for one in inputs.value("gears")),
            int(inputs.number("front")),
            int(inputs.number("rear")),
            inputs.amount("round", "m"),
        )
    except (OutOfRange, Inconsistent):
        return None, 0.0
    return train, inputs.amount("limit", "rpm")
