"""What heat and cold do to whoever rides, in plain words; figure and formula stand behind them."""

from collections.abc import Iterable
from typing import Final

from paddock_tui.advice import figures
from paddock_tui.advice.calculators import Answer, Answered, Inputs, Method, told
from paddock_tui.trade.comfort import heat_index, wind_chill

HEAT = Method(
    "heat index: from 80 F the polynomial of Rothfusz with its adjustments, below it the simple form",
    "shade, light clothing, a light wind; sun adds up to 8 C, leathers more: they make heat worse",
    "air from 20 C; the published chart is for air of 80 to 112 F (27 to 44 C)",
    "Rothfusz 1990, NWS SR 90-23; steps at 80, 90 and 103 F: the NWS's caution, extreme caution, danger",
)
CHILL = Method(
    "13.12 + 0.6215 T - 11.37 V^0.16 + 0.3965 T V^0.16, V in km/h",
    "a bare face, dry; gloves and screen help, wet leathers do not",
    "air of -50 to 10 C, from 4.8 km/h; the table ends at 80 km/h, faster is the formula carried on",
    "Environment Canada and NWS 2001; that hands go first: common practice, no source",
)
LEATHERS: Final = "leathers make it worse"
_STEPS_C: Final = (
    (39.4, "very hot", "very hot in leathers: rest, shade"),
    (32.2, "hot", ""),
    (26.7, "warm", ""),
)
_HELP: Final = "drink, shade"


def comfort(inputs: Inputs) -> Iterable[Answer]:
    """Return what the heat does, and the cold at speed and while waiting in the wind."""
    yield _heat(inputs)
    yield _cold(inputs, "riding", "cold, riding", "cold hands likely at speed")
    yield _cold(inputs, "wind", "cold, waiting in the wind", "keep warm until the call")


def _heat(inputs: Inputs) -> Answer:
    def make() -> Answered:
        known = inputs.known("humidity")
        found = heat_index(inputs.amount("air", "C"), inputs.amount("humidity", "%") if known else 0.0)
        least = "" if known else "at least "
        figure = f"heat index {least}{figures.temperature(found.celsius, inputs.units)}"
        more = () if found.charted else ("outside the published chart: the figure is rough",)
        if not known:
            more = (*more, "humidity is not known: reckoned as dry air, the least that it can be")
        step = next(((word, short) for from_c, word, short in _STEPS_C if found.celsius >= from_c), None)
        if step is None:
            return Answered(f"not hot: {figure}; {LEATHERS}", "", (), more)
        word, short = step
        said = f"{word}: {LEATHERS}; {_HELP}"
        return Answered(f"{said} ({figure})", short or f"{word} in leathers: {_HELP}", (), more)

    return told(inputs, "heat", "heat", ("air",), HEAT, make, ("humidity",))


def _cold(inputs: Inputs, by: str, label: str, words: str) -> Answer:
    def make() -> Answered:
        found = wind_chill(inputs.amount("air", "C"), inputs.amount(by, "km/h"))
        felt = figures.temperature(found.celsius, inputs.units)
        at = figures.speed(inputs.amount(by, "m/s"), inputs.units)
        more = () if found.tabled else ("faster than the published table: the formula is carried on",)
        return Answered(f"{words} (wind chill {felt} at {at})", words, (), more)

    return told(inputs, f"cold_{by}", label, ("air", by), CHILL, make)
