"""What the wet does to corner speed, braking, driving and stopping, as ratios of wet to dry.

No friction of a tyre on a track was found in a source, so nothing here says how much grip there is: only how
much less a wet road leaves, and on what assumption. With k = wet friction / dry friction: corner speed
sqrt(k), tangent of the lean k, braking k while the tyres set the limit, braking distance 1 / k, driving k or
less, for less drive loads the rear wheel less.
k = 0.5 follows from a road-safety agency's mean decelerations (7 and 3.5 m/s2) and the UK Highway Code (rule
227, at least twice the distance); k = 0.7 from a textbook's rubber on concrete, dry 1.0 and wet 0.7 (OpenStax
College Physics, table 5.1, the wet figure from memory). Both are for roads and ordinary rubber; what a wet
or a race tyre does is not in them.
"""

import math
from typing import Final

import attrs

from paddock_tui.calc.balance import Balance
from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.longitudinal import braking_limit, checked_friction, driving_limit
from paddock_tui.calc.stopping import MEAN_DRY_M_S2, MEAN_WET_M_S2

RUBBER_DRY: Final = 1.0
RUBBER_WET: Final = 0.7
RUBBER_DRY_SLIDING: Final = 0.7
"""Rubber on concrete: at rest dry and wet, sliding dry. OpenStax College Physics, table 5.1."""

STANDING_WATER: Final = "standing water"
BEYOND_WORDS: Final = "beyond this estimate: on standing water a tyre can lose the road altogether"

RATIO_LOW: Final = MEAN_WET_M_S2 / MEAN_DRY_M_S2
RATIO_HIGH: Final = RUBBER_WET / RUBBER_DRY


@attrs.frozen
class Friction:
    """Friction coefficients of the same tyre, dry and wet. Inconsistent where wet is more than dry."""

    dry: float
    wet: float

    def __attrs_post_init__(self) -> None:
        checked_friction(self.dry)
        checked_friction(self.wet)
        if self.wet > self.dry:
            raise Inconsistent("friction", "more in the wet than in the dry is not worked out here")

    @property
    def ratio(self) -> float:
        """Wet to dry, above 0 to 1."""
        return self.wet / self.dry


@attrs.frozen
class WetToDry:
    """Ratios of wet to dry: corner speed, tangent of the lean, braking, driving, braking distance."""

    corner_speed: float
    lean_tangent: float
    braking: float
    driving: float
    stopping: float


def wet_to_dry(friction: Friction, balance: Balance | None = None) -> WetToDry:
    """Return ratios of wet to dry on the level, braking and stopping without reaction.

    With the balance of the bike a wheel that lifts before the tyre slides is taken into account, so that less
    braking may be lost than friction is, and that less drive loads the rear wheel less, so that more drive
    may be lost. Without it braking and driving go as the friction does.
    """
    k = friction.ratio
    braking = driving = k
    if balance is not None:
        braking = braking_limit(balance, friction.wet).m_s2 / braking_limit(balance, friction.dry).m_s2
        driving = driving_limit(balance, friction.wet).m_s2 / driving_limit(balance, friction.dry).m_s2
    return WetToDry(math.sqrt(k), k, braking, driving, 1.0 / braking)


@attrs.frozen
class WetRatios:
    """Wet to dry between two assumptions, the lower and the higher ratio of the friction."""

    low: float
    high: float
    lower: WetToDry
    higher: WetToDry

    def sentence(self) -> str:
        """Say it in one line: the assumption first, so that no narrow screen cuts it off the figures."""
        return (
            f"wet, if grip is {percent(self.low, self.high)}: "
            f"corner speed {percent(self.lower.corner_speed, self.higher.corner_speed)}, "
            f"braking distance {_times(self.higher.stopping, self.lower.stopping)} times"
        )


def wet_ratios(low: float = RATIO_LOW, high: float = RATIO_HIGH) -> WetRatios:
    """Return ratios of wet to dry for a friction that falls to `low` .. `high` of the dry one, in either
    order.
    """
    first, second = sorted((low, high))
    lower, higher = (wet_to_dry(Friction(1.0, ratio)) for ratio in (first, second))
    return WetRatios(first, second, lower, higher)


def span(low: float, high: float) -> str:
    """Write two ratios as a span, one where they read the same."""
    first, second = (f"{one:.2f}".removesuffix("0") for one in (low, high))
    return first if first == second else f"{first}-{second}"


def percent(low: float, high: float) -> str:
    """Write two ratios as a span in percent, one where they read the same."""
    first, second = (f"{100 * one:.0f}" for one in (low, high))
    return f"{first} %" if first == second else f"{first}-{second} %"


def _times(low: float, high: float) -> str:
    first, second = (f"{one:.1f}".removesuffix(".0") for one in (low, high))
    return first if first == second else f"{first}-{second}"


def wet_words(surface: str) -> str | None:
    """Say in one line what a surface leaves of the dry; None on a dry one.

    A damp or drying track is wet in its patches, and is told what holds on them.
    """
    if surface == "dry":
        return None
    if surface == STANDING_WATER:
        return BEYOND_WORDS
    return wet_ratios().sentence()
