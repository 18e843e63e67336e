"""How many outings of the day are left after a session, by the timetable of the rider's group."""

from paddock_tui.advice.about import About
from paddock_tui.records.day import DayEntry


def outings_left(about: About) -> int | None:
    """Count the starts of the group's timetable after this session; None where the day has no timetable."""
    day, session = about.situation.day, about.session
    at = session.parked or session.went_out or session.start
    if day is None or at is None:
        return None
    entry = day.entries.get(session.rider or "", {}).get(session.bike or "", DayEntry())
    group = (entry.group or day.group or "").strip()
    slots = day.timetable.get(group) or day.timetable.get(group.casefold().replace(" ", "-"))
    if not slots:
        return None
    return sum(slot.from_ is not None and slot.from_ > at for slot in slots.values())
