"""Whether frost or ice may be on the track: dew or frost point, the surface, and what is wet there."""

from collections.abc import Iterable
from typing import Final

from paddock_tui.advice import figures
from paddock_tui.advice.calculators import Answer, Answered, Inputs, Method, told
from paddock_tui.calc.frost import Ice, ice_risk, saturation_over_ice_kpa
from paddock_tui.calc.moist_air import vapour_kpa

ICE = Method(
    "frost point = 272.62 L / (22.46 - L), L = ln(e / 0.6112 kPa), e = humidity x saturation over "
    "water; from 0 C "
    "up the dew point",
    "air and humidity at two metres, humidity over water as forecasts give it; wet counts as wet "
    "until it is dry",
    "-45 to 60 C; shade, bridges and the end of the night are colder than what was measured",
    "WMO-No. 8 (CIMO Guide), annex 4.B; the air under which wet roads are taken for icy: paddock practice",
)
_WORDS: Final = {
    Ice.FREEZES: "what is wet freezes: ice on the track",
    Ice.HOAR: "frost settles on the track",
    Ice.BLACK_ICE: "ice is likely in the shade and on bridges",
    Ice.NONE: "no ice by these figures; look all the same",
}
_WET: Final = frozenset({"damp", "drying", "wet", "standing water"})


def ice(inputs: Inputs, surface: str | None, ice_below_c: float) -> Iterable[Answer]:
    """Return what frost and ice may be, for the surface as it was said to be.

    `ice_below_c` is the air under which a wet surface that nobody measured is taken for icy.
    """

    def make() -> Answered:
        air, humidity = inputs.amount("air", "C"), inputs.amount("humidity", "%")
        track = inputs.amount("track", "C") if inputs.known("track") else None
        wet = surface in _WET
        found = ice_risk(air, humidity, track, wet, ice_below_c)
        point = figures.temperature(found.settles_at_c, inputs.units)
        what = "dew point" if found.settles_at_c >= 0.0 else "frost point"
        where = (
            "no track temperature" if track is None else f"track {figures.temperature(track, inputs.units)}"
        )
        steps: tuple[str, ...] = (
            f"{what} of {air:g} C at {humidity:g} % = {point}",
            f"{where}, surface {surface or 'not known'}: {_WORDS[found.ice]}",
        )
        if air <= 0.0:
            over_ice = 100.0 * vapour_kpa(air, humidity) / saturation_over_ice_kpa(air)
            steps = (f"{humidity:g} % over water is {over_ice:.0f} % over ice at {air:g} C", *steps)
        short = "" if found.ice is Ice.NONE else _WORDS[found.ice]
        return Answered(f"{_WORDS[found.ice]} ({what} {point}, {where})", short, steps=steps)

    yield told(inputs, "ice", "frost and ice", ("air", "humidity"), ICE, make, ("track",))
