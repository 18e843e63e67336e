"""Presets of damping: what each sets and leaves."""

from collections.abc import Mapping

import attrs

from paddock_tui.records import common as c
from paddock_tui.records.fields import one, values
from paddock_tui.records.shapes import Series, Setting, Word

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
