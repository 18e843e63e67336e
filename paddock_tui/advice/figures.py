"""Figures as answers write them: in the preferred units, with the digits of everyday use."""

import math
from collections.abc import Callable

from paddock_tui.quantities import Quantity, convert, parse, rounded
from paddock_tui.records.common import Units

_DIGITS = {"bar": 2, "psi": 1, "kPa": 0, "C": 0, "F": 0, "km/h": 0, "mph": 0, "kg": 1, "lb": 0}


def pressure(kpa: float, units: Units) -> str:
    """Write a pressure given in kPa."""
    return _in(kpa, "kPa", units.pressure or "bar")


_COARSE = {"bar": 0.05, "psi": 0.5, "kPa": 5.0}
_HALF_A_DEGREE_KPA = 0.5


def pressure_coarse(kpa: float, units: Units) -> str:
    """Write a pressure given in kPa that rests on little, to 0.05 bar: rounded up, since air can be let out.

    What half a degree makes is not rounded up for.
    """
    unit = units.pressure or "bar"
    step = _COARSE[unit]
    steps = math.ceil(convert(kpa - _HALF_A_DEGREE_KPA, "kPa", unit) / step - 1e-6)
    return f"{rounded(steps * step, _DIGITS[unit])} {unit}"


def temperature(celsius: float, units: Units) -> str:
    """Write a temperature given in C."""
    return _in(celsius, "C", units.temperature or "C")


def speed(m_s: float, units: Units) -> str:
    """Write a speed given in m/s."""
    return _in(m_s, "m/s", units.speed or "km/h")


def speed_at_most(m_s: float, units: Units) -> str:
    """Write a speed given in m/s that must not be exceeded: rounded down."""
    unit = units.speed or "km/h"
    return f"{math.floor(convert(m_s, 'm/s', unit) + 1e-6)} {unit}"


def metres_at_least(metres: float) -> str:
    """Write a distance given in m that has to be there: rounded up to the metre."""
    return f"{math.ceil(metres - 1e-6)} m"


def volume(litres: float, units: Units) -> str:
    """Write a volume given in litres, one digit in litres and two in gallons."""
    unit = units.volume or "l"
    return f"{rounded(convert(litres, 'l', unit), 1 if unit == 'l' else 2)} {unit}"


def volume_at_most(litres: float, units: Units) -> str:
    """Write a volume given in litres that there is no more of: rounded down."""
    return _directed(litres, units, math.floor)


def volume_at_least(litres: float, units: Units) -> str:
    """Write a volume given in litres that has to be there: rounded up."""
    return _directed(litres, units, math.ceil)


def _directed(litres: float, units: Units, way: Callable[[float], int]) -> str:
    unit = units.volume or "l"
    digits = 1 if unit == "l" else 2
    scale = 10**digits
    return f"{way(round(convert(litres, 'l', unit) * scale, 6)) / scale:.{digits}f} {unit}"


def distance(km: float, units: Units) -> str:
    """Write a distance given in km."""
    unit = units.distance or "km"
    return f"{rounded(convert(km, 'km', unit), 1)} {unit}"


def distance_at_most(km: float, units: Units) -> str:
    """Write a distance given in km that there is no more of: rounded down."""
    unit = units.distance or "km"
    return f"{math.floor(convert(km, 'km', unit) + 1e-6)} {unit}"


def odometer(km: float, units: Units) -> str:
    """Write a distance given in km to the whole km or mile, as it adds up over sessions."""
    unit = units.distance or "km"
    return f"{rounded(convert(km, 'km', unit), 0)} {unit}"


def mass(kg: float, units: Units) -> str:
    """Write a mass given in kg."""
    return _in(kg, "kg", units.mass or "kg")


def millimetres(mm: float) -> str:
    """Write a length in mm, a half shown where there is one."""
    return f"{rounded(mm, 1).removesuffix('.0')} mm"


def missing_mm(mm: float) -> str:
    """Write a length in mm that is missing: rounded up to the tenth."""
    return f"{math.ceil(mm * 10 - 1e-6) / 10:g} mm"


def rate(n_per_mm: float) -> str:
    """Write a spring rate."""
    return f"{rounded(n_per_mm, 1)} N/mm"


def revs(rpm: float) -> str:
    """Write engine revs, to the nearest ten: gauges and tyres are no better."""
    return f"{rounded(rpm / 10, 0)}0 rpm" if rpm >= 5 else "0 rpm"


def figure(number: float, digits: int) -> str:
    """Write a bare number."""
    return rounded(number, digits)


def quantity(text: str) -> Quantity | None:
    """Return a figure written here as a value of a record."""
    found = parse(text)
    return found if isinstance(found, Quantity) else None


def _in(number: float, unit: str, wanted: str) -> str:
    return f"{rounded(convert(number, unit, wanted), _DIGITS[wanted])} {wanted}"
