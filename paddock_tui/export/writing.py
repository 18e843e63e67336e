"""An export on disk: every table or none, byte for byte the same for the same garage."""

import csv
import functools
import io
import json
import os
import shutil
from collections.abc import Callable, Iterable, Iterator
from decimal import Decimal
from pathlib import Path
from typing import Literal

from paddock_tui.desk.looking import LooksAt
from paddock_tui.export.registry import TABLES
from paddock_tui.export.table import Cell, Column, Progress, Table, Wanted

Form = Literal["csv", "jsonl"]

DICTIONARY = "columns"
"""The table that says what the columns of all others mean."""

_SAID_EVERY = 100
"""After so many rows whoever waits is told how far it is."""

_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
"""What makes a spreadsheet take a text for a formula, some of them the wide forms too."""

_DICTIONARY_COLUMNS = tuple(
    Column(name, meaning)
    for name, meaning in (
        ("table", "the file"),
        ("column", "the column"),
        ("unit", "its unit; empty: a text, a count or a bare number"),
        ("meaning", "what it means"),
        ("joins", "the table whose rows this id finds"),
    )
)


def write_tables(
    desk: LooksAt, folder: Path, form: Form, wanted: Wanted, progress: Progress
) -> list[tuple[str, int]]:
    """Write every table that is wanted into a folder that is not there yet, or is empty.

    All is written beside it first, so that nothing half-written ever stands under its name.
    Returns the files with how many rows each has. Raises OSError where it cannot be written.
    """
    part = folder.parent / f".{folder.name}.{os.getpid()}.part"
    part.mkdir()
    try:
        tables = [one for one in TABLES if not one.personal or one.personal in wanted.personal]
        done: list[tuple[str, int]] = []
        for place, table in enumerate(tables):
            name = f"{table.name}.{form}"
            progress(place, len(tables), table.name, 0)
            rows = _counted(
                table.rows(desk, wanted), functools.partial(progress, place, len(tables), table.name)
            )
            done.append((name, _write(part / name, form, table.columns(wanted), rows)))
        name = f"{DICTIONARY}.{form}"
        done.append((name, _write(part / name, form, _DICTIONARY_COLUMNS, _dictionary(tables, wanted))))
        progress(len(tables), len(tables), "", 0)
        part.rename(folder)
    except BaseException:
        shutil.rmtree(part, ignore_errors=True)
        raise
    return done


def _counted(rows: Iterator[tuple[Cell, ...]], said: Callable[[int], None]) -> Iterator[tuple[Cell, ...]]:
    """Pass rows on, and say now and then how many there were."""
    for count, row in enumerate(rows, 1):
        if count % _SAID_EVERY == 0:
            said(count)
        yield row


def _dictionary(tables: Iterable[Table], wanted: Wanted) -> Iterator[tuple[Cell, ...]]:
    for table in tables:
        for one in table.columns(wanted):
            yield table.name, one.name, one.unit or None, one.meaning, one.joins or None


def _write(file: Path, form: Form, columns: tuple[Column, ...], rows: Iterator[tuple[Cell, ...]]) -> int:
    count = 0
    with file.open("x", encoding="utf-8", newline="") as out:
        names = [one.name for one in columns]
        if form == "csv":
            out.write(_csv_line(names))
        for row in rows:
            out.write(_csv_line([_csv(one) for one in row]) if form == "csv" else _json_line(names, row))
            count += 1
        out.flush()
        os.fsync(out.fileno())
    return count


def _csv_line(cells: Iterable[str]) -> str:
    line = io.StringIO()
    csv.writer(line, lineterminator="\n").writerow(cells)
    return line.getvalue()


def _csv(cell: Cell) -> str:
    """Write a cell; a text that a spreadsheet would run as a formula gets an apostrophe before it."""
    if cell is None:
        return ""
    if isinstance(cell, bool):
        return "true" if cell else "false"
    if isinstance(cell, str):
        return f"'{cell}" if cell.startswith(_FORMULA) else cell
    return f"{cell:f}" if isinstance(cell, Decimal) else repr(cell)


def _json_line(names: Iterable[str], row: Iterable[Cell]) -> str:
    values = {name: _json(cell) for name, cell in zip(names, row, strict=True)}
    return json.dumps(values, ensure_ascii=False) + "\n"


def _json(cell: Cell) -> object:
    return float(cell) if isinstance(cell, Decimal) else cell
