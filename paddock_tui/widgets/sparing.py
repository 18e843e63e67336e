"""What changed on the screen is sent, and no more: the stock compositor sends lines from their left edge.

What the terminal shows is remembered cell by cell, so that of a whole page only what differs goes out; each
run of cells goes from its first to its last column, and of a style only what differs from the one before it.
On a slow link both count: a digit on a row costs half of what it costs otherwise.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import lru_cache
from typing import Any, NamedTuple

from rich.cells import cell_len
from rich.color import ColorSystem
from rich.console import Console, RenderableType
from rich.control import Control
from rich.segment import Segment
from rich.style import Style
from textual._compositor import ChopsUpdate, Compositor, LayoutUpdate
from textual.screen import Screen

from paddock_tui.widgets.paint import best_move, moved, runs_of

Codes = tuple[str, str, str]
"""The codes of a style: weight and the like, foreground, background; each empty where it is unset."""

Cell = tuple[str, Codes]
LineCells = list[Cell]

_PLAIN: Codes = ("", "", "")
_BLANK: Cell = (" ", _PLAIN)
_LINES = 4
"""Of fewer lines that change none is moved."""

_ON_LETTERS = ("", "1", "2", "3")
"""Weights that show on letters alone: none, bold, dim, italic."""


class _Piece(NamedTuple):
    """A piece of a line: where it begins, its texts with their codes, its cells where each is one wide."""

    x: int
    y: int
    coded: list[tuple[str, Codes]]
    cells: LineCells | None


class ShownCells:
    """What the terminal shows, as far as it is known: a line that is not known is sent whole."""

    def __init__(self) -> None:
        self._size: tuple[int, int] | None = None
        self._lines: dict[int, LineCells] = {}
        self._blank = False
        self._left: list[_Piece] = []

    def cleared(self) -> None:
        """Take note that the terminal is blank, in its own colours."""
        self._lines, self._blank = {}, True

    def forget(self) -> None:
        """Take nothing for known: something else may have written to the terminal."""
        self._lines, self._blank = {}, False

    def sized(self, width: int, height: int) -> None:
        """Take note of the size; of a terminal that got another one nothing is known."""
        if self._size not in (None, (width, height)):
            self.forget()
        self._size = width, height

    def runs(self, y: int, x: int, cells: LineCells | None) -> list[tuple[int, LineCells]] | None:
        """Return the runs of cells at x and after that differ, and take them for shown; None: send them all.

        `cells` is None where some character is not one cell wide: that line is not known afterwards.
        """
        line = self._line(y)
        if cells is None or line is None or x + len(cells) > len(line):
            self._lines.pop(y, None)
            if cells is not None and self._size is not None and x == 0 and len(cells) == self._size[0]:
                self._lines[y] = cells
            elif self._blank:
                self._unknown(y)
            return None
        before = line[x : x + len(cells)]
        line[x : x + len(cells)] = cells
        return [(x + start, cells[start:stop]) for start, stop in runs_of(before, cells)]

    def scroll(self, pieces: Sequence[_Piece]) -> str:
        """Have the terminal move lines where that spares sending them; return the sequence, or nothing.

        What the move took from lines that no piece is about is `left` to be sent.
        """
        self._left = []
        old = {one.y: line for one in pieces if (line := self._line(one.y)) is not None}
        if len(old) < _LINES or self._size is None:
            return ""
        old |= {y: line for y in range(min(old), max(old) + 1) if (line := self._line(y)) is not None}
        wide = self._size[0]
        new = {y: list(line) for y, line in old.items() if len(line) == wide}
        for one in pieces:
            line = new.get(one.y)
            if line is None or one.cells is None or one.x + len(one.cells) > wide:
                new.pop(one.y, None)
            else:
                line[one.x : one.x + len(one.cells)] = one.cells
        move = best_move(old, new, _BLANK) if new else None
        if move is None:
            return ""
        self._lines |= moved(old, move, wide, _BLANK)
        self._left = [_Piece(0, y, _joined(new[y]), new[y]) for y in range(move.top, move.bottom + 1)]
        return move.sequence()

    def left(self) -> Sequence[_Piece]:
        """Return the lines that a move has touched: what differs on them is to be sent."""
        return self._left

    def _line(self, y: int) -> LineCells | None:
        if y not in self._lines and self._blank and self._size is not None:
            self._lines[y] = [_BLANK] * self._size[0]
        return self._lines.get(y)

    def _unknown(self, y: int) -> None:
        """Keep a line from being taken for blank again."""
        self._lines[y] = []


class SparingUpdate(ChopsUpdate):
    """The changed spans as terminal sequences."""

    shown: ShownCells | None = None

    def render_segments(self, console: Console) -> str:
        """Write what differs where it begins; the style stands until one differs, and ends plain."""
        return written(self._pieces(), console, self.shown or ShownCells())

    def _pieces(self) -> Iterator[tuple[int, int, Sequence[Segment]]]:
        for y, left, right in self.spans:
            for end, (x, strip) in zip(self.chop_ends[y], self.chops[y].items(), strict=False):
                start, stop = max(x, left), min(end, right)
                if strip is not None and start < stop:
                    yield start, y, list(strip.crop(start - x, stop - x))


class SparingLayout(LayoutUpdate):
    """A whole screen as terminal sequences, without what the terminal shows already."""

    shown: ShownCells | None = None

    def render_segments(self, console: Console) -> str:
        """Write what differs from what is shown."""
        shown = self.shown or ShownCells()
        if self.region.x == 0 and self.region.y == 0:
            shown.sized(self.region.width, self.region.height)
        return written(self._pieces(), console, shown)

    def _pieces(self) -> Iterator[tuple[int, int, Sequence[Segment]]]:
        for y, strips in enumerate(self.strips, self.region.y):
            yield self.region.x, y, [segment for strip in strips if strip is not None for segment in strip]


class SparingCompositor(Compositor):
    """The stock compositor with updates that are sparing on the link."""

    def __init__(self, shown: ShownCells | None = None, waits: Callable[[], bool] = lambda: False) -> None:
        """Send what differs from `shown`, and nothing at all while there `waits` a page to be drawn."""
        super().__init__()
        self._shown, self._waits = shown, waits

    def render_update(
        self, full: bool = False, screen_stack: list[Screen[Any]] | None = None, simplify: bool = False
    ) -> RenderableType | None:
        """Render what is to be sent; None where that is nothing."""
        return None if self._waits() else super().render_update(full, screen_stack, simplify)

    def render_full_update(self, simplify: bool = False) -> LayoutUpdate:
        """Render the whole screen."""
        update = super().render_full_update(simplify)
        sparing = SparingLayout(update.strips, update.region)
        sparing.shown = self._shown
        return sparing

    def render_partial_update(self) -> ChopsUpdate | None:
        """Render what changed since the last time; None where nothing did."""
        update = super().render_partial_update()
        if update is None:
            return None
        sparing = SparingUpdate(update.chops, update.spans, update.chop_ends)
        sparing.shown = self._shown
        return sparing


def written(pieces: Iterable[tuple[int, int, Sequence[Segment]]], console: Console, shown: ShownCells) -> str:
    """Write pieces of lines, each with its column and line, without what is shown already."""
    system = console._color_system or ColorSystem.TRUECOLOR
    known = [_Piece(x, y, coded, _cells(coded)) for x, y, coded in _coded(pieces, system)]
    sent: list[str] = [shown.scroll(known)]
    last = _PLAIN
    for x, y, coded, cells in (*known, *shown.left()):
        runs = shown.runs(y, x, cells)
        parts = [(x, coded)] if runs is None else [(at, _joined(run)) for at, run in runs]
        for at, texts in parts:
            sent.append(Control.move_to(at, y).segment.text)
            for text, codes in texts:
                sent.append(between(last, codes) + text)
                last = codes
    sent.append(between(last, _PLAIN))
    return "".join(sent)


def _coded(
    pieces: Iterable[tuple[int, int, Sequence[Segment]]], system: ColorSystem
) -> Iterator[tuple[int, int, list[tuple[str, Codes]]]]:
    """Write the styles of pieces as codes."""
    for x, y, segments in pieces:
        yield x, y, [(one.text, codes_of(one.style, system) if one.style else _PLAIN) for one in segments]


def _cells(coded: Iterable[tuple[str, Codes]]) -> LineCells | None:
    """Spell texts out cell by cell; None where a character is not one cell wide."""
    cells: LineCells = []
    for text, codes in coded:
        if not text.isascii() and any(cell_len(char) != 1 for char in text):
            return None
        blank = _unseen(codes)
        cells += [(char, blank if char == " " else codes) for char in text]
    return cells


def _joined(cells: LineCells) -> list[tuple[str, Codes]]:
    """Join cells of one style to texts; a blank takes the style before it where it looks the same."""
    texts: list[tuple[str, Codes]] = []
    for char, codes in cells:
        before = texts[-1][1] if texts else None
        takes = char == " " and not codes[0] and before is not None and _unseen(before) == codes
        if before is not None and (takes or before == codes):
            texts[-1] = texts[-1][0] + char, before
        else:
            texts.append((char, codes))
    return texts


def _unseen(codes: Codes) -> Codes:
    """Return what shows of a style on a blank: the ground, unless a line is drawn or it is reversed."""
    return codes if codes[0] not in _ON_LETTERS else ("", "", codes[2])


@lru_cache(maxsize=512)
def codes_of(style: Style, system: ColorSystem) -> Codes:
    """Return the codes of a style on a terminal with so many colours; its own colours need none."""
    front = style.color.downgrade(system).get_ansi_codes() if style.color else ()
    back = style.bgcolor.downgrade(system).get_ansi_codes(foreground=False) if style.bgcolor else ()
    weight = style.without_color.render("x", color_system=system)
    bare = weight.removeprefix("\x1b[").partition("mx")[0] if weight != "x" else ""
    return bare, _unless(front, "39"), _unless(back, "49")


def _unless(codes: Sequence[str], own: str) -> str:
    said = ";".join(codes)
    return "" if said == own else said


def between(old: Codes, new: Codes) -> str:
    """Write the shortest change from one style to the next; what is unset again takes a reset first."""
    if old == new:
        return ""
    if new == _PLAIN:
        return "\x1b[0m"
    changed = [part for part, before in zip(new, old, strict=True) if part != before]
    if (old[0] and old[0] != new[0]) or "" in changed:
        changed = ["0", *filter(None, new)]
    return f"\x1b[{';'.join(changed)}m"
