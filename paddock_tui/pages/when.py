"""When the bike goes out, or when it came in: what closes the line that answers, in ever fewer words."""

import datetime as dt
import re
from collections.abc import Mapping
from typing import Any

from paddock_tui.desk.lookup import Glance
from paddock_tui.pages.dates import short_date

WhenWords = tuple[str, ...]
"""The same in ever fewer words, the last for a narrow screen."""

NOTHING_PLANNED: WhenWords = ("nothing planned",)
NOTHING_MORE: WhenWords = ("nothing more planned", "none planned")


def clock_forms(clock: str) -> WhenWords:
    """Say what the clock says first: with the minutes, without them, then the time alone."""
    whole = clock.partition(" · ")[0]
    coming = re.fullmatch(r"(\w+ (\d\d:\d\d)) in \d+ min", whole)
    if coming is not None:
        return whole, coming[1], coming[2]
    since = re.fullmatch(r"\w+ (since \d\d:\d\d)", whole)
    return (whole, since[1]) if since is not None and whole.startswith("out") else (whole,)


def ridden_forms(one: Glance, data: Mapping[str, Any], today: dt.date) -> WhenWords:
    """Say when a session was parked, with its day where that is another one."""
    parked, day = data.get("parked"), short_date(one.date)
    if not isinstance(parked, dt.time):
        return ("ridden today" if one.date == today else f"ridden {day}",)
    said = f"parked {parked:%H:%M}"
    return (said,) if one.date == today else (f"{said}, {day}", said)


def planned_forms(one: Glance, data: Mapping[str, Any], today: dt.date) -> WhenWords:
    """Say when a session is planned that nothing counts down to; empty where its day is over."""
    start = f"{one.start:%H:%M}" if isinstance(data.get("start"), dt.time) else ""
    if one.date < today:
        return ()
    if one.date == today:
        return (f"out {start}", start) if start else ("no start time yet", "no start")
    day = short_date(one.date)
    return (f"out {day} {start}", f"{day} {start}", day) if start else (f"out {day}", day)
