"""A tyre set: a front and a rear with a history of their own."""

import datetime as dt
from collections.abc import Mapping

import attrs

from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.answers import MatterAnswer
from paddock_tui.records.fields import NUMBERED, nested, one, table
from paddock_tui.records.shapes import DateCode, Reference, TyreSizeMarking, Whole, Word

TYRE_KINDS = ("road", "sport-touring", "track-day", "race-treaded", "slick", "intermediate", "wet")


@attrs.frozen
class Tyre:
    """One tyre of a set."""

    label: str | None = one(c.TEXT, "label", "what you call it: compound, colour of the dot")
    kind: str | None = one(Word(*TYRE_KINDS), "kind", "what it is made for")
    size: str | None = one(TyreSizeMarking(), "size", "as marked on the side wall")
    circumference: Quantity | None = one(c.LENGTH, "circumference", "measured, one turn with the rider on")
    date_code: str | None = one(DateCode(), "date code", "four digits on the side wall, week and year")
    fitted: dt.date | None = one(c.DAY, "fitted", "when it was put on a wheel")
    continues: str | None = one(
        Reference("tyres"), "continues", "the set this tyre was in before; its counts continue from there"
    )
    scrubbed: bool | None = one(c.FLAG, "scrubbed in", "the shiny skin is worn off on both sides")
    turned: dt.date | None = one(c.DAY, "flipped on the rim", "flipped on the rim, on this date")
    tread_left: Quantity | None = one(c.TREAD, "tread, left", "depth at the left shoulder")
    tread_middle: Quantity | None = one(c.TREAD, "tread, middle", "depth in the middle")
    tread_right: Quantity | None = one(c.TREAD, "tread, right", "depth at the right shoulder")
    tread_measured: dt.date | None = one(c.DAY, "tread measured", "when the depths were taken")
    worn_at: Quantity | None = one(c.TREAD, "worn at", "depth at which it counts as worn")
    cycles_before: int | None = one(
        Whole(0, 200), "heat cycles before", "heat cycles before the first session here"
    )
    distance_before: Quantity | None = one(
        c.DISTANCE, "distance before", "distance before the first session here"
    )
    repair: str | None = one(
        Word("none", "inside", "string plug", "side wall"), "repair", "whether it was repaired, and how"
    )
    hot_dry: Quantity | None = one(c.TYRE_PRESSURE, "hot target, dry", "the vendor's hot figure for the dry")
    hot_dry_to: Quantity | None = one(
        c.TYRE_PRESSURE, "hot dry, up to", "the upper end, where the vendor gives a window"
    )
    hot_wet: Quantity | None = one(c.TYRE_PRESSURE, "hot target, wet", "the vendor's hot figure for the wet")
    hot_wet_to: Quantity | None = one(
        c.TYRE_PRESSURE, "hot wet, up to", "the upper end, where the vendor gives a window"
    )
    cold_from: Quantity | None = one(
        c.TYRE_PRESSURE, "cold window, from", "the vendor's lowest starting pressure"
    )
    cold_to: Quantity | None = one(
        c.TYRE_PRESSURE, "cold window, to", "the vendor's highest starting pressure"
    )
    on_warmers: Quantity | None = one(
        c.TYRE_PRESSURE, "warmers target", "what it is set to hot on the warmers"
    )
    on_warmers_to: Quantity | None = one(
        c.TYRE_PRESSURE, "warmers, up to", "the upper end, where the vendor gives a window"
    )
    works_from: Quantity | None = one(
        c.TYRE_TEMPERATURE, "working range from", "lower end of the working range"
    )
    works_to: Quantity | None = one(c.TYRE_TEMPERATURE, "working range to", "upper end of the working range")
    warmer: Quantity | None = one(
        c.TYRE_TEMPERATURE, "warmer temperature", "what the warmers are set to for this tyre"
    )


@attrs.frozen
class TyreSet:
    """A front and a rear tyre that are used together."""

    name: str | None = one(c.TEXT, "name", "what you call the set")
    retired: dt.date | None = one(
        c.DAY, "retired", "hidden from lists since this date; references still resolve"
    )
    note: str | None = one(c.TEXT, "note", "anything worth knowing")
    wheels: str | None = one(
        c.TEXT, "wheels", "which wheels it is on; a circumference measured on them belongs to this set"
    )
    front: Tyre = table(Tyre, "front")
    rear: Tyre = table(Tyre, "rear")
    answers: Mapping[str, Mapping[str, MatterAnswer]] = nested(
        MatterAnswer, "answers", keyed_by="what and number", keys=("[a-z0-9-]+", NUMBERED)
    )
