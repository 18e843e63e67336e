"""A set-up: everything a hand, a spanner or a button changes; and profiles, which name one."""

import datetime as dt
from collections.abc import Mapping

import attrs

from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.fields import one, table, tables, values
from paddock_tui.records.shapes import Named, Reference, Setting, Word


@attrs.frozen
class SetUp:
    """The set-up as the rider set it; what the riding mode fixes on top is a fact, not stored."""

    mode: str | None = one(
        Named("one of the bike's riding modes"),
        "riding mode",
        "the electronic map in use",
        call="mode",
        carry=True,
    )
    damping: str | None = one(
        Named("by-hand, or one of the bike's damping modes"),
        "damping mode",
        "by hand, or an automatic one",
        call="damping",
        carry=True,
    )
    preset: str | None = one(
        Named("one of the damping mode's presets"),
        "preset",
        "preset of the damping mode",
        call="preset",
        carry=True,
    )
    front_spring: Quantity | None = one(
        c.SPRING, "front spring", "rate of one fork spring as fitted", call="fs", carry=True
    )
    rear_spring: Quantity | None = one(
        c.SPRING, "rear spring", "rate of the shock spring as fitted", call="rs", carry=True
    )
    front_sprocket: int | None = one(c.TEETH, "front sprocket", "teeth, on the gearbox", carry=True)
    rear_sprocket: int | None = one(c.TEETH, "rear sprocket", "teeth, on the wheel", carry=True)
    links: int | None = one(
        c.LINKS, "chain links", "number of links of the chain fitted", call="links", carry=True
    )
    fork_height: Quantity | None = one(
        c.SMALL,
        "fork protrusion",
        "how far the tubes stand out above the top yoke: more = front lower",
        call="fh",
        carry=True,
    )
    rear_height: Quantity | None = one(
        c.SMALL,
        "rear ride height",
        "spacer or adjuster at the shock: more = rear higher",
        call="rh",
        carry=True,
    )
    front_start: Quantity | None = one(
        c.TYRE_PRESSURE, "front start pressure", "cold, before going out", carry=True
    )
    rear_start: Quantity | None = one(
        c.TYRE_PRESSURE, "rear start pressure", "cold, before going out", carry=True
    )
    controls: Mapping[str, Setting] = values(
        c.SETTING, "controls", "what the rider set it to", keyed_by="control", carry=True
    )
    adjusters: Mapping[str, float] = values(
        c.ADJUSTER, "adjusters", "in the adjuster's own unit", keyed_by="adjuster", carry=True
    )
    offsets: Mapping[str, float] = values(
        c.ADJUSTER, "offsets", "trim on top of the automatic damping", keyed_by="offset", carry=True
    )


@attrs.frozen
class Counted:
    """An adjuster whose value was counted on the bike, not carried over."""

    on: dt.date | None = one(c.DAY, "counted on", "the day it was counted on the bike")
    by: str | None = one(c.TEXT, "counted by", "initials of who counted")
    counted_from: str | None = one(
        Word("closed", "open"), "counted that way from", "the stop that this count was made from"
    )


@attrs.frozen
class Profile:
    """A named set-up for a bike and a rider, and the surface it was made for."""

    name: str | None = one(c.TEXT, "name", "what you call it")
    retired: dt.date | None = one(
        c.DAY, "retired", "hidden from lists since this date; references still resolve"
    )
    bike: str | None = one(Reference("bike"), "bike", "the bike it is for")
    rider: str | None = one(Reference("rider"), "rider", "the rider it is for")
    made_for: str | None = one(c.SURFACE, "made for", "the surface it was made for")
    baseline: bool | None = one(c.FLAG, "baseline", "the set-up to go back to when lost")
    taken_from: str | None = one(Reference("session"), "taken from", "the session it was saved from")
    note: str | None = one(c.TEXT, "note", "anything worth knowing")
    setup: SetUp = table(SetUp, "set-up")
    counted: Mapping[str, Counted] = tables(Counted, "counted", keyed_by="adjuster")
