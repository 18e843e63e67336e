"""A page as plain text: columns that hold, bars under their ends, and nothing wider than the terminal."""

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.pages.plain import plain_page, row_lines
from paddock_tui.pages.rows import Bar, Page, Row, Section
from paddock_tui.text import width
from tests.examples import examples

HELP = Bar(0.3, steps=11)


def printed(*rows: Row, columns: int = 80, paths: bool = False, unknown: bool = True) -> list[str]:
    page = Page("", (Section("title", rows),))
    return list(plain_page(page, columns, paths=paths, unknown=unknown))[2:]


def test_values_stand_under_each_other_also_beside_a_long_label() -> None:
    lines = printed(Row("short", "1"), Row("a label of twenty-eight cells", "2"))

    assert lines == [
        "  short                         1",
        "  a label of twenty-eight cells 2",
    ]


def test_a_bar_stands_under_the_words_of_its_ends() -> None:
    lines = printed(
        Row("mode", "own"), Row("traction", "3", "of 0-10", bar=HELP), Row("slide", "off", bar=Bar(None))
    )

    assert lines[0] == "  mode                  own"
    assert lines[1] == " " * 42 + "least help ........... most help"
    assert lines[2] == "  traction              3 of 0-10         " + "." * 9 + "|" + "." * 22
    assert lines[3] == "  slide                 off               " + "." * 32


def test_the_mark_is_at_either_end_of_the_bar_at_least_and_most() -> None:
    least, most = printed(Row("a", "1", bar=Bar(0.0)), Row("b", "2", bar=Bar(1.0)))[1:]

    assert least.endswith(" |" + "." * 31)
    assert most.endswith(" " + "." * 31 + "|")


def test_the_ends_are_said_again_where_they_change() -> None:
    rows = [
        Row("a", "1", bar=HELP),
        Row("b", "2", bar=Bar(0.5, ("light", "firm"), True)),
        Row("c", "1", bar=HELP),
    ]

    ends = [
        line.split()[0] for line in printed(*rows) if not line.startswith("  ") or line.startswith(" " * 40)
    ]

    assert ends == ["least", "light", "least"]


def test_a_narrow_terminal_draws_no_bar_and_no_ends() -> None:
    assert printed(Row("traction", "3", "of 0-10", bar=HELP), columns=40) == ["  traction      3 of 0-10"]


def test_what_is_said_beside_goes_below_where_it_does_not_fit() -> None:
    row = Row("traction", "3", "of 0-10", "resets with the key", HELP)

    assert printed(row)[2] == " " * 24 + "resets with the key"
    assert printed(Row("launch", "off", aside="resets with the key")) == [
        "  launch                off  resets with the key"
    ]


def test_what_shuts_a_row_is_said_once() -> None:
    fixed = Row("abs", "4", aside="fixed by the riding mode", shut="fixed by the riding mode rain")
    shut = Row("abs", "4", shut="only with the engine off")

    assert printed(fixed) == ["  abs                   4  fixed by the riding mode"]
    assert printed(shut) == ["  abs                   4  only with the engine off"]


def test_what_is_not_known_stands_in_one_line_but_not_that_nothing_is_retired() -> None:
    rows = (
        Row("air", "20 C"),
        Row("wind, gusts", "not known", known=False, path=("wind",)),
        Row("track", "not known", known=False, path=("track",)),
        Row("retired", "not known", known=False, path=("retired",)),
    )

    assert printed(*rows)[1:] == ["  not known: wind, gusts · track"]
    assert printed(*rows, unknown=False)[1:] == []


def test_with_paths_each_value_says_where_it_is_set() -> None:
    row = Row("fork height", "not known", known=False, path=("setup", "fork_height"))

    assert printed(row, paths=True) == ["  fork height           not known  path setup.fork_height"]


def test_rows_to_add_by_are_for_the_keyboard_only() -> None:
    assert printed(Row("name", "x"), Row("add note: number", kind="add", known=False)) == [
        "  name                  x"
    ]
    only = Page("", (Section("notes", (Row("add note: number", kind="add", known=False),)),))
    assert list(plain_page(only)) == []


def test_a_problem_stands_under_its_place() -> None:
    row = Row("f.toml:3", '"x": expected a number', kind="text", severity="trouble")

    assert list(row_lines(row)) == ["  f.toml:3", '    "x": expected a number']


def test_a_note_stands_at_the_right_of_its_title_or_below_it() -> None:
    section = Section("electronics", (), "none on this bike")

    assert list(plain_page(Page("", (section,)), 60))[1] == f"-- electronics {'-' * 27} none on this bike"
    wide = Section("a title of thirty-one cells ...", (), "enter these first")
    assert list(plain_page(Page("", (wide,)), 40))[1:] == [
        "-- a title of thirty-one cells ...",
        "   enter these first",
    ]


TEXT = st.text(st.characters(exclude_categories=["C", "Z"]) | st.just(" "), max_size=70)
ROWS = st.builds(
    Row,
    label=TEXT,
    value=TEXT,
    range=TEXT,
    aside=TEXT,
    bar=st.none() | st.builds(Bar, at=st.none() | st.floats(0, 1)),
    kind=st.sampled_from(["field", "text", "finding", "link"]),
    path=st.just(("a", "b")),
    shut=TEXT,
    trouble=TEXT,
    severity=st.sampled_from(["", "hold", "caution", "trouble"]),
    known=st.booleans(),
)
PAGES = st.builds(
    Page,
    heading=TEXT,
    sections=st.lists(st.builds(Section, TEXT, st.lists(ROWS, max_size=4).map(tuple), TEXT), max_size=3).map(
        tuple
    ),
    verdict=TEXT,
    findings=st.lists(ROWS, max_size=2).map(tuple),
    caution=TEXT,
)


@examples(25)
@given(PAGES, st.sampled_from([38, 40, 64, 80, 100]), st.booleans())
def test_no_page_is_wider_than_the_terminal(page: Page, columns: int, paths: bool) -> None:
    assert all(width(line) <= columns for line in plain_page(page, columns, paths=paths))
