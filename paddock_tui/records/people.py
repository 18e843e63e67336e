"""Riders and venues."""

import datetime as dt
from collections.abc import Mapping

import attrs

from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.answers import MatterAnswer
from paddock_tui.records.fields import NUMBERED, nested, one, table, tables
from paddock_tui.records.papers import Paper
from paddock_tui.records.shapes import TimeZoneName, Whole, Word


@attrs.frozen
class OwnLimits:
    """Limits that a rider sets for themselves."""

    heat_cycles: int | None = one(
        Whole(1, 100), "heat cycles", "after how many a tyre is moved to practice or replaced"
    )
    fuel_reserve: Quantity | None = one(c.VOLUME, "fuel reserve", "litres to have left at the flag")


@attrs.frozen
class Rider:
    """Who rides."""

    name: str | None = one(c.TEXT, "name", "as you want to be called")
    initials: str | None = one(c.TEXT, "initials", "stand beside answers and acceptances")
    retired: dt.date | None = one(
        c.DAY, "retired", "hidden from lists since this date; references still resolve"
    )
    weight: Quantity | None = one(c.MASS, "weight in kit", "with leathers, boots, helmet and protectors")
    group: str | None = one(c.GROUP, "group", "the group this rider belongs in")
    note: str | None = one(c.TEXT, "note", "anything worth knowing")
    units: c.Units = table(c.Units, "units")
    limits: OwnLimits = table(OwnLimits, "own limits")
    papers: Mapping[str, Paper] = tables(Paper, "papers", keyed_by="paper")
    answers: Mapping[str, Mapping[str, MatterAnswer]] = nested(
        MatterAnswer, "answers", keyed_by="what and number", keys=("[a-z0-9-]+", NUMBERED)
    )


@attrs.frozen
class UsualLimits:
    """What a venue usually posts; only offered, never used in place of the day's own."""

    pit_lane: Quantity | None = one(c.PIT_SPEED, "pit lane, usual", "usual pit-lane limit")
    paddock: Quantity | None = one(c.PIT_SPEED, "paddock, usual", "usual paddock limit")
    noise: Quantity | None = one(c.NOISE, "noise, usual", "usual noise limit")
    on: dt.date | None = one(c.DAY, "as of", "when these were posted")


@attrs.frozen
class Corner:
    """One corner of a venue."""

    name: str | None = one(c.TEXT, "name", "what people call it")
    side: str | None = one(Word("left", "right"), "side", "which way it turns")
    radius: Quantity | None = one(c.RADIUS, "radius", "radius of the line at its tightest")
    gear: int | None = one(Whole(1, 8), "gear", "gear used through it")
    marker: str | None = one(c.TEXT, "marker", "what you brake or turn in by")


@attrs.frozen
class Venue:
    """A place to ride at."""

    name: str | None = one(c.TEXT, "name", "what you call the venue")
    retired: dt.date | None = one(
        c.DAY, "retired", "hidden from lists since this date; references still resolve"
    )
    layout: str | None = one(c.TEXT, "layout", "which layout the figures are for")
    length: Quantity | None = one(c.LAP_LENGTH, "lap length", "length of one lap")
    direction: str | None = one(
        Word("clockwise", "anticlockwise"), "direction", "which way round it is ridden"
    )
    time_zone: str | None = one(
        TimeZoneName(), "time zone", "where its clock is not that of the laptop: times are told by it there"
    )
    altitude: Quantity | None = one(c.ALTITUDE, "altitude", "above sea level")
    longest_straight: Quantity | None = one(
        c.LENGTH_OF_STRAIGHT, "longest straight", "length of the longest straight"
    )
    note: str | None = one(c.TEXT, "note", "anything worth knowing")
    usual: UsualLimits = table(UsualLimits, "usual limits")
    corners: Mapping[str, Corner] = tables(Corner, "corners", keyed_by="corner number", keys=NUMBERED)
