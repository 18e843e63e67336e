"""Another hour, another altitude: what the morning's cold setting should read now with the same air."""

from collections.abc import Iterable

import attrs

from paddock_tui.advice import figures
from paddock_tui.advice.about import ENDS, About, End
from paddock_tui.advice.air import air_of, filled_air, outside_words
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
from paddock_tui.advice.pressures import TEMPERATURE
from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.outside_pressure import AirMoves, outside_at_both
from paddock_tui.calc.tyre_pressure import same_air_kpa_gauge
from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import PressureReading
from paddock_tui.rules.core import SetValue

METHOD = Method(
    "now = (set + air then) (now, K) / (then, K) - air now",
    "all the air is still in the tyre, and it is cold through, in the shade, at both times",
    "-40 to 150 C, -500 to 11000 m",
    "the gas law; air from altitude: ISO 2533:1975",
)
_AIR = ("air_pressure", "altitude"), ("air_then", "altitude_then")

INPUTS = (
    *(Input(f"{end}_set", f"{end} as set cold", c.TYRE_PRESSURE) for end in ENDS),
    Input("then", "temperature when set", TEMPERATURE, "", "temperature when it was set"),
    Input("now", "temperature now", TEMPERATURE),
    Input("air_then", "air pressure then", c.AIR_PRESSURE),
    Input("altitude_then", "altitude then", c.ALTITUDE),
    Input("air_pressure", "air pressure now", c.AIR_PRESSURE),
    Input("altitude", "altitude now", c.ALTITUDE),
)


def afternoon(about: About) -> Calculator:
    """Return the calculator of one setting at another time or place, filled with the day's first cold
    setting.
    """
    return Calculator(
        "afternoon",
        "altitude and afternoon",
        INPUTS,
        _filled(about),
        _compute,
        about.situation.limits,
    )


def _filled(about: About) -> dict[str, FilledInput]:
    found = filled_air(about)
    if isinstance(about.session.air, Quantity):
        found["now"] = FilledInput(about.session.air, f"the air of {about.place}")
    morning, where = _morning(about)
    cold = morning.pressures.get("cold", PressureReading())
    for end in ENDS:
        value = getattr(cold, f"set_to_{end}") or getattr(cold, end)
        if value is not None:
            found[f"{end}_set"] = FilledInput(value, where)
    if cold.temperature is not None:
        found["then"] = FilledInput(cold.temperature, where)
    if morning.air_pressure is not None:
        found["air_then"] = FilledInput(morning.air_pressure, where)
    if "altitude" in found:
        found["altitude_then"] = found["altitude"]
    return found


def _morning(about: About) -> tuple[Session, str]:
    """Return the first session of the day that set these tyres cold, else this one."""
    session = about.session
    for one in about.history.past:
        same = one.date == session.date and one.tyres == session.tyres
        if same and session.date is not None and "cold" in one.session.pressures:
            return one.session, f"session {one.id}"
    return session, about.place


def _compute(inputs: Inputs) -> Iterable[Answer]:
    return [_now(inputs, end) for end in ENDS]


def _now(inputs: Inputs, end: End) -> Answer:
    def make() -> Answered:
        (now_air, now_height), (then_air, then_height) = _AIR
        seen_then, seen_now = air_of(inputs, then_air, then_height), air_of(inputs, now_air, now_height)
        same_place = seen_then.altitude_m == seen_now.altitude_m
        outside = outside_at_both(
            attrs.evolve(seen_then, place="there"),
            attrs.evolve(seen_now, place="there" if same_place else None),
            AirMoves.of(inputs.limits),
        )
        if outside is None:
            raise Inconsistent("air outside", "two altitudes, and one of them is not known: enter it")
        kpa = same_air_kpa_gauge(
            inputs.amount(f"{end}_set", "kPa"),
            inputs.amount("then", "C"),
            inputs.amount("now", "C"),
            *(one.kpa for one in outside),
        )
        said = figures.pressure(kpa, inputs.units)
        then, now = (outside_words(one) for one in outside)
        set_kpa, celsius = inputs.amount(f"{end}_set", "kPa"), inputs.amount("then", "C")
        step = (
            f"({set_kpa:.1f} kPa + {outside[0].kpa:.1f} kPa) x {inputs.amount('now', 'C') + 273.15:.2f} K / "
            f"{celsius + 273.15:.2f} K - {outside[1].kpa:.1f} kPa = {kpa:.1f} kPa: {said}"
        )
        return Answered(
            f"{said} cold now is the same air",
            said,
            (SetValue(("setup", f"{end}_start"), said),),
            (f"then, {then}", f"now, {now}", "a warmer track usually makes the air in the tyre hotter too"),
            (step,),
        )

    needs, uses = (f"{end}_set", "then", "now"), (*_AIR[0], *_AIR[1])
    return told(inputs, f"{end}_now", f"{end}, to read now", needs, METHOD, make, uses)
