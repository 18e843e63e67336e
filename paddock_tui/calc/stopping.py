"""How far a stop takes: what is ridden before the brakes bite, and braking.

Speeds in m/s, times in s, decelerations in m/s2, distances in m; the slope is rise over run, above 0 uphill.
d = v t + v2 / (2 a), with g sin(slope) added to a. The deceleration is taken as the same all the way.
Sources: OpenStax University Physics 1, chapters 3 and 6; Garber and Hoel, Traffic and Highway Engineering,
eq. 3.27, which adds g times the slope, the first order of the same.
"""

import enum
import math
from typing import Final

import attrs

from paddock_tui.calc.balance import Balance
from paddock_tui.calc.errors import Inconsistent, above, within
from paddock_tui.calc.longitudinal import rear_lift_m_s2, sliding_m_s2
from paddock_tui.calc.springs import G_M_S2

REACTION_S: Final = 1.0
"""Reaction that a Finnish road-safety agency reckons with for motorcycles."""

MEAN_DRY_M_S2: Final = 7.0
MEAN_WET_M_S2: Final = 3.5
BEST_M_S2: Final = 10.0
"""Mean decelerations of motorcycles on the road that the same agency publishes: dry, wet, best case."""

HALF_OF_RIDERS_USE: Final = 0.56
"""Half of the riders used this share of the deceleration they had, or less: Ecker and others, International
Motorcycle Safety Conference 2001 (60 km/h, dry)."""

_MOST_M_S = 150.0
_MOST_M_S2 = 20.0


def reaction_m(speed_m_s: float, reaction_s: float) -> float:
    """Return the distance in m ridden before the brakes bite: v t."""
    return _speed(speed_m_s) * within("reaction time", reaction_s, 0.0, 10.0, "s")


def on_slope_m_s2(level_m_s2: float, slope: float, g_m_s2: float = G_M_S2) -> float:
    """Return the deceleration in m/s2 on a slope of what a force gives on the level: a + g sin.

    Inconsistent where it is downhill and the brakes do not hold the bike.
    """
    angle = math.atan(within("slope, rise over run", slope, -0.5, 0.5))
    found = above("deceleration", level_m_s2, 0.0, _MOST_M_S2, "m/s2") + g_m_s2 * math.sin(angle)
    if found <= 0.0:
        raise Inconsistent("slope", "this braking does not stop the bike downhill")
    return found


class Decides(enum.Enum):
    """What sets the deceleration of a stop."""

    RATE = "that deceleration"
    GRIP = "that friction"
    LIFT = "the rear wheel lifts"


@attrs.frozen
class Braking:
    """The deceleration in m/s2 along the road, its slope counted, and what sets it."""

    m_s2: float
    by: Decides


def braking_by_rate(level_m_s2: float, balance: Balance | None, slope: float = 0.0) -> Braking:
    """Return the least of a deceleration as on the level and what lifts the rear; no balance: not known."""
    return _least(Braking(on_slope_m_s2(level_m_s2, slope), Decides.RATE), balance, slope)


def braking_by_friction(friction: float, balance: Balance | None, slope: float = 0.0) -> Braking:
    """Return the least of what a friction holds on all wheels and what lifts the rear."""
    along = sliding_m_s2(friction, slope)
    if along <= 0.0:
        raise Inconsistent("slope", "this friction does not stop the bike downhill")
    return _least(Braking(along, Decides.GRIP), balance, slope)


def _least(wanted: Braking, balance: Balance | None, slope: float) -> Braking:
    lifts = rear_lift_m_s2(balance, slope) if balance is not None else math.inf
    if lifts <= 0.0:
        raise Inconsistent("slope", "so steep that the rear lifts at a stand")
    return Braking(lifts, Decides.LIFT) if lifts < wanted.m_s2 else wanted


def braking_m(
    speed_m_s: float, decelerating_m_s2: float, slope: float = 0.0, g_m_s2: float = G_M_S2
) -> float:
    """Return the distance in m from speed to standstill under a deceleration as on the level: v2 / (2 (a + g
    sin)).
    """
    return _speed(speed_m_s) ** 2 / (2.0 * on_slope_m_s2(decelerating_m_s2, slope, g_m_s2))


def stopping_m(
    speed_m_s: float,
    reaction_s: float,
    decelerating_m_s2: float,
    slope: float = 0.0,
    g_m_s2: float = G_M_S2,
) -> float:
    """Return the distance in m from seeing to standstill: reaction and braking together."""
    return reaction_m(speed_m_s, reaction_s) + braking_m(speed_m_s, decelerating_m_s2, slope, g_m_s2)


def speed_to_stop_in_m_s(
    distance_m: float, reaction_s: float, decelerating_m_s2: float, slope: float = 0.0
) -> float:
    """Return the most speed in m/s that stops within a distance: the root of v t + v2 / (2 a) = d."""
    rate = on_slope_m_s2(decelerating_m_s2, slope)
    lost = rate * within("reaction time", reaction_s, 0.0, 10.0, "s")
    return math.sqrt(lost * lost + 2.0 * rate * within("distance", distance_m, 0.0, 5000.0, "m")) - lost


def _speed(speed_m_s: float) -> float:
    return within("speed", speed_m_s, 0.0, _MOST_M_S, "m/s")
