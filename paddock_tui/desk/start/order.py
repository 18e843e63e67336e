"""Every row of a start in the order of the manual and of the day, and where it goes on."""

from collections.abc import Sequence

from paddock_tui.desk.desk import Desk
from paddock_tui.desk.start.about import Chosen, started
from paddock_tui.desk.start.ask import Ask
from paddock_tui.desk.start.context import Context
from paddock_tui.desk.start.day import day_asks
from paddock_tui.desk.start.machine import bike_asks
from paddock_tui.desk.start.outing import session_asks
from paddock_tui.desk.start.people import rider_asks
from paddock_tui.desk.start.rubber import tyre_asks


def context_of_start(desk: Desk, chosen: Chosen) -> Context:
    """Return what the rows are made from."""
    about = started(desk.files, desk.now(), chosen)
    return Context(desk.files, about, desk.units(about.rider.id if about.rider else None), desk.now())


def asks(context: Context) -> tuple[Ask, ...]:
    """List every row that can be asked by now: an answer brings those that rest on it."""
    return (
        *rider_asks(context),
        *bike_asks(context),
        *tyre_asks(context),
        *day_asks(context),
        *session_asks(context),
    )


def after(rows: Sequence[Ask], key: str) -> Ask | None:
    """Return the first open row behind the one of a key; None where no more is open."""
    at = next((place for place, one in enumerate(rows) if one.key == key), -1)
    return next((one for one in rows[at + 1 :] if one.is_open), None)


def goes_on(rows: Sequence[Ask]) -> Ask | None:
    """Return where a start goes on: the first open row behind the last one that was answered.

    What was passed over before that stays passed over; with nothing open behind it, the first open one.
    """
    answered = [one.key for one in rows if not one.is_open]
    behind = after(rows, answered[-1]) if answered else None
    return behind or next((one for one in rows if one.is_open), None)
