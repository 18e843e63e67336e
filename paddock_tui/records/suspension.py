"""The suspension of a bike: its adjusters and its damping modes."""

from collections.abc import Mapping

import attrs

from paddock_tui.records import common as c
from paddock_tui.records.fields import one, tables, values
from paddock_tui.records.presets import BY_HAND, PRESET_NAME, PresetValues
from paddock_tui.records.shapes import Number, Series, Word, WordList

__all__ = ["BY_HAND", "OFFSET_ACTS", "Adjuster", "Damping", "Offset"]

OFFSET_ACTS = ("braking", "drive", "mid-corner", "bumps", "front", "rear")
"""When or where an offset of automatic damping can act."""


@attrs.frozen
class Adjuster:
    """One suspension setting: what it is, its range, and how it is counted."""

    end: str | None = one(Word("front", "rear", "steering"), "end", "where it is")
    what: str | None = one(
        Word(
            "preload",
            "rebound",
            "compression",
            "compression fast",
            "compression slow",
            "rebound fast",
            "rebound slow",
            "damper",
        ),
        "what",
        "what it adjusts",
    )
    unit: str | None = one(Word("click", "turn", "mm"), "unit", "what its numbers count")
    step: float | None = one(
        Number(0.01, 10, step=0.01), "step", "the smallest change that holds; 1 when left out"
    )
    range: tuple[float, ...] | None = one(
        Series(2, 2, "two numbers, lowest and highest"), "range", "lowest and highest number that can be set"
    )
    counted_from: str | None = one(
        Word("closed", "open"),
        "counted from",
        "closed: turned in gently to the stop, then out; open: the other way",
    )
    how: str | None = one(Word("by hand", "powered"), "how", "turned by hand or by a motor")
    leg: str | None = one(
        Word("both", "left", "right"), "leg", "the fork leg it acts on; forks may split their duties"
    )
    source: str | None = one(
        Word("manual", "technician", "own"), "figure from", "where the figure in use comes from"
    )
    call: str | None = one(c.TEXT, "call", "the word for it on the entry line, where you want your own")


@attrs.frozen
class Offset:
    """A trim on top of an automatic damping mode."""

    range: tuple[float, ...] | None = one(
        Series(2, 2, "two numbers, lowest and highest"), "range", "lowest and highest offset"
    )
    acts: str | None = one(
        Word(*OFFSET_ACTS),
        "acts",
        "when or where it acts; left out, its name says it where that is one of these",
    )
    firmest: float | None = one(
        Number(-100, 100), "firmest at", "the end of the range that is firmest; left out while not known"
    )


@attrs.frozen
class Damping:
    """A way of damping other than by hand."""

    kind: str | None = one(
        Word("semi-active", "powered presets"), "kind", "trimmed all the time, or motors that go to a preset"
    )
    closes: Mapping[str, bool] = values(
        c.FLAG, "closes", "adjusters that do nothing in this mode", keyed_by="adjuster"
    )
    presets: tuple[str, ...] | None = one(
        WordList("names of presets"), "presets", "the presets this mode offers"
    )
    offsets: Mapping[str, Offset] = tables(Offset, "offsets", keyed_by="offset")
    preset_values: Mapping[str, PresetValues] = tables(
        PresetValues, "what presets set", keyed_by="preset", keys=PRESET_NAME
    )
