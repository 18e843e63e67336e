"""What heat and cold do to whoever rides, in plain words; figure and formula stand behind them."""

from collections.abc import Iterable
from typing import Final

from paddock_tui.advice import figures
from paddock_tui.advice.calculators import Answer, Answered, Inputs, Method, told
from paddock_tui.calc.comfort import CHILL_TABLE_KM_H, heat_index, wind_chill

HEAT = Method(
    "heat index: from 80 F the polynomial of Rothfusz with its adjustments, below it the simple form",
    "shade, light clothing, a light wind; sun adds up to 8 C, leathers more: they make heat worse",
    "air from 20 C; figures only within the published chart, air of 80 to 112 F (27 to 44 C)",
    "Rothfusz 1990, NWS SR 90-23; steps at 80, 90 and 103 F: the NWS's caution, extreme caution, danger",
)
CHILL = Method(
    "13.12 + 0.6215 T - 11.37 V^0.16 + 0.3965 T V^0.16, V in km/h",
    "a bare face, dry; gloves and screen help, wet leathers do not",
    "air of -50 to 10 C, from 4.8 km/h; the table ends at 80 km/h, faster is said in words only",
    "Environment Canada and NWS 2001; that hands go first: paddock practice, unpublished",
)
LEATHERS: Final = "leathers make it worse"
_STEPS_C: Final = (
    (39.4, "very hot", "very hot in leathers: rest, shade"),
    (32.2, "hot", ""),
    (26.7, "warm", ""),
)
_HELP: Final = "drink, shade"
_CHILL_TO_C, _HEAT_FROM_C = 10.0, 20.0
_CALM_KM_H = 4.8


def comfort(inputs: Inputs) -> Iterable[Answer]:
    """Return what the heat does, and the cold at speed and while waiting in the wind."""
    yield _heat(inputs)
    yield _cold(inputs, "riding", "cold, riding", "cold hands likely at speed")
    yield _cold(inputs, "wind", "cold, waiting", "keep warm until the call")


def _heat(inputs: Inputs) -> Answer:
    def make() -> Answered:
        celsius = inputs.amount("air", "C")
        air = figures.temperature(celsius, inputs.units)
        if celsius < _HEAT_FROM_C:
            return Answered(f"no heat at {air}; {LEATHERS}", steps=(f"no index begins under 20 C: {air}",))
        known = inputs.known("humidity")
        humidity = inputs.amount("humidity", "%") if known else 0.0
        found = heat_index(celsius, humidity)
        more = () if known else ("humidity is not known: taken as dry air, the least that it can be",)
        word, short = next(
            ((word, short) for from_c, word, short in _STEPS_C if found.celsius >= from_c), ("not hot", "")
        )
        advice = f"; {_HELP}" if word != "not hot" else ""
        said = f"{word}: {LEATHERS}{advice}"
        short = short or (f"{word} in leathers: {_HELP}" if advice else "")
        if not found.charted and found.celsius >= _STEPS_C[-1][0]:
            beyond = "beyond the published chart, so no figure is given"
            return Answered(
                f"{said} ({beyond})", short, (), more, steps=(f"T = {air}, {humidity:g} %: {beyond}",)
            )
        least = "" if known else "at least "
        figure = figures.temperature(found.celsius, inputs.units)
        step = f"index of T = {air} and {humidity:g} % = {figure}"
        return Answered(f"{said} (heat index {least}{figure})", short, (), more, steps=(step,))

    return told(inputs, "heat", "heat", ("air",), HEAT, make, ("humidity",))


def _cold(inputs: Inputs, by: str, label: str, words: str) -> Answer:
    def make() -> Answered:
        celsius, wind = inputs.amount("air", "C"), inputs.amount(by, "km/h")
        air = figures.temperature(celsius, inputs.units)
        if celsius > _CHILL_TO_C:
            mild = (
                "not cold by the index" if celsius >= _HEAT_FROM_C else "cool: wind at speed still takes heat"
            )
            return Answered(f"{mild} at {air}", steps=(f"the index ends at 10 C: {air}",))
        if wind < _CALM_KM_H:
            return Answered(
                f"calm: as cold as the air, {air}", steps=(f"{wind:g} km/h is under 4.8 km/h: {air}",)
            )
        found = wind_chill(celsius, min(wind, CHILL_TABLE_KM_H))
        felt = figures.temperature(found.celsius, inputs.units)
        at = figures.speed(inputs.amount(by, "m/s"), inputs.units)
        over = "" if wind <= CHILL_TABLE_KM_H else "below "
        power = min(wind, CHILL_TABLE_KM_H)
        step = (
            f"13.12 + 0.6215 x {celsius:g} - 11.37 x {power:g}^0.16 + 0.3965 x {celsius:g} x {power:g}^0.16 "
            f"= {found.celsius:.1f} C{' at 80 km/h' if over else ''}: {felt}"
        )
        return Answered(f"{words} (wind chill {over}{felt} at {at})", words, steps=(step,))

    return told(inputs, f"cold_{by}", label, ("air", by), CHILL, make)
