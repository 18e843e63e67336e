"""Whether moisture may settle on the track: dew point, and how far the track is above it."""

import math
from collections.abc import Iterable, Mapping

from paddock_tui.advice import figures
from paddock_tui.advice.air import outside_of
from paddock_tui.advice.calculators import Answer, Answered, Inputs, Method, told
from paddock_tui.calc.dew import Damp, damp_risk
from paddock_tui.calc.instruments import HYGROMETER_PERCENT, THERMOMETER_K, band
from paddock_tui.calc.moist_air import (
    dew_point_c,
    humidity_from_wet_bulb_percent,
    humidity_ratio,
    vapour_kpa,
)
from paddock_tui.quantities import rounded
from paddock_tui.records.common import Units

DEW = Method(
    "243.12 L / (17.62 - L), L = ln(e / 0.6112 kPa), e = humidity x saturation",
    "over water; air and humidity read at the same place and time, in the shade",
    "-45 to 60 C, from 1 % humidity",
    "WMO-No. 8 (CIMO Guide), annex 4.B",
)
WET_BULB = Method(
    "W = ((2501 - 2.326 tw) Ws(tw) - 1.006 (t - tw)) / (2501 + 1.86 t - 4.186 tw)",
    "the wet thermometer swung or in a draught, its wick clean and wet",
    "wet bulb from 0 C; 0.5 C wrong is some 4 %",
    "ASHRAE Handbook of Fundamentals 2017, chapter 1",
)
DAMP = Method(
    "track - dew point; at or under it moisture settles, up to 2 C above it patches may",
    "the track was measured in the shade: it is not equally warm throughout",
    "a thermometer a degree wrong is a degree here; what lies there already is not in it",
    "the margin of 2 C: paddock practice, unpublished",
)
_SHORT = {
    Damp.SETTLES: "moisture settles on the track",
    Damp.PATCHES: "damp patches possible",
    Damp.DRYING: "",
}
_DOUBT = {Damp.SETTLES: "it may settle", Damp.PATCHES: "patches are possible"}
_WORDS = {**_SHORT, Damp.DRYING: "nothing settles; what lies there already is another matter"}


def damp(inputs: Inputs) -> Iterable[Answer]:
    """Return the dew point, and what it means for the track."""
    return (_dew(inputs), _risk(inputs), _by_wet_bulb(inputs))


def _dew_c(inputs: Inputs) -> float:
    return dew_point_c(inputs.amount("air", "C"), inputs.amount("humidity", "%"))


_READ = {"air": THERMOMETER_K, "humidity": HYGROMETER_PERCENT, "track": THERMOMETER_K}
_CAN_BE = {"humidity": (1.0, 100.0)}
_READ_WORDS = f"the band: thermometers within {THERMOMETER_K:g} C, humidity within {HYGROMETER_PERCENT:g} %"


def _dew_band_c(inputs: Inputs) -> tuple[float, float]:
    """Return the least and greatest dew point that the thermometer and the hygrometer leave open."""
    at = {"air": inputs.amount("air", "C"), "humidity": inputs.amount("humidity", "%")}
    either = {key: _READ[key] for key in at}
    return band(lambda one: dew_point_c(one["air"], one["humidity"]), at, either, _CAN_BE)


def _over_band_k(inputs: Inputs) -> tuple[float, float]:
    """Return the least and greatest distance of track and dew point that the instruments allow."""

    def over(one: Mapping[str, float]) -> float:
        return one["track"] - dew_point_c(one["air"], one["humidity"])

    keys = {"air": "C", "humidity": "%", "track": "C"}
    at = {key: inputs.amount(key, unit) for key, unit in keys.items()}
    return band(over, at, _READ, _CAN_BE)


def _dew(inputs: Inputs) -> Answer:
    def make() -> Answered:
        said = figures.temperature(_dew_c(inputs), inputs.units)
        low, high = (figures.temperature(one, inputs.units) for one in _dew_band_c(inputs))
        between = f" ({low.partition(' ')[0]} to {high})"
        air, humidity = inputs.amount("air", "C"), inputs.amount("humidity", "%")
        vapour = vapour_kpa(air, humidity)
        logarithm = math.log(vapour / 0.6112)
        steps = (
            f"e = {humidity:g} % of the saturation at {air:g} C = {vapour:.4f} kPa",
            f"L = ln({vapour:.4f} kPa / 0.6112 kPa) = {logarithm:.4f}",
            f"243.12 x {logarithm:.4f} / (17.62 - {logarithm:.4f}) = {said}",
        )
        text = f"{said}{between}: a track as cold as that is damp in the shade"
        return Answered(text, f"dew point {said}", more=(_READ_WORDS,), steps=steps)

    return told(inputs, "dew", "dew point", ("air", "humidity"), DEW, make)


def _risk(inputs: Inputs) -> Answer:
    def make() -> Answered:
        dew = _dew_c(inputs)
        risk = damp_risk(inputs.amount("track", "C"), dew)
        side = "above" if risk.over_k >= 0 else "under"
        apart = f"{_degrees(abs(risk.over_k), inputs.units)} {side}"
        at = figures.temperature(dew, inputs.units)
        track = inputs.amount("track", "C")
        step = f"{track:g} C - {dew:.1f} C = {_degrees(abs(risk.over_k), inputs.units)}"
        least_k, most_k = _over_band_k(inputs)
        between = f"{_degrees(least_k, inputs.units).partition(' ')[0]} to {_degrees(most_k, inputs.units)}"
        worst = damp_risk(least_k, 0.0).damp
        doubt = f"; by the instruments {_DOUBT[worst]}" if worst is not risk.damp else ""
        text = f"track {apart} the dew point of {at}: {_WORDS[risk.damp]}{doubt}"
        more = (f"above it by {between} as far as the instruments tell", _READ_WORDS)
        return Answered(text, _SHORT[risk.damp], more=more, steps=(step,))

    return told(inputs, "damp", "damp patches", ("track", "air", "humidity"), DAMP, make)


def _degrees(kelvin: float, units: Units) -> str:
    """Write a difference of temperatures in the preferred degrees."""
    unit = units.temperature or "C"
    apart = kelvin * 1.8 if unit == "F" else kelvin
    return f"{rounded(apart, 1).removesuffix('.0')} {unit}"


def _by_wet_bulb(inputs: Inputs) -> Answer:
    def make() -> Answered:
        air, wet, kpa = inputs.amount("air", "C"), inputs.amount("wet_bulb", "C"), outside_of(inputs).kpa
        said = f"{humidity_from_wet_bulb_percent(air, wet, kpa):.0f} %"
        grams = 1000.0 * humidity_ratio(kpa, wet, 100.0)
        steps = (
            f"saturated at {wet:g} C and {kpa:.1f} kPa: {grams:.1f} g of water in a kg of air",
            f"less what warming it to {air:g} C takes = {said}",
        )
        return Answered(said, steps=steps)

    return told(
        inputs, "wet_bulb", "humidity by wet bulb", ("air", "wet_bulb"), WET_BULB, make, ("altitude",)
    )
