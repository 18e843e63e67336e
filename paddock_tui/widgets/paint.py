"""Lines with named styles as strips, and which characters take one cell."""

from collections.abc import Callable

from rich.cells import cell_len
from rich.segment import Segment
from rich.style import Style
from textual.strip import Strip

from paddock_tui.pages.layout import Line


def strip_of(line: Line, cells: int, style: Callable[[str], Style]) -> Strip:
    """Paint a line in `cells` cells; neighbours that look the same become one segment."""
    segments = [Segment(text, style(name)) for text, name in line]
    return Strip(segments).adjust_cell_length(cells, style("")).simplify()


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
