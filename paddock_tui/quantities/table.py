"""The short table: every unit of everyday use, its ways of spelling, and the words that need one more word.

Exact by definition: inch 25.4 mm, pound 0.45359237 kg, US gallon 231 cubic inches, imperial gallon
4.54609 l, standard gravity 9.80665 m/s2, standard atmosphere 101325 Pa, bar 100000 Pa, conventional
millimetre of mercury 13.5951 g/cm3 x standard gravity x 1 mm (NIST SP 811, 2008, Appendix B). hp is
550 lbf ft/s, PS 75 kgf m/s. A year is the Julian year of 365.25 days and a month its twelfth:
ages need no calendar.
"""

import math
from fractions import Fraction

from paddock_tui.quantities.units import Unit

_INCH = Fraction("0.0254")
_FOOT = 12 * _INCH
_MILE = 5280 * _FOOT
_POUND = Fraction("0.45359237")
_G0 = Fraction("9.80665")
_LBF = _POUND * _G0
_LITRE = Fraction(1, 1000)
_US_GALLON = 231 * _INCH**3
_IMP_GALLON = Fraction("4.54609") * _LITRE
_MMHG = Fraction("13595.1") * _G0 / 1000
_PI = Fraction(math.pi)  # the nearest float: the one inexact factor here

_UNITS = (
    Unit("bar", "pressure", Fraction(100_000), 2, pint="bar"),
    Unit("psi", "pressure", _LBF / _INCH**2, 1, pint="psi"),
    Unit("kPa", "pressure", Fraction(1000), 0, pint="kPa"),
    Unit("Pa", "pressure", Fraction(1), 0, pint="Pa"),
    Unit("MPa", "pressure", Fraction(1_000_000), 3, pint="MPa"),
    Unit("kgf/cm2", "pressure", _G0 * 10_000, 2, pint="kgf/cm^2"),
    Unit("hPa", "pressure", Fraction(100), 0, pint="hPa"),
    Unit("mbar", "pressure", Fraction(100), 0, pint="mbar"),
    Unit("atm", "pressure", Fraction(101_325), 3, pint="atm"),
    Unit("inHg", "pressure", _MMHG * 1000 * _INCH, 2, pint="inHg"),
    Unit("mmHg", "pressure", _MMHG, 0, pint="mmHg"),
    Unit("C", "temperature", Fraction(1), 0, offset=Fraction("273.15"), pint="degC"),
    Unit("F", "temperature", Fraction(5, 9), 0, offset=Fraction("459.67") * 5 / 9, pint="degF"),
    Unit("K", "temperature", Fraction(1), 0, pint="kelvin"),
    Unit("kg", "mass", Fraction(1), 1, pint="kg"),
    Unit("g", "mass", Fraction(1, 1000), 0, pint="g"),
    Unit("lb", "mass", _POUND, 1, pint="lb"),
    Unit("st", "mass", 14 * _POUND, 2, pint="stone"),
    Unit("mm", "length", Fraction(1, 1000), 1, pint="mm"),
    Unit("cm", "length", Fraction(1, 100), 1, pint="cm"),
    Unit("m", "length", Fraction(1), 2, pint="m"),
    Unit("km", "length", Fraction(1000), 1, pint="km"),
    Unit("in", "length", _INCH, 2, pint="inch"),
    Unit("ft", "length", _FOOT, 1, pint="ft"),
    Unit("mi", "length", _MILE, 1, pint="mile"),
    Unit("km/h", "speed", Fraction(1000, 3600), 0, pint="km/h"),
    Unit("mph", "speed", _MILE / 3600, 0, pint="mph"),
    Unit("m/s", "speed", Fraction(1), 1, pint="m/s"),
    Unit("l", "volume", _LITRE, 1, pint="l"),
    Unit("ml", "volume", _LITRE / 1000, 0, pint="ml"),
    Unit("cm3", "volume", _LITRE / 1000, 0, pint="cm^3"),
    Unit("US gal", "volume", _US_GALLON, 2, pint="US_liquid_gallon"),
    Unit("imp gal", "volume", _IMP_GALLON, 2, pint="imperial_gallon"),
    Unit("deg", "angle", _PI / 180, 1, pint="degree"),
    Unit("rad", "angle", Fraction(1), 3, pint="radian"),
    Unit("N", "force", Fraction(1), 0, pint="N"),
    Unit("kN", "force", Fraction(1000), 2, pint="kN"),
    Unit("lbf", "force", _LBF, 0, pint="lbf"),
    Unit("kgf", "force", _G0, 1, pint="kgf"),
    Unit("N/mm", "spring rate", Fraction(1000), 1, pint="N/mm"),
    Unit("N/m", "spring rate", Fraction(1), 0, pint="N/m"),
    Unit("lbf/in", "spring rate", _LBF / _INCH, 0, pint="lbf/inch"),
    Unit("kgf/mm", "spring rate", _G0 * 1000, 2, pint="kgf/mm"),
    Unit("N m", "torque", Fraction(1), 0, pint="N*m"),
    Unit("lbf ft", "torque", _LBF * _FOOT, 0, pint="lbf*ft"),
    Unit("lbf in", "torque", _LBF * _INCH, 0, pint="lbf*inch"),
    Unit("kgf m", "torque", _G0, 1, pint="kgf*m"),
    Unit("kW", "power", Fraction(1000), 1, pint="kW"),
    Unit("W", "power", Fraction(1), 0, pint="W"),
    Unit("hp", "power", 550 * _LBF * _FOOT, 0, pint="hp"),
    Unit("PS", "power", 75 * _G0, 0, pint="metric_horsepower"),
    Unit("s", "time", Fraction(1), 1, pint="s"),
    Unit("min", "time", Fraction(60), 0, pint="min"),
    Unit("h", "time", Fraction(3600), 1, pint="hour"),
    Unit("l/100km", "consumption", _LITRE / 100_000, 1),
    Unit("km/l", "consumption", _LITRE / 1000, 1, reciprocal=True, pint="km/l"),
    Unit("mpg US", "consumption", _US_GALLON / _MILE, 1, reciprocal=True, pint="mile/US_liquid_gallon"),
    Unit("mpg imp", "consumption", _IMP_GALLON / _MILE, 1, reciprocal=True, pint="mile/imperial_gallon"),
    Unit("dB(A)", "sound", Fraction(1), 0),
    Unit("%", "ratio", Fraction(1, 100), 0, pint="percent"),
    Unit("kg/m3", "density", Fraction(1), 2, pint="kg/m^3"),
    Unit("rpm", "rotation", _PI / 30, 0, pint="rpm"),
    Unit("m/s2", "acceleration", Fraction(1), 1, pint="m/s^2"),
    Unit("g0", "acceleration", _G0, 2, pint="g_0"),
    Unit("V", "voltage", Fraction(1), 1, pint="V"),
    Unit("years", "age", Fraction("365.25"), 1, pint="year"),
    Unit("months", "age", Fraction("365.25") / 12, 0, pint="month"),
    Unit("days", "age", Fraction(1), 0, pint="day"),
    Unit("click", "click", Fraction(1), 0),
    Unit("turn", "turn", Fraction(1), 2),
    Unit("tooth", "tooth", Fraction(1), 0),
)

