"""Rules about the air as it was read: a pressure that cannot be of the altitude of its venue."""

from paddock_tui.facts.outside_pressure import PressureAtOdds
from paddock_tui.limits import Limits
from paddock_tui.limits.pressures import AIR_AT_ODDS
from paddock_tui.rules.core import NOTE, RaisedFinding, Remedy, Result, SetValue, rule


@rule(
    "air-pressure-not-of-the-altitude",
    NOTE,
    at="session:air_pressure",
    source="ISO 2533; the band of the weather: paddock practice",
    limits=(AIR_AT_ODDS,),
)
def air_pressure_not_of_the_altitude(pressure_at_odds: PressureAtOdds, limits: Limits) -> Result:
    """An air pressure that contradicts the altitude: most likely a forecast's, reduced to the sea."""
    odds = pressure_at_odds
    at = f"{odds.reading} cannot be the air's pressure at {odds.altitude}"
    usual = f"Usual at that altitude is {odds.usual_kpa * 10:.0f} hPa, {limits[AIR_AT_ODDS]:.0f} up or down; "
    usual += "until it is clear, that is used."
    if odds.meant_kpa is None:
        return RaisedFinding(
            message=f"{at}: one of the two is wrong.",
            why=usual,
            remedy=Remedy("Read the barometer again, and look up the venue's altitude."),
        )
    there = f"{odds.meant_kpa * 10:.0f} hPa"
    return RaisedFinding(
        message=f"{odds.reading} is not the air at {odds.altitude}: it seems reduced to sea level.",
        why=f"{usual} A forecast's figure is as if at the sea: that would be {there} here.",
        remedy=Remedy(
            f"If it is the forecast's, enter {there}; else read the barometer, or correct the altitude.",
            (SetValue(("air_pressure",), there, "session"),),
        ),
    )
