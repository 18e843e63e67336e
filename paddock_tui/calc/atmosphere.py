"""The standard atmosphere by altitude, and the altitude that a pressure or a density stands for.

Geopotential altitude H from -500 to 11000 m: T = 288.15 - 0.0065 H, p after ISO 2533:1975 (ICAO Doc 7488),
rho = p / (287.05287 T). A map's altitude may be taken for H: at 3000 m the difference is 1.4 m, or 13 Pa.
"""

import math
from typing import Final

from paddock_tui.calc.errors import within
from paddock_tui.calc.standard_air import SEA_LEVEL_KPA, pressure_at_altitude_kpa

GAS_CONSTANT_J_PER_KG_K: Final = 287.05287
"""Specific gas constant of dry air. Source: ISO 2533:1975."""

_EARTH_M = 6356766.0
_SEA_LEVEL_K, _LAPSE_K_PER_M = 288.15, 0.0065
_SEA_LEVEL_DENSITY = 1.225
_PRESSURE_EXPONENT = 5.25588
_SCALE_M = _SEA_LEVEL_K / _LAPSE_K_PER_M
_LOW_M, _HIGH_M = -500.0, 11000.0


def geopotential_m(geometric_m: float) -> float:
    """Geopotential altitude in m of a height above the sea in m: H = r Z / (r + Z), r = 6356766 m."""
    height_m = within("height above the sea", geometric_m, _LOW_M, _HIGH_M, "m")
    return _EARTH_M * height_m / (_EARTH_M + height_m)


def temperature_at_altitude_c(altitude_m: float) -> float:
    """Return the temperature of the standard atmosphere in C at a geopotential altitude."""
    return 15.0 - _LAPSE_K_PER_M * within("altitude", altitude_m, _LOW_M, _HIGH_M, "m")


def density_at_altitude_kg_per_m3(altitude_m: float) -> float:
    """Return the density of the standard atmosphere in kg/m3 at a geopotential altitude."""
    kelvin = temperature_at_altitude_c(altitude_m) + 273.15
    return pressure_at_altitude_kpa(altitude_m) * 1000.0 / (GAS_CONSTANT_J_PER_KG_K * kelvin)


def pressure_altitude_m(pressure_kpa: float) -> float:
    """Return the altitude in m at which the standard atmosphere has this pressure: 22.6 to 107.5 kPa."""
    kpa = within("air pressure", pressure_kpa, 22.6, 107.5, "kPa")
    return _SCALE_M * (1.0 - math.pow(kpa / SEA_LEVEL_KPA, 1.0 / _PRESSURE_EXPONENT))


def density_altitude_m(density_kg_per_m3: float) -> float:
    """Return the altitude in m at which the standard atmosphere has this density: 0.36 to 1.5 kg/m3.

    44330.8 (1 - (rho / 1.225)^0.234969), with rho of the air as it is, its vapour included. Below zero
    where the air is denser than the standard's at the sea. Source: ISO 2533:1975, inverted.
    """
    density = within("air density", density_kg_per_m3, 0.36, 1.5, "kg/m3")
    return _SCALE_M * (1.0 - math.pow(density / _SEA_LEVEL_DENSITY, 1.0 / (_PRESSURE_EXPONENT - 1.0)))


def station_pressure_kpa(reduced_kpa: float, altitude_m: float) -> float:
    """Return the pressure at an altitude in kPa from one that was reduced to the sea, as a forecast gives it.

    The standard atmosphere is moved to the altitude at which it has the reduced pressure, as an altimeter's
    setting is. Source: the altimeter setting of ICAO Doc 7488; a forecast's own reduction differs a little.
    """
    sea_kpa = within("pressure reduced to the sea", reduced_kpa, 85.0, 110.0, "kPa")
    up_k = _LAPSE_K_PER_M * within("altitude", altitude_m, _LOW_M, 5000.0, "m")
    share = math.pow(sea_kpa / SEA_LEVEL_KPA, 1.0 / _PRESSURE_EXPONENT) - up_k / _SEA_LEVEL_K
    return SEA_LEVEL_KPA * math.pow(share, _PRESSURE_EXPONENT)
