"""The board of the day as a page and as plain data: who goes out when, and what is still open for each.

What a finding tells of a person stands on no board: whose it is and how severe, never why.
"""

import datetime as dt
from collections.abc import Iterator
from typing import Any

from paddock_tui.desk import Desk
from paddock_tui.desk.day.board import BoardEntry, BoardMemory, Judged, board_date, board_of
from paddock_tui.desk.day.moments import minutes_to
from paddock_tui.pages.message_line import message_line
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.paths import Ref
from paddock_tui.records.verdict_words import CARE_WORD, HOLD_WORD, NOT_YET_WORD
from paddock_tui.rules import CAUTION, HOLD
from paddock_tui.rules.personal import OF_HEALTH, impersonal_words
from paddock_tui.text import printable

BOARD = "board"
"""What is asked for in place of a record to see the board."""

_A_DAY = 24 * 60
"""Minutes from which a start is no matter of counting down."""


def board_page(desk: Desk, memory: BoardMemory, day: Ref | None = None) -> Page:
    """Make the page: two rows for each rider and bike of the day, in the order of the clock."""
    date = board_date(desk, day)
    entries = board_of(desk, date, memory)
    rows = tuple(row for one in entries for row in _rows(one, desk.now()))
    note = "enter goes there" if rows else "nobody is entered, and nobody has a session"
    section = Section("who goes out next", rows, note)
    return Page(f"board · {date:%a} {date.day} {date:%b}", (section,), judged=False)


def board_as_dict(desk: Desk, memory: BoardMemory, day: Ref | None = None) -> dict[str, Any]:
    """Return the board as plain data: an entry for each rider and bike, minutes as whole numbers."""
    date, now = board_date(desk, day), desk.now()
    entries = [_as_dict(one, now) for one in board_of(desk, date, memory)]
    return {"date": date.isoformat(), "at": now.replace(microsecond=0).isoformat(), "entries": entries}


def first_words(judged: Judged) -> str:
    """Say the first finding as others may read it, or the first essential that is missing; else nothing."""
    first = next((one for one in judged.review.findings if one.severity >= CAUTION), None)
    if first is None:
        missing = judged.review.missing[:1]
        return "".join("rider: not answered" if one.id in OF_HEALTH else one.label for one in missing)
    return impersonal_words(first) or message_line(first).removesuffix(".")


def verdict_words(judged: Judged) -> str:
    """Write the verdict with its count; nothing of what was accepted, nor by whom."""
    found = judged.review
    counts = {HOLD_WORD: found.count(HOLD), CARE_WORD: found.cares, NOT_YET_WORD: len(found.missing)}
    count = counts.get(found.verdict)
    missing = " missing" if found.verdict == NOT_YET_WORD else ""
    return found.verdict if count is None else f"{found.verdict} {count}{missing}"


def _rows(one: BoardEntry, now: dt.datetime) -> Iterator[Row]:
    opens, judged = one.session or one.day, one.judged
    key = f"board {one.rider} {one.bike}"
    found = [one for one in judged.review.findings if one.severity >= CAUTION] if judged is not None else []
    yield Row(
        printable(_when(one, now)),
        printable(" ".join(filter(None, (one.rider, one.bike))) or "rider and bike not known"),
        aside=verdict_words(judged) if judged is not None else "",
        kind="link",
        ref=opens,
        opens=opens,
        severity=str(found[0].severity) if found else "",
        key=key,
    )
    if judged is not None:
        said = printable(" · ".join(filter(None, (first_words(judged), *_open_words(judged)))))
        yield Row(" ", said, kind="text", key=f"{key} open")
    elif one.state != "over":
        yield Row(" ", "no session made yet", kind="text", key=f"{key} open")


def _when(one: BoardEntry, now: dt.datetime) -> str:
    if one.starts is None:
        return "done" if one.state == "over" else "no start yet"
    minutes = minutes_to(one.starts, now)
    if abs(minutes) > _A_DAY:
        return f"{one.starts:%H:%M}"
    if one.state == "stopped":
        goes_on = f"restart {one.starts:%H:%M} in {minutes} min"
        return goes_on if minutes >= 0 else f"stopped {one.starts:%H:%M}"
    if one.state == "out":
        return f"out {one.starts:%H:%M}, {max(-minutes, 0)} min"
    return (
        f"{one.starts:%H:%M} in {minutes} min" if minutes >= 0 else f"{one.starts:%H:%M} late {-minutes} min"
    )


def _open_words(judged: Judged) -> Iterator[str]:
    """Say what could not be judged, what is still open, and what is done."""
    yield f"{len(judged.review.missing_rules())} not assessed"
    items = judged.checklist_open
    states = {
        "list" if items == 0 else f"{items} on the list": None if items is None else items == 0,
        "dash": judged.dash_read,
        "fuel": judged.fuel_known,
        "pressures": judged.pressures_known,
    }
    for word, wanted in (("open", False), ("done", True)):
        named = [what for what, done in states.items() if done is wanted]
        if named:
            yield f"{word}: {', '.join(named)}"


def _as_dict(one: BoardEntry, now: dt.datetime) -> dict[str, Any]:
    judged = one.judged
    return {
        "rider": one.rider or None,
        "bike": one.bike or None,
        "session": one.session.id if one.session is not None else None,
        "state": one.state,
        "start": one.starts.isoformat() if one.starts is not None else None,
        "minutes": minutes_to(one.starts, now) if one.starts is not None else None,
        "verdict": judged.review.verdict if judged is not None else None,
        "first": (first_words(judged) or None) if judged is not None else None,
        "not_judged": len(judged.review.missing_rules()) if judged is not None else None,
        "checklist_open": judged.checklist_open if judged is not None else None,
        "dash_read": judged.dash_read if judged is not None else None,
        "fuel_known": judged.fuel_known if judged is not None else None,
        "pressures_known": judged.pressures_known if judged is not None else None,
    }
