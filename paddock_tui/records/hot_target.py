"""The vendor's hot figure of a tyre: one pressure, or a window where the record gives its upper end."""

from typing import Literal

import attrs

from paddock_tui.quantities import Quantity
from paddock_tui.records.tyres import Tyre


@attrs.frozen
class HotTarget:
    """A hot pressure of the vendor, and whether it is the figure for the dry or for the wet.

    `most` is the upper end where it is a window; a pressure within is on target.
    """

    pressure: Quantity
    figure: Literal["dry", "wet"]
    most: Quantity | None = None

    def __str__(self) -> str:
        """Write it as the record has it: one figure, or both ends."""
        return str(self.pressure) if self.most is None else f"{self.pressure} to {self.most}"

    @property
    def high(self) -> Quantity:
        """The upper end; of a single figure that."""
        return self.most or self.pressure

    def over_bar(self, read: Quantity) -> float:
        """Return by how much a pressure lies over it, in bar; under it negative, 0 within a window."""
        # To what a gauge never shows, so that what is off by just a limit is not off by more.
        return round(read.to("bar") - self.nearest(read).to("bar"), 9)

    def nearest(self, read: Quantity) -> Quantity:
        """Return what a pressure would be set to: the nearer end, or the pressure itself within a window."""
        if read.to("bar") < self.pressure.to("bar"):
            return self.pressure
        return self.high if read.to("bar") > self.high.to("bar") else read


def hot_target_on(tyre: Tyre, column: str) -> HotTarget | None:
    """Return the hot figure that a tyre is worked toward where a surface counts as dry, damp or wet.

    On a damp or drying track it is the one for the dry, where there is one: patches do not cool a tyre.
    """
    wet = None if tyre.hot_wet is None else HotTarget(tyre.hot_wet, "wet", tyre.hot_wet_to)
    dry = None if tyre.hot_dry is None else HotTarget(tyre.hot_dry, "dry", tyre.hot_dry_to)
    return {"dry": dry, "damp": dry or wet, "wet": wet}.get(column)
