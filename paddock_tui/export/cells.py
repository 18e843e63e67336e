"""Declared values as cells: one unit a column, whatever unit was typed."""

import datetime as dt
import re
from collections.abc import Iterable, Iterator
from typing import Any

import attrs

from paddock_tui.export.table import Cell, Column
from paddock_tui.quantities import Quantity
from paddock_tui.records.fields import Spec, specs
from paddock_tui.records.shapes import Amount, AmountOrWord, Lap, LapTime, Number, Reference, Whole

_UNIT_NAMES = {"%": "percent", "C": "c", "l/100km": "l_per_100km", "N m": "nm", "km/h": "km_h"}


@attrs.frozen
class ColumnsOf:
    """One declared value of a record as the columns that it fills."""

    attribute: str
    columns: tuple[Column, ...]
    unit: str = ""


def declared_columns(record: type, prefix: str = "", leave_out: Iterable[str] = ()) -> tuple[ColumnsOf, ...]:
    """List the single values of a record class as columns, in the order of the declarations."""
    left = set(leave_out)
    return tuple(
        _columns(f"{prefix}{key}", attribute, spec)
        for key, (attribute, spec) in specs(record).items()
        if spec.nature == "one" and key not in left
    )


def columns(found: Iterable[ColumnsOf]) -> tuple[Column, ...]:
    """List the columns of declared values."""
    return tuple(column for one in found for column in one.columns)


def cells(record: object, found: Iterable[ColumnsOf]) -> Iterator[Cell]:
    """Return the cells of one record under the columns of its declared values."""
    for one in found:
        yield from _cells(getattr(record, one.attribute), one)


def _columns(key: str, attribute: str, spec: Spec) -> ColumnsOf:
    meaning = f"{spec.label}: {spec.help}" if spec.help else spec.label
    shape = spec.shape
    if isinstance(shape, Amount):
        return ColumnsOf(attribute, (_in_unit(key, shape.unit, meaning),), shape.unit)
    if isinstance(shape, AmountOrWord):
        words = ", ".join(shape.choices)
        word = Column(f"{key}_word", f"{meaning}; the word where nothing was measured: {words}")
        return ColumnsOf(attribute, (_in_unit(key, shape.amount.unit, meaning), word), shape.amount.unit)
    if isinstance(shape, LapTime):
        return ColumnsOf(attribute, (Column(f"{key}_s", meaning, "s"),))
    if isinstance(shape, Number | Whole):
        return ColumnsOf(attribute, (Column(key, meaning, shape.unit),))
    joins = shape.kind if isinstance(shape, Reference) else ""
    return ColumnsOf(attribute, (Column(key, meaning, joins=_TABLE_OF.get(joins, "")),))


_TABLE_OF = {"session": "sessions", "tyres": "tyres"}


def _in_unit(key: str, unit: str, meaning: str) -> Column:
    ending = _UNIT_NAMES.get(unit) or re.sub(r"[^a-z0-9]+", "_", unit.casefold()).strip("_")
    return Column(f"{key}_{ending}", meaning, unit)


def _cells(value: Any, one: ColumnsOf) -> tuple[Cell, ...]:
    if len(one.columns) == 2:
        word = value if isinstance(value, str) else None
        return (None if word is not None else cell(value, one.unit), word)
    return (cell(value, one.unit),)


def cell(value: Any, unit: str = "") -> Cell:
    """Return one value as a cell: an amount as its number in `unit`, dates and times as ISO writes them."""
    if isinstance(value, Quantity):
        return tidy(value.to(unit or value.unit))
    if isinstance(value, Lap):
        return value.seconds
    if isinstance(value, dt.date | dt.time):
        return value.isoformat()
    if isinstance(value, tuple):
        return "; ".join(str(cell(one)) for one in value)
    if value is None or isinstance(value, str | int | float | bool):
        return value
    return str(value)


def tidy(value: float) -> float | int:
    """Round off what only conversion has put behind the point."""
    rounded = round(value, 6)
    return int(rounded) if rounded == int(rounded) else rounded
