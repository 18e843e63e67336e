"""The panel at the right of a wide screen: where it begins, what it keeps, that rows stay as they were."""

import attrs

from paddock_tui.pages.layout import View, layout
from paddock_tui.pages.layout.panel import panel_width, rows_width
from paddock_tui.pages.rows import Row, Section
from paddock_tui.text import width
from tests.every import every
from tests.pages.test_layout import PAGE

SAID = (
    Section("traction control: what it does", (Row("", "Takes drive away. " * 4, kind="text", key="does"),)),
    Section("less help", (Row("costs", "time to react", kind="text", key="costs"),), "toward 0"),
)


@every(
    ("cells", "rows", "panel"),
    [
        (40, 40, 0),
        (80, 80, 0),
        (109, 109, 0),
        (110, 78, 30),
        (120, 78, 40),
        (128, 78, 48),
        (160, 110, 48),
    ],
)
def test_the_rows_keep_78_columns_and_the_panel_takes_what_is_left(cells: int, rows: int, panel: int) -> None:
    assert (rows_width(cells), panel_width(cells)) == (rows, panel)


@every("size", [(80, 24), (109, 30), (110, 24), (120, 40), (160, 50), (110, 3), (110, 1)])
@every("panel", [None, (), SAID])
def test_every_line_fits_and_there_are_as_many_as_the_screen_has(
    size: tuple[int, int], panel: tuple[Section, ...] | None
) -> None:
    laid = layout(PAGE, View(*size, cursor=1, panel=panel))
    lines = laid.text().split("\n")
    assert len(lines) == len(laid.owners) == size[1]
    assert max(map(width, lines)) <= size[0]


def test_what_stands_at_80_columns_stands_in_the_same_place_beside_a_panel() -> None:
    """The rows of a page with a panel are those of the page at 78 columns, line for line."""
    wide = layout(PAGE, View(120, 40, cursor=1, panel=SAID)).text().split("\n")
    alone = layout(PAGE, View(78, 40, cursor=1)).text().split("\n")
    for beside, row in zip(wide[1:31], alone[1:31], strict=True):
        assert beside[:78].rstrip() == row


def test_the_panel_says_the_explanation_and_an_empty_one_keeps_its_room() -> None:
    said = layout(PAGE, View(120, 40, cursor=1, panel=SAID)).text()
    assert "traction control: what it does" in said
    assert "time to react" in said
    empty = layout(PAGE, View(120, 40, cursor=1, panel=())).text().split("\n")
    assert all(width(line) <= 78 for line in empty[1:31])


def test_where_more_was_to_be_said_the_last_line_of_the_panel_says_so() -> None:
    many = (attrs.evolve(SAID[0], rows=tuple(Row("", "x y z", kind="text", key=str(n)) for n in range(60))),)
    lines = layout(PAGE, View(120, 24, cursor=1, panel=many)).text().split("\n")
    assert sum(line[80:].startswith("w: all of it") for line in lines) == 1


def test_without_a_panel_a_wide_screen_is_drawn_as_before() -> None:
    assert layout(PAGE, View(120, 40, cursor=1)) == layout(PAGE, View(120, 40, cursor=1, panel=None))
