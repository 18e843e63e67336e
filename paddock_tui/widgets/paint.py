"""Lines with named styles as strips, and how much of a line has to be sent again."""

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


def changed_cells(old: Line, new: Line, cells: int) -> int:
    """Count the cells from the left up to the last one that differs; 0 where the lines are alike.

    A line with a character that is not one cell wide, for us or for the painter, is changed whole.
    The compositor cuts the right end of what it sends, never the left: only the end matters.
    """
    if old == new:
        return 0
    before, after = _cells(old, cells), _cells(new, cells)
    if before is None or after is None:
        return cells
    return next((at + 1 for at in range(cells - 1, -1, -1) if before[at] != after[at]), 0)


def _cells(line: Line, cells: int) -> list[tuple[str, str]] | None:
    """Spell a line out cell by cell; None where a character is not one cell wide."""
    spelled = []
    for text, style in line:
        if not text.isascii() and any(cell_len(char) != 1 for char in text):
            return None
        spelled += [(char, style) for char in text]
    spelled = spelled[:cells]
    return spelled + [(" ", "")] * (cells - len(spelled))
