"""The number and the id of a new session."""

import datetime as dt

from paddock_tui.desk.lookup import of_date, without_a_date
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles

_LONGEST = 76
"""Leaves room for what tells two ids apart within the length that an id may have."""


def next_number(files: GarageFiles, date: dt.date, bike: str | None, after: int = 0) -> int:
    """Return the number after the highest one of a day on a bike, and after the one given.

    What is written in a session counts, not its name; sessions named in another year are not read.
    """
    used = [after]
    of_day = (ref for _, ref in of_date(files, date))
    for ref in (*of_day, *without_a_date(files)):
        if ref.id[:4].isdigit() and not ref.id.startswith(f"{date.year}-"):
            continue
        data = files.data(ref)
        number = data.get("number")
        if data.get("date") == date and data.get("bike") == bike and type(number) is int:
            used.append(number)
    return max(used) + 1


def free_session(files: GarageFiles, date: dt.date, number: int, bike: str | None) -> Ref:
    """Return a new session the id that says date, number and bike; another one where that is taken."""
    wanted = f"{date.isoformat()}-{number}-{bike or 'bike'}"[:_LONGEST].rstrip("._-")
    ref, more = Ref("session", wanted), 2
    while files.path_of(ref) is not None or files.former.claims(ref):
        ref, more = Ref("session", f"{wanted}-{more}"), more + 1
    return ref
