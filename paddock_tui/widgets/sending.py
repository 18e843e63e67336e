"""What is sent for cells that change: few bytes, by short moves, changes of style and erasures.

Only sequences that every terminal since the VT100 knows are used, the consoles of kernels among them: cursor
moves, next line, erase to the end of the line, and styles. Nothing repeats characters by a count, and nothing
is erased in a style that would show on blanks.
"""

from collections.abc import Iterable, Sequence
from functools import lru_cache
from itertools import compress
from operator import ne
from typing import NamedTuple

Codes = tuple[str, str, str]
"""The codes of a style: weight and the like, foreground, background; each empty where it is unset."""

Cell = tuple[str, Codes]
LineCells = list[Cell]

PLAIN: Codes = ("", "", "")
BLANK: Cell = (" ", PLAIN)

_ON_LETTERS = ("", "1", "2", "3")
"""Weights that show on letters alone: none, bold, dim, italic."""

BEHIND = -1
"""The column of a cursor that wrote the last one: it stands on it or behind it, terminals do not agree."""

_ERASE = "\x1b[K"

_SKIPPED = 4
"""Blanks that cost no more to send than to pass over."""

_PASS_OVER = 4
"""Bytes that passing over some cells takes, at least."""

_AHEAD = 8
"""So many runs are looked at for the one that is cheapest to draw next."""


class CursorPlace(NamedTuple):
    """Where the terminal's cursor stands."""

    x: int
    y: int


def unseen(codes: Codes) -> Codes:
    """Return what shows of a style on a blank: the ground, unless a line is drawn or it is reversed."""
    return codes if codes[0] not in _ON_LETTERS else ("", "", codes[2])


@lru_cache(maxsize=1024)
def between(old: Codes, new: Codes) -> str:
    """Write the shortest change from one style to the next; what is unset again takes a reset first."""
    if old == new:
        return ""
    if new == PLAIN:
        return "\x1b[m"
    changed = [part for part, before in zip(new, old, strict=True) if part != before]
    if (old[0] and old[0] != new[0]) or "" in changed:
        changed = ["", *filter(None, new)]
    return f"\x1b[{';'.join(changed)}m"


@lru_cache(maxsize=8192)
def move(at: CursorPlace | None, to: CursorPlace) -> str:
    """Write the shortest move of the cursor; from a place that is not known it is an absolute one."""
    whole = _absolute(to)
    if at is None:
        return whole
    if at == to:
        return ""
    ways = [whole]
    if at.y + 1 == to.y:
        ways.append(f"\x1bE{_by(0, to.x)}")
    elif at.y == to.y:
        ways.append(f"\r{_by(0, to.x)}")
    if at.x != BEHIND:
        ways += _from(at, to)
    return min(ways, key=len)


def _from(at: CursorPlace, to: CursorPlace) -> list[str]:
    """List the moves that count cells and lines from a place, along one of both at most but for one line."""
    if at.y == to.y:
        return [_by(at.x, to.x)]
    if at.x == to.x or abs(at.y - to.y) == 1:
        return [_lines(at.y, to.y) + _by(at.x, to.x)]
    return []


def _absolute(to: CursorPlace) -> str:
    line, column = "" if to.y == 0 else str(to.y + 1), "" if to.x == 0 else f";{to.x + 1}"
    return f"\x1b[{line}{column}H"


def _by(here: int, there: int) -> str:
    """Move along a line."""
    if there == here:
        return ""
    if there > here:
        return f"\x1b[{_count(there - here)}C"
    return "\b" * (here - there) if here - there <= 3 else f"\x1b[{here - there}D"


def _lines(here: int, there: int) -> str:
    return f"\x1b[{_count(abs(here - there))}{'B' if there > here else 'A'}"


def _count(number: int) -> str:
    return "" if number == 1 else str(number)


class Written(NamedTuple):
    """A text for the terminal, and the style in force after it."""

    text: str
    codes: Codes


Texts = list[tuple[str, Codes]]


