"""Gas shut in at constant volume: pressure and temperature, gauge and absolute.

Ideal gas, p2 / p1 = T2 / T1 in absolute pressure and kelvin. Over 40 to 80 K a real gas
ends 0.1 to 0.2 % higher, 0.7 kPa or less at tyre pressures, and dry air and nitrogen are alike. A tyre grows
a little when it is hot and the gas is not equally warm throughout, so that every figure is an estimate.
Source: the gas law, as in OpenStax College Physics 2e, section 13.3.
"""

import math
from typing import Final

from paddock_tui.calc.errors import above, within
from paddock_tui.calc.standard_air import SEA_LEVEL_KPA

ZERO_C_IN_K: Final = 273.15

_LEAST_C, _MOST_C = -40.0, 150.0
_MOST_KPA_ABS = 1000.0
_LEAST_AMBIENT_KPA, _MOST_AMBIENT_KPA = 20.0, 110.0

_CRITICAL_K = 647.096
_CRITICAL_KPA = 22064.0
_SATURATION = (
    (-7.85951783, 1.0),
    (1.84408259, 1.5),
    (-11.7866497, 3.0),
    (22.6807411, 3.5),
    (-15.9618719, 4.0),
    (1.80122502, 7.5),
)


def absolute_kpa(pressure_kpa_gauge: float, ambient_kpa: float = SEA_LEVEL_KPA) -> float:
    """Return the absolute pressure in kPa: gauge plus the pressure of the air outside at the time of the
    reading.
    """
    ambient = within("air pressure outside", ambient_kpa, _LEAST_AMBIENT_KPA, _MOST_AMBIENT_KPA, "kPa")
    return _sound_kpa_abs(pressure_kpa_gauge + ambient)


def gauge_kpa(pressure_kpa_abs: float, ambient_kpa: float = SEA_LEVEL_KPA) -> float:
    """Gauge pressure in kPa: what a gauge shows where the air outside has `ambient_kpa`."""
    ambient = within("air pressure outside", ambient_kpa, _LEAST_AMBIENT_KPA, _MOST_AMBIENT_KPA, "kPa")
    return _sound_kpa_abs(pressure_kpa_abs) - ambient


def kelvin(temperature_c: float) -> float:
    """Return the temperature in kelvin; refused outside -40 to 150 C, where the estimates of this module
    end.
    """
    return within("temperature", temperature_c, _LEAST_C, _MOST_C, "C") + ZERO_C_IN_K


def pressure_after_kpa_abs(before_kpa_abs: float, before_c: float, after_c: float) -> float:
    """Return the absolute pressure in kPa after the gas went from one temperature to another: p2 = p1 T2
    / T1.
    """
    return _sound_kpa_abs(_sound_kpa_abs(before_kpa_abs) * kelvin(after_c) / kelvin(before_c))


def temperature_after_c(before_kpa_abs: float, before_c: float, after_kpa_abs: float) -> float:
    """Return the temperature in C that the gas must have for its absolute pressure to have moved so: T2 =
    T1 p2 /
    p1.
    """
    after_k = kelvin(before_c) * _sound_kpa_abs(after_kpa_abs) / _sound_kpa_abs(before_kpa_abs)
    return within("tyre air temperature that follows", after_k - ZERO_C_IN_K, _LEAST_C, _MOST_C, "C")


def saturation_kpa(temperature_c: float) -> float:
    """Return the vapour pressure over liquid water in kPa, 0 to 150 C.

    ln(p/pc) = (Tc/T)(a1 t + a2 t^1.5 + a3 t^3 + a4 t^3.5 + a5 t^4 + a6 t^7.5), t = 1 - T/Tc, within 0.1 %.
    Source: Wagner and Pruss 2002 (IAPWS), coefficients from memory.
    """
    temperature_k = within("temperature over water", temperature_c, 0.0, _MOST_C, "C") + ZERO_C_IN_K
    tau = 1.0 - temperature_k / _CRITICAL_K
    powers = sum(factor * tau**power for factor, power in _SATURATION)
    return _CRITICAL_KPA * math.exp(_CRITICAL_K / temperature_k * powers)


def wet_pressure_after_kpa_abs(before_kpa_abs: float, before_c: float, after_c: float) -> float:
    """Upper bound in kPa absolute where liquid water stays in the tyre at both temperatures (0 to 150 C).

    The dry part follows the gas law, the vapour its saturation pressure (Dalton). Air that merely was damp
    when it went in follows the gas law alone.
    """
    dry_kpa = above("dry part of the pressure", before_kpa_abs - saturation_kpa(before_c), 0.0, None, "kPa")
    return _sound_kpa_abs(dry_kpa * kelvin(after_c) / kelvin(before_c) + saturation_kpa(after_c))


def _sound_kpa_abs(pressure_kpa_abs: float) -> float:
    return above("absolute pressure", pressure_kpa_abs, 0.0, _MOST_KPA_ABS, "kPa")
