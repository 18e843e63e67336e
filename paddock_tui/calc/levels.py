"""A bike's own numbers and words for an aid, turned into help from 0.0 (least) to 1.0 (most) and back.

Bikes count up or down, some name a level that means off, some use words. Nothing here knows any bike:
levels, the end that helps most and the meaning of off are given. Where that end is not known there is no
scale at all, so that nothing can be guessed.
"""

import math
from collections.abc import Sequence
from typing import Final, TypeAlias

import attrs

from paddock_tui.calc.errors import Inconsistent, within

Level: TypeAlias = int | str
"""What the dash shows: a number, a word, or OFF."""

OFF: Final = "off"
OFF_HELP: Final = -1.0
"""What help_of gives for off: below every level that is on. To be compared, never averaged."""

_ROUNDING = 1e-9
"""Keeps 0.55 of ten steps, 5.500000000000001 in floats, from being taken for more than halfway."""


@attrs.frozen
class Scale:
    """Levels that are on, in order of position: the first at 0.0, the last at 1.0; a single one at 1.0.

    For a two-ended scale (engine braking, steering damper) the last one is the end that was named.
    """

    on: tuple[Level, ...] = attrs.field()
    off: bool | Level = False

    @on.validator
    def _some(self, _attribute: object, on: tuple[Level, ...]) -> None:
        if not on:
            raise Inconsistent("levels", "no level is on")

    @property
    def least(self) -> Level:
        """The level that is on at position 0.0."""
        return self.on[0]

    @property
    def most(self) -> Level:
        """The level at position 1.0."""
        return self.on[-1]

    def is_off(self, level: Level) -> bool:
        """Return whether the level means off on this bike."""
        return _means_off(level, self.off)

    def position_of(self, level: Level) -> float:
        """Position 0.0 to 1.0 of a level that is on; raises Inconsistent for off and for what is no level."""
        place = self._place(level)
        return 1.0 if len(self.on) == 1 else place / (len(self.on) - 1)

    def nearest(self, position: float) -> Level:
        """Return the level nearest to a position 0..1; halfway goes toward 1.0."""
        return self.on[math.floor(self._steps(position) + 0.5 + _ROUNDING)]

    def toward_most(self, level: Level, steps: int = 1) -> Level:
        """Return the level that many steps nearer to 1.0; it stops at the end. From off, one step is the
        least.
        """
        if self.is_off(level):
            return self._stopped(steps - 1) if steps > 0 else level
        return self._stopped(self._place(level) + steps)

    def toward_least(self, level: Level, steps: int = 1) -> Level:
        """Return the level that many steps nearer to 0.0; it stops at the least level that is on, off stays
        off.
        """
        return level if self.is_off(level) else self._stopped(self._place(level) - steps)

    def _steps(self, position: float) -> float:
        return within("position on the scale", position, 0.0, 1.0) * (len(self.on) - 1)

    def _stopped(self, place: int) -> Level:
        return self.on[min(max(place, 0), len(self.on) - 1)]

    def _place(self, level: Level) -> int:
        if self.is_off(level):
            raise Inconsistent("level", "off has no position")
        if isinstance(level, bool) or level not in self.on:
            raise Inconsistent("level", f"{level} is not one of {self.on[0]} to {self.on[-1]}")
        return self.on.index(level)


@attrs.frozen
class HelpScale(Scale):
    """A scale of help: its last level helps most. Off is a state of its own below the least level."""

    def help_of(self, level: Level) -> float:
        """Help 0.0 to 1.0 of a level; OFF_HELP for off; raises Inconsistent for what is no level."""
        return OFF_HELP if self.is_off(level) else self.position_of(level)

    def level_at_least(self, wanted_help: float) -> Level:
        """Return the level with the least help that is not below the wanted 0..1: rounds toward more help."""
        return self.on[math.ceil(self._steps(wanted_help) - _ROUNDING)]

    def snap(self, threshold: float) -> float:
        """Help of the level nearest to a threshold 0..1; halfway between two levels goes to more help."""
        return self.position_of(self.nearest(threshold))

    def more_help(self, level: Level, steps: int = 1) -> Level:
        """Return the level with that many steps more help; it stops at the most."""
        return self.toward_most(level, steps)

    def less_help(self, level: Level, steps: int = 1) -> Level:
        """Return the level with that many steps less help; it stops at the least level that is on."""
        return self.toward_least(level, steps)


