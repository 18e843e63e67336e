"""How heat and cold feel to a person in the open: heat index and wind chill.

Neither was made for a rider: the heat index is for shade, light clothing and a light wind, so that leathers
make it worse; the wind chill is for a walking face, and riding faster than its table is an extrapolation.
"""

import math
from typing import Final

import attrs

from paddock_tui.calc.errors import within

CHILL_TABLE_KM_H: Final = 80.0
"""The fastest wind of the published table. Source: Environment Canada 2001."""

_CHILL_FROM_KM_H, _CHILL_TO_C = 4.8, 10.0
_ROTHFUSZ_FROM_F = 80.0
_CHART_F = (80.0, 112.0)
_CHART_TO_F = 137.0
"""The hottest that the chart prints. From memory."""
_TERMS = (
    (-42.379, 0, 0),
    (2.04901523, 1, 0),
    (10.14333127, 0, 1),
    (-0.22475541, 1, 1),
    (-0.00683783, 2, 0),
    (-0.05481717, 0, 2),
    (0.00122874, 2, 1),
    (0.00085282, 1, 2),
    (-0.00000199, 2, 2),
)


@attrs.frozen
class HeatIndex:
    """What the heat feels like in C; `charted`: within what the published chart takes and prints."""

    celsius: float
    charted: bool


@attrs.frozen
class WindChill:
    """What the cold feels like, in C; `tabled`: no faster than the published table."""

    celsius: float
    tabled: bool


def heat_index(temperature_c: float, humidity_percent: float) -> HeatIndex:
    """Return the heat index in C, 20 to 50 C.

    The simple form averaged with the temperature; from 80 F on the polynomial of Rothfusz with its
    adjustments for very dry and very damp air. Chart: 80 to 112 F, and to 137 F of what is felt.
    Source: Rothfusz 1990, NWS SR 90-23.
    """
    fahrenheit = within("air temperature", temperature_c, 20.0, 50.0, "C") * 1.8 + 32.0
    humidity = within("humidity", humidity_percent, 0.0, 100.0, "%")
    simple = 0.5 * (fahrenheit + 61.0 + 1.2 * (fahrenheit - 68.0) + 0.094 * humidity)
    found = (simple + fahrenheit) / 2.0
    if found >= _ROTHFUSZ_FROM_F:
        found = _rothfusz(fahrenheit, humidity) + _adjustment(fahrenheit, humidity)
    charted = _CHART_F[0] <= round(fahrenheit, 9) <= _CHART_F[1] and found <= _CHART_TO_F
    return HeatIndex((found - 32.0) / 1.8, charted)


def wind_chill(temperature_c: float, wind_km_h: float) -> WindChill:
    """Wind chill in C: 13.12 + 0.6215 T - 11.37 V^0.16 + 0.3965 T V^0.16, V at 10 m height in km/h.

    Defined from -50 to 10 C and from 4.8 km/h; its table ends at 80 km/h, and up to 300 km/h the formula is
    carried on. It takes the wind at the face for two thirds of V (from memory), so that riding at V through
    still air chills more than it says. Source: Environment Canada and NWS 2001.
    """
    celsius = within("air temperature", temperature_c, -50.0, _CHILL_TO_C, "C")
    power = math.pow(within("wind", wind_km_h, _CHILL_FROM_KM_H, 300.0, "km/h"), 0.16)
    felt = 13.12 + 0.6215 * celsius - 11.37 * power + 0.3965 * celsius * power
    return WindChill(felt, wind_km_h <= CHILL_TABLE_KM_H)


def _rothfusz(fahrenheit: float, humidity: float) -> float:
    return sum(factor * fahrenheit**warm * humidity**damp for factor, warm, damp in _TERMS)


def _adjustment(fahrenheit: float, humidity: float) -> float:
    if humidity < 13.0 and 80.0 <= fahrenheit <= 112.0:
        return -(13.0 - humidity) / 4.0 * math.sqrt((17.0 - abs(fahrenheit - 95.0)) / 17.0)
    if humidity > 85.0 and 80.0 <= fahrenheit <= 87.0:
        return (humidity - 85.0) / 10.0 * (87.0 - fahrenheit) / 5.0
    return 0.0
