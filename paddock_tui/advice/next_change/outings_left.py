"""How many outings of the day are left after a session, by the timetable of the rider's group."""

from paddock_tui.advice.about import About
from paddock_tui.records.timetable import group_today, slots_of


def outings_left(about: About) -> int | None:
    """Count the starts of the group's timetable after this session; None where the day has no timetable."""
    day, session = about.situation.day, about.session
    at = session.parked or session.went_out or session.start
    if day is None or at is None:
        return None
    slots = slots_of(day, group_today(day, session.rider, session.bike))
    if not slots:
        return None
    return sum(slot.from_ is not None and slot.from_ > at for slot in slots.values())
