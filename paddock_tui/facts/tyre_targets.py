"""What a tyre is worked toward in these conditions: the vendor's hot figure, and what it goes out with cold.

The one place for rules, rows, bench, next change and wet package. Nobody's figure is guessed: on a surface
that is not known there is none.
"""

from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.past import End, tyre_of
from paddock_tui.quantities import Quantity
from paddock_tui.records.hot_target import HotTarget, hot_target_on
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


@fact("the planned cold pressure of the {subject}", per="end", show=lambda found: f"planned {found}")
def planned_start(end: End, setup: SetUp) -> Quantity | Absent:
    """Return the starting pressure of the set-up; absent where none is planned."""
    return cold_target_of(setup, end) or ABSENT
