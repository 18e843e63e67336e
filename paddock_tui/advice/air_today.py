"""The air of the day: the bench's calculator, and which of its answers stand beside a session's rows."""

import functools
from collections.abc import Iterable, Iterator, Mapping

import attrs

from paddock_tui.advice.about import About
from paddock_tui.advice.air_comfort import comfort
from paddock_tui.advice.air_damp import damp
from paddock_tui.advice.air_ice import ice
from paddock_tui.advice.air_inputs import INPUTS, filled_weather
from paddock_tui.advice.air_power import air_and_power
from paddock_tui.advice.answered import answered
from paddock_tui.advice.calculators import Answer, Calculator, Inputs
from paddock_tui.facts.outing import COLUMN
from paddock_tui.limits.weather import FROST
from paddock_tui.quantities import Quantity
from paddock_tui.records.paths import Path

_BETWEEN_C = 15.0
"""Below it cold is what is looked at, from it heat; neither is defined near it."""


@attrs.frozen
class OnRow:
    """What belongs to one row: its answers, the first of them beside it; `ahead` only before the ride."""

    path: Path
    answers: tuple[Answer, ...]
    ahead: bool = False


def air_today(about: About) -> Calculator:
    """Return the calculator of the air: density, power, dew, heat and cold, filled from session, venue and
    bike.
    """
    compute = functools.partial(_compute, about.session.surface, about.situation.limits[FROST])
    return Calculator(
        "air", "air and weather", INPUTS, filled_weather(about), compute, about.situation.limits
    )


def _compute(surface: str | None, ice_below_c: float, inputs: Inputs) -> Iterable[Answer]:
    return (*air_and_power(inputs), *damp(inputs), *ice(inputs, surface, ice_below_c), *comfort(inputs))


def air_on_rows(about: About) -> Iterator[OnRow]:
    """Return what belongs beside air pressure, track temperature and air of the session."""
    found = answered(about, air_today)
    yield OnRow(("air_pressure",), (found["density"], found["sae"], found["iso"]))
    icy = (found["ice"],) if found["ice"].known and found["ice"].short else ()
    yield OnRow(("track",), (*icy, *_of_track(about, found)), ahead=True)
    air = about.session.air
    if isinstance(air, Quantity):
        warm = air.to("C") >= _BETWEEN_C
        answers = (found["heat"],) if warm else (found["cold_riding"], found["cold_wind"])
        yield OnRow(("air",), answers, ahead=True)


def _of_track(about: About, found: Mapping[str, Answer]) -> tuple[Answer, ...]:
    """Return the risk of damp patches; on a wet track, or without its temperature, the dew point alone."""
    dew, risk = found["dew"], found["damp"]
    if COLUMN.get(about.session.surface or "") == "wet":
        return (attrs.evolve(dew, short=""),)
    return (risk, dew) if risk.known or not dew.known else (dew,)
