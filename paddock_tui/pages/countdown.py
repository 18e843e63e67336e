"""The clock in words: what is due when, counted down in whole minutes."""

import datetime as dt
import math
from collections.abc import Iterator

from paddock_tui.desk.day.countdown import UNTOLD, Countdown, gone_through, next_due
from paddock_tui.desk.day.moments import minutes_to
from paddock_tui.pages.rows import Row, Section

_AGO = 60
"""So many minutes after going out the clock still says since when."""


def clock_words(clock: Countdown | None, now: dt.datetime) -> str:
    """Say when the bike goes out, and the next thing due; the shorter form is the part before the dot."""
    if clock is None:
        return ""
    minutes = minutes_to(clock.out, now)
    if clock.word == "stopped":
        return f"stopped since {clock.out:%H:%M} · when does it go on?"
    if minutes < 0 or (minutes == 0 and not clock.items):
        since = minutes >= -_AGO or (clock.flag is not None and clock.flag >= now)
        return " · ".join((f"{clock.word} since {clock.out:%H:%M}", *_flag(clock, now))) if since else ""
    said = f"{clock.word} {clock.out:%H:%M} in {minutes} min"
    due = next_due(clock, now)
    if due is None:
        return said
    left = minutes_to(due.at, now)
    return f"{said} · {due.said} {f'in {left} min' if left > 0 else 'now'}"


def _flag(clock: Countdown, now: dt.datetime) -> Iterator[str]:
    """Say how long it is to the flag, or how many laps."""
    if clock.flag is None or clock.flag < now:
        return
    if clock.lap_s:
        left = math.ceil((clock.flag - now).total_seconds() / clock.lap_s)
        yield f"about {min(left, clock.laps or left)} laps to the flag"
    else:
        yield f"flag {clock.flag:%H:%M} in {minutes_to(clock.flag, now)} min"


def clock_section(clock: Countdown | None, now: dt.datetime) -> Section | None:
    """Make the section that lists what is due until the bike goes out; None where nobody knows when."""
    if clock is None or minutes_to(clock.out, now) < -_AGO:
        return None
    return Section(
        "until the next session",
        tuple(_rows(clock, now)),
        "e, late 15: the rest goes 15 min later",
        summary=clock_words(clock, now),
    )


def _rows(clock: Countdown, now: dt.datetime) -> Iterator[Row]:
    for item in gone_through(clock):
        left = minutes_to(item.at, now)
        over = "" if item.what in UNTOLD and left < 0 else "now"
        when = "done" if item.done else f"in {left} min" if left > 0 else over
        yield Row(f"{item.at:%H:%M}", item.said, aside=when, kind="link", key=f"clock {item.what}")
