"""How hot the gas in a tyre gets, learnt from what was read cold and hot.

Robust against one odd reading: the middle is the median, the spread is the median absolute deviation times
1.4826, which for well-behaved readings is a standard deviation. Source: Rousseeuw and Croux 1993, the factor
elementary.
"""

import statistics
from collections.abc import Iterable

import attrs

from paddock_tui.calc.errors import OutOfRange, within
from paddock_tui.calc.tyre_pressure import SEA_LEVEL, Ambient, gas_temperature_c

HOT_WITHIN_MIN = 3.0
"""Minutes after parking for which a reading counts as hot. Common practice, no source."""

_LEAST_RISE_K = 15.0
_TO_DEVIATION = 1.4826
_FEWEST_FOR_SPREAD = 3


@attrs.frozen
class Observation:
    """One tyre, one outing: the air as last set, and the hot reading of that same air.

    After air was let out or put in at the hot reading (`set_to_kpa_gauge`), the next outing's air is the one
    that `air_after` gives, until a new cold reading: the caller starts afresh there. Its `cold_c` is then the
    temperature of a hot gas, so that `outside_c` has to say how warm the day was.
    """

    cold_kpa_gauge: float
    cold_c: float
    hot_kpa_gauge: float
    minutes_after_parked: float
    set_to_kpa_gauge: float | None = None
    ambient: Ambient = SEA_LEVEL
    outside_c: float | None = None

    def gas_c(self) -> float:
        """Return the gas temperature in C that the two readings imply; raises OutOfRange where they cannot
        be.
        """
        return gas_temperature_c(self.cold_kpa_gauge, self.cold_c, self.hot_kpa_gauge, self.ambient)

    def rise_k(self) -> float:
        """Return how far in K the gas went above a cold tyre of that day."""
        return self.gas_c() - (self.cold_c if self.outside_c is None else self.outside_c)

    def air_after(self) -> tuple[float, float]:
        """Return the pressure in kPa gauge and temperature in C that describe the air now in the tyre."""
        if self.set_to_kpa_gauge is None:
            return self.cold_kpa_gauge, self.cold_c
        return self.set_to_kpa_gauge, self.gas_c()


@attrs.frozen
class Learnt:
    """Median gas temperature in C, its spread in K (None from fewer than three), and what was counted.

    Kept apart, never in the median: `late` readings taken too long after parking, `not_warm` ones of a tyre
    that never worked up to heat, and `unlikely` ones that cannot be of the same air.
    """

    median_c: float
    spread_k: float | None
    count: int
    late: int = 0
    not_warm: int = 0
    unlikely: int = 0


def learn_gas_temperature(
    observations: Iterable[Observation],
    hot_within_min: float = HOT_WITHIN_MIN,
    least_rise_k: float = _LEAST_RISE_K,
) -> Learnt | None:
    """Gas temperature of this tyre when hot; None where no reading was hot.

    `least_rise_k`: with a smaller rise above a cold tyre it did not come up to heat (own figure, no source).
    """
    temperatures: list[float] = []
    late = not_warm = unlikely = 0
    for observation in observations:
        if within("minutes after parking", observation.minutes_after_parked, 0.0, None) > hot_within_min:
            late += 1
            continue
        try:
            gas_c = observation.gas_c()
        except OutOfRange:
            unlikely += 1
            continue
        if observation.rise_k() < least_rise_k:
            not_warm += 1
        else:
            temperatures.append(gas_c)
    if not temperatures:
        return None
    median_c = statistics.median(temperatures)
    return Learnt(median_c, _spread_k(temperatures, median_c), len(temperatures), late, not_warm, unlikely)


def _spread_k(temperatures: list[float], median_c: float) -> float | None:
    if len(temperatures) < _FEWEST_FOR_SPREAD:
        return None
    return _TO_DEVIATION * statistics.median([abs(each - median_c) for each in temperatures])
