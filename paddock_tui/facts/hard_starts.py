"""Hard starts in a row: counted from the practice starts that were noted today."""

import datetime as dt
from collections.abc import Iterable, Iterator

import attrs

from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.facts.incidents import Happened
from paddock_tui.records.session import Session

ROW_MINUTES = 10
"""Minutes in which starts count as one row, and in which a clutch cools after it."""


@attrs.frozen
class Starts:
    """A row of starts: how many, and when the last of them was (None: in this session, not timed)."""

    count: int
    last: dt.datetime | None

    def __str__(self) -> str:
        return f"{self.count} starts" + (f", the last {self.last:%H:%M}" if self.last is not None else "")


@fact("hard starts in a row", show=str)
def starts_in_a_row(
    bike_incidents: tuple[Happened, ...], session: Session, now: dt.datetime
) -> Starts | Absent:
    """Return the longest row of starts of today that the clutch has not cooled down from; absent without one.

    A note without its time counts where it stands in this session; elsewhere nobody can tell.
    """
    noted = [one for one in bike_incidents if one.incident.what == "practice starts" and one.on(session.date)]
    loose = sum(one.incident.count or 1 for one in noted if one.incident.at is None and one.ref is None)
    # What has no time may have been one of any row, and the last of it.
    hot = [one for one in _rows(noted) if loose or not _cool(one, session, now)]
    rows = [attrs.evolve(one, count=one.count + loose) for one in hot]
    rows += [Starts(loose, None)] if loose else []
    rows.sort(key=lambda one: one.count)
    return rows[-1] if rows else ABSENT


def _rows(noted: Iterable[Happened]) -> Iterator[Starts]:
    """Return for each start the row that it ends."""
    timed = [
        (dt.datetime.combine(one.session.date, one.incident.at), one.incident.count or 1)
        for one in noted
        if one.session.date is not None and one.incident.at is not None
    ]
    for last, _ in timed:
        within = (count for at, count in timed if dt.timedelta() <= last - at <= _ROW)
        yield Starts(sum(within), last)


def _cool(row: Starts, session: Session, now: dt.datetime) -> bool:
    """Return whether the clutch has had its minutes by the start of the session, or by now."""
    if row.last is None or session.date is None:
        return False
    moments = [dt.datetime.combine(session.date, session.start)] if session.start is not None else []
    if now.date() == session.date:
        moments.append(now)
    return any(moment - row.last >= _ROW for moment in moments)


_ROW = dt.timedelta(minutes=ROW_MINUTES)
