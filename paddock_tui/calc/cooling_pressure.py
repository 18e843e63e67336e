"""A pressure read some time after parking: let air out now, or wait for the next hot reading.

What can honestly be said: the gas only cools while the bike stands, so a late reading is a lower bound of the
hot one. How far it has cooled depends on wind, warmers and the wheel, and is not known unless the gas was
measured or the rider gives an estimate; then the gas law turns the reading into the hot figure it stands for.
"""

import enum

import attrs

from paddock_tui.calc.errors import Inconsistent, above, within
from paddock_tui.calc.tyre_air_learning import HOT_WITHIN_MIN
from paddock_tui.calc.tyre_pressure import Ambient, hot_expected_kpa_gauge

WARM_UNTIL_MIN = 8.0
"""Minutes after parking until which a reading is warm, later it is late. Common practice, no source."""


class Freshness(enum.Enum):
    """What a reading is worth by the time since parking."""

    HOT = "hot"
    WARM = "warm"
    LATE = "late"


class PressureAdvice(enum.Enum):
    """What the reading allows the rider to do now."""

    LET_OUT = "let out"
    PUT_IN = "put in"
    LEAVE = "leave"
    WAIT = "wait"


@attrs.frozen
class Parked:
    """What to do now, the figure on the gauge to set now (None: none can be given), and why.

    `hot_kpa_gauge` is the hot figure the reading stands for; None where that cannot be told. With
    `at_least` the true one is that or more.
    """

    step: PressureAdvice
    freshness: Freshness
    set_to_kpa_gauge: float | None
    hot_kpa_gauge: float | None
    at_least: bool
    why: str


def freshness(minutes_since_parked: float) -> Freshness:
    """Return the hot to 3 minutes, warm to 8, then late."""
    minutes = within("minutes since parking", minutes_since_parked, 0.0, None)
    if minutes <= HOT_WITHIN_MIN:
        return Freshness.HOT
    return Freshness.WARM if minutes <= WARM_UNTIL_MIN else Freshness.LATE


def after_parking(
    reading_kpa_gauge: float,
    target_hot_kpa_gauge: float,
    minutes_since_parked: float,
    enough_kpa: float,
) -> Parked:
    """Judge a reading by its time alone, against the hot target; `enough_kpa` either way counts as on it.

    A tyre that reads too high although it has cooled is certainly too high hot: letting out down to the
    target takes away less than it has too much, and the next hot reading tells the rest. One that reads too
    low may have been right when hot: nothing can be told.
    """
    fresh = freshness(minutes_since_parked)
    over_kpa = reading_kpa_gauge - target_hot_kpa_gauge
    if fresh is Freshness.HOT:
        step = _step(over_kpa, enough_kpa)
        return Parked(step, fresh, target_hot_kpa_gauge, reading_kpa_gauge, False, "read while hot")
    if over_kpa > enough_kpa:
        why = "it has cooled and still reads above the hot target: let out to the target, then read it hot"
        return Parked(PressureAdvice.LET_OUT, fresh, target_hot_kpa_gauge, reading_kpa_gauge, True, why)
    why = "it has cooled since parking by an amount that is not known: wait for the next hot reading"
    return Parked(PressureAdvice.WAIT, fresh, None, reading_kpa_gauge, True, why)


def at_gas_temperature(
    reading_kpa_gauge: float,
    target_hot_kpa_gauge: float,
    gas_now_c: float,
    gas_hot_c: float,
    ambient_kpa: float,
    enough_kpa: float,
    unsure_k: float = 10.0,
) -> Parked:
    """Judge a reading taken with the gas at about `gas_now_c`, for a tyre whose gas reaches `gas_hot_c`.

    The target is scaled to the gas as it is now, and so is the reading to hot. Both temperatures are guesses
    within `unsure_k`: only a difference larger than that makes, and larger than `enough_kpa`, is acted upon.
    """
    if gas_now_c > gas_hot_c:
        why = f"{gas_now_c:g} C is over the {gas_hot_c:g} C that it reaches hot: a standing tyre only cools"
        raise Inconsistent("tyre air now", why)
    unsure = above("uncertainty of the tyre air's temperature", unsure_k, 0.0, 60.0, "K")
    air = Ambient(ambient_kpa, ambient_kpa)
    target_now_kpa = hot_expected_kpa_gauge(target_hot_kpa_gauge, gas_hot_c, gas_now_c, air)
    hot_kpa = hot_expected_kpa_gauge(reading_kpa_gauge, gas_now_c, gas_hot_c, air)
    warmer_kpa = hot_expected_kpa_gauge(target_hot_kpa_gauge, gas_hot_c, gas_hot_c + unsure, air)
    doubt_kpa = warmer_kpa - target_hot_kpa_gauge
    over_kpa = reading_kpa_gauge - target_now_kpa
    fresh = Freshness.HOT if abs(gas_hot_c - gas_now_c) <= unsure else Freshness.WARM
    if fresh is Freshness.WARM and enough_kpa < abs(over_kpa) <= doubt_kpa:
        why = "the difference is no larger than the doubt about the tyre air: wait for a hot reading"
        return Parked(PressureAdvice.WAIT, fresh, None, hot_kpa, False, why)
    why = "scaled from the estimated temperature of the tyre air now to the one it reaches"
    return Parked(_step(over_kpa, enough_kpa), fresh, target_now_kpa, hot_kpa, False, why)


def _step(over_kpa: float, enough_kpa: float) -> PressureAdvice:
    if abs(over_kpa) <= enough_kpa:
        return PressureAdvice.LEAVE
    return PressureAdvice.LET_OUT if over_kpa > 0 else PressureAdvice.PUT_IN
