"""One value of the wet package, and the conditions that the package is made for."""

from typing import Literal

import attrs

from paddock_tui.calc.starting_levels import RiderGroup, Surface, TyreKind, TyreState
from paddock_tui.facts.starting_words import level_surface, level_tyre
from paddock_tui.records.differences import old_to_new, written
from paddock_tui.records.paths import Path

Part = Literal["mode", "aid", "engine braking", "launch", "damping", "preload"]


@attrs.frozen
class WetValue:
    """A value that is less wet than the package: where it stands, what it is, what the package sets.

    `moved` writes both with unit and way, where the bike's file tells them; `counted` the value as it is,
    with its unit and from which end it is counted.
    """

    part: Part
    path: Path
    label: str
    old: int | float | str
    new: int | float | str
    moved: str = ""
    counted: str = ""

    def __str__(self) -> str:
        return f"{self.label} {self.moved or old_to_new(written(self.old), written(self.new))}"

    @property
    def stands(self) -> str:
        """The value as it is, in words."""
        return self.counted or written(self.old)


@attrs.frozen
class WetValues:
    """The values that a part of the package sets, and what of it no value can say.

    `untold` names damping that may stand as it did in the dry: what would tell is not written down.
    """

    values: tuple[WetValue, ...] = ()
    words: tuple[str, ...] = ()
    untold: tuple[str, ...] = ()


@attrs.frozen
class Conditions:
    """Who rides, on what, with which rear tyre; `first`: for the first time on this bike, or here."""

    group: RiderGroup
    surface: Surface
    tyre: TyreKind
    rear: TyreState = attrs.field(factory=TyreState)
    first: bool = False

    @property
    def damp(self) -> bool:
        """Whether the surface is judged as damp, else as wet."""
        return self.surface in (Surface.DAMP, Surface.DRYING)


def conditions_of(
    group: str, surface: str, tyre: str | None, rear: TyreState | None = None, *, first: bool = False
) -> Conditions:
    """Return the conditions from the words of the records.

    The tyres are part of the package: a slick, which has no levels for the wet, counts as the rain tyre
    that belongs in its place, and so does a tyre of which nothing is asked, as on a profile.
    """
    kind = TyreKind.WET if tyre is None or tyre == "slick" else level_tyre(tyre)
    return Conditions(RiderGroup(group), level_surface(surface), kind, rear or TyreState(), first)
