"""How hard a bike can drive and brake before a wheel lifts or a tyre slides, whichever comes first.

Accelerations in m/s2 along the road; the slope is rise over run, above 0 uphill. From the moments about the
wheel that stays down: front lifts at g (b/h cos - sin), rear lifts at g ((p - b)/h cos + sin), with sin and
cos of the road's angle. The friction governs where it is less than b/h or (p - b)/h. No air, rider still,
one rigid body, suspension at rest. Sources: Cossalter, Motorcycle Dynamics, 2nd ed. 2006, Foale, Motorcycle
Handling and Chassis Design, 2nd ed. 2006, Wilson, Bicycling Science, 3rd ed. 2004, all from memory; on a
slope a braking article of 2005 that adds s g, the first order of the same.
"""

import enum
import math

import attrs

from paddock_tui.calc.balance import Balance
from paddock_tui.calc.errors import above, within
from paddock_tui.calc.springs import G_M_S2

MOST_FRICTION = 2.0
"""A friction coefficient above this is a slip of the finger."""

_MOST_SLOPE = 0.5


class By(enum.Enum):
    """What sets a limit."""

    LIFT = "a wheel lifts"
    GRIP = "the tyre slides"


@attrs.frozen
class LongitudinalLimit:
    """The most that can be had along the road in m/s2, and what sets it.

    It is below nothing where the slope alone is more than the tyres can hold.
    """

    m_s2: float
    by: By


def wheelie_m_s2(balance: Balance, slope: float = 0.0, g_m_s2: float = G_M_S2) -> float:
    """Acceleration in m/s2 at which the front wheel carries nothing: g (b/h cos - sin)."""
    sine, cosine = _road(slope)
    return g_m_s2 * (balance.centre_ahead_m / balance.centre_height_m * cosine - sine)


def rear_lift_m_s2(balance: Balance, slope: float = 0.0, g_m_s2: float = G_M_S2) -> float:
    """Return the deceleration in m/s2 at which the rear wheel carries nothing: g ((p - b)/h cos + sin)."""
    sine, cosine = _road(slope)
    return g_m_s2 * (balance.centre_behind_m / balance.centre_height_m * cosine + sine)


def driving_limit(
    balance: Balance, friction: float, slope: float = 0.0, g_m_s2: float = G_M_S2
) -> LongitudinalLimit:
    """Return the most acceleration of a bike driven by its rear wheel.

    Where the rear tyre slides first it is g (mu (p - b) / (p - mu h) cos - sin): the drive itself loads it.
    """
    mu = checked_friction(friction)
    if mu >= balance.centre_ahead_m / balance.centre_height_m:
        return LongitudinalLimit(wheelie_m_s2(balance, slope, g_m_s2), By.LIFT)
    sine, cosine = _road(slope)
    held = mu * balance.centre_behind_m / (balance.wheelbase_m - mu * balance.centre_height_m)
    return LongitudinalLimit(g_m_s2 * (held * cosine - sine), By.GRIP)


def braking_limit(
    balance: Balance, friction: float, slope: float = 0.0, g_m_s2: float = G_M_S2
) -> LongitudinalLimit:
    """Return the most deceleration with both brakes: g (mu cos + sin) where the tyres slide first."""
    mu = checked_friction(friction)
    if mu >= balance.centre_behind_m / balance.centre_height_m:
        return LongitudinalLimit(rear_lift_m_s2(balance, slope, g_m_s2), By.LIFT)
    return LongitudinalLimit(sliding_m_s2(mu, slope, g_m_s2), By.GRIP)


def sliding_m_s2(friction: float, slope: float = 0.0, g_m_s2: float = G_M_S2) -> float:
    """Return the deceleration in m/s2 that a friction coefficient gives on all wheels: g (mu cos + sin)."""
    sine, cosine = _road(slope)
    return g_m_s2 * (checked_friction(friction) * cosine + sine)


def checked_friction(friction: float) -> float:
    """Return a friction coefficient back, or raise OutOfRange where none can be like that."""
    return above("friction coefficient", friction, 0.0, MOST_FRICTION)


def _road(slope: float) -> tuple[float, float]:
    angle = math.atan(within("slope, rise over run", slope, -_MOST_SLOPE, _MOST_SLOPE))
    return math.sin(angle), math.cos(angle)
