"""How one line that is known becomes another for few bytes: which cells are sent and what is erased."""

from collections.abc import Sequence

from paddock_tui.widgets.pen import BLANK, Cell, LineCells, Pen, Place, Run, between, cells_written, size

_SKIPPED = 4
"""Blanks that cost no more to send than to pass over."""

_PASS_OVER = 4
"""Bytes that passing over some cells takes, at least."""


def plan(y: int, old: LineCells, new: LineCells) -> list[Run]:
    """Return the runs that turn line `y` from `old` into `new`, of as many cells."""
    changed = [at for at, (before, after) in enumerate(zip(old, new, strict=True)) if before != after]
    if not changed:
        return []
    wide, end = len(new), _end(new)
    ways = [_runs(y, old, new, wide)]
    if changed[-1] >= end:
        ways.append(_erased_behind(y, old, new, end))
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
    pen = Pen(Place(0, y))
    for run in runs:
        pen.draw(run)
    return pen.size


def _runs(y: int, old: Sequence[Cell], new: LineCells, wide: int) -> list[Run]:
    """Send the cells that differ; a gap between two runs is sent where that is no dearer than to move."""
    return [Run(Place(start, y), [new[start:stop]], wide) for start, stop in _spans(old, new)]


def _spans(old: Sequence[Cell], new: LineCells) -> list[list[int]]:
    spans: list[list[int]] = []
    for at, (before, after) in enumerate(zip(old, new, strict=True)):
        if before == after:
            continue
        if spans and (at == spans[-1][1] or _joins(new, spans[-1][1], at)):
            spans[-1][1] = at + 1
        else:
            spans.append([at, at + 1])
    return spans


def _joins(new: LineCells, stop: int, start: int) -> bool:
    """Whether what stands between two runs is sent as cheaply as it is passed over."""
    if start - stop > _PASS_OVER + 1:
        return False
    codes, wanted = new[stop - 1][1], new[start][1]
    text, after = cells_written(new[stop:start], codes)
    return size(text) + len(between(after, wanted)) <= _PASS_OVER + len(between(codes, wanted))


def _erased_behind(y: int, old: Sequence[Cell], new: LineCells, end: int) -> list[Run]:
    """Send what differs before the blanks at the end, and erase from there."""
    wide = len(new)
    spans = _spans(old[:end], new[:end])
    if spans and _joins_end(new, spans[-1][1], end):
        spans[-1][1] = end
    runs = [Run(Place(start, y), [new[start:stop]], wide) for start, stop in spans]
    if spans and spans[-1][1] == end:
        start = spans[-1][0]
        runs[-1] = Run(Place(start, y), [new[start:end], None], wide)
    else:
        runs.append(Run(Place(end, y), [None], wide))
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
    return [Run(Place(start, y), parts, len(new))]


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
