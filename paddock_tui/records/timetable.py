"""Whose lines of a day's timetable count: the group of a rider there, and that group's lines."""

from collections.abc import Mapping

from paddock_tui.records.day import RidingDay, TimetableSlot
from paddock_tui.records.ids import id_of


def group_today(day: RidingDay, rider: str | None, bike: str | None) -> str | None:
    """Return the group of a rider on a day: the entry's own, else the day's."""
    entry = day.entries.get(rider or "", {}).get(bike or "")
    return (entry.group if entry is not None else None) or day.group


def slots_of(day: RidingDay, group: str | None) -> Mapping[str, TimetableSlot]:
    """Return the lines of a group, written as the group or as its id; without one those of the only group."""
    name = group or (next(iter(day.timetable)) if len(day.timetable) == 1 else "")
    return day.timetable.get(name) or day.timetable.get(id_of(name), {})
