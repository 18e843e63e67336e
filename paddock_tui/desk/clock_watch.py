"""The computer's clock watched while the program runs: a jump is noticed, and what it stamps doubted."""

import time
from collections.abc import Callable

JUMP_S = 60.0
"""Seconds: less is the clock being set right, not a jump."""


def steady() -> float:
    """Return seconds of a clock that nobody sets and that goes on while the computer sleeps."""
    return time.clock_gettime(getattr(time, "CLOCK_BOOTTIME", time.CLOCK_MONOTONIC))


class ClockWatch:
    """Compares the clock, in UTC, with a steady one; summer time and time zones are no jumps."""

    def __init__(self, wall: Callable[[], float] = time.time, beside: Callable[[], float] = steady) -> None:
        self._wall, self._steady = wall, beside
        self._first = self._last = wall() - beside()

    @property
    def doubtful(self) -> bool:
        """Return whether the clock goes otherwise than when this began."""
        return abs(self._wall() - self._steady() - self._first) >= JUMP_S

    def jump(self) -> str:
        """Return what to say of a jump since the last look; empty where there was none."""
        now = self._wall() - self._steady()
        by, self._last = now - self._last, now
        if abs(by) < JUMP_S:
            return ""
        way = "back" if by < 0 else "forward"
        return f"the clock went {way} {in_words(abs(by))}: check the laptop's time"


def in_words(seconds: float) -> str:
    """Write a span as people say it, in the largest unit that it fills."""
    for size, unit in ((86400.0, "d"), (3600.0, "h"), (60.0, "min")):
        if seconds >= size - 1:
            return f"{seconds / size:.0f} {unit}"
    return f"{seconds:.0f} s"
