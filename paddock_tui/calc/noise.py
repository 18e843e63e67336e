"""The standing noise test: its revs, what a reading counts as, and how far it is from a limit."""

import math
from typing import Final

import attrs

from paddock_tui.calc.errors import Inconsistent, above, within

PISTON_SPEED_M_S: Final = 11.0
"""Mean piston speed of the test where the organiser names no other. Source: FIM noise control."""

DISTANCE_M: Final = 0.5
"""From the end of the exhaust to the microphone, at 45 degrees to it. Source: FIM noise control."""

_METER_DB = {1: 1.0, 2: 2.0}


def revs_of_test_rpm(stroke_mm: float, piston_speed_m_s: float = PISTON_SPEED_M_S) -> float:
    """Return revs of the test in rpm: N = 30000 c / l, c the mean piston speed in m/s, l the stroke in mm.

    Source: FIM noise control. An organiser may post revs of their own, or a share of the red line.
    """
    stroke = within("stroke", stroke_mm, 20.0, 120.0, "mm")
    return 30000.0 * within("mean piston speed", piston_speed_m_s, 5.0, 25.0, "m/s") / stroke


def counted_db(reading_db: float, meter_type: int, air_c: float) -> float:
    """Return what a reading counts as, in dB(A): rounded down, less the meter's tolerance, less that of the
    cold.

    1 dB for a meter of type 1, 2 dB for type 2; 1 dB more below 10 C, 2 dB below 0 C. Source: FIM noise
    control. An organiser need not allow any of it.
    """
    whole = math.floor(within("noise reading", reading_db, 50.0, 140.0, "dB(A)"))
    if meter_type not in _METER_DB:
        raise Inconsistent("meter", "it is of type 1 or of type 2")
    air = within("air temperature", air_c, -20.0, 50.0, "C")
    cold = 2.0 if air < 0.0 else 1.0 if air < 10.0 else 0.0
    return whole - _METER_DB[meter_type] - cold


def level_at_db(level_db: float, measured_at_m: float, wanted_at_m: float) -> float:
    """Level in dB at another distance: L2 = L1 - 20 log10(r2 / r1), a point source in the open.

    Ground, walls and a moving bike change it: a drive-by reading cannot be told from a standing one.
    Source: the inverse square law, as in OpenStax College Physics 17.3.
    """
    level = within("noise", level_db, 0.0, 160.0, "dB(A)")
    near = above("distance measured at", measured_at_m, 0.0, 1000.0, "m")
    return level - 20.0 * math.log10(above("distance", wanted_at_m, 0.0, 1000.0, "m") / near)


@attrs.frozen
class Margin:
    """Decibels under a limit, below zero over it."""

    db: float

    @property
    def over(self) -> bool:
        """Whether the limit is passed."""
        return self.db < 0.0

    def close(self, within_db: float) -> bool:
        """Return whether the reading is under the limit by no more than what another one may differ by."""
        return 0.0 <= self.db <= within_db


def margin(reading_db: float, limit_db: float) -> Margin:
    """Return how far a reading is under a limit."""
    reading = within("noise reading", reading_db, 50.0, 140.0, "dB(A)")
    return Margin(within("noise limit", limit_db, 50.0, 140.0, "dB(A)") - reading)
