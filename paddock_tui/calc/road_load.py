"""What holds a bike back on the level and uphill, and the speed at which power is used up.

Force = rho CdA (v + wind)^2 / 2 + m g (rolling + slope), power = force x v: air goes by the speed through
the air, power by the speed over the ground. Speeds in m/s, wind above nothing from ahead; CdA in m2; power
is that at the wheel, not at the crank. No number for CdA is published for this bike: it is typed, and errs
by a tenth or more. Sources: OpenStax College Physics 2e, 5.2; Gillespie, Fundamentals of Vehicle Dynamics,
chapter 4.
"""

import math

import attrs

from paddock_tui.calc.errors import Inconsistent, above, within
from paddock_tui.calc.springs import G_M_S2

_MOST_M_S = 150.0


@attrs.frozen
class Resistance:
    """Drag area in m2, air density in kg/m3, mass in kg, rolling coefficient, slope (rise over run), wind."""

    drag_area_m2: float
    density_kg_per_m3: float
    mass_kg: float
    rolling: float
    slope: float = 0.0
    headwind_m_s: float = 0.0

    def __attrs_post_init__(self) -> None:
        above("drag area", self.drag_area_m2, 0.0, 3.0, "m2")
        within("air density", self.density_kg_per_m3, 0.5, 1.6, "kg/m3")
        above("mass", self.mass_kg, 0.0, 5000.0, "kg")
        within("rolling coefficient", self.rolling, 0.0, 0.1)
        within("slope, rise over run", self.slope, -0.3, 0.3)
        within("headwind", self.headwind_m_s, -40.0, 40.0, "m/s")

    def force_n(self, speed_m_s: float) -> float:
        """Return the force in N that holds back at a speed; below nothing where wind or slope pushes."""
        speed = within("speed", speed_m_s, 0.0, _MOST_M_S, "m/s")
        through_air = speed + self.headwind_m_s
        air = drag_n(self.drag_area_m2, self.density_kg_per_m3, abs(through_air))
        angle = math.atan(self.slope)
        weight = self.mass_kg * G_M_S2 * (self.rolling * math.cos(angle) + math.sin(angle))
        return math.copysign(air, through_air) + weight


def drag_n(drag_area_m2: float, density_kg_per_m3: float, through_air_m_s: float) -> float:
    """Return the drag in N at a speed through the air: rho CdA v^2 / 2."""
    return density_kg_per_m3 * drag_area_m2 * through_air_m_s**2 / 2.0


def powered_top_speed_m_s(wheel_power_w: float, resistance: Resistance) -> float:
    """Return the speed in m/s at which the power at the wheel is used up; Inconsistent above 150 m/s."""
    power = above("power at the wheel", wheel_power_w, 0.0, 500_000.0, "W")
    if resistance.force_n(_MOST_M_S) * _MOST_M_S < power:
        raise Inconsistent("top speed", f"beyond {_MOST_M_S:.0f} m/s with these figures")
    low, high = 0.0, _MOST_M_S
    for _ in range(60):
        middle = (low + high) / 2.0
        low, high = (middle, high) if resistance.force_n(middle) * middle < power else (low, middle)
    return low
