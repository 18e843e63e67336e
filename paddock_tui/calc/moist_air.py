"""Moist air: vapour, dew point, density, from pressure, temperature and humidity.

Ideal gases, dry air and vapour each with their own pressure. Saturation over water by the Magnus form,
e = 0.6112 exp(17.62 t / (243.12 + t)) kPa, -45 to 60 C; in air it is some 0.4 % more, by the pressure.
Source: WMO-No. 8 (CIMO Guide), annex 4.B.
"""

import math
from typing import Final

from paddock_tui.calc.atmosphere import GAS_CONSTANT_J_PER_KG_K
from paddock_tui.calc.errors import Inconsistent, above, within

LEAST_C: Final = -45.0
MOST_C: Final = 60.0

_A, _B, _SCALE_KPA = 17.62, 243.12, 0.6112
_VAPOUR_TO_AIR = 0.621945
"""Molar mass of water over that of dry air. Source: ASHRAE Handbook of Fundamentals 2017, chapter 1."""


def saturation_vapour_kpa(temperature_c: float) -> float:
    """Return the vapour pressure in kPa over water with no air above it."""
    celsius = within("air temperature", temperature_c, LEAST_C, MOST_C, "C")
    return _SCALE_KPA * math.exp(_A * celsius / (_B + celsius))


def vapour_kpa(temperature_c: float, humidity_percent: float) -> float:
    """Return the vapour pressure in kPa of air at a relative humidity, 0 to 100 %."""
    humidity = within("humidity", humidity_percent, 0.0, 100.0, "%")
    return saturation_vapour_kpa(temperature_c) * humidity / 100.0


def vapour_in_air_kpa(pressure_kpa: float, temperature_c: float, humidity_percent: float) -> float:
    """Return the vapour pressure in kPa of air at a pressure: times 1.0016 + 0.0000315 p - 0.0074 / p, p
    in kPa.
    """
    kpa = within("air pressure", pressure_kpa, 20.0, 110.0, "kPa")
    return (1.0016 + 3.15e-5 * kpa - 0.0074 / kpa) * vapour_kpa(temperature_c, humidity_percent)


def dry_kpa(pressure_kpa: float, temperature_c: float, humidity_percent: float) -> float:
    """Return the pressure in kPa of the dry part: the whole less that of the vapour."""
    dry = pressure_kpa - vapour_in_air_kpa(pressure_kpa, temperature_c, humidity_percent)
    return above("dry air pressure", dry, 0.0, None, "kPa")


def dew_point_of_vapour_c(vapour_pressure_kpa: float) -> float:
    """Return the temperature in C to which air has to cool, at the same pressure, for its vapour to settle on
    things.
    """
    logarithm = math.log(above("vapour pressure", vapour_pressure_kpa, 0.0, 20.0, "kPa") / _SCALE_KPA)
    return within("dew point", _B * logarithm / (_A - logarithm), -80.0, MOST_C, "C")


def dew_point_c(temperature_c: float, humidity_percent: float) -> float:
    """Dew point in C over water, from a relative humidity of 1 to 100 %."""
    humidity = within("humidity", humidity_percent, 1.0, 100.0, "%")
    return dew_point_of_vapour_c(vapour_kpa(temperature_c, humidity))


def density_kg_per_m3(pressure_kpa: float, temperature_c: float, humidity_percent: float = 0.0) -> float:
    """Return the density in kg/m3: rho = (p - 0.378 e) / (R T). Damp air is the lighter: vapour weighs
    less than
    air.
    """
    vapour = vapour_in_air_kpa(pressure_kpa, temperature_c, humidity_percent)
    dry = dry_kpa(pressure_kpa, temperature_c, humidity_percent)
    kelvin = temperature_c + 273.15
    return (dry + _VAPOUR_TO_AIR * vapour) * 1000.0 / (GAS_CONSTANT_J_PER_KG_K * kelvin)


def humidity_ratio(pressure_kpa: float, temperature_c: float, humidity_percent: float) -> float:
    """Return kilograms of vapour to a kilogram of dry air."""
    vapour = vapour_in_air_kpa(pressure_kpa, temperature_c, humidity_percent)
    return _VAPOUR_TO_AIR * vapour / dry_kpa(pressure_kpa, temperature_c, humidity_percent)


def humidity_from_wet_bulb_percent(temperature_c: float, wet_bulb_c: float, pressure_kpa: float) -> float:
    """Relative humidity in % from a dry and a wet thermometer in moving air, wet bulb from 0 C.

    W = ((2501 - 2.326 tw) Ws(tw) - 1.006 (t - tw)) / (2501 + 1.86 t - 4.186 tw).
    Source: ASHRAE Handbook of Fundamentals 2017, chapter 1, equation 33.
    """
    dry = within("air temperature", temperature_c, 0.0, MOST_C, "C")
    wet = within("wet bulb", wet_bulb_c, 0.0, dry, "C")
    saturated = humidity_ratio(pressure_kpa, wet, 100.0)
    above_zero = (2501.0 - 2.326 * wet) * saturated - 1.006 * (dry - wet)
    ratio = above_zero / (2501.0 + 1.86 * dry - 4.186 * wet)
    if ratio < 0.0:
        raise Inconsistent("wet bulb", "so far below the air that it would be drier than dry")
    vapour = pressure_kpa * ratio / (_VAPOUR_TO_AIR + ratio)
    return min(100.0 * vapour / vapour_in_air_kpa(pressure_kpa, dry, 100.0), 100.0)
