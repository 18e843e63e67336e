"""Lap times out of a file of columns: which column holds them, with or without a line of headings."""

import csv
import io

import attrs

from paddock_tui.entry.laps import HEADINGS, Run, read_laps
from paddock_tui.entry.scanner import Token, tokens
from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes import Lap, LapTime
from paddock_tui.records.shapes.laps import MARKS

MOST_ROWS = 1000
_DELIMITERS = ",;\t|"
_LAP = LapTime()
_EXPECTED = "rows of columns, parted by commas, semicolons or tabs, with lap times in one"


@attrs.frozen
class Column:
    """One column: its heading, empty where the file has none, and its cells."""

    heading: str
    cells: tuple[str, ...]

    def laps(self, usual_s: float | None) -> int:
        """Count the cells that read as lap times."""
        return sum(1 for cell in self.cells if _is_lap(cell, usual_s))


@attrs.frozen
class ReadTable:
    """The columns of a file; `first` is the number of the line of the first cells."""

    columns: tuple[Column, ...]
    first: int = 1

    def likely(self, usual_s: float | None) -> int | None:
        """Return the place of the column with the most lap times, counted from 1; None where none has any."""
        counts = [column.laps(usual_s) for column in self.columns]
        most = max(counts, default=0)
        return counts.index(most) + 1 if most else None


def read_table(text: str) -> ReadTable | InputError:
    """Read a file of columns; a text that is none is refused."""
    if "\0" in text:
        return InputError("this is no text", _EXPECTED, "choose another file")
    lines = [line for line in text.lstrip("\ufeff").splitlines() if line.strip()]
    if not lines:
        return InputError("the file is empty", _EXPECTED, "choose another file")
    if len(lines) > MOST_ROWS:
        return InputError(f"{len(lines)} rows", f"at most {MOST_ROWS}", "cut out the rows of this session")
    mark = max(_DELIMITERS, key=lambda one: sum(one in line for line in lines))
    try:
        rows = list(csv.reader(io.StringIO("\n".join(lines)), delimiter=mark, strict=True))
    except csv.Error as error:
        return InputError(f"it cannot be read as columns: {error}", _EXPECTED, "choose another file")
    width = max(len(row) for row in rows)
    cells = [[cell.strip() for cell in (*row, *[""] * (width - len(row)))] for row in rows]
    headed = not any(_is_lap(cell, 100.0) for cell in cells[0])
    body = cells[1:] if headed else cells
    if not any(_is_lap(cell, 100.0) for row in body for cell in row):
        return InputError("no column of it holds lap times", _EXPECTED, "times, e.g. 1:44.310")
    columns = [
        Column(cells[0][place] if headed else "", tuple(row[place] for row in body)) for place in range(width)
    ]
    return ReadTable(tuple(columns), 2 if headed else 1)


def laps_of(table: ReadTable, place: int, usual_s: float | None) -> Run | InputError:
    """Take the laps of one column, counted from 1; a mark in the same row goes with its lap.

    An empty cell is passed over. One that is no lap time is told with its row, and nothing is taken.
    """
    numbers = next(
        (one for one in table.columns if one.heading.casefold() in HEADINGS[:2] and _counts(one)), None
    )
    pieces: list[Token] = []
    for row, cell in enumerate(table.columns[place - 1].cells):
        if not cell:
            continue
        found = [one for one in tokens(cell) if one.folded not in MARKS]
        if len(found) != 1 or not found[0].figure:
            return InputError(f'row {row + table.first}: "{cell}"', LapTime.expected, "nothing was taken")
        if numbers is not None and numbers is not table.columns[place - 1]:
            pieces.append(Token("word", numbers.cells[row], row, row))
        pieces.append(attrs.evolve(found[0], start=row, end=row))
        beside = (cell, *(column.cells[row] for column in table.columns))
        mark = next((word for text in beside for word in text.casefold().split() if word in MARKS), None)
        if mark is not None:
            pieces.append(Token("word", mark, row, row))
    run = read_laps(pieces, usual_s)
    if run.wrong is not None:
        return InputError(
            f"row {run.wrong.start + table.first}: {run.wrong.message}", "lap times", run.wrong.mend
        )
    if not run.laps:
        return InputError(f"column {place} holds no lap times", "a column of lap times", "choose another one")
    return run


def _counts(column: Column) -> bool:
    return all(cell.isascii() and cell.isdecimal() and len(cell) <= 3 for cell in column.cells)


def _is_lap(cell: str, usual_s: float | None) -> bool:
    """Return whether a cell surely is a lap time: with minutes or a point, not a bare number."""
    time = cell.split()[0] if cell.split() else ""
    found = _LAP.read_beside(cell, usual_s) if any(char in time for char in ":.,'’") else None
    # What is not half the usual lap may be a sector, or a speed.
    return isinstance(found, Lap) and (usual_s is None or float(found.seconds) * 2 >= usual_s)
