"""What a table of an export is: its columns with their units and meaning, and where its rows come from."""

import datetime as dt
from collections.abc import Callable, Iterable, Iterator
from decimal import Decimal

import attrs

from paddock_tui.desk.looking import LooksAt
from paddock_tui.records.session import Session

Cell = str | int | float | Decimal | bool | None
"""One fact; None is what is not known."""


@attrs.frozen
class Column:
    """One column: its name (with the unit at its end where it has one), its unit, and what it means.

    `joins` names the table whose rows this id finds.
    """

    name: str
    meaning: str
    unit: str = ""
    joins: str = ""


@attrs.frozen
class ExportScope:
    """Which sessions are wanted, and which personal matters; empty: any session, nothing personal."""

    since: dt.date | None = None
    bike: str = ""
    rider: str = ""
    personal: frozenset[str] = frozenset()


Row = tuple[Cell, ...]

Progress = Callable[[int, int, str], None]
"""Hears how many sessions of how many are written, and behind them which table is."""


@attrs.frozen
class Passed:
    """What of the sessions that were written is remembered: their ids, and the days that they name."""

    sessions: set[str] = attrs.field(factory=set)
    days: set[str] = attrs.field(factory=set)


OfSession = Callable[[LooksAt, str, Session, ExportScope], Iterable[Row]]
"""Gives the rows of one session, which is called by its id."""


@attrs.frozen
class Table:
    """One file of an export. `personal` names what has to be asked for before it is written.

    Rows `of_session` are written while the sessions are gone through once, oldest first; `rows` are those
    behind them.
    """

    name: str
    what: str
    columns: Callable[[ExportScope], tuple[Column, ...]]
    of_session: OfSession | None = None
    rows: Callable[[LooksAt, ExportScope, Passed], Iterator[Row]] | None = None
    personal: str = ""


def fixed(*columns: Column) -> Callable[[ExportScope], tuple[Column, ...]]:
    """Return columns that are the same whatever is wanted."""
    return lambda _: columns
