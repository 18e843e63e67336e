"""What the day's rules are set against: noise, camera, lap timer, and stops before a session."""

import datetime as dt
from collections.abc import Mapping
from typing import NamedTuple

from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.facts.past import PastSession
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.day import FORBIDDEN, DayEntry, RidingDay, TimetableSlot, measured_elsewhere
from paddock_tui.records.kinds import Record
from paddock_tui.records.session import Session


class NoiseRead(NamedTuple):
    """The venue's own reading of this bike, and the limit as posted."""

    reading: Quantity
    posted: Quantity

    @property
    def under(self) -> float:
        """Decibels under the limit; below zero where it is over."""
        return self.posted.to("dB(A)") - self.reading.to("dB(A)")

    def __str__(self) -> str:
        return f"noise {self.reading}, limit {self.posted}"


class Camera(NamedTuple):
    """Where the camera is, whether it is tied on, and the organiser's rule."""

    place: str
    tethered: bool | None
    rule: str | None

    def __str__(self) -> str:
        tied = {True: "tied on", False: "not tied on", None: "tied on or not is not known"}[self.tethered]
        return f"camera on the {self.place}, {tied}; organiser: {self.rule or 'no rule noted'}"


class TimetableStop(NamedTuple):
    """A stop of the timetable after which nobody has ridden yet."""

    what: str
    until: dt.time

    def __str__(self) -> str:
        return f"{self.what} until {self.until:%H:%M}"


@fact("the noise reading", at="day:limits.noise", show=str)
def noise_read(entry: DayEntry, day: RidingDay) -> NoiseRead | Absent:
    """Return the reading and the limit; absent without one of them: nobody judges by another meter."""
    reading, posted = entry.noise.reading, day.limits.noise
    if reading is None or posted is None or measured_elsewhere(entry, day):
        return ABSENT
    return NoiseRead(reading, posted)


@fact("the noise reading of another venue", at="day:entries", show=str)
def noise_elsewhere(entry: DayEntry, day: RidingDay) -> NoiseRead | Absent:
    """Return a reading that was measured at another venue, beside the limit of this one."""
    reading, posted = entry.noise.reading, day.limits.noise
    if reading is None or posted is None or not measured_elsewhere(entry, day):
        return ABSENT
    return NoiseRead(reading, posted)


@fact("the camera", at="day:entries", show=str)
def camera(entry: DayEntry, day: RidingDay) -> Camera | Absent:
    """Return the camera that is carried; absent where there is none, or nobody wrote of one."""
    if entry.camera in (None, "none"):
        return ABSENT
    return Camera(entry.camera or "", entry.tethered, day.camera_rule)


@fact("whether a lap timer is on the bike", at="bike:lap_timer", show=lambda found: f"lap timer {found}")
def timer_where_forbidden(bike: Bike, day: RidingDay) -> str | Unknown | Absent:
    """Return the lap timer of the bike, asked only where timing is forbidden."""
    if day.timing != FORBIDDEN:
        return ABSENT
    return bike.lap_timer or UNKNOWN


@fact("the last stop of the timetable", show=str)
def stop_before(
    session: Session, records: Mapping[str, Record], rider_today: tuple[PastSession, ...]
) -> TimetableStop | Absent:
    """Lunch or another stop before this session since which the rider has not ridden."""
    day = records.get("day")
    if not isinstance(day, RidingDay) or session.start is None:
        return ABSENT
    since = [one.session.start for one in rider_today if one.session.start is not None]
    before = [
        (slot.to, slot)
        for slot in day.stops.values()
        if slot.to is not None and slot.to <= session.start and not any(start >= slot.to for start in since)
    ]
    if not before:
        return ABSENT
    until, slot = max(before, key=lambda one: one[0])
    return TimetableStop(_what(slot), until)


def _what(slot: TimetableSlot) -> str:
    return " ".join((slot.what or "a stop").split())
