"""What a race and its crew leave in a session as tables: jobs, penalties, and what stopped an outing."""

from collections.abc import Iterator, Mapping
from typing import Any

from paddock_tui.desk.looking import LooksAt
from paddock_tui.export.cells import ColumnsOf, cells, columns, declared_columns
from paddock_tui.export.sessions import SESSION
from paddock_tui.export.table import Column, ExportScope, OfSession, Row, Table, fixed
from paddock_tui.records.crew import Job
from paddock_tui.records.race import Event, Penalty
from paddock_tui.records.session import Session

_JOB = declared_columns(Job)
_PENALTY = declared_columns(Penalty)
_EVENT = declared_columns(Event)


def _entries(attribute: str, declared: tuple[ColumnsOf, ...]) -> OfSession:
    """Return what gives the rows of one table of a session: its key, then the values of each entry."""

    def rows(_: LooksAt, name: str, session: Session, __: ExportScope) -> Iterator[Row]:
        held: Mapping[str, Any] = getattr(session, attribute)
        for key in sorted(held, key=_in_order):
            yield (name, int(key) if key.isdecimal() else key, *cells(held[key], declared))

    return rows


def _in_order(key: str) -> tuple[bool, int, str]:
    return (not key.isdecimal(), int(key) if key.isdecimal() else 0, key)


JOBS = Table(
    "jobs",
    "one row for each job before a start: whose it is, who did it, who looked at it",
    fixed(SESSION, Column("job", "what the job is"), *columns(_JOB)),
    _entries("jobs", _JOB),
)
PENALTIES = Table(
    "penalties",
    "one row for each penalty, in the officials' words",
    fixed(SESSION, Column("number", "number of the penalty"), *columns(_PENALTY)),
    _entries("penalties", _PENALTY),
)
STOPS = Table(
    "stops",
    "one row for each thing that stopped an outing or switched its ignition off",
    fixed(SESSION, Column("number", "number of the stop"), *columns(_EVENT)),
    _entries("events", _EVENT),
)
