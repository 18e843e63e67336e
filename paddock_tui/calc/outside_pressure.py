"""The pressure of the air outside, absolute: from a barometer, a forecast, or the altitude of the place.

One answer for tyre air (learning, air left, targets, loss), density and power. A reading that cannot be of
its altitude is set aside: 1013 hPa at 1000 m is a figure reduced to the sea, as a forecast gives it.
"""

import datetime as dt
import enum
import functools
import math

import attrs

from paddock_tui.calc.atmosphere import station_pressure_kpa
from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.standard_air import SEA_LEVEL_KPA, pressure_at_altitude_kpa
from paddock_tui.limits import Limits
from paddock_tui.limits.pressures import AIR_AT_ODDS, AIR_DRIFT, AIR_WEATHER

_ANYWHERE_KPA = 10.0


class PressureOrigin(enum.Enum):
    """What a pressure outside rests on."""

    MEASURED = "as measured"
    SAME_DAY = "as measured there at another time; it may have drifted by some {hpa:.0f} hPa"
    REDUCED = "the forecast's, taken up to that altitude"
    ALTITUDE = "standard atmosphere at that altitude, ISO 2533; the weather moves it by some {hpa:.0f} hPa"
    SEA_LEVEL = "sea level, neither measured nor an altitude known: it hardly matters, it nearly cancels"


@attrs.frozen
class AirMoves:
    """How far the pressure of a place moves, in kPa either way: within a day, and by the weather of days.

    A reading further than `at_odds_kpa` from what its altitude usually has is not of that altitude.
    """

    drift_kpa: float
    weather_kpa: float
    at_odds_kpa: float

    @classmethod
    def of(cls, limits: Limits) -> "AirMoves":
        """Return all three as the limits in force have them."""
        known, found = _of_limits[0]
        if known is not limits.overrides:
            found = cls(*(limits[one] / 10.0 for one in _MOVES))
            _of_limits[0] = limits.overrides, found
        return found


@attrs.frozen
class AirObserved:
    """What is known of the air's pressure at one time in one place; None where it is not known.

    `reading_kpa` is a barometer's at the place, `near_kpa` its reading there at another time,
    `reduced_kpa` a forecast's, reduced to the sea. `place` names the venue.
    """

    reading_kpa: float | None = None
    altitude_m: float | None = None
    near_kpa: float | None = None
    reduced_kpa: float | None = None
    place: str | None = None
    day: dt.date | None = None


@attrs.frozen
class OutsidePressure:
    """A pressure in kPa absolute, what it rests on, how far it may be off either way, and what was set aside.

    `set_aside_kpa` is a reading that cannot be of the altitude of its place.
    """

    kpa: float
    origin: PressureOrigin
    error_kpa: float
    set_aside_kpa: float | None = None

    def words(self) -> str:
        """Say the pressure and why it is that one."""
        aside = ""
        if self.set_aside_kpa is not None:
            aside = f"{self.set_aside_kpa * 10:.0f} hPa cannot be of that altitude, reduced to the sea? "
        return f"{self.kpa * 10:.0f} hPa ({aside}{self.origin.value.format(hpa=self.error_kpa * 10)})"


_MOVES = (AIR_DRIFT, AIR_WEATHER, AIR_AT_ODDS)

AS_DECLARED = AirMoves(*(one.value / 10.0 for one in _MOVES))
"""For whoever asks for the pressure alone, and not how far it may be off."""

_of_limits: list[tuple[object, AirMoves]] = [(None, AS_DECLARED)]
"""What the limits were last made of, and came to: one garage's are asked for in every outing."""


