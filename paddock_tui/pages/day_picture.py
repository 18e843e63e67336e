"""A day as a line: the timetable's groups, its stops, and the sessions of each rider on each bike."""

import datetime as dt
from collections.abc import Iterator, Mapping

from paddock_tui.desk.day.countdown import Countdown
from paddock_tui.desk.lookup import glances, order
from paddock_tui.pages.pictured import picture_row
from paddock_tui.pages.pictures.day import LEGEND, DayLane, DaySpan, day_lanes
from paddock_tui.pages.rows import Row, Section
from paddock_tui.records.day import RidingDay, TimetableSlot
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.records.shapes_of_bike import words_of
from paddock_tui.store.garage import GarageFiles
from paddock_tui.text import printable


def day_section(
    files: GarageFiles, ref: Ref, day: RidingDay, now: dt.datetime, clock: Countdown | None
) -> Section | None:
    """Make the section of the day as a line, what is due on it; None where nothing of it has a time."""
    lanes = [
        *(_lane(words_of(group), slots) for group, slots in day.timetable.items()),
        _lane("stops", day.stops),
        *_own(files, ref, day),
    ]
    due = _due(clock, now) if clock is not None else None
    shown = [lane for lane in (*lanes, *((due,) if due is not None else ())) if lane.spans]
    picture = day_lanes(shown, now.time() if day.date == now.date() else None)
    row: Row | None = picture_row("the day as a line", picture) if picture is not None else None
    return Section("the day", (row,), LEGEND) if row is not None else None


def _lane(label: str, slots: Mapping[str, TimetableSlot]) -> DayLane:
    spans = tuple(DaySpan(slot.from_, slot.to) for slot in slots.values() if slot.from_ is not None)
    return DayLane(label, tuple(sorted(spans, key=lambda span: span.start)))


def _due(clock: Countdown, now: dt.datetime) -> DayLane:
    """Return a line of what is due and not done: each by its first letter, the next one named behind."""
    ahead = [item for item in clock.items if not item.done and item.at >= now]
    note = f"{ahead[0].at:%H:%M} {ahead[0].said}" if ahead else ""
    return DayLane("due", tuple(DaySpan(item.at.time(), None, what=item.said) for item in ahead), note)


def _own(files: GarageFiles, ref: Ref, day: RidingDay) -> Iterator[DayLane]:
    """Return a line for each rider on each bike that has sessions on this day."""
    found: dict[tuple[str, str], list[DaySpan]] = {}
    if day.date is None:
        return
    for seen in sorted((one for one in glances(files, day.date.year) if one.date == day.date), key=order):
        loaded = files.read(seen.ref)
        session = loaded.record if loaded is not None else None
        if not isinstance(session, Session) or session.day != ref.id:
            continue
        start = session.went_out or session.start
        if start is not None:
            key = (session.rider or "", session.bike or "")
            number = str(session.number) if session.number is not None else "?"
            found.setdefault(key, []).append(DaySpan(start, session.parked, number, seen.ridden))
    for (rider, bike), spans in found.items():
        yield DayLane(printable(f"{rider} {bike}".strip()), tuple(spans))
