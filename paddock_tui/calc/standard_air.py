"""Pressure of the air outside, from altitude alone, for a day without a barometer."""

import math
from typing import Final

from paddock_tui.calc.errors import within

SEA_LEVEL_KPA: Final = 101.325
_SEA_LEVEL_K: Final = 288.15
_LAPSE_K_PER_M: Final = 0.0065
_EXPONENT: Final = 5.25588


def pressure_at_altitude_kpa(geopotential_m: float) -> float:
    """Ambient pressure of the standard atmosphere, absolute, in kPa.

    p = 101.325 (1 - 0.0065 H / 288.15)^5.25588 with H the geopotential altitude in metres (at circuits the
    map's altitude, to a few pascals). Holds from -500 to 11000 m. The weather moves the real figure by some
    3 kPa either way: a barometer is better. Source: ISO 2533:1975.
    """
    height_m = within("altitude", geopotential_m, -500.0, 11000.0, "m")
    return SEA_LEVEL_KPA * math.pow(1.0 - _LAPSE_K_PER_M * height_m / _SEA_LEVEL_K, _EXPONENT)
