"""What a tank gives, in laps and minutes or on the road, from the slowest to the fastest use.

Litres, km, l/100 km, s. A rate is a best figure with a low and a high end: what is promised is rounded down
at the high end. The reserve is not ridden on. Arithmetic; no source is needed.
"""

import math

import attrs

from paddock_tui.calc.errors import above, within


@attrs.frozen
class Rate:
    """Consumption in l/100 km: best figure, and the ends between which it lies (alike: nothing tells)."""

    best: float
    low: float
    high: float

    def __attrs_post_init__(self) -> None:
        for one in (self.low, self.best, self.high):
            above("consumption", one, 0.0, 60.0, "l/100 km")
        above("high end of the consumption", self.high + 1e-9, self.best, None)
        above("consumption over its low end", self.best + 1e-9, self.low, None)


@attrs.frozen
class TankLaps:
    """Whole laps at speed that a tank gives after the laps out, in and warming up, and the minutes of them.

    `laps` and `minutes` are at the rate's high end, `best_laps` and `best_minutes` at its best figure.
    """

    laps: int
    minutes: float
    best_laps: int
    best_minutes: float


def tank_laps(
    in_tank_l: float, reserve_l: float, rate: Rate, lap_km: float, usual_lap_s: float, other_laps: float
) -> TankLaps:
    """Return the laps that a tank gives above its reserve; none where it does not reach for one."""
    length = above("lap length", lap_km, 0.0, 30.0, "km")
    other = within("laps out, in and warming up", other_laps, 0.0, 20.0)
    lap_s = within("usual lap", usual_lap_s, 10.0, 3600.0, "s")
    counts = [
        max(math.floor(distance_km(in_tank_l, reserve_l, one) / length - other + 1e-9), 0)
        for one in (rate.high, rate.best)
    ]
    return TankLaps(counts[0], counts[0] * lap_s / 60.0, counts[1], counts[1] * lap_s / 60.0)


def distance_km(in_tank_l: float, reserve_l: float, rate_l_per_100km: float) -> float:
    """Return the distance in km that a tank gives above its reserve; none on the reserve."""
    ridden = within("fuel in the tank", in_tank_l, 0.0, 40.0, "l") - within(
        "reserve", reserve_l, 0.0, 40.0, "l"
    )
    return max(ridden, 0.0) / above("consumption", rate_l_per_100km, 0.0, 60.0, "l/100 km") * 100.0