TABLE = {unit.spelling: unit for unit in _UNITS}
"""Every everyday unit by its one spelling."""

ALIASES = {
    "°C": "C",
    "degC": "C",
    "°F": "F",
    "degF": "F",
    "°": "deg",
    "inch": "in",
    "inches": "in",
    "kg/mm": "kgf/mm",
    "lb/in": "lbf/in",
    "km/hr": "km/h",
    "kmh": "km/h",
    "kph": "km/h",
    "kmph": "km/h",
    "L": "l",
    "litre": "l",
    "litres": "l",
    "cc": "cm3",
    "cm^3": "cm3",
    "cm³": "cm3",
    "gal US": "US gal",
    "gal imp": "imp gal",
    "US mpg": "mpg US",
    "imp mpg": "mpg imp",
    "Nm": "N m",
    "ft lb": "lbf ft",
    "lb ft": "lbf ft",
    "ft lbf": "lbf ft",
    "kg m": "kgf m",
    "lbs": "lb",
    "hr": "h",
    "l/100 km": "l/100km",
    "dBA": "dB(A)",
    "kg/m^3": "kg/m3",
    "kg/m³": "kg/m3",
    "m/s^2": "m/s2",
    "m/s²": "m/s2",
    "year": "years",
    "month": "months",
    "day": "days",
    "clicks": "click",
    "turns": "turn",
    "teeth": "tooth",
}
"""Other usual spellings of table units, each with the spelling it stands for."""

AMBIGUOUS = {
    "gal": ("US gal", "imp gal"),
    "gallon": ("US gal", "imp gal"),
    "gallons": ("US gal", "imp gal"),
    "mpg": ("mpg US", "mpg imp"),
    "pint": ("l", "ml"),
    "pints": ("l", "ml"),
    "pt": ("l", "ml"),
    "quart": ("l", "ml"),
    "quarts": ("l", "ml"),
    "qt": ("l", "ml"),
    "ton": ("kg",),
    "tons": ("kg",),
}
"""Words whose size depends on the country, each with what to write in their place."""
