"""What is sent of a change: the changed cells alone, and the screen looks as if all had been sent."""

import hashlib
import inspect
import io

from hypothesis import given
from hypothesis import strategies as st
from rich.color import ColorSystem
from rich.console import Console
from rich.segment import Segment
from rich.style import Style
from textual._compositor import ChopsUpdate, Compositor, LayoutUpdate
from textual.geometry import Region
from textual.strip import Strip

from paddock_tui.widgets.sending import between
from paddock_tui.widgets.sparing import ShownCells, SparingLayout, SparingUpdate, codes_of
from tests.every import every
from tests.widgets.terminal import Terminal

READ = {
    ChopsUpdate.__init__: "f40588bd8fbd6469",
    ChopsUpdate.render_segments: "4c1cdb567e0b8354",
    Compositor.render_partial_update: "888dccc892d8ecc2",
}
"""Digests of the stock methods that were read when ours were written."""

STYLES = (
    Style(),
    Style(bold=True),
    Style(color="color(247)"),
    Style(color="color(247)", bgcolor="color(233)"),
    Style(color="color(222)", bgcolor="color(233)", bold=True),
    Style(color="red", reverse=True, underline=True),
)
COLUMNS = 24


@every("method", READ, ids=lambda method: method.__qualname__)
def test_the_stock_method_is_the_one_that_was_read(method: object) -> None:
    text = inspect.getsource(method)  # type: ignore[arg-type]

    assert hashlib.sha256(text.encode()).hexdigest()[:16] == READ[method], "read it again, then sparing.py"  # type: ignore[index]


def console() -> Console:
    return Console(file=io.StringIO(), force_terminal=True, color_system="256", width=COLUMNS)


strips = st.lists(
    st.tuples(st.text("abc宽é ", max_size=5), st.sampled_from(STYLES)), min_size=1, max_size=6
).map(lambda parts: Strip([Segment(*part) for part in parts]).adjust_cell_length(COLUMNS))
spans = st.tuples(st.integers(0, COLUMNS - 1), st.integers(1, COLUMNS)).filter(lambda ends: ends[0] < ends[1])


@given(st.lists(strips, min_size=2, max_size=2), st.lists(strips, min_size=2, max_size=2), spans, spans)
def test_within_the_spans_the_screen_looks_as_if_whole_lines_were_sent(
    old: list[Strip], new: list[Strip], first: tuple[int, int], second: tuple[int, int]
) -> None:
    ends = [[COLUMNS]] * 2
    whole = [(0, 0, COLUMNS), (1, 0, COLUMNS)]
    before, after = ([{0: strip} for strip in side] for side in (old, new))
    ours, stock = Terminal(COLUMNS, 2), Terminal(COLUMNS, 2)
    ours.feed(SparingUpdate(before, whole, ends).render_segments(console()).encode())
    ours.feed(SparingUpdate(after, [(0, *first), (1, *second)], ends).render_segments(console()).encode())
    stock.feed(ChopsUpdate(after, whole, ends).render_segments(console()).encode())

    for y, (start, stop) in enumerate((first, second)):
        inside = [
            at for at in range(start + 1, stop - 1) if stock.cells[y][at][0] and stock.cells[y][at][0] != "宽"
        ]
        assert looks([ours.cells[y][at] for at in inside]) == looks([stock.cells[y][at] for at in inside])


screens = st.lists(strips, min_size=2, max_size=2)
part = st.tuples(strips, st.integers(0, 1), spans)


@given(st.booleans(), st.lists(st.one_of(screens, part), min_size=1, max_size=5))
def test_after_any_screens_and_parts_of_them_the_terminal_shows_what_it_would_if_all_had_been_sent(
    cleared: bool, updates: list[list[Strip] | tuple[Strip, int, tuple[int, int]]]
) -> None:
    shown, ours, stock = ShownCells(), Terminal(COLUMNS, 2), Terminal(COLUMNS, 2)
    if cleared:
        shown.cleared()
    for one in updates:
        if isinstance(one, list):
            layout = SparingLayout([[strip] for strip in one], Region(0, 0, COLUMNS, 2))
            layout.shown = shown
            ours.feed(layout.render_segments(console()).encode())
            whole = LayoutUpdate([[strip] for strip in one], Region(0, 0, COLUMNS, 2))
            stock.feed(whole.render_segments(console()).encode())
        else:
            strip, y, span = one
            lines = [{0: strip} if at == y else {0: Strip.blank(COLUMNS)} for at in range(2)]
            update = SparingUpdate(lines, [(y, *span)], [[COLUMNS]] * 2)
            update.shown = shown
            ours.feed(update.render_segments(console()).encode())
            apart = SparingUpdate(lines, [(y, *span)], [[COLUMNS]] * 2)
            stock.feed(apart.render_segments(console()).encode())

    assert [looks(line) for line in ours.cells] == [looks(line) for line in stock.cells]


def looks(line: list[tuple[str, frozenset[str]]]) -> list[tuple[str, frozenset[str]]]:
    """Leave out of a blank what does not show on one."""
    ours, letters = {"39", "49"}, {"1", "2", "3"}
    colours = {one for _, look in line for one in look if one.startswith("3")}
    return [(char, look - ours - (letters | colours if char == " " else set())) for char, look in line]


@given(st.lists(st.sampled_from(STYLES), min_size=1, max_size=8))
def test_a_style_that_follows_another_looks_as_it_does_alone(styles: list[Style]) -> None:
    terminal, last = Terminal(len(styles), 1), ("", "", "")
    for style in styles:
        codes = codes_of(style, ColorSystem.EIGHT_BIT)
        terminal.feed((between(last, codes) + "x").encode())
        last = codes

    for at, style in enumerate(styles):
        alone = Terminal(1, 1)
        alone.feed(style.render("x", color_system=ColorSystem.EIGHT_BIT).encode())
        assert terminal.cells[0][at] == alone.cells[0][0]


def test_only_what_differs_of_a_style_is_sent() -> None:
    ground, quiet, weighty = (codes_of(style, ColorSystem.EIGHT_BIT) for style in STYLES[2:5])

    assert between(quiet, quiet) == ""
    assert between(ground, quiet) == "\x1b[48;5;233m"
    assert between(quiet, weighty) == "\x1b[1;38;5;222m"
    assert between(weighty, quiet) == "\x1b[;38;5;247;48;5;233m"
    assert between(quiet, ("", "", "")) == "\x1b[m"
