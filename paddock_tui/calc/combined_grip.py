"""Braking, driving and cornering on the same tyres: what one leaves for the other.

The friction circle: (a_x / g)2 + (a_y / g)2 = mu2, with a_y / g = tan(lean) on the level. A real tyre's limit
is an oval, differs by end and with load, and the lift of a wheel may come first. Source: elementary; the
circle as in Cossalter, Motorcycle Dynamics, 2nd ed. 2006, from memory.
"""

import math

from paddock_tui.calc.beyond_estimate import Beyond
from paddock_tui.calc.errors import within
from paddock_tui.calc.lean import friction_share
from paddock_tui.calc.springs import G_M_S2


def share_left(friction: float, lean: float) -> float | Beyond:
    """Return the share of the straight-line braking or driving that a lean in degrees leaves, 0 to 1."""
    tangent = math.tan(math.radians(within("lean", lean, 0.0, 89.0, "degrees")))
    used = friction_share(tangent, friction)
    return used if isinstance(used, Beyond) else math.sqrt(1.0 - used * used)


def braking_left_m_s2(friction: float, lean: float, g_m_s2: float = G_M_S2) -> float | Beyond:
    """Return the deceleration in m/s2 that is left at a lean in degrees: g sqrt(mu2 - tan2(lean))."""
    left = share_left(friction, lean)
    return left if isinstance(left, Beyond) else g_m_s2 * friction * left
