"""Preload: how far to turn for a wanted sag, and whether the adjuster gets there.

One millimetre of preload takes one millimetre of sag at the spring, and that divided by the motion ratio at
the wheel; it changes ride height, never the rate.
"""

import math

import attrs

from paddock_tui.calc.errors import Inconsistent, above, within

_ROUNDING = 1e-9


@attrs.frozen
class PreloadAdjuster:
    """A preload adjuster: turns (or clicks, or mm) from least to most preload, and what one of them moves.

    `step` is the smallest amount that can be set; `mm_per_turn` is the spring's, on a plain threaded collar
    the pitch of its thread (single start).
    """

    least: float
    most: float
    mm_per_turn: float
    step: float = 0.25
    motion_ratio: float = 1.0

    def __attrs_post_init__(self) -> None:
        if not self.most > self.least:
            raise Inconsistent("preload adjuster", "its range has no length")
        above("preload of a turn", self.mm_per_turn, 0.0, 20.0, "mm")
        above("smallest step", self.step, 0.0, self.most - self.least)
        within("motion ratio, spring travel over wheel travel", self.motion_ratio, 0.1, 1.5)

    @property
    def sag_mm_per_turn(self) -> float:
        """Sag at the wheel in mm that one turn more takes away."""
        return self.mm_per_turn / self.motion_ratio


@attrs.frozen
class PreloadPlan:
    """Where to set the adjuster, the change from now, the sag in mm that follows, and whether it gets there.

    Not reachable: `set_to` is the end that comes nearest. An estimate: measure the sag again.
    """

    set_to: float
    change: float
    sag_after_mm: float
    reachable: bool


def preload_mm(compression_needed_mm: float, sag_mm: float) -> float:
    """Preload in mm at the spring that leaves a sag: F/k - sag, nothing below zero."""
    needed = within("compression under the load", compression_needed_mm, 0.0, None, "mm")
    return within("preload", needed - within("sag", sag_mm, 0.0, None, "mm"), 0.0, None, "mm")


def preload_of_turns_mm(turns: float, mm_per_turn: float) -> float:
    """Preload in mm that turns of a collar make: turns times the pitch (ISO 261 threads, single start)."""
    return turns * above("preload of a turn", mm_per_turn, 0.0, 20.0, "mm")


def preload_for_sag(
    sag_now_mm: float, sag_wanted_mm: float, now: float, adjuster: PreloadAdjuster
) -> PreloadPlan:
    """Return turns toward a wanted sag at the wheel, rounded to the adjuster's step and kept within its
    range.

    Too much sag asks for more preload. Linear, with one motion ratio.
    """
    within("preload now", now, adjuster.least, adjuster.most)
    within("sag now", sag_now_mm, 0.0, 200.0, "mm")
    within("target sag", sag_wanted_mm, 0.0, 200.0, "mm")
    wanted = now + (sag_now_mm - sag_wanted_mm) / adjuster.sag_mm_per_turn
    half_step = adjuster.step / 2.0 + _ROUNDING
    reachable = adjuster.least - half_step <= wanted <= adjuster.most + half_step
    steps = math.floor((wanted - now) / adjuster.step + 0.5)
    set_to = min(max(now + steps * adjuster.step, adjuster.least), adjuster.most)
    sag_after = sag_now_mm - (set_to - now) * adjuster.sag_mm_per_turn
    return PreloadPlan(set_to, set_to - now, max(sag_after, 0.0), reachable)
