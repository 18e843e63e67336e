"""Ice: vapour over ice, the frost point, and whether a surface may carry frost or ice.

Over ice e = 0.6112 exp(22.46 t / (272.62 + t)) kPa, -65 to 0 C; humidity is over water, as forecasts give
it, also below zero. Below zero the frost point lies above the dew point, so that hoar settles on a surface
that is not yet at the dew point. Nothing here knows a surface that nobody measured: shade, bridges and the
end of the night are colder than the air at two metres. Source: WMO-No. 8 (CIMO Guide), annex 4.B.
"""

import enum
import math
from typing import Final

import attrs

from paddock_tui.calc.errors import above, within
from paddock_tui.calc.moist_air import dew_point_c, vapour_kpa

LEAST_C: Final = -65.0

_A, _B, _SCALE_KPA = 22.46, 272.62, 0.6112


class Ice(enum.Enum):
    """What may be on the surface."""

    FREEZES = "what is wet freezes"
    HOAR = "frost settles"
    BLACK_ICE = "ice is likely in shade and on bridges"
    NONE = "no ice by these figures"


@attrs.frozen
class IceRisk:
    """What to expect, the dew or frost point in C, and whether the surface was measured."""

    ice: Ice
    settles_at_c: float
    measured: bool


def saturation_over_ice_kpa(temperature_c: float) -> float:
    """Return the vapour pressure in kPa over ice with no air above it, -65 to 0 C."""
    celsius = within("temperature over ice", temperature_c, LEAST_C, 0.0, "C")
    return _SCALE_KPA * math.exp(_A * celsius / (_B + celsius))


def frost_point_c(temperature_c: float, humidity_percent: float) -> float:
    """Return the frost point in C of air whose vapour settles below zero.

    Raises OutOfRange where it settles as dew, above zero.
    """
    humidity = within("humidity", humidity_percent, 1.0, 100.0, "%")
    vapour = vapour_kpa(temperature_c, humidity)
    logarithm = math.log(above("vapour pressure", vapour, 0.0, None, "kPa") / _SCALE_KPA)
    return within("frost point", _B * logarithm / (_A - logarithm), -80.0, 0.0, "C")


def settles_at_c(temperature_c: float, humidity_percent: float) -> float:
    """Return where vapour settles: the dew point from zero on, the frost point below it."""
    dew = dew_point_c(temperature_c, humidity_percent)
    return dew if dew >= 0.0 else frost_point_c(temperature_c, humidity_percent)


def ice_risk(
    air_c: float, humidity_percent: float, surface_c: float | None, wet: bool, ice_below_c: float
) -> IceRisk:
    """Judge ice from air, humidity and the surface's temperature, None where nobody measured it.

    `wet` says that water lies there; `ice_below_c` is the air temperature under which ice is taken as likely
    where it is wet and no surface was measured.
    """
    point = settles_at_c(air_c, humidity_percent)
    if surface_c is None:
        return IceRisk(Ice.BLACK_ICE if wet and air_c < ice_below_c else Ice.NONE, point, False)
    surface = within("track temperature", surface_c, LEAST_C, 80.0, "C")
    if surface <= 0.0 and wet:
        return IceRisk(Ice.FREEZES, point, True)
    if surface <= 0.0 and surface <= point:
        return IceRisk(Ice.HOAR, point, True)
    near = wet and min(surface, air_c) < ice_below_c
    return IceRisk(Ice.BLACK_ICE if near else Ice.NONE, point, True)
