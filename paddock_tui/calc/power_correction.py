"""Power corrected for the air: what an engine without a blower gives today of what it was rated at.

A factor multiplies observed power to give that at the standard's reference air; rated power over the factor
is what to expect on the day. Each standard has its own reference, so that the figures are never mixed.
"""

import enum
import math
from collections.abc import Callable
from typing import Final

import attrs

from paddock_tui.calc.errors import above, within
from paddock_tui.calc.moist_air import dry_kpa

_KPA_PER_INHG = 3.386389
_LEAST_C, _MOST_C = -20.0, 55.0


class Standard(enum.Enum):
    """Which standard the rated power was corrected by."""

    SAE_J1349 = "SAE J1349 (1990)"
    ISO_1585 = "ISO 1585"
    DIN_70020 = "DIN 70020"
    SAE_J607 = "SAE J607"


def sae_j1349(dry_pressure_kpa: float, temperature_c: float) -> float:
    """Return the factor 1.180 (99 / pd) sqrt((t + 273) / 298) - 0.18: 25 C, 99 kPa dry, 85 % mechanical
    efficiency.

    Source: SAE J1349, June 1990.
    """
    ratio = (_celsius(temperature_c) + 273.0) / 298.0
    return 1.180 * (99.0 / _dry(dry_pressure_kpa)) * math.sqrt(ratio) - 0.18


def iso_1585(dry_pressure_kpa: float, temperature_c: float) -> float:
    """Return the factor (99 / ps)^1.2 (T / 298)^0.6, spark ignition: 25 C, 99 kPa dry.

    Source: ISO 1585, UN Regulation 85, Directive 95/1/EC; the formula from memory.
    """
    ratio = (_celsius(temperature_c) + 273.0) / 298.0
    return math.pow(99.0 / _dry(dry_pressure_kpa), 1.2) * math.pow(ratio, 0.6)


def din_70020(pressure_kpa: float, temperature_c: float) -> float:
    """Return the factor (101.325 / p) sqrt((t + 273) / 293): 20 C, and the whole pressure, vapour included.

    Source: DIN 70020, from memory.
    """
    return 101.325 / _dry(pressure_kpa) * math.sqrt((_celsius(temperature_c) + 273.0) / 293.0)


def sae_j607(dry_pressure_kpa: float, temperature_c: float) -> float:
    """Return the factor (29.92 / pd) sqrt((F + 460) / 520), pd in inches of mercury: 60 F, 29.92 inHg dry.

    Source: SAE J607, withdrawn, still found on printouts as "STD".
    """
    fahrenheit = _celsius(temperature_c) * 1.8 + 32.0
    return 29.92 / (_dry(dry_pressure_kpa) / _KPA_PER_INHG) * math.sqrt((fahrenheit + 460.0) / 520.0)


BANDS: Final[dict[Standard, tuple[float, float] | None]] = {
    Standard.SAE_J1349: (0.95, 1.05),
    Standard.ISO_1585: (0.93, 1.07),
    Standard.DIN_70020: None,
    Standard.SAE_J607: None,
}
"""Factors within which a standard holds; SAE's 5 % from memory, None where it names no band."""

_DRY: dict[Standard, Callable[[float, float], float]] = {
    Standard.SAE_J1349: sae_j1349,
    Standard.ISO_1585: iso_1585,
    Standard.SAE_J607: sae_j607,
}


@attrs.frozen
class Correction:
    """The factor of a standard, and its band (None where it has none)."""

    standard: Standard
    factor: float

    @property
    def in_band(self) -> bool:
        """Whether the standard itself holds at this factor."""
        band = BANDS[self.standard]
        return band is None or band[0] <= self.factor <= band[1]

    @property
    def share_percent(self) -> float:
        """Per cent of the rated power to expect."""
        return 100.0 / self.factor


def correction(
    standard: Standard, pressure_kpa: float, temperature_c: float, humidity_percent: float
) -> Correction:
    """Return the factor of a standard for air with its vapour, 50 to 110 kPa, -20 to 55 C."""
    if standard is Standard.DIN_70020:
        return Correction(standard, din_70020(pressure_kpa, temperature_c))
    dry = dry_kpa(pressure_kpa, temperature_c, humidity_percent)
    return Correction(standard, _DRY[standard](dry, temperature_c))


def expected_power_kw(rated_kw: float, found: Correction) -> float:
    """Power in kW to expect on the day: rated power over the factor."""
    return above("rated power", rated_kw, 0.0, 300.0, "kW") / found.factor


def _dry(pressure_kpa: float) -> float:
    return within("air pressure", pressure_kpa, 50.0, 110.0, "kPa")


def _celsius(temperature_c: float) -> float:
    return within("air temperature", temperature_c, _LEAST_C, _MOST_C, "C")
