"""A page that is drawn again for another cursor: the same as drawn anew, and no row drawn but one."""

from typing import Any

import attrs
import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.pages.layout import Editor, View, layout
from paddock_tui.pages.layout.fields import field_lines
from paddock_tui.pages.rows import Bar, Page, Row, Section
from tests.examples import examples

ROWS = [
    Row("short", "1"),
    Row("long", "x" * 200),
    Row("aside", "1", aside="said of it " * 20),
    Row("bar", "3", "of 0-10", bar=Bar(0.3, steps=11)),
    Row("words that stand alone " * 10, kind="text"),
    Row("a link", "to a record", kind="link"),
    Row("a heading", kind="heading"),
    Row("", cells=("1", "2"), kind="cells"),
]
SECTIONS = st.lists(st.sampled_from(ROWS), max_size=12).map(
    lambda rows: Section("title", tuple(rows), "", ("a", "b") if any(row.cells for row in rows) else ())
)


@examples(60)
@given(
    st.lists(SECTIONS, max_size=4),
    st.lists(st.tuples(st.none() | st.integers(0, 40), st.booleans()), min_size=1, max_size=6),
    st.sampled_from([(40, 20), (80, 24), (120, 8), (20, 3), (80, 1)]),
)
def test_a_page_drawn_again_is_as_if_it_were_drawn_anew(
    sections: list[Section], moves: list[tuple[int | None, bool]], size: tuple[int, int]
) -> None:
    page, top = Page("heading", tuple(sections)), 0
    for cursor, edits in moves:
        view = View(*size, cursor, top, Editor("typed " * 9, error="wrong") if edits else None)
        again, anew = layout(page, view), layout(attrs.evolve(page), view)
        assert again == anew
        top = again.top


FOUND = Row("caution", "found", kind="finding", severity="caution", more=(("why", "w " * 60), ("do", "d")))


def test_what_stands_open_stays_so_where_the_cursor_has_not_rested() -> None:
    rows = (attrs.evolve(FOUND, key="a"), Row("between", "1"), attrs.evolve(FOUND, key="b"), Row("last", "2"))
    page = Page("heading", (Section("found", rows), Section("more", rows)))
    counts = {
        (cursor, opened): [laid.owners.count(row) for row in range(4)]
        for cursor in range(4)
        for opened in (None, 0, 2)
        for laid in [layout(page, View(80, 40, cursor, opened=opened))]
    }
    shut, whole = 1, 4
    assert counts[0, None] == counts[1, 0] == counts[2, 0] == [whole, 1, shut, 1]
    assert counts[2, None] == counts[3, 2] == counts[0, 2] == [shut, 1, whole, 1]
    assert counts[1, None] == counts[3, None] == [shut, 1, shut, 1]
    for cursor, opened in counts:
        lines = layout(page, View(80, 40, cursor, opened=opened)).text().split("\n")
        assert [line[0] for line in lines if line].count(">") == 1


def test_an_arrow_draws_only_the_row_that_it_comes_to(monkeypatch: pytest.MonkeyPatch) -> None:
    page = Page("heading", (Section("many", tuple(Row(f"row {place}", "1") for place in range(2000))),))
    first = layout(page, View(80, 24, 0))
    drawn: list[str] = []

    def counted(row: Row, *more: Any) -> object:
        drawn.append(row.label)
        return field_lines(row, *more)

    monkeypatch.setattr("paddock_tui.pages.layout.body.field_lines", counted)
    layout(page, View(80, 24, 1, first.top))

    assert drawn == ["row 1"]
