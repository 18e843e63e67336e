"""The page of a day: its timetable at a glance, then everything that stands in it."""

import datetime as dt
from collections.abc import Iterator

import attrs

from paddock_tui.desk.day.moments import in_order, minutes_to
from paddock_tui.pages.record import record_page
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.common import Units
from paddock_tui.records.day import RidingDay, TimetableSlot
from paddock_tui.records.shapes_of_bike import words_of
from paddock_tui.store.garage import Loaded
from paddock_tui.text import printable


def day_page(
    loaded: Loaded,
    units: Units,
    group: str | None = None,
    now: dt.datetime | None = None,
    ridden: dt.datetime | None = None,
) -> Page:
    """Make the page of a day; `group` is the rider's, whose lines are marked in the timetable.

    `now` is given on the day itself: the timetable, folded, then says what comes next behind the line that
    was `ridden` last.
    """
    page = record_page(loaded, None, units)
    if not isinstance(loaded.record, RidingDay):
        return page
    mine = group or loaded.record.group
    rows = tuple(_glance(loaded, loaded.record, mine))
    if not rows:
        return page
    note = f"{printable(mine)} marked" if mine is not None and mine in loaded.record.timetable else ""
    summary = _next_words(loaded.record, mine, now, ridden) if now is not None else ""
    glance = Section("timetable at a glance", rows, note, summary=summary)
    return attrs.evolve(page, sections=(glance, *page.sections))


def _next_words(day: RidingDay, mine: str | None, now: dt.datetime, ridden: dt.datetime | None) -> str:
    """Say when the group, or without one the first of all, goes out next."""
    date = day.date or now.date()
    starts = [
        dt.datetime.combine(date, slot.from_)
        for group, slots in day.timetable.items()
        for slot in slots.values()
        if slot.from_ is not None and mine in (None, group)
    ]
    left = [one for one in starts if ridden is None or one > ridden]
    to_come = [one for one in left if one >= now.replace(tzinfo=None)]
    if not to_come:
        return "nothing more to come" if starts else ""
    first = min(to_come)
    return f"next {first:%H:%M} in {minutes_to(first, now.replace(tzinfo=None))} min"


def _glance(loaded: Loaded, day: RidingDay, mine: str | None) -> Iterator[Row]:
    """Return a row for each line of the timetable and each stop, in the order of the clock."""
    lines: list[tuple[dt.datetime, str, str, TimetableSlot, tuple[str, ...]]] = []
    date = day.date or dt.date(2000, 1, 1)
    for group, slots in day.timetable.items():
        timed = [(slot.from_, (number, slot)) for number, slot in slots.items() if slot.from_ is not None]
        for at, (number, slot) in in_order(date, timed):
            words = f"{words_of(group)} {number}"
            lines.append((at, group, words, slot, ("timetable", group, number, "from")))
    stops = [(slot.from_, (number, slot)) for number, slot in day.stops.items() if slot.from_ is not None]
    for at, (number, slot) in in_order(date, stops):
        lines.append((at, "", "stop", slot, ("stops", number, "from")))
    for start, group, words, slot, path in sorted(lines, key=lambda line: (line[0], line[2])):
        end = f"-{slot.to:%H:%M}" if slot.to is not None else ""
        mark = " *" if group and group == mine else ""
        yield Row(
            label=f"{start:%H:%M}{end}{mark}",
            value=printable(words),
            aside=printable(slot.what or ""),
            kind="link",
            ref=loaded.ref,
            path=path,
            key=f"glance {'.'.join(path)}",
        )
