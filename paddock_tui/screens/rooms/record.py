"""Any other record: a bike, a rider, a day, a tyre set, a venue."""

from paddock_tui.on_demand import Later
from paddock_tui.screens.action import Action, needs_session
from paddock_tui.screens.place import Place
from paddock_tui.screens.room import Room

_DOES = Later("paddock_tui.screens.at_work.record")


def _has_no_clock(place: Place) -> bool:
    """Return whether a record is none of a day: that begins with its clock."""
    return place.record is None or place.record.kind != "day"


ROOM = Room(
    id="record",
    page=_DOES("make_page"),
    opens=_DOES("shows_record"),
    escapes=True,
    unjudged=True,
    waiting_first=_has_no_clock,
)

DAY = Action(
    "day",
    "t",
    "day and times",
    "posted limits, timetable and paperwork",
    needs_session,
    do=_DOES("go_to_day"),
    unjudged=True,
)
