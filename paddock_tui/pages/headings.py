"""How a session or a profile is named at the top of a page."""

import datetime as dt

from paddock_tui.desk.looking import LooksAt
from paddock_tui.pages.dates import short_date
from paddock_tui.records.paths import Ref
from paddock_tui.text import printable

_WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")


def heading_of(desk: LooksAt, ref: Ref) -> str:
    """Name a session by number, day, start, bike, rider and venue, as far as known; a profile by its name."""
    data = desk.files.data(ref)
    if ref.kind != "session":
        name = data.get("name")
        return printable(f"{ref.kind} · {name if isinstance(name, str) else ref.id}")
    day = desk.files.data(Ref("day", str(data.get("day"))))
    parts = [f"session {data['number']}" if "number" in data else ref.id]
    date, start = data.get("date"), data.get("start")
    if isinstance(date, dt.date):
        clock = f" {start:%H:%M}" if isinstance(start, dt.time) else ""
        parts.append(f"{_WEEKDAYS[date.weekday()]} {short_date(date)}{clock}")
    parts += [
        word for word in (data.get("bike"), data.get("rider"), day.get("venue")) if isinstance(word, str)
    ]
    return printable(" · ".join(parts))