def texts_of(cells: Sequence[Cell]) -> Texts:
    """Join cells to texts; a blank goes with the text before it where its style does not show on it."""
    texts: Texts = []
    chars: list[str] = []
    held = shows = None
    for char, codes in cells:
        if codes is held or codes == held or (char == " " and codes == shows):
            chars.append(char)
            continue
        if held is not None:
            texts.append(("".join(chars), held))
        held, shows, chars = codes, unseen(codes), [char]
    if held is not None:
        texts.append(("".join(chars), held))
    return texts


def texts_written(texts: Texts, codes: Codes) -> Written:
    """Write texts where the cursor stands; blanks take any style that does not show on them."""
    parts: list[str] = []
    for at, (text, wanted) in enumerate(texts):
        if wanted != codes and (not text.isspace() or unseen(codes) != wanted):
            style = wanted
            if text.isspace() and at + 1 < len(texts) and unseen(texts[at + 1][1]) == wanted:
                style = texts[at + 1][1]
            parts.append(between(codes, style))
            codes = style
        parts.append(text)
    return Written("".join(parts), codes)


def size(text: str) -> int:
    """Return how many bytes a text takes."""
    return len(text) if text.isascii() else len(text.encode())


class Run:
    """Something to be drawn from a place on: cells, cells passed over, the rest of a line erased."""

    def __init__(self, at: CursorPlace, parts: Sequence[LineCells | int | None], wide: int | None) -> None:
        """Draw `parts`: cells, a number of cells to pass over, None to erase from there to the line's end.

        `wide` is how many cells a line has; None: where the cursor stands afterwards is not known.
        """
        self.at = at
        self._parts = [texts_of(part) if isinstance(part, list) else part for part in parts]
        stop = at.x + sum(part if isinstance(part, int) else len(part) for part in parts if part is not None)
        self.after = None if wide is None else CursorPlace(stop if stop < wide else BEHIND, at.y)
        self._written: dict[Codes, Written] = {}

    def written(self, codes: Codes) -> Written:
        """Write it where the cursor stands at its place, after a style."""
        if codes not in self._written:
            self._written[codes] = self._write(codes)
        return self._written[codes]

    def _write(self, codes: Codes) -> Written:
        texts = []
        for part in self._parts:
            if part is None:
                before, codes = codes, codes if unseen(codes) == PLAIN else PLAIN
                texts.append(between(before, codes) + _ERASE)
            elif isinstance(part, int):
                texts.append(_by(0, part))
            else:
                text, codes = texts_written(part, codes)
                texts.append(text)
        return Written("".join(texts), codes)


class Brush:
    """Draws runs one after the other."""

    def __init__(self, at: CursorPlace | None = None, codes: Codes = PLAIN) -> None:
        """Begin at a place, None where that is not known, in a style."""
        self.at, self.codes = at, codes
        self._sent: list[str] = []
        self.size = 0

    def draw(self, run: Run) -> None:
        """Draw a run."""
        text, codes = run.written(self.codes)
        sent = move(self.at, run.at) + text
        self._sent.append(sent)
        self.size += size(sent)
        self.at, self.codes = run.after, codes

    def cost(self, run: Run) -> int:
        """Return how many bytes it would take to draw a run next."""
        return len(move(self.at, run.at)) + size(run.written(self.codes).text)

    def text(self) -> str:
        """Return all that was drawn, ending in the plain style."""
        return "".join(self._sent) + between(self.codes, PLAIN)


def drawn(runs: Sequence[Run], at: CursorPlace | None) -> str:
    """Draw runs from a place on, in the cheaper of two orders: as they are, or the cheapest of the next."""
    orders = [_in_order(runs, at), _cheapest_next(runs, at)]
    return min(orders, key=lambda brush: brush.size).text()


def _in_order(runs: Iterable[Run], at: CursorPlace | None) -> Brush:
    brush = Brush(at)
    for run in runs:
        brush.draw(run)
    return brush


def _cheapest_next(runs: Sequence[Run], at: CursorPlace | None) -> Brush:
    """Draw that one of the next runs which takes the fewest bytes beyond its own: marks down a column so."""
    brush, left = Brush(at), list(runs)
    least = {id(run): size(run.written(PLAIN).text) for run in runs}
    while left:
        near = left[:_AHEAD]
        best = min(near, key=lambda run: brush.cost(run) - least[id(run)])
        left.remove(best)
        brush.draw(best)
    return brush


