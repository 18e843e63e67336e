"""Lean in a steady corner: from speed and radius, on a banked road, with tyres that are wide.

Angles in degrees from upright, speeds in m/s, radii in m. For thin tyres and a rider in the plane of the
bike tan(lean) = v2 / (g r); the road carries that with the friction tan(lean - bank). A tyre of the crown
radius t, with the centre of mass at height h, asks asin(t sin(lean) / (h - t)) more. The simple figure is
always too low (SAE 2015-01-1422). Sources: OpenStax University Physics 1 and College Physics 2e, 6.3; the
tyre's width as in Cossalter, Motorcycle Dynamics, 2nd ed. 2006, from memory.
"""

import math

from paddock_tui.calc.beyond_estimate import Beyond
from paddock_tui.calc.errors import Inconsistent, above, within
from paddock_tui.calc.longitudinal import checked_friction
from paddock_tui.calc.springs import G_M_S2

_MOST_M_S = 150.0
_MOST_M = 10000.0
_MOST_LEAN = 89.0


def lean_deg(speed_m_s: float, radius_m: float, g_m_s2: float = G_M_S2) -> float:
    """Return the lean in degrees of thin tyres at a speed round a radius: atan(v2 / (g r))."""
    return math.degrees(math.atan(_speed(speed_m_s) ** 2 / (g_m_s2 * _radius(radius_m))))


def speed_at_lean_m_s(lean: float, radius_m: float, g_m_s2: float = G_M_S2) -> float:
    """Return the speed in m/s at which a radius asks for a lean in degrees; also the speed that a bank
    carries
    alone.
    """
    return math.sqrt(g_m_s2 * _radius(radius_m) * math.tan(_lean(lean)))


def radius_at_lean_m(lean: float, speed_m_s: float, g_m_s2: float = G_M_S2) -> float:
    """Radius in m that a lean in degrees (above 0) rides at a speed."""
    tangent = math.tan(math.radians(above("lean", lean, 0.0, _MOST_LEAN, "degrees")))
    return _speed(speed_m_s) ** 2 / (g_m_s2 * tangent)


def wide_tyre_deg(lean: float, crown_radius_m: float, centre_height_m: float) -> float:
    """Degrees that the width of the tyre adds to the lean of a thin one: asin(t sin(lean) / (h - t)).

    `crown_radius_m` is the radius of the tyre's cross-section. Inconsistent where t is too much for h.
    """
    crown = within("crown radius of the tyre", crown_radius_m, 0.0, 1.0, "m")
    height = above("height of the centre of mass", centre_height_m, 0.0, 5.0, "m")
    reach = height - crown
    sideways = crown * math.sin(_lean(lean))
    if reach <= sideways:
        raise Inconsistent("crown radius of the tyre", "too much for the height of the centre of mass")
    return math.degrees(math.asin(sideways / reach))


def real_lean_deg(lean: float, crown_radius_m: float, centre_height_m: float) -> float:
    """Return the lean in degrees of a wide tyre where a thin one leans by `lean`."""
    return lean + wide_tyre_deg(lean, crown_radius_m, centre_height_m)


def thin_lean_deg(lean: float, crown_radius_m: float, centre_height_m: float) -> float:
    """Return the lean of a thin tyre that asks as much of the corner as a wide one at `lean`.

    tan = (h - t) sin / (t + (h - t) cos): where the centre of mass stands over the contact of a round tyre.
    """
    crown = within("crown radius of the tyre", crown_radius_m, 0.0, 1.0, "m")
    height = above("height of the centre of mass", centre_height_m, 0.0, 5.0, "m")
    reach, angle = above("height over the crown radius", height - crown, 0.0, None, "m"), _lean(lean)
    return math.degrees(math.atan2(reach * math.sin(angle), crown + reach * math.cos(angle)))


def friction_needed(
    speed_m_s: float, radius_m: float, bank_deg: float = 0.0, g_m_s2: float = G_M_S2
) -> float:
    """Friction that a speed round a radius asks for: tan(lean - bank).

    Below nothing where the road is banked for more speed than this: friction then holds the tyre up.
    Inconsistent where the road falls away so far that no friction holds.
    """
    from_road = lean_deg(speed_m_s, radius_m, g_m_s2) - _bank(bank_deg)
    if from_road >= 90.0:
        raise Inconsistent("bank", "the road falls away further than any friction holds")
    return math.tan(math.radians(from_road))


def corner_speed_m_s(
    friction: float, radius_m: float, bank_deg: float = 0.0, g_m_s2: float = G_M_S2
) -> float:
    """Return the most speed in m/s that a friction carries round a radius: sqrt(g r tan(atan(mu) + bank)).

    Inconsistent where bank and friction hold at every speed, and where they hold at none.
    """
    angle = math.degrees(math.atan(checked_friction(friction))) + _bank(bank_deg)
    if angle >= 90.0:
        raise Inconsistent("bank", "bank and friction together hold at every speed")
    if angle < 0.0:
        raise Inconsistent("bank", "the road falls away further than this friction holds, even at a stand")
    return math.sqrt(g_m_s2 * _radius(radius_m) * math.tan(math.radians(angle)))


def friction_share(needed: float, assumed: float) -> float | Beyond:
    """Return the share of an assumed friction that is used, 0 to 1; Beyond where more is asked than was
    assumed.
    """
    asked = abs(needed)
    if asked > checked_friction(assumed):
        return Beyond("it asks a friction of", asked, assumed)
    return asked / assumed


def _speed(speed_m_s: float) -> float:
    return within("speed", speed_m_s, 0.0, _MOST_M_S, "m/s")


def _radius(radius_m: float) -> float:
    return above("radius", radius_m, 0.0, _MOST_M, "m")


def _lean(lean: float) -> float:
    return math.radians(within("lean", lean, 0.0, _MOST_LEAN, "degrees"))


def _bank(bank_deg: float) -> float:
    return within("bank", bank_deg, -45.0, 80.0, "degrees")
