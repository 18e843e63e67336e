"""The pressure of the air outside as the calculators take it: measured, a forecast's, or the altitude's."""

from paddock_tui.advice.about import About
from paddock_tui.advice.calculators import FilledInput, Input, Inputs
from paddock_tui.calc.outside_pressure import AirMoves, AirObserved, OutsidePressure, outside_pressure
from paddock_tui.facts.outside_pressure import near_reading, observed
from paddock_tui.records import common as c

MEASURED = Input("air_pressure", "air pressure", c.AIR_PRESSURE, "at the venue, not reduced to sea level")
ALTITUDE = Input("altitude", "altitude", c.ALTITUDE, "above sea level; used where no air pressure is known")


def air_about(about: About) -> AirObserved:
    """Return what session and venue say of the pressure outside, without readings of other sessions."""
    return observed(about.session, about.id_of("venue"), about.situation.venue)


def filled_air(about: About) -> dict[str, FilledInput]:
    """Fill air pressure and altitude from the session and its venue, else the day's last reading there."""
    found: dict[str, FilledInput] = {}
    near = near_reading(air_about(about), about.history.past, AirMoves.of(about.situation.limits))
    if about.session.air_pressure is not None:
        found["air_pressure"] = FilledInput(about.session.air_pressure, about.place)
    elif near is not None:
        found["air_pressure"] = FilledInput(near[0], f"session {near[1]}, the same day", earlier=True)
    venue = about.situation.venue
    if venue is not None and venue.altitude is not None:
        found["altitude"] = FilledInput(venue.altitude, f"venue {about.id_of('venue')}")
    return found


def air_of(inputs: Inputs, measured: str = "air_pressure", altitude: str = "altitude") -> AirObserved:
    """Return what the inputs say of the pressure outside; "reduced" is a forecast's, where it is declared."""
    read = inputs.amount(measured, "kPa") if inputs.value(measured) is not None else None
    earlier = inputs.is_earlier(measured)
    return AirObserved(
        None if earlier else read,
        inputs.amount(altitude, "m") if inputs.value(altitude) is not None else None,
        read if earlier else None,
        inputs.amount("reduced", "kPa") if inputs.value("reduced") is not None else None,
    )


def outside_of(inputs: Inputs) -> OutsidePressure:
    """Return the pressure of the air outside, with what it rests on."""
    return outside_pressure(air_of(inputs), AirMoves.of(inputs.limits))


def outside_words(found: OutsidePressure) -> str:
    """Say which air pressure is used and why."""
    return f"air outside: {found.words()}"
