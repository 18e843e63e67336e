"""Figures as answers write them: in the preferred units, with the digits of everyday use."""

from paddock_tui.quantities import Quantity, convert, parse, rounded
from paddock_tui.records.common import Units

_DIGITS = {"bar": 2, "psi": 1, "kPa": 0, "C": 0, "F": 0, "km/h": 0, "mph": 0, "kg": 1, "lb": 0}


def pressure(kpa: float, units: Units) -> str:
    """Write a pressure given in kPa."""
    return _in(kpa, "kPa", units.pressure or "bar")


def temperature(celsius: float, units: Units) -> str:
    """Write a temperature given in C."""
    return _in(celsius, "C", units.temperature or "C")


def speed(m_s: float, units: Units) -> str:
    """Write a speed given in m/s."""
    return _in(m_s, "m/s", units.speed or "km/h")


def volume(litres: float, units: Units) -> str:
    """Write a volume given in litres, one digit in litres and two in gallons."""
    unit = units.volume or "l"
    return f"{rounded(convert(litres, 'l', unit), 1 if unit == 'l' else 2)} {unit}"


def distance(km: float, units: Units) -> str:
    """Write a distance given in km."""
    unit = units.distance or "km"
    return f"{rounded(convert(km, 'km', unit), 1)} {unit}"


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