@attrs.frozen
class Levels:
    """What a bike offers for one aid, in the bike's own order.

    `most` is the end that helps most (on a two-ended scale: the end that frees or firms most), None while
    it is not known. `off` is False (cannot be switched off), True (off is a state beside the levels), or
    the level that means off; a level that means off is not counted.
    """

    values: tuple[Level, ...]
    most: Level | None = None
    off: bool | Level = False

    def __attrs_post_init__(self) -> None:
        if len(set(self.values)) != len(self.values):
            raise Inconsistent("levels", "one of them is named twice")
        on = self._on()
        if not on:
            raise Inconsistent("levels", "no level is on")
        if not isinstance(self.off, bool) and self.off != OFF and self.off not in self.values:
            raise Inconsistent("off", f"{self.off} is not one of the levels")
        if self.most is not None and self.most not in (on[0], on[-1]):
            raise Inconsistent("the end that helps most", f"{self.most} is not an end: {on[0]} or {on[-1]}")

    @classmethod
    def span(cls, low: int, high: int, most: int | None = None, off: bool | Level = False) -> "Levels":
        """Whole numbers from one end to the other, both included, whichever end is given first."""
        step = 1 if high >= low else -1
        return cls(tuple(range(low, high + step, step)), most, off)

    @classmethod
    def choices(cls, words: Sequence[str], most: str | None = None, off: bool | Level = False) -> "Levels":
        """Words in which the place counts."""
        return cls(tuple(words), most, off)

    def is_off(self, level: Level) -> bool:
        """Return whether the level means off on this bike."""
        return _means_off(level, self.off)

    def offers(self, level: Level) -> bool:
        """Return whether the bike has this level, or this off."""
        return not isinstance(level, bool) and (level in self.values or self.is_off(level))

    def scale_if_known(self) -> Scale | None:
        """Return the scale toward the named end; None while that end is not known."""
        on = self._toward_most()
        return None if on is None else Scale(on, self.off)

    def help_if_known(self) -> HelpScale | None:
        """Return the scale of help; None while it is not known which end helps most."""
        on = self._toward_most()
        return None if on is None else HelpScale(on, self.off)

    def stepped(self, level: Level, steps: int) -> Level:
        """Return the bike's own next number or word, `steps` places on in its own order; it stops at the
        ends.

        This needs no direction. Off that is not a level of its own is left toward the least help where
        that end is known, else toward the bike's first level.
        """
        if level in self.values and not isinstance(level, bool):
            place = self.values.index(level) + steps
            return self.values[min(max(place, 0), len(self.values) - 1)]
        if not self.is_off(level):
            raise Inconsistent("level", f"{level} is not one of {self.values[0]} to {self.values[-1]}")
        if not isinstance(self.off, bool) and self.off in self.values:
            return self.stepped(self.off, steps)
        toward = self._toward_most() or self.values
        return toward[0] if steps else level

    def _on(self) -> tuple[Level, ...]:
        return tuple(level for level in self.values if not _means_off(level, self.off))

    def _toward_most(self) -> tuple[Level, ...] | None:
        on = self._on()
        if len(on) == 1:
            return on
        if self.most is None:
            return None
        return on if self.most == on[-1] else on[::-1]


def _means_off(level: Level, off: bool | Level) -> bool:
    if off is False:
        return False
    return level == OFF or (off is not True and not isinstance(level, bool) and level == off)
