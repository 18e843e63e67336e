"""The page that stands while the rest is loaded: the garage as far as it shows, out of plain data."""

import datetime as dt
from collections.abc import Callable, Iterator
from itertools import islice

from paddock_tui.desk.lookup import Glance, glances, order, session_in_hand
from paddock_tui.desk.set_clock import set_date
from paddock_tui.pages.dates import short_date
from paddock_tui.pages.garage_list import (
    EARLIER_SESSIONS,
    TITLES,
    garage_name,
    new_row,
    of_latest_day,
    record_rows,
    session_row,
    whose,
)
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.store.garage import GarageFiles

READING = "reading"
"""Stands in place of the verdict until there is one: none is taken from anywhere but a review."""

ANSWER = "Not assessed yet: the records are being read."

_FEW = 40
"""Records of a kind that are read although they do not show."""

HINT = "reading: all but arrows and q waits for the verdict"

LISTING = "reading lists: all but arrows and q waits"
"""Is said once the verdict stands on this page, until the page follows that lists everything."""

_MANY = 200
"""So many sessions read are said: it takes a while."""


def reading_hint(files: GarageFiles) -> str:
    """Say which keys wait, and how many sessions were read where they are many."""
    count = len(files.sessions_read)
    return f"{HINT}, {count} sessions read" if count >= _MANY else HINT


def opening_page(files: GarageFiles, now: Callable[[], dt.datetime], lines: int) -> Page:
    """List the garage's newest sessions and its records, as many as `lines` can show, and no verdict."""
    moment = now()
    in_hand = session_in_hand(files, moment)
    seen = _newest(files, moment.year, lines)
    rows = [session_row(files, one, moment, in_hand) for one in seen[:lines]]
    latest = of_latest_day(files, rows, moment)
    here, left = [*rows[:latest]], lines - latest
    if latest < len(rows) or len(seen) <= lines:
        here.append(new_row("session", "session"))
    sections = [Section("sessions", tuple(here)), *_others(files, left)]
    if rows[latest:]:
        # How wide the columns are depends on these too.
        sections.append(Section(EARLIER_SESSIONS, tuple(rows[latest:])))
    set_to = set_date(now)
    clock = f"clock {short_date(set_to)} · " if set_to is not None else ""
    return Page(
        f"{clock}{garage_name(files)}",
        tuple(sections),
        verdict=READING if in_hand is not None else "",
        whose=whose(files, in_hand),
        answer=ANSWER if in_hand is not None else "",
        judged=False,
    )


def _newest(files: GarageFiles, year: int, lines: int) -> list[Glance]:
    """List the newest sessions, with those of earlier years only where the screen has room for them."""
    every = len(files.listing("session"))
    while len(files.sessions_since(year)) < min(every, lines) and year > 0:
        year -= 1
    return sorted(glances(files, year), key=order, reverse=True)


def _others(files: GarageFiles, lines: int) -> Iterator[Section]:
    """List the other records as far as the screen shows them, and beyond where they are few.

    Of a section of many what is below the screen is not read. How wide the columns are depends on all.
    """
    for kind, title in TITLES.items():
        many = len(files.listing(kind)) > _FEW
        if lines <= 0 and many:
            return
        listed = record_rows(files, kind, retired=False, years=frozenset())
        rows: tuple[Row, ...] = tuple(islice(listed, lines if many else None))
        last = () if many and len(rows) == lines else (new_row(kind, title),)
        yield Section(title, (*rows, *last), "" if rows else "none yet")
        lines -= len(rows) + 2
