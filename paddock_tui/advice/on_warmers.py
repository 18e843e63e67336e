"""Pressures on tyre warmers: what to set there for the hot target, and what a reading there becomes."""

import functools
from collections.abc import Iterable

from paddock_tui.advice import figures
from paddock_tui.advice.about import ENDS, About, End
from paddock_tui.advice.air import ALTITUDE, MEASURED, outside_of, outside_words
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
from paddock_tui.advice.pressures import TEMPERATURE, pressures
from paddock_tui.calc.tyre_pressure import Ambient
from paddock_tui.calc.warmers import GaugeBand, TyreAir, hot_from_warmers, on_warmers_for_hot
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Number

METHOD = Method(
    "(on warmers + outside) / (air in the tyre there, K) = (hot + outside) / (air in it hot, K), on "
    "the gauge",
    "the same air, the tyre warm through (an hour or more); the air in it is cooler than the warmer's dial",
    "-40 to 150 C; hot on the track the air may be hotter or cooler than on the warmers",
    "the gas law, as in OpenStax College Physics 2e, 13.3; the vendor's figures come first",
)
_SPREAD_K = 5.0


@functools.cache
def _inputs() -> tuple[Input, ...]:
    found: list[Input] = []
    for end in ENDS:
        hot = f"temperature of the air in the hot tyre ({end})"
        found += [
            Input(f"{end}_hot", f"{end} hot target", c.TYRE_PRESSURE, "the vendor's hot figure"),
            Input(f"{end}_gas", f"{end} air in it, hot", TEMPERATURE, "learnt from hot readings", hot),
            Input(f"{end}_warm", f"{end} read on warmers", c.TYRE_PRESSURE),
        ]
    there = "temperature of the air in the tyre on warmers"
    spread = Number(0, 30, unit="°C")
    return (
        *found,
        Input(
            "warm_at",
            "air in it, on warmers",
            TEMPERATURE,
            "probe at the valve, or some °C under the dial",
            there,
        ),
        Input("spread", "either may be off", spread, "either way", "error of each of those"),
        MEASURED,
        ALTITUDE,
    )


def on_warmers(about: About) -> Calculator:
    """Return the calculator of pressures on warmers, filled from the session and what was learnt."""
    known = pressures(about).filled
    keys = ("front_hot", "front_gas", "rear_hot", "rear_gas", "air_pressure", "altitude")
    found = {key: known[key] for key in keys if key in known}
    if about.session.warmers_at is not None:
        found["warm_at"] = FilledInput(
            about.session.warmers_at, f"what the warmers of {about.place} are set to"
        )
    found["spread"] = FilledInput(_SPREAD_K, "assumed: dial and tyre differ")
    reading = about.session.pressures.get("warmers")
    for end in ENDS:
        value = getattr(reading, end) if reading is not None else None
        if value is not None:
            found[f"{end}_warm"] = FilledInput(value, f"read on the warmers of {about.place}")
    return Calculator("warmers", "pressures on warmers", _inputs(), found, _compute, about.situation.limits)


def _compute(inputs: Inputs) -> Iterable[Answer]:
    for end in ENDS:
        yield _set(inputs, end)
    for end in ENDS:
        yield _becomes(inputs, end)


def _air(inputs: Inputs, end: End) -> TyreAir:
    spread = inputs.number("spread") if inputs.known("spread") else _SPREAD_K
    return TyreAir(inputs.amount("warm_at", "C"), inputs.amount(f"{end}_gas", "C"), spread, spread)


def _said(band: GaugeBand, inputs: Inputs) -> tuple[str, str]:
    best, low, high = (figures.pressure(one, inputs.units) for one in (band.best, band.low, band.high))
    return best, f"{low.partition(' ')[0]} to {high}"


def _set(inputs: Inputs, end: End) -> Answer:
    def make() -> Answered:
        outside, air, hot = outside_of(inputs), _air(inputs, end), inputs.amount(f"{end}_hot", "kPa")
        found = on_warmers_for_hot(hot, air, Ambient(outside.kpa, outside.kpa))
        best, between = _said(found, inputs)
        step = (
            f"({hot:.1f} kPa + {outside.kpa:.1f} kPa) x {air.on_warmers_c + 273.15:.2f} K / "
            f"{air.on_track_c + 273.15:.2f} K - {outside.kpa:.1f} kPa = {found.best:.1f} kPa: {best}"
        )
        target = figures.pressure(hot, inputs.units)
        text = f"{best} on the warmers for {target} hot ({between})"
        return Answered(text, f"on warmers {best}", more=(outside_words(outside),), steps=(step,))

    needs, uses = (f"{end}_hot", f"{end}_gas", "warm_at"), ("spread", "air_pressure", "altitude")
    return told(inputs, f"{end}_set", f"{end}, on warmers", needs, METHOD, make, uses)


def _becomes(inputs: Inputs, end: End) -> Answer:
    def make() -> Answered:
        outside, air, warm = outside_of(inputs), _air(inputs, end), inputs.amount(f"{end}_warm", "kPa")
        found = hot_from_warmers(warm, air, Ambient(outside.kpa, outside.kpa))
        best, between = _said(found, inputs)
        step = (
            f"({warm:.1f} kPa + {outside.kpa:.1f} kPa) x {air.on_track_c + 273.15:.2f} K / "
            f"{air.on_warmers_c + 273.15:.2f} K - {outside.kpa:.1f} kPa = {found.best:.1f} kPa: {best}"
        )
        text = f"{best} hot on the track ({between})"
        return Answered(text, f"becomes {best} hot", more=(outside_words(outside),), steps=(step,))

    needs, uses = (f"{end}_warm", f"{end}_gas", "warm_at"), ("spread", "air_pressure", "altitude")
    return told(inputs, f"{end}_becomes", f"{end}, off warmers", needs, METHOD, make, uses)
