"""Presets of damping: what each sets and leaves, and which ones a damping mode offers."""

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

import attrs

from paddock_tui.records import common as c
from paddock_tui.records.fields import one, values
from paddock_tui.records.shapes import Series, Setting, Word

if TYPE_CHECKING:
    from paddock_tui.records.bike import Bike
    from paddock_tui.records.setup import SetUp

BY_HAND = "by-hand"
"""The damping mode that every bike has: what the adjusters are turned to is what counts."""

PRESET_NAME = "[A-Za-z0-9 _-]+"
"""The rule for keys that are names of presets: the owner's words, as they stand in the list."""


@attrs.frozen
class PresetValues:
    """What one preset of a damping mode sets, and what it leaves to be trimmed."""

    use: str | None = one(
        Word("dry", "damp", "wet", "road", "any"), "made for", "the surface this preset is meant for"
    )
    front_firmness: Setting | None = one(
        c.SETTING, "front firmness", "how firm it makes the front, in the bike's own number or word"
    )
    rear_firmness: Setting | None = one(
        c.SETTING, "rear firmness", "how firm it makes the rear, in the bike's own number or word"
    )
    damper: Setting | None = one(
        c.SETTING, "steering damper", "what it sets a steering damper to, in the bike's own number or word"
    )
    note: str | None = one(c.TEXT, "note", "anything worth knowing")
    adjusters: Mapping[str, float] = values(
        c.ADJUSTER,
        "sets adjusters",
        "what it sets an adjuster to, in the adjuster's unit",
        keyed_by="adjuster",
    )
    offsets: Mapping[str, float] = values(
        c.ADJUSTER, "sets offsets", "what it sets an offset to", keyed_by="offset"
    )
    leaves: Mapping[str, tuple[float, ...]] = values(
        Series(2, 2, "two numbers, lowest and highest"),
        "leaves",
        "the range that it leaves of an offset",
        keyed_by="offset",
    )


@attrs.frozen
class Started:
    """A preset that a set-up names: its name, the damping mode it belongs to, and what it sets."""

    name: str
    mode: str
    values: PresetValues


def presets_offered(bike: "Bike", damping: str | None) -> tuple[str, ...]:
    """List the presets that can be named in a damping mode.

    By hand those with clicks of any mode count too: the adjusters can be turned to them.
    """
    mode = bike.damping.get(damping or "")
    own = (mode.presets or ()) if mode is not None else ()
    if damping != BY_HAND:
        return own
    return tuple(dict.fromkeys((*own, *(one.name for one in _with_clicks(bike)))))


def preset_in_use(bike: "Bike", setup: "SetUp") -> Started | None:
    """Return the preset that a set-up names with what it sets; None without one, or while nobody wrote it."""
    name = setup.preset
    mode = bike.damping.get(setup.damping or "")
    if name is None:
        return None
    if mode is not None and name in mode.preset_values:
        return Started(name, setup.damping or "", mode.preset_values[name])
    if setup.damping != BY_HAND:
        return None
    return next((one for one in _with_clicks(bike) if one.name == name), None)


def _with_clicks(bike: "Bike") -> Iterator[Started]:
    for mode_name, mode in bike.damping.items():
        for name in mode.presets or ():
            written = mode.preset_values.get(name)
            if written is not None and written.adjusters:
                yield Started(name, mode_name, written)