def plan(y: int, old: LineCells, new: LineCells) -> list[Run]:
    """Return the runs that turn line `y` from `old` into `new`, of as many cells."""
    changed = list(compress(range(len(new)), map(ne, old, new)))
    if not changed:
        return []
    end = _end(new)
    ways = [_runs(y, changed, new)]
    if changed[-1] >= end:
        ways.append(_erased_behind(y, changed, new, end))
    if changed[0] < end and _end(old) > end // 2:
        ways.append(_erased_first(y, new, changed[0], end))
    return min(ways, key=lambda runs: _size(runs, y)) if len(ways) > 1 else ways[0]


def _end(line: Sequence[Cell]) -> int:
    """Return where the blanks begin that a line ends with."""
    end = len(line)
    while end and line[end - 1] == BLANK:
        end -= 1
    return end


def _size(runs: list[Run], y: int) -> int:
    brush = Brush(CursorPlace(0, y))
    for run in runs:
        brush.draw(run)
    return brush.size


def _runs(y: int, changed: Sequence[int], new: LineCells) -> list[Run]:
    """Send the cells that differ; a gap between two runs is sent where that is no dearer than to move."""
    return [Run(CursorPlace(start, y), [new[start:stop]], len(new)) for start, stop in _spans(changed, new)]


def _spans(changed: Sequence[int], new: LineCells) -> list[list[int]]:
    spans: list[list[int]] = []
    for at in changed:
        if spans and (at == spans[-1][1] or _joins(new, spans[-1][1], at)):
            spans[-1][1] = at + 1
        else:
            spans.append([at, at + 1])
    return spans


def _joins(new: LineCells, stop: int, start: int) -> bool:
    """Whether what stands between two runs is sent as cheaply as it is passed over."""
    if start - stop > _PASS_OVER + 1:
        return False
    codes, wanted, gap = new[stop - 1][1], new[start][1], new[stop:start]
    if gap == [(" ", unseen(codes))] * len(gap):
        return len(gap) <= _PASS_OVER
    text, after = texts_written(texts_of(gap), codes)
    return size(text) + len(between(after, wanted)) <= _PASS_OVER + len(between(codes, wanted))


def _erased_behind(y: int, changed: Sequence[int], new: LineCells, end: int) -> list[Run]:
    """Send what differs before the blanks at the end, and erase from there."""
    wide = len(new)
    spans = _spans([at for at in changed if at < end], new)
    if spans and _joins_end(new, spans[-1][1], end):
        spans[-1][1] = end
    runs = [Run(CursorPlace(start, y), [new[start:stop]], wide) for start, stop in spans]
    if spans and spans[-1][1] == end:
        start = spans[-1][0]
        runs[-1] = Run(CursorPlace(start, y), [new[start:end], None], wide)
    else:
        runs.append(Run(CursorPlace(end, y), [None], wide))
    return runs


def _joins_end(new: LineCells, stop: int, end: int) -> bool:
    return end - stop <= _PASS_OVER and all(cell[1] == new[stop - 1][1] for cell in new[stop:end])


def _erased_first(y: int, new: LineCells, start: int, end: int) -> list[Run]:
    """Erase from the first cell that differs, and send what is not blank from there."""
    parts: list[LineCells | int | None] = [None]
    at = start
    while at < end:
        stop = at
        while new[stop] == BLANK:
            stop += 1
        if stop - at > _SKIPPED:
            parts.append(stop - at)
            at = stop
            continue
        stop = _next_gap(new, at, end)
        parts.append(new[at:stop])
        at = stop
    return [Run(CursorPlace(start, y), parts, len(new))]


def _next_gap(new: LineCells, at: int, end: int) -> int:
    """Return where the next blanks begin that are passed over, or the end."""
    blanks = 0
    for place in range(at, end):
        blanks = blanks + 1 if new[place] == BLANK else 0
        if blanks > _SKIPPED:
            start = place - blanks + 1
            if start > at:
                return start
    return end
