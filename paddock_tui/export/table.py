"""What a table of an export is: its columns with their units and meaning, and where its rows come from."""

import datetime as dt
from collections.abc import Callable, Iterator
from decimal import Decimal

import attrs

from paddock_tui.desk.looking import LooksAt

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
class Wanted:
    """Which sessions are wanted, and which personal matters; empty: any session, nothing personal."""

    since: dt.date | None = None
    bike: str = ""
    rider: str = ""
    personal: frozenset[str] = frozenset()


Progress = Callable[[int, int, str, int], None]
"""Hears how many tables of how many are done, which is being written, and its rows so far."""


@attrs.frozen
class Table:
    """One file of an export. `personal` names what has to be asked for before it is written."""

    name: str
    what: str
    columns: Callable[[Wanted], tuple[Column, ...]]
    rows: Callable[[LooksAt, Wanted], Iterator[tuple[Cell, ...]]]
    personal: str = ""


def fixed(*columns: Column) -> Callable[[Wanted], tuple[Column, ...]]:
    """Return columns that are the same whatever is wanted."""
    return lambda _: columns
