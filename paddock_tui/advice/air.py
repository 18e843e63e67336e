"""The pressure of the air outside: measured, else from the venue's altitude, else that of sea level."""

from paddock_tui.advice.about import About
from paddock_tui.advice.calculators import FilledInput, Input, Inputs
from paddock_tui.records import common as c
from paddock_tui.trade.standard_air import SEA_LEVEL_KPA, pressure_at_altitude_kpa

MEASURED = Input("air_pressure", "air pressure", c.AIR_PRESSURE, "at the venue, not reduced to sea level")
ALTITUDE = Input("altitude", "altitude", c.ALTITUDE, "above sea level; used where no air pressure is known")


def filled_air(about: About) -> dict[str, FilledInput]:
    """Fill air pressure and altitude from the session and its venue."""
    found: dict[str, FilledInput] = {}
    if about.session.air_pressure is not None:
        found["air_pressure"] = FilledInput(about.session.air_pressure, about.place)
    venue = about.situation.venue
    if venue is not None and venue.altitude is not None:
        found["altitude"] = FilledInput(venue.altitude, f"venue {about.id_of('venue')}")
    return found


def outside_kpa(inputs: Inputs, measured: str = "air_pressure", altitude: str = "altitude") -> float:
    """Return the pressure of the air outside in kPa."""
    if inputs.known(measured):
        return inputs.amount(measured, "kPa")
    if inputs.known(altitude):
        return pressure_at_altitude_kpa(inputs.amount(altitude, "m"))
    return SEA_LEVEL_KPA


def outside_words(inputs: Inputs, measured: str = "air_pressure", altitude: str = "altitude") -> str:
    """Say which air pressure is used and why."""
    kpa = outside_kpa(inputs, measured, altitude)
    if inputs.known(measured):
        why = "as measured"
    elif inputs.known(altitude):
        why = "standard atmosphere at that altitude, ISO 2533; the weather moves it by some 30 hPa"
    else:
        why = "sea level, neither measured nor an altitude known: it hardly matters, it nearly cancels"
    return f"air outside: {kpa * 10:.0f} hPa ({why})"
