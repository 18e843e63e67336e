"""What changed on the screen is sent, and no more: the stock compositor sends lines from their left edge.

What the terminal shows is remembered cell by cell, so that of a whole page only what differs goes out; each
run of cells goes from its first to its last column, and of a style only what differs from the one before it.
On a slow link both count: a digit on a row costs half of what it costs otherwise.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import lru_cache
from typing import Any, NamedTuple

from rich.color import ColorSystem
from rich.console import Console, RenderableType
from rich.segment import Segment
from rich.style import Style
from textual._compositor import ChopsUpdate, Compositor, LayoutUpdate
from textual.screen import Screen

from paddock_tui.widgets.paint import one_cell_each
from paddock_tui.widgets.sending import BLANK, PLAIN, Codes, CursorPlace, LineCells, Run, drawn, plan, unseen

_LINES = 4
"""Of fewer lines that change none is moved."""


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

    def take(self, pieces: Iterable[_Piece]) -> str:
        """Take pieces for shown, and return what shows them."""
        groups: dict[int, list[_Piece]] = {}
        for one in pieces:
            groups.setdefault(one.y, []).append(one)
        lines: dict[int, LineCells] = {}
        whole: list[_Piece] = []
        for y, group in groups.items():
            line = self._line(y)
            if line is None or any(one.cells is None or one.x + len(one.cells) > len(line) for one in group):
                whole += group
                self._sent_whole(y, group)
                continue
            new = lines[y] = list(line)
            for one in group:
                new[one.x : one.x + len(one.cells or ())] = one.cells or ()
        scrolled = self._scrolled(lines, {one.y for one in whole})
        runs = [_run(one) for one in whole]
        for y, line in lines.items():
            runs += plan(y, self._lines[y], line)
            self._lines[y] = line
        runs.sort(key=lambda run: (run.at.y, run.at.x))
        return scrolled + drawn(runs, CursorPlace(0, 0) if scrolled else None)

    def _scrolled(self, lines: dict[int, LineCells], fixed: set[int]) -> str:
        """Have the terminal move lines where that spares sending them; return the sequences, or nothing.

        Lines that are `fixed` are not known yet, and do not move. What the moves took from other lines is to
        be drawn as well, and is put to the `lines`.
        """
        if len(lines) < _LINES:
            return ""
        among = range(min(lines), max(lines) + 1)
        old = {y: line for y in among if y not in fixed and (line := self._line(y))}
        new = {y: lines.get(y, line) for y, line in old.items()}
        if sum(any(cell != BLANK for cell in line) for line in old.values()) < _LINES:
            return ""
        # The first page is drawn on a blank screen, and loads no more than it needs.
        from paddock_tui.widgets.line_moves import MARGINS_END, moves

        found, shown = moves(old, new)
        if not found:
            return ""
        for one in found:
            for y in range(one.top, one.bottom + 1):
                self._lines[y], lines[y] = list(shown[y]), list(new[y])
        return "".join(one.sequence() for one in found) + MARGINS_END

    def _is_whole(self, line: LineCells) -> bool:
        return self._size is not None and len(line) == self._size[0]

    def _line(self, y: int) -> LineCells | None:
        if y not in self._lines and self._blank and self._size is not None:
            self._lines[y] = [BLANK] * self._size[0]
        return self._lines.get(y)

    def _sent_whole(self, y: int, pieces: Sequence[_Piece]) -> None:
        """Take note of pieces that are sent as they are: their line is known where the last is all of it."""
        self._lines.pop(y, None)
        last = pieces[-1]
        if last.cells is not None and last.x == 0 and self._is_whole(last.cells):
            self._lines[y] = last.cells
        elif self._blank:
            # It is not taken for blank again.
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
    return shown.take(_Piece(x, y, coded, _cells(coded)) for x, y, coded in _coded(pieces, system))


def _coded(
    pieces: Iterable[tuple[int, int, Sequence[Segment]]], system: ColorSystem
) -> Iterator[tuple[int, int, list[tuple[str, Codes]]]]:
    """Write the styles of pieces as codes."""
    for x, y, segments in pieces:
        yield x, y, [(one.text, codes_of(one.style, system) if one.style else PLAIN) for one in segments]


def _cells(coded: Iterable[tuple[str, Codes]]) -> LineCells | None:
    """Spell texts out cell by cell; None where a character is not one cell wide."""
    cells: LineCells = []
    for text, codes in coded:
        if not one_cell_each(text):
            return None
        blank = unseen(codes)
        cells += [(char, blank if char == " " else codes) for char in text]
    return cells


def _run(piece: _Piece) -> Run:
    """Draw a piece of a line of which it is not known what the terminal shows."""
    texts: LineCells = [(text, codes) for text, codes in piece.coded if text]
    return Run(CursorPlace(piece.x, piece.y), [texts], None)


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
