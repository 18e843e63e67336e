"""What a tyre is worked toward in these conditions: the vendor's hot figure, and what it goes out with cold.

The one place for rules, rows, bench, next change and wet package. Nobody's figure is guessed: on a surface
that is not known there is none.
"""

from typing import Literal

import attrs

from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.past import End, tyre_of
from paddock_tui.quantities import Quantity
from paddock_tui.records.setup import SetUp
from paddock_tui.records.tyres import Tyre, TyreSet

COLD_TARGETS = (("front_start",), ("rear_start",))
"""Where a set-up keeps what each end goes out with cold."""


@attrs.frozen
class HotTarget:
    """A hot pressure of the vendor, and whether it is the figure for the dry or for the wet."""

    pressure: Quantity
    figure: Literal["dry", "wet"]


def hot_target_of(tyre: Tyre, surface: str | None) -> HotTarget | None:
    """Return the hot figure that a tyre is worked toward on a surface; None where it has none, or on a
    surface that is not known.

    On a damp or drying track it is the one for the dry, where there is one: patches do not cool a tyre.
    """
    column = COLUMN.get(surface or "")
    wet = None if tyre.hot_wet is None else HotTarget(tyre.hot_wet, "wet")
    dry = None if tyre.hot_dry is None else HotTarget(tyre.hot_dry, "dry")
    return {"dry": dry, "damp": dry or wet, "wet": wet}.get(column or "")


def target_untold(tyre: Tyre, surface: str | None) -> bool:
    """Return whether a tyre has hot figures, and only the surface is not known."""
    return COLUMN.get(surface or "") is None and (tyre.hot_dry or tyre.hot_wet) is not None


def cold_target_of(setup: SetUp, end: End) -> Quantity | None:
    """Return the starting pressure that a set-up plans for one end; None where none is planned."""
    return setup.front_start if end == "front" else setup.rear_start


@fact("the hot target of the {subject}", per="end", show=lambda found: f"target {found}")
def hot_target(end: End, surface: str, tyres: TyreSet) -> Quantity | Absent:
    """Return the vendor's hot figure for this surface; absent where nobody entered one."""
    found = hot_target_of(tyre_of(tyres, end), surface)
    return ABSENT if found is None else found.pressure


@fact("the planned cold pressure of the {subject}", per="end", show=lambda found: f"planned {found}")
def planned_start(end: End, setup: SetUp) -> Quantity | Absent:
    """Return the starting pressure of the set-up; absent where none is planned."""
    return cold_target_of(setup, end) or ABSENT
