"""How dense the air is, at which altitude it would be so, and what an engine gives in it."""

from collections.abc import Iterable

from paddock_tui.advice import figures
from paddock_tui.advice.air import outside_of, outside_words
from paddock_tui.advice.air_inputs import pressure_needs
from paddock_tui.advice.calculators import Answer, Answered, Inputs, Method, told
from paddock_tui.calc.atmosphere import (
    density_altitude_m,
    density_at_altitude_kg_per_m3,
    geopotential_m,
    pressure_altitude_m,
    temperature_at_altitude_c,
)
from paddock_tui.calc.instruments import HYGROMETER_PERCENT, THERMOMETER_K, band
from paddock_tui.calc.moist_air import density_kg_per_m3, dry_kpa
from paddock_tui.calc.outside_pressure import PressureOrigin
from paddock_tui.calc.power_correction import BANDS, Correction, Standard, correction, expected_power_kw
from paddock_tui.quantities import convert

DENSITY = Method(
    "(p - 0.378 e) / (R T), e the pressure of the vapour; altitude where the standard air is as dense",
    "ideal gases; saturation over water by the Magnus form",
    "-45 to 60 C, 20 to 110 kPa",
    "WMO-No. 8, annex 4.B; ISO 2533:1975",
)
POWER = {
    Standard.SAE_J1349: Method(
        "rated / (1.180 (99 / dry kPa) sqrt((t + 273) / 298) - 0.18)",
        "no blower, throttle open, 85 % mechanical efficiency; rated by the same standard",
        "factor 0.95 to 1.05; beyond it no figure is given",
        "SAE J1349, June 1990",
    ),
    Standard.ISO_1585: Method(
        "rated / ((99 / dry kPa)^1.2 ((t + 273) / 298)^0.6)",
        "no blower, spark ignition, throttle open; rated by the same standard",
        "factor 0.93 to 1.07; beyond it no figure is given",
        "ISO 1585, UN Regulation 85; formula not checked in print",
    ),
}
_KEYS = {Standard.SAE_J1349: "sae", Standard.ISO_1585: "iso"}


def air_and_power(inputs: Inputs) -> Iterable[Answer]:
    """Return the density with its altitude, and power by each standard."""
    yield _density(inputs)
    yield _standard(inputs)
    for standard in POWER:
        yield _power(inputs, standard)


def _needs(inputs: Inputs) -> tuple[str, ...]:
    return ("air", "humidity", *pressure_needs(inputs))


def _air(inputs: Inputs) -> tuple[float, float, float]:
    return outside_of(inputs).kpa, inputs.amount("air", "C"), inputs.amount("humidity", "%")


def _density(inputs: Inputs) -> Answer:
    def make() -> Answered:
        kpa, celsius, humidity = _air(inputs)
        dry = dry_kpa(kpa, celsius, humidity)
        density = density_kg_per_m3(kpa, celsius, humidity)
        altitude = density_altitude_m(density)
        height = f"{round(altitude / 10) * 10} m"
        feet = f"that altitude is {round(convert(altitude, 'm', 'ft') / 50) * 50} ft"
        by_iso = correction(Standard.ISO_1585, *_air(inputs))
        share = f": {by_iso.share_percent:.0f} % power" if by_iso.in_band else ""
        about = "" if outside_of(inputs).origin is PressureOrigin.MEASURED else "about "
        low, high = _density_band(inputs)
        heights = sorted(round(density_altitude_m(one) / 10) * 10 for one in (low, high))
        return Answered(
            f"{density:.3f} kg/m3 ({low:.2f} to {high:.2f}), as the standard air at {height} "
            f"({heights[0]} to {heights[1]})",
            f"air as at {about}{height}{share}",
            (),
            (
                outside_words(outside_of(inputs)),
                feet,
                f"the band: thermometer within {THERMOMETER_K:g} C, humidity within "
                f"{HYGROMETER_PERCENT:g} %, air outside within {outside_of(inputs).error_kpa * 10:.0f} hPa",
            ),
            (
                f"e = {humidity:g} % of the saturation at {celsius:g} C = {kpa - dry:.3f} kPa",
                f"({kpa:.2f} kPa - 0.378 x {kpa - dry:.3f} kPa) / (0.287 kJ/(kg K) x "
                f"{celsius + 273.15:.2f} K) = {density:.3f} kg/m3",
            ),
        )

    return told(inputs, "density", "density", _needs(inputs), DENSITY, make, ("reduced",))


def _density_band(inputs: Inputs) -> tuple[float, float]:
    """Return the least and greatest density that the instruments leave open."""
    kpa, celsius, humidity = _air(inputs)
    return band(
        lambda one: density_kg_per_m3(one["kpa"], one["air"], one["humidity"]),
        {"kpa": kpa, "air": celsius, "humidity": humidity},
        {"kpa": outside_of(inputs).error_kpa, "air": THERMOMETER_K, "humidity": HYGROMETER_PERCENT},
        {"humidity": (0.0, 100.0)},
    )


def _standard(inputs: Inputs) -> Answer:
    def make() -> Answered:
        kpa, celsius, humidity = _air(inputs)
        height = geopotential_m(inputs.amount("altitude", "m"))
        warmer = celsius - temperature_at_altitude_c(height)
        share = 100.0 * density_kg_per_m3(kpa, celsius, humidity) / density_at_altitude_kg_per_m3(height)
        said = f"{share:.0f} %"
        steps = (
            f"pressure as at {round(pressure_altitude_m(kpa) / 10) * 10} m, {warmer:+.0f} C to the "
            "standard there",
            f"density now / standard density at {height:.0f} m = {said}",
        )
        return Answered(f"{said} of the standard density at that altitude", steps=steps)

    needs = ("air", "humidity", "altitude")
    return told(inputs, "standard", "against standard air", needs, DENSITY, make, ("air_pressure", "reduced"))


def _power(inputs: Inputs, standard: Standard) -> Answer:
    def make() -> Answered:
        air = _air(inputs)
        found, dry = correction(standard, *air), dry_kpa(*air)
        more = (outside_words(outside_of(inputs)),)
        if not found.in_band:
            return Answered(
                f"no figure: factor {found.factor:.2f} is {_band(found)}",
                more=more,
                steps=(f"factor, with {dry:.2f} kPa dry and {air[1]:g} C = {found.factor:.2f}",),
            )
        said = f"{found.share_percent:.1f} % of the rated power"
        steps = [f"factor, with {dry:.2f} kPa dry and {air[1]:g} C = {found.factor:.3f}"]
        if inputs.known("power"):
            rated = inputs.amount("power", "kW")
            kw = figures.figure(expected_power_kw(rated, found), 1)
            said = f"{kw} kW of {figures.figure(rated, 1)} kW"
            steps.append(f"{figures.figure(rated, 1)} kW / {found.factor:.3f} = {kw} kW")
        else:
            steps.append(f"100 % / {found.factor:.3f} = {found.share_percent:.1f} %")
        return Answered(f"{said}: factor {found.factor:.3f}, {_band(found)}", more=more, steps=tuple(steps))

    label = f"power, {standard.value.removesuffix(' (1990)')}"
    return told(inputs, _KEYS[standard], label, _needs(inputs), POWER[standard], make, ("power", "reduced"))


def _band(found: Correction) -> str:
    band = BANDS[found.standard]
    if band is None:
        return "no band is named"
    held = "within" if found.in_band else "outside"
    return f"{held} {band[0]:g} to {band[1]:g}"
