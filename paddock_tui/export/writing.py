"""An export on disk: every table or none, byte for byte the same for the same garage."""

import contextlib
import csv
import io
import json
import os
import shutil
from collections.abc import Iterable, Iterator
from decimal import Decimal
from pathlib import Path
from typing import Literal

from paddock_tui.desk.looking import LooksAt
from paddock_tui.export.registry import TABLES
from paddock_tui.export.sessions import sessions_of
from paddock_tui.export.table import Cell, Column, ExportScope, Passed, Progress, Row, Table

Form = Literal["csv", "jsonl"]

DICTIONARY = "columns"
"""The table that says what the columns of all others mean."""

_SAID_EVERY = 10
"""After so many sessions whoever waits is told how far it is."""

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
    desk: LooksAt, folder: Path, form: Form, wanted: ExportScope, progress: Progress
) -> list[tuple[str, int]]:
    """Write every table that is wanted into a folder that is not there yet, or is empty.

    All is written beside it first, so that nothing half-written ever stands under its name.
    Returns the files with how many rows each has. Raises OSError where it cannot be written.
    """
    part = folder.parent / f".{folder.name}.{os.getpid()}.part"
    part.mkdir()
    try:
        with contextlib.ExitStack() as stack:
            done = _write_all(desk, part, form, wanted, progress, stack)
        part.rename(folder)
    except BaseException:
        shutil.rmtree(part, ignore_errors=True)
        raise
    return [(file.name, file.rows) for file in done]


def _write_all(
    desk: LooksAt,
    part: Path,
    form: Form,
    wanted: ExportScope,
    progress: Progress,
    stack: contextlib.ExitStack,
) -> list["_File"]:
    """Go through the sessions once, and write of each what every table holds of it."""
    tables = [one for one in TABLES if not one.personal or one.personal in wanted.personal]
    files = [stack.enter_context(_File(part, one.name, form, one.columns(wanted))) for one in tables]
    both = list(zip(tables, files, strict=True))
    passed = Passed()
    of = 0

    def seen(place: int, of_them: int) -> None:
        nonlocal of
        of = of_them
        if place % _SAID_EVERY == 0:
            progress(place, of, "")

    for ref, session in sessions_of(desk, wanted, seen):
        passed.sessions.add(ref.id)
        if session.day is not None:
            passed.days.add(session.day)
        for table, file in both:
            if table.of_session is not None:
                file.write(table.of_session(desk, ref.id, session, wanted))
    for table, file in both:
        if table.rows is not None:
            progress(of, of, table.name)
            file.write(table.rows(desk, wanted, passed))
    files.append(stack.enter_context(_File(part, DICTIONARY, form, _DICTIONARY_COLUMNS)))
    files[-1].write(_dictionary(tables, wanted))
    progress(of, of, "")
    return files


def _dictionary(tables: Iterable[Table], wanted: ExportScope) -> Iterator[tuple[Cell, ...]]:
    for table in tables:
        for one in table.columns(wanted):
            yield table.name, one.name, one.unit or None, one.meaning, one.joins or None


class _File:
    """One table on its way to disk, row by row; it is on the disk when it is left without an error."""

    def __init__(self, folder: Path, name: str, form: Form, columns: tuple[Column, ...]) -> None:
        self.name, self.rows = f"{name}.{form}", 0
        self._out = (folder / self.name).open("x", encoding="utf-8", newline="")
        self._form, self._names = form, [one.name for one in columns]

    def __enter__(self) -> "_File":
        if self._form == "csv":
            self._out.write(_csv_line(self._names))
        return self

    def __exit__(self, kind: type[BaseException] | None, *_: object) -> None:
        with self._out:
            if kind is None:
                self._out.flush()
                os.fsync(self._out.fileno())

    def write(self, rows: Iterable[Row]) -> None:
        """Write some rows."""
        for row in rows:
            line = (
                _csv_line([_csv(one) for one in row]) if self._form == "csv" else _json_line(self._names, row)
            )
            self._out.write(line)
            self.rows += 1


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
