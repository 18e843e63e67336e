"""What changed today: the lines of the journal, newest first."""

import datetime as dt

from paddock_tui.desk import Desk
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.store.journal import JournalEntry
from paddock_tui.text import printable

_WORDS = {"do": "", "undo": "taken back", "redo": "done again", "passed": ""}


def today_page(desk: Desk) -> Page:
    """List what was kept, taken back and done again on this day; enter opens the record."""
    today = desk.now().date()
    found = [one for one in desk.changed_on(today) if one.what != "passed"]
    rows = tuple(_row(desk, one, place) for place, one in enumerate(reversed(found)))
    note = "" if rows else "nothing yet"
    first = f"{len(rows)} changed today, last: {rows[0].value}, {rows[0].label}" if rows else ""
    return Page(
        f"changed today · {_named(today)}",
        (Section("newest first", rows, note),),
        judged=False,
        answer=first or "Nothing was changed here today.",
        answer_short=f"{len(rows)} changed today" if rows else "",
    )


def _row(desk: Desk, entry: JournalEntry, place: int) -> Row:
    ref = next((one for one in entry.refs if desk.files.path_of(one) is not None), None)
    about = ", ".join(str(one) for one in entry.refs[:2])
    more = f" and {len(entry.refs) - 2} more" if len(entry.refs) > 2 else ""
    words = _WORDS[entry.what]
    doubts = (
        "the clock was doubtful" if entry.doubtful else "",
        "" if entry.ours else "without your mark: not undone",
    )
    return Row(
        f"{entry.at:%H:%M}",
        printable(entry.step.label),
        aside=printable(" · ".join(filter(None, (words, f"{about}{more}", *doubts)))),
        kind="link",
        ref=ref,
        opens=ref,
        key=f"{entry.id} {entry.what} {place}",
    )


def _named(day: dt.date) -> str:
    return f"{day:%a} {day.day} {day:%b}"
