"""Values that show and are not on disk are told on their rows and in the heading of every page."""

from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.unsaved import marked
from paddock_tui.records.paths import Ref

ONE, TWO = Ref("session", "one"), Ref("session", "two")

PAGE = Page(
    "session",
    (
        Section(
            "s",
            (
                Row("aim", ref=ONE, path=("aim",)),
                Row("text", ref=ONE, path=("notes", "1", "text")),
                Row("aim of another", ref=TWO, path=("aim",)),
                Row("words", kind="text"),
            ),
        ),
    ),
)


def test_a_page_without_marks_is_the_same_page() -> None:
    assert marked(PAGE, {}) is PAGE


def test_a_value_and_all_of_a_table_that_is_not_kept_are_marked_and_nothing_else() -> None:
    words = "not saved: \x1b[2J"

    page = marked(PAGE, {(ONE, ("aim",)): "not yet saved", (ONE, ("notes", "1")): words}, 1)

    assert [row.trouble for row in page.rows()] == ["not yet saved", "not saved: ␛[2J", "", ""]
    assert page.heading == "1 not saved · session"
