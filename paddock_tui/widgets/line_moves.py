"""Which lines only moved: the terminal moves them itself, and only what then still differs is sent.

What opens or folds above lines moves them. Moving takes margins, insert lines and delete lines: sequences
that all terminals know since the VT102.
"""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from itertools import accumulate, pairwise
from operator import itemgetter, ne
from typing import NamedTuple

from paddock_tui.widgets.sending import BLANK, Cell, size

Lines = Mapping[int, Sequence[Cell]]

_SEQUENCES = 20
"""Bytes that margins, a position, the move and the margins' end take, about."""

_FOR_A_LINE = 10
"""Bytes that it takes to move to a line where something differs, and into its style, about."""

_FOR_A_GAP = 5
"""Bytes that it takes to pass over what is alike within a line, about."""

_LEAST = 3
"""So few lines that differ are sent as soon."""

_MOST = 4
"""So many moves are made at most for one change of the screen."""

_WAYS = 3
"""So many distances are tried for each."""

_MARGIN = 3
"""Cells at the left that mark the cursor and how bad a finding is: a line is known again without them."""


class LineMove(NamedTuple):
    """Lines from `top` to `bottom` that move by `by` lines: up where that is below nought."""

    top: int
    bottom: int
    by: int

    def sequence(self) -> str:
        """Write the move; the margins stay set, and the cursor stands somewhere in them."""
        count = "" if abs(self.by) == 1 else abs(self.by)
        at = f"\x1b[{self.top + 1}H" if self.top else ""
        return f"\x1b[{self.top + 1};{self.bottom + 1}r{at}\x1b[{count}{'M' if self.by < 0 else 'L'}"


MARGINS_END = "\x1b[r"
"""Lets all lines scroll again; the cursor stands on the first cell then."""


def moves(old: Lines, new: Lines) -> tuple[list[LineMove], dict[int, Sequence[Cell]]]:
    """Return moves after which less is to be sent, and what stands on the lines after them."""
    shown, found = dict(old), list[LineMove]()
    while len(found) < _MOST:
        move = best_move(shown, new)
        if move is None:
            break
        found.append(move)
        shown |= moved(shown, move)
    return found, shown


def best_move(old: Lines, new: Lines) -> LineMove | None:
    """Return the move that spares most, of lines whose cells are known before and after; None: none pays."""
    changed = [y for y in new if y in old and old[y] != new[y]]
    if len(changed) < _LEAST:
        return None
    costs = _Costs(old, new)
    best, spared = None, 0
    for by in _distances(old, new, changed):
        for lines in _known(old, new, min(changed), max(changed)):
            found = _best_of(by, lines, costs)
            if found is not None and found[0] > spared:
                spared, best = found
    return best


def moved(lines: Lines, move: LineMove) -> dict[int, Sequence[Cell]]:
    """Return what stands on the lines of a move after it: blank lines come in."""
    wide = len(lines[move.top])
    after: dict[int, Sequence[Cell]] = {}
    for y in range(move.top, move.bottom + 1):
        source = y - move.by
        after[y] = lines[source] if move.top <= source <= move.bottom else [BLANK] * wide
    return after


def _distances(old: Lines, new: Lines, changed: Sequence[int]) -> list[int]:
    """Return by how many lines texts have moved, the commonest first."""
    at: dict[str, list[int]] = {}
    for y, line in old.items():
        if text := _text(line):
            at.setdefault(text, []).append(y)
    found = Counter(y - before for y in changed for before in at.get(_text(new[y]), ()) if y != before)
    return [by for by, _ in found.most_common(_WAYS)]


def _text(line: Sequence[Cell]) -> str:
    return "".join(map(itemgetter(0), line[_MARGIN:])).strip()


def _known(old: Lines, new: Lines, first: int, last: int) -> Iterator[range]:
    """Yield the stretches of lines that are known before and after."""
    start = first
    for y in range(first, last + 2):
        if y <= last and y in old and y in new:
            continue
        if y > start:
            yield range(start, y)
        start = y + 1


class _Costs:
    """About how many bytes it takes to make one line of another."""

    def __init__(self, old: Lines, new: Lines) -> None:
        self._old, self._new = old, new
        self._known: dict[tuple[int | None, int], int] = {}

    def of(self, source: int | None, y: int) -> int:
        """Return it for line `y`, from the one that stands on line `source` or from a blank one."""
        if (source, y) not in self._known:
            new = self._new[y]
            old = [BLANK] * len(new) if source is None else self._old[source]
            self._known[source, y] = _cost(old, new)
        return self._known[source, y]


def _cost(before: Sequence[Cell], after: Sequence[Cell]) -> int:
    differs = list(map(ne, before, after))
    if True not in differs:
        return 0
    end = len(after)
    while end and after[end - 1] == BLANK:
        end -= 1
    letters = "".join([after[at][0] for at in range(end) if differs[at]])
    gaps = sum([one is not other for one, other in pairwise(differs[:end])]) // 2
    return _FOR_A_LINE + size(letters) + gaps * _FOR_A_GAP


def _best_of(by: int, lines: range, costs: _Costs) -> tuple[int, LineMove] | None:
    """Return the move by so many lines within a stretch that spares most bytes, with how many."""
    count = abs(by)
    if len(lines) <= count:
        return None
    kept = [costs.of(y, y) - costs.of(y - by, y) if y - by in lines else 0 for y in lines]
    bare = [costs.of(y, y) - costs.of(None, y) for y in lines]
    kept_to, bare_to = list(accumulate(kept, initial=0)), list(accumulate(bare, initial=0))
    best: tuple[int, LineMove] | None = None
    for top in range(len(lines) - count):
        for bottom in range(top + count, len(lines)):
            # The lines that come in blank stand at the top where the others move down, else at the bottom.
            edge = top + count if by > 0 else bottom + 1 - count
            if by > 0:
                spared = bare_to[edge] - bare_to[top] + kept_to[bottom + 1] - kept_to[edge]
            else:
                spared = kept_to[edge] - kept_to[top] + bare_to[bottom + 1] - bare_to[edge]
            spared -= _SEQUENCES
            if spared > 0 and (best is None or spared > best[0]):
                best = spared, LineMove(lines[top], lines[bottom], by)
    return best
