"""How many laps, or sessions, it takes to see a difference: the power of a comparison worked out before.

Level 5 % two-sided, power 80 %: a difference that is there is seen four times out of five, one that is not
is seen once in twenty. Source: the normal formula n = 2 (z_a + z_b)^2 (sd / d)^2 for each of two samples,
over 3 / pi for a comparison by ranks (Lehmann 1975, chapter 2).
"""

import math

from paddock_tui.calc.chances import normal_quantile
from paddock_tui.calc.errors import above, within

LEVEL = 0.05
POWER = 0.80
_BY_RANKS = 3.0 / math.pi
_MOST = 9_999


def laps_to_see(difference_s: float, spread_s: float, level: float = LEVEL, power: float = POWER) -> int:
    """Return the clean laps that each of two sessions needs to show a difference in s; at least 3.

    Of the scatter from lap to lap alone: the luck of a whole session comes on top, and no lap averages it
    out. Raises OutOfRange for a difference that is not above zero.
    """
    each = 2.0 * _wanted(difference_s, spread_s, level, power) / _BY_RANKS
    return max(3, min(_MOST, math.ceil(each)))


def _wanted(difference_s: float, spread_s: float, level: float, power: float) -> float:
    above("difference", difference_s, 0.0, None, "s")
    within("spread", spread_s, 0.0, None, "s")
    within("level", level, 1e-6, 0.5)
    within("power", power, 0.5, 1.0 - 1e-6)
    z = normal_quantile(1.0 - level / 2.0) + normal_quantile(power)
    return (z * min(spread_s / difference_s, 1e6)) ** 2
