"""What is asked of the air: the weather, the track, and how fast one rides through it."""

from decimal import Decimal
from typing import Final

from paddock_tui.advice.about import About
from paddock_tui.advice.air import ALTITUDE, MEASURED, filled_air
from paddock_tui.advice.calculators import FilledInput, Input, Inputs
from paddock_tui.calc.comfort import CHILL_TABLE_KM_H
from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.shapes import Amount

AIR = Input("air", "air", c.AIR_TEMPERATURE, "in the shade", "air temperature")
HUMIDITY = Input("humidity", "humidity", c.HUMIDITY, "relative")
REDUCED = Input(
    "reduced",
    "forecast air pressure",
    c.AIR_PRESSURE,
    "reduced to the sea; used with the altitude where none is measured",
)
WET_BULB = Input("wet_bulb", "wet bulb", Amount("temperature", "C", 0, 50), "wet thermometer, swung")
TRACK = Input("track", "track", c.TRACK_TEMPERATURE, "of the surface, in the shade", "track temperature")
WIND = Input("wind", "wind", c.WIND)
RIDING = Input("riding", "riding speed", Amount("speed", "km/h", 0, 300), "through still air")
POWER = Input("power", "rated power", c.POWER, "as its maker states it")

INPUTS: Final = (AIR, HUMIDITY, MEASURED, ALTITUDE, REDUCED, WET_BULB, TRACK, WIND, RIDING, POWER)


def filled_weather(about: About) -> dict[str, FilledInput]:
    """Fill weather and track from the session, the altitude from its venue, the power from the bike."""
    session, bike, place = about.session, about.situation.bike, about.place
    found = filled_air(about)
    found["riding"] = FilledInput(
        Quantity(Decimal(int(CHILL_TABLE_KM_H)), "km/h"), "assumed: the fastest of the published table"
    )
    for key, value in (
        ("air", session.air),
        ("humidity", session.humidity),
        ("track", session.track),
        ("wind", session.wind),
    ):
        if isinstance(value, Quantity):
            found[key] = FilledInput(value, place)
    if bike is not None and bike.drive.power is not None:
        found["power"] = FilledInput(bike.drive.power, f"bike {about.id_of('bike')}")
    return found


def pressure_needs(inputs: Inputs) -> tuple[str, ...]:
    """Name the inputs that tell the pressure: measured, or the altitude; sea level is not assumed here."""
    return (
        ("air_pressure",) if inputs.known("air_pressure") or not inputs.known("altitude") else ("altitude",)
    )
