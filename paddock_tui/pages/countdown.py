"""The clock in words: what is due when, counted down in whole minutes."""

import datetime as dt
from collections.abc import Iterator

from paddock_tui.desk.day.countdown import UNTOLD, Countdown, gone_through, next_due
from paddock_tui.pages.rows import Row, Section

_AGO = 60
"""So many minutes after going out the clock still says since when."""


def clock_words(clock: Countdown | None, now: dt.time) -> str:
    """Say when the bike goes out, and the next thing due; the shorter form is the part before the dot."""
    if clock is None:
        return ""
    minutes = _left(clock.out, now)
    if minutes < 0 or (minutes == 0 and not clock.items):
        return f"out since {clock.out:%H:%M}" if minutes >= -_AGO else ""
    said = f"out {clock.out:%H:%M} in {minutes} min"
    due = next_due(clock, now)
    if due is None:
        return said
    left = _left(due.at, now)
    return f"{said} · {due.what} {f'{left} min' if left > 0 else 'now'}"


def clock_section(clock: Countdown | None, now: dt.time) -> Section | None:
    """Make the section that lists what is due until the bike goes out; None where nobody knows when."""
    if clock is None or _left(clock.out, now) < -_AGO:
        return None
    return Section(
        "until the next session", tuple(_rows(clock, now)), "e, late 15: the rest goes 15 min later"
    )


def _rows(clock: Countdown, now: dt.time) -> Iterator[Row]:
    for item in gone_through(clock):
        left = _left(item.at, now)
        over = "" if item.what in UNTOLD and left < 0 else "now"
        when = "done" if item.done else f"in {left} min" if left > 0 else over
        yield Row(f"{item.at:%H:%M}", item.what, aside=when, kind="link", key=f"clock {item.what}")


def _left(at: dt.time, now: dt.time) -> int:
    """Count whole minutes from now to a time, what is left of the last one not counted."""
    return ((at.hour - now.hour) * 3600 + (at.minute - now.minute) * 60 + at.second - now.second) // 60
