"""A day at a venue: what the organiser posted, when each group rides, what was signed and checked."""

import datetime as dt
from collections.abc import Mapping

import attrs

from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.costs import DayCosts
from paddock_tui.records.crew import GroupMove
from paddock_tui.records.fields import NAMED, NUMBERED, nested, one, table, tables, values
from paddock_tui.records.packing import PACKING, Packed
from paddock_tui.records.papers import Booking
from paddock_tui.records.race import MarkedTyre, RaceClass
from paddock_tui.records.shapes import Reference, Word

FORBIDDEN = "forbidden"
"""What a day says of lap timing where no lap may be timed."""


@attrs.frozen
class PostedLimits:
    """Limits as posted by the organiser for this day."""

    pit_lane: Quantity | None = one(c.PIT_SPEED, "pit-lane limit", "as posted for the day")
    paddock: Quantity | None = one(c.PIT_SPEED, "paddock limit", "as posted for the day")
    noise: Quantity | None = one(c.NOISE, "noise limit", "as posted for the day")
    noise_method: str | None = one(c.TEXT, "noise method", "how it is measured: distance, angle, revs")
    pads: Quantity | None = one(
        c.TREAD, "least pad thickness", "least brake pad thickness this organiser accepts"
    )
    engine_start: dt.time | None = one(c.CLOCK, "engines not before", "no engine may be started earlier")


@attrs.frozen
class TimetableSlot:
    """A span of the timetable."""

    from_: dt.time | None = one(c.CLOCK, "from", "when it starts", key="from")
    to: dt.time | None = one(c.CLOCK, "to", "when it ends")
    what: str | None = one(c.TEXT, "what", "what it is, where it is more than riding")


@attrs.frozen
class Noise:
    """The venue's own noise reading of one bike."""

    reading: Quantity | None = one(c.NOISE, "noise reading", "as measured at this venue")
    by: str | None = one(c.TEXT, "noise read by", "who measured it")
    elsewhere: str | None = one(
        Reference("venue"), "noise read at", "the venue where it was measured, where that is another one"
    )


@attrs.frozen
class DayEntry:
    """One rider on one bike, for this day: paperwork, camera and the day's checks."""

    group: str | None = one(c.TEXT, "own group", "this rider's group today, where it is not the day's")
    travel: str | None = one(
        Word("road", "van"), "own travel", "how this bike gets home, where it is not the day's"
    )
    race_class: str | None = one(
        c.TEXT, "class entered", "the class this rider and bike are entered in", key="class"
    )
    signed_on: bool | None = one(c.FLAG, "signed on", "signed on, waiver and wristband done")
    briefing: bool | None = one(c.FLAG, "briefing attended", "the riders' briefing, compulsory everywhere")
    inspected: bool | None = one(
        c.FLAG, "inspection passed", "the bike and kit passed technical inspection (scrutineering)"
    )
    noise: Noise = table(Noise, "noise")
    camera: str | None = one(Word("none", "bike", "helmet"), "camera", "where a camera is carried")
    tethered: bool | None = one(c.FLAG, "camera tethered", "whether the camera is tied to the bike")
    marked: Mapping[str, MarkedTyre] = tables(
        MarkedTyre, "tyres that count", keyed_by="number", keys=NUMBERED
    )
    moves: Mapping[str, GroupMove] = tables(
        GroupMove, "moved to another group", keyed_by="number", keys=NUMBERED
    )
    said: str | None = one(c.TEXT, "the day in a line", "one line of the day, in the rider's own words")
    costs: DayCosts = table(DayCosts, "costs")
    checks: Mapping[str, c.Check] = tables(c.Check, "checks of the day", keyed_by="checklist item")


NO_ENTRY = DayEntry()
"""What a day holds of somebody of whom it holds nothing."""


@attrs.frozen
class RidingDay:
    """One day at one venue with one organiser."""

    date: dt.date | None = one(c.DAY, "date", "the day it is held on")
    venue: str | None = one(Reference("venue"), "venue", "where it is")
    organiser: str | None = one(c.TEXT, "organiser", "who runs the day")
    kind: str | None = one(
        Word("track day", "race meeting", "test", "training"), "kind", "what kind of day it is"
    )
    layout: str | None = one(c.TEXT, "layout", "which layout is ridden")
    group: str | None = one(
        c.TEXT, "group on the day", "the organiser's group; its timetable is the one that counts"
    )
    timing: str | None = one(
        Word("allowed", FORBIDDEN), "lap timing", "whether laps may be timed on this day"
    )
    camera_rule: str | None = one(c.TEXT, "camera rule", "what the organiser says about cameras")
    inspection_after_fall: str | None = one(
        Word("any", "moving"), "inspected again after", "any fall, or only one while moving"
    )
    passing: str | None = one(c.TEXT, "passing rule", "where this group may pass")
    medical_post: str | None = one(c.TEXT, "medical post", "where it is")
    inspection_after_off: bool | None = one(
        c.FLAG, "inspects after any off", "whether a bike that left the track is inspected again"
    )
    airbag: str | None = one(
        Word("required", "not required"), "airbag", "whether this organiser wants an armed airbag"
    )
    travel: str | None = one(Word("road", "van"), "travel", "how the bike gets home")
    distance_home: Quantity | None = one(c.DISTANCE, "distance home", "how far the bike is ridden home")
    forecast: str | None = one(
        Word("dry", "damp", "wet", "changing"), "forecast", "what surface is expected; only to pack by"
    )
    air: Quantity | None = one(c.AIR_TEMPERATURE, "air expected", "what the forecast says, for midday")
    weather: str | None = one(c.TEXT, "weather expected", "showers, wind, sun: the forecast in words")
    retired: dt.date | None = one(c.DAY, "retired", "hidden from lists since this date")
    note: str | None = one(c.TEXT, "note", "anything worth knowing")
    bring: Mapping[str, str] = values(
        c.TEXT,
        "bring next time",
        "written down here, shown before the next day at this venue",
        keyed_by="number",
        keys=NUMBERED,
    )
    packing: Mapping[str, Packed] = tables(Packed, PACKING, keyed_by="item")
    bookings: Mapping[str, Booking] = tables(Booking, "bookings", keyed_by="what is booked")
    limits: PostedLimits = table(PostedLimits, "limits as posted")
    flags: Mapping[str, str] = values(
        c.TEXT, "flags as briefed", "what each flag means here, in the briefing's words", keyed_by="flag"
    )
    classes: Mapping[str, RaceClass] = tables(RaceClass, "rules of a class", keyed_by="class")
    timetable: Mapping[str, Mapping[str, TimetableSlot]] = nested(
        TimetableSlot, "timetable", keyed_by="group and number", keys=(NAMED, NUMBERED)
    )
    stops: Mapping[str, TimetableSlot] = tables(
        TimetableSlot, "lunch and stops", keyed_by="number", keys=NUMBERED
    )
    entries: Mapping[str, Mapping[str, DayEntry]] = nested(DayEntry, "entries", keyed_by="rider and bike")

    def entry_of(self, rider: str | None, bike: str | None) -> DayEntry:
        """Return what this day holds of a rider on a bike; an empty entry where it holds nothing of them."""
        return self.entries.get(rider or "", {}).get(bike or "", NO_ENTRY)


def measured_elsewhere(entry: DayEntry, day: RidingDay) -> bool:
    """Return whether a noise reading was taken at another venue: it says nothing of the meter here."""
    return entry.noise.elsewhere is not None and entry.noise.elsewhere != day.venue
