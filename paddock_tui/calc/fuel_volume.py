"""How fuel grows with its temperature: litres of a fill at another temperature.

Petrol of 653 to 770 kg/m3 at 15 C: a = 346.4228 / rho^2 + 0.4388 / rho, litres at 15 C over litres now
= exp(-a dt (1 + 0.8 a dt)). Some 1.2 in a thousand for a kelvin, more than textbooks of physics print for
gasoline. Blends with much ethanol grow otherwise. Source: ASTM D1250 / API MPMS 11.1, table 54B.
"""

import math

from paddock_tui.calc.errors import within

_K0, _K1 = 346.4228, 0.4388
_BASE_C = 15.0


def share_at_15_c(temperature_c: float, density_kg_per_m3: float) -> float:
    """Return the litres that one litre at a temperature is at 15 C; -20 to 60 C."""
    density = within("density of petrol at 15 C", density_kg_per_m3, 653.0, 770.0, "kg/m3")
    warmer = within("temperature of the fuel", temperature_c, -20.0, 60.0, "C") - _BASE_C
    growth = (_K0 / density**2 + _K1 / density) * warmer
    return math.exp(-growth * (1.0 + 0.8 * growth))


def litres_after(litres: float, before_c: float, after_c: float, density_kg_per_m3: float) -> float:
    """Return what a fill measures at another temperature."""
    filled = within("litres", litres, 0.0, 1000.0, "l")
    return filled * share_at_15_c(before_c, density_kg_per_m3) / share_at_15_c(after_c, density_kg_per_m3)
