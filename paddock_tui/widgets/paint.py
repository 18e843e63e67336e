"""Lines with named styles as strips, and which cells of a line changed."""

from collections.abc import Callable, Sequence

from rich.cells import cell_len
from rich.segment import Segment
from rich.style import Style
from textual.strip import Strip

from paddock_tui.pages.layout import Line

_GAP = 8
"""Cells between two changes that cost no more to send than to move over, with the sequences that takes."""


def strip_of(line: Line, cells: int, style: Callable[[str], Style]) -> Strip:
    """Paint a line in `cells` cells; neighbours that look the same become one segment."""
    segments = [Segment(text, style(name)) for text, name in line]
    return Strip(segments).adjust_cell_length(cells, style("")).simplify()


def changed_spans(old: Line, new: Line, cells: int) -> list[tuple[int, int]]:
    """List the runs of cells that differ, from and up to; none where the lines are alike.

    Runs with a short gap between them are one. A line with a character that is not one cell wide, for
    us or for the painter, is changed whole.
    """
    if old == new:
        return []
    before, after = _cells(old, cells), _cells(new, cells)
    if before is None or after is None:
        return [(0, cells)]
    return runs_of(before, after)


def runs_of(before: Sequence[object], after: Sequence[object]) -> list[tuple[int, int]]:
    """List the runs of cells that differ between two lines of one length, from and up to.

    Runs with a short gap between them are one.
    """
    spans: list[tuple[int, int]] = []
    for at, (old, new) in enumerate(zip(before, after, strict=True)):
        if old == new:
            continue
        if spans and at - spans[-1][1] <= _GAP:
            spans[-1] = (spans[-1][0], at + 1)
        else:
            spans.append((at, at + 1))
    return spans


_ONE_CELL: set[str] = set()
"""Characters beside those of ASCII that take one cell: lines are full of the same few."""

_MOST_REMEMBERED = 5_000


def one_cell_each(text: str) -> bool:
    """Return whether each character takes one cell, for us and for the painter: its place is its column."""
    if text.isascii() or _ONE_CELL.issuperset(text):
        return True
    fresh = set(text) - _ONE_CELL
    if any(not char.isascii() and cell_len(char) != 1 for char in fresh):
        return False
    if len(_ONE_CELL) > _MOST_REMEMBERED:
        _ONE_CELL.clear()
    _ONE_CELL.update(fresh)
    return True


def _cells(line: Line, cells: int) -> list[tuple[str, str]] | None:
    """Spell a line out cell by cell; None where a character is not one cell wide."""
    spelled = []
    for text, style in line:
        if not one_cell_each(text):
            return None
        spelled += [(char, style) for char in text]
    spelled = spelled[:cells]
    return spelled + [(" ", "")] * (cells - len(spelled))
