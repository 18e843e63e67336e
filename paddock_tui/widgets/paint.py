"""Lines with named styles as strips, how much of a line has to be sent again, and which lines only moved.

What opens or folds above lines moves them: the terminal does that itself, by sequences that all of them know
since the VT102: margins, insert lines, delete lines.
"""

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from typing import Any, NamedTuple

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


def _cells(line: Line, cells: int) -> list[tuple[str, str]] | None:
    """Spell a line out cell by cell; None where a character is not one cell wide."""
    spelled = []
    for text, style in line:
        if not text.isascii() and any(cell_len(char) != 1 for char in text):
            return None
        spelled += [(char, style) for char in text]
    spelled = spelled[:cells]
    return spelled + [(" ", "")] * (cells - len(spelled))


_SEQUENCES = 22
"""Bytes that margins, a position, the move and the margins' end take."""

_FOR_A_RUN = 10
"""Bytes that it takes to move to a run of cells and into its style, about."""

_LEAST = 3
"""So few lines that moved are sent as soon."""


class LineMove(NamedTuple):
    """Lines from `top` to `bottom` that move by `by` lines: up where that is below nought."""

    top: int
    bottom: int
    by: int

    def sequence(self) -> str:
        """Write the move; the cursor stands somewhere else afterwards."""
        final = "M" if self.by < 0 else "L"
        return f"\x1b[{self.top + 1};{self.bottom + 1}r\x1b[{self.top + 1};1H\x1b[{abs(self.by)}{final}\x1b[r"


Lines = Mapping[int, Sequence[Any]]


def best_move(old: Lines, new: Lines, blank: object) -> LineMove | None:
    """Return the move after which least is to be sent, of lines whose cells are known; None where none pays.

    `blank` is a cell of a line that comes in empty.
    """
    changed = [y for y in new if y in old and old[y] != new[y]]
    if len(changed) < _LEAST:
        return None
    at: dict[tuple[object, ...], list[int]] = {}
    for y, line in old.items():
        if any(cell != blank for cell in line):
            at.setdefault(tuple(line), []).append(y)
    found = Counter(y - before for y in changed for before in at.get(tuple(new[y]), ()))
    best, spared = None, 0
    for by, count in found.most_common(2):
        if count >= _LEAST:
            one = _of(by, old, new)
            saves = _saves(one, old, new, blank) if one is not None else 0
            if saves > spared:
                best, spared = one, saves
    return best


def moved(lines: Lines, move: LineMove, cells: int, blank: object) -> dict[int, list[Any]]:
    """Return what stands on the lines of a move after it."""
    empty = [blank] * cells
    after = {}
    for y in range(move.top, move.bottom + 1):
        source = y - move.by
        after[y] = list(lines[source]) if move.top <= source <= move.bottom else list(empty)
    return after


def _of(by: int, old: Lines, new: Lines) -> LineMove | None:
    """Return the longest run of known lines within which lines stand as they stood `by` lines away."""
    best: tuple[int, int] | None = None
    start = None
    for y in [*sorted(new), max(new) + 2]:
        fits = y in new and y - by in old and list(new[y]) == list(old[y - by])
        if fits and start is None:
            start = y
        elif not fits and start is not None:
            if best is None or y - start > best[1] - best[0] + 1:
                best = start, y - 1
            start = None
    if best is None:
        return None
    top, bottom = min(best[0], best[0] - by), max(best[1], best[1] - by)
    return LineMove(top, bottom, by) if all(y in old and y in new for y in range(top, bottom + 1)) else None


def _saves(one: LineMove, old: Lines, new: Lines, blank: object) -> int:
    """Return about how many bytes fewer are sent with a move than without."""
    lines = range(one.top, one.bottom + 1)
    after = moved(old, one, len(old[one.top]), blank)
    return _cost(old, new, lines) - _cost(after, new, lines) - _SEQUENCES


def _cost(before: Lines, after: Lines, lines: range) -> int:
    return sum(
        stop - start + _FOR_A_RUN
        for y in lines
        if before[y] != after[y]
        for start, stop in runs_of(before[y], after[y])
    )