@functools.lru_cache(maxsize=64)
def outside_pressure(seen: AirObserved, moves: AirMoves = AS_DECLARED) -> OutsidePressure:
    """Return the pressure outside: as read, as read there at another time, a forecast's, the altitude's.

    Without any of them it is that of the sea, off by whatever the altitude is. Raises OutOfRange where the
    altitude is outside the standard atmosphere.
    """
    aside = None
    readings = (
        (seen.reading_kpa, PressureOrigin.MEASURED, 0.1),
        (seen.near_kpa, PressureOrigin.SAME_DAY, moves.drift_kpa),
    )
    for reading, origin, error in readings:
        if reading is None:
            continue
        if not contradicts(reading, seen.altitude_m, moves):
            return OutsidePressure(reading, origin, error, aside)
        aside = aside or reading
    if seen.altitude_m is None:
        return OutsidePressure(SEA_LEVEL_KPA, PressureOrigin.SEA_LEVEL, _ANYWHERE_KPA)
    if seen.reduced_kpa is not None:
        kpa = station_pressure_kpa(seen.reduced_kpa, seen.altitude_m)
        return OutsidePressure(kpa, PressureOrigin.REDUCED, 0.5, aside)
    kpa = pressure_at_altitude_kpa(seen.altitude_m)
    return OutsidePressure(kpa, PressureOrigin.ALTITUDE, moves.weather_kpa, aside)


def outside_at_both(
    then: AirObserved, now: AirObserved, moves: AirMoves = AS_DECLARED
) -> tuple[OutsidePressure, OutsidePressure] | None:
    """Return the pressure outside at two times; None where the two cannot be set against each other.

    At one place a barometer read once serves both times, with its drift (or, on another day, the weather)
    as the error of the other. At two places each needs a reading or an altitude of its own.
    """
    first, second = outside_pressure(then, moves), outside_pressure(now, moves)
    if not _same_place(then, now):
        unknown = PressureOrigin.SEA_LEVEL in (first.origin, second.origin)
        return None if unknown else (first, second)
    drift_kpa = _moves_between(then, now, moves)
    if _read(first) and not _read(second):
        second = _moved(first, second, drift_kpa)
    elif _read(second) and not _read(first):
        first = _moved(second, first, drift_kpa)
    return first, second


def apart_error_kpa(then: AirObserved, now: AirObserved, moves: AirMoves) -> float:
    """Return how far the difference of the pressures outside at two times may be off, in kPa.

    At one place what is not known of its height is the same both times; what moved between is not, unless a
    barometer was read each time.
    """
    first, second = outside_pressure(then, moves), outside_pressure(now, moves)
    if not _same_place(then, now) or (_read(first) and _read(second)):
        return math.hypot(first.error_kpa, second.error_kpa)
    return _moves_between(then, now, moves)


def _moves_between(then: AirObserved, now: AirObserved, moves: AirMoves) -> float:
    return moves.drift_kpa if then.day == now.day else moves.weather_kpa


def contradicts(reading_kpa: float, altitude_m: float | None, moves: AirMoves) -> bool:
    """Return whether a reading cannot be of an altitude; False where that is not known or impossible."""
    if altitude_m is None or not -500.0 <= altitude_m <= 11000.0:
        return False
    return abs(reading_kpa - pressure_at_altitude_kpa(altitude_m)) > moves.at_odds_kpa


def meant_at_altitude_kpa(reading_kpa: float, altitude_m: float, moves: AirMoves) -> float | None:
    """Return what a reading that contradicts its altitude is there, taken as reduced to the sea.

    None where it does not contradict, or cannot be a figure reduced to the sea either.
    """
    usual_at_sea = abs(reading_kpa - SEA_LEVEL_KPA) <= moves.at_odds_kpa
    if not usual_at_sea or not contradicts(reading_kpa, altitude_m, moves):
        return None
    try:
        return station_pressure_kpa(reading_kpa, altitude_m)
    except OutOfRange:
        return None


def _same_place(then: AirObserved, now: AirObserved) -> bool:
    if then.place is None and now.place is None:
        return then.day == now.day and then.altitude_m == now.altitude_m
    return then.place == now.place


def _read(found: OutsidePressure) -> bool:
    return found.origin in (PressureOrigin.MEASURED, PressureOrigin.SAME_DAY)


def _moved(read: OutsidePressure, other: OutsidePressure, drift_kpa: float) -> OutsidePressure:
    """Return a reading as it serves another time at the same place."""
    return OutsidePressure(read.kpa, PressureOrigin.SAME_DAY, drift_kpa, other.set_aside_kpa)
