"""Lines that moved are moved by the terminal: it shows what it would had all been sent, for fewer bytes."""

from hypothesis import given
from hypothesis import strategies as st
from rich.segment import Segment
from rich.style import Style
from textual.geometry import Region
from textual.strip import Strip

from paddock_tui.widgets.line_moves import LineMove, best_move
from paddock_tui.widgets.sending import PLAIN, LineCells
from paddock_tui.widgets.sparing import ShownCells, SparingLayout, SparingUpdate
from tests.examples import examples
from tests.widgets.terminal import Terminal
from tests.widgets.test_sparing import console, looks

COLUMNS, LINES = 30, 10
STYLES = [Style(), Style(bold=True), Style(color="red"), Style(bgcolor="white", color="black")]
TEXTS = [
    "── findings ──",
    "  traction control 3",
    "  front ABS 4",
    "",
    "  wide 宽",
    " ▌serious  low in the wet",
]

line = st.tuples(st.sampled_from(TEXTS), st.integers(0, 9), st.sampled_from(STYLES)).map(
    lambda one: Strip([Segment(f"{one[0]} {one[1]}" if one[0] else "", one[2])]).adjust_cell_length(COLUMNS)
)
screen = st.lists(line, min_size=LINES, max_size=LINES)
shift = st.tuples(st.integers(0, LINES - 1), st.integers(0, 4), st.lists(line, max_size=4))
"""Where lines are taken out, how many, and what is put in there."""


def shifted(lines: list[Strip], one: tuple[int, int, list[Strip]]) -> list[Strip]:
    """Return a screen from which lines are taken, and into which others are put."""
    at, out, into = one
    found = [*lines[:at], *into, *lines[at + out :]]
    return [*found, *[Strip.blank(COLUMNS)] * LINES][:LINES]


@examples(60)
@given(screen, st.lists(shift, min_size=1, max_size=4), st.booleans())
def test_after_lines_moved_the_terminal_shows_what_it_would_if_all_had_been_sent(
    first: list[Strip], shifts: list[tuple[int, int, list[Strip]]], in_part: bool
) -> None:
    shown, ours, stock = ShownCells(), Terminal(COLUMNS, LINES), Terminal(COLUMNS, LINES)
    lines, before = first, [Strip.blank(COLUMNS)] * LINES
    for step in [None, *shifts]:
        lines = lines if step is None else shifted(lines, step)
        ours.feed(update(lines, before, shown, in_part and step is not None).encode())
        stock.feed(update(lines, before, ShownCells(), False).encode())
        assert [looks(one) for one in ours.cells] == [looks(one) for one in stock.cells]
        before = lines


def update(lines: list[Strip], before: list[Strip], shown: ShownCells, in_part: bool) -> str:
    """Write a screen whole, or only the lines that differ from those before."""
    if in_part:
        spans = [(y, 0, COLUMNS) for y in range(LINES) if lines[y] != before[y]]
        some = SparingUpdate([{0: one} for one in lines], spans, [[COLUMNS]] * LINES)
        some.shown = shown
        return some.render_segments(console())
    whole = SparingLayout([[one] for one in lines], Region(0, 0, COLUMNS, LINES))
    whole.shown = shown
    return whole.render_segments(console())


def strip(text: str) -> Strip:
    return Strip([Segment(text)]).adjust_cell_length(COLUMNS)


def test_what_opens_above_sends_itself_and_not_what_stands_below() -> None:
    lines = [strip(f"{number} a row with some words") for number in range(LINES)]
    opened = [*lines[:2], strip("why"), strip("do"), *lines[2:-3], lines[-1]]
    shown = ShownCells()
    update(lines, lines, shown, False)
    sent = update(opened, lines, shown, False)

    assert "\x1b[3;9r\x1b[3H\x1b[2L\x1b[r" in sent
    assert "why" in sent
    assert "words" not in sent
    assert len(sent) < 60


def cells(text: str) -> LineCells:
    return [(char, PLAIN) for char in text.ljust(COLUMNS + 10)]


def test_a_move_that_spares_nothing_is_none() -> None:
    lines = {y: cells(f"{y}: row {y}{y}{y}{y} with words") for y in range(6)}
    assert best_move(lines, lines) is None
    other = {y: cells(f"{y}: not the same words ..") for y in range(6)}
    assert best_move(lines, other) is None
    up = {y: cells(f"{y + 1}: row {y + 1}{y + 1}{y + 1}{y + 1} with words") for y in range(6)}
    assert best_move(lines, up) == LineMove(0, 5, -1)
    # A line that is not known is not moved over.
    assert best_move({y: one for y, one in lines.items() if y != 3}, up) is None


def test_lines_that_moved_are_known_again_by_other_marks_at_their_left() -> None:
    texts = [f"what is said on line {y} of a page" for y in range(4)]
    old = {y: cells(f" |  {text}") for y, text in enumerate(["what goes, in as many words...", *texts])}
    new = {y: cells(f" !  {text}") for y, text in enumerate([*texts, "what comes, in as many words.."])}
    assert best_move(old, new) == LineMove(0, 4, -1)


def rows(words: str) -> list[Strip]:
    return [strip(f"{letter} a row with some words") for letter in words]


def test_a_line_that_stays_where_others_move_over_it_is_drawn_again() -> None:
    before, after = rows("abcdXefghi"), rows("nabcXdefgh")
    shown, ours, whole = ShownCells(), Terminal(COLUMNS, LINES), Terminal(COLUMNS, LINES)
    ours.feed(update(before, before, shown, False).encode())
    sent = update(after, before, shown, True)
    ours.feed(sent.encode())
    whole.feed(update(after, before, ShownCells(), False).encode())

    assert "\x1b[1;10r" in sent
    assert [looks(one) for one in ours.cells] == [looks(one) for one in whole.cells]


def test_a_line_of_which_nothing_is_known_does_not_move() -> None:
    before, after = rows("abcdXefghi"), rows("nabcdXefgh")
    before[4] = strip("宽" * (COLUMNS // 2))
    shown, ours, whole = ShownCells(), Terminal(COLUMNS, LINES), Terminal(COLUMNS, LINES)
    ours.feed(update(before, before, shown, False).encode())
    ours.feed(update(after, before, shown, False).encode())
    whole.feed(update(after, before, ShownCells(), False).encode())

    assert [looks(one) for one in ours.cells] == [looks(one) for one in whole.cells]
