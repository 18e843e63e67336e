"""What a tyre is worked toward in these conditions: the vendor's hot figure, and what it goes out with cold.

The one place for rules, rows, bench, next change and wet package. Nobody's figure is guessed: on a surface
that is not known there is none.
"""

from typing import Literal, NamedTuple

from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.past import End, tyre_of
from paddock_tui.quantities import Quantity
from paddock_tui.records.hot_target import HotTarget, hot_target_on
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import PressureReading
from paddock_tui.records.setup import SetUp
from paddock_tui.records.tyres import Tyre, TyreSet

COLD_TARGETS = (("front_start",), ("rear_start",))
"""Where a set-up keeps what each end goes out with cold."""


def hot_target_of(tyre: Tyre, surface: str | None) -> HotTarget | None:
    """Return the hot figure that a tyre is worked toward on a surface; None where it has none, or on a
    surface that is not known.
    """
    return hot_target_on(tyre, COLUMN.get(surface or "", ""))


def target_untold(tyre: Tyre, surface: str | None) -> bool:
    """Return whether a tyre has hot figures, and only the surface is not known."""
    return COLUMN.get(surface or "") is None and (tyre.hot_dry or tyre.hot_wet) is not None


def cold_target_of(setup: SetUp, end: End) -> Quantity | None:
    """Return the starting pressure that a set-up plans for one end; None where none is planned."""
    return setup.front_start if end == "front" else setup.rear_start


@fact("the hot target of the {subject}", per="end", show=lambda found: f"target {found}")
def hot_target(end: End, surface: str, tyres: TyreSet) -> HotTarget | Absent:
    """Return the vendor's hot figure or window for this surface; absent where nobody entered one."""
    return hot_target_of(tyre_of(tyres, end), surface) or ABSENT


class StartWindow(NamedTuple):
    """The vendor's window for the starting pressure of one end, and what it is measured on."""

    low: Quantity | None
    high: Quantity | None
    read: Quantity
    how: Literal["cold", "on warmers"]

    def __str__(self) -> str:
        ends = [str(one) for one in (self.low, self.high) if one is not None]
        only = "" if len(ends) > 1 else "at most " if self.low is None else "at least "
        return f"{self.how} {self.read}; vendor {only}{' to '.join(ends)}"

    @property
    def off_bar(self) -> float:
        """By how much it was left over the window, under it negative; 0 within."""
        read = self.read.to("bar")
        if self.high is not None and read > self.high.to("bar"):
            return read - self.high.to("bar")
        return min(read - self.low.to("bar"), 0.0) if self.low is not None else 0.0


@fact("the vendor's starting window of the {subject}", per="end", show=str)
def start_window(end: End, session: Session, tyres: TyreSet) -> StartWindow | Absent:
    """Return the vendor's window for the last reading before going out: on warmers, else cold.

    A single figure for the warmers is both ends of its window.
    """
    tyre = tyre_of(tyres, end)
    warm, cold = (left_with(session.pressures.get(name), end) for name in ("warmers", "cold"))
    if warm is not None and tyre.on_warmers is not None:
        return StartWindow(tyre.on_warmers, tyre.on_warmers_to or tyre.on_warmers, warm, "on warmers")
    if warm is not None or cold is None or (tyre.cold_from is None and tyre.cold_to is None):
        return ABSENT
    return StartWindow(tyre.cold_from, tyre.cold_to, cold, "cold")


def left_with(reading: PressureReading | None, end: End) -> Quantity | None:
    """Return what one end was left with after a reading: as set, else as read."""
    if reading is None:
        return None
    front = reading.set_to_front or reading.front
    return front if end == "front" else reading.set_to_rear or reading.rear


@fact("the planned cold pressure of the {subject}", per="end", show=lambda found: f"planned {found}")
def planned_start(end: End, setup: SetUp) -> Quantity | Absent:
    """Return the starting pressure of the set-up; absent where none is planned."""
    return cold_target_of(setup, end) or ABSENT
