"""Answers on rows: a few words first, values to take over, never on a row that takes no key."""

from paddock_tui.advice.beside_setup import BesideRow
from paddock_tui.pages.advised import advised, working_section
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.paths import Path, Ref
from paddock_tui.rules.core import SetValue

REF, OTHER = Ref("session", "a"), Ref("session", "b")
PATH: Path = ("setup", "controls", "traction")
BESIDE: dict[Path, BesideRow] = {
    PATH: BesideRow("usual 8", (SetValue(PATH, 8),), ("start at 8", "surface: wet (this session)"))
}


def shown(row: Row) -> Row:
    (found,) = advised(Page("", (Section("aids", (row,)),)), REF, BESIDE).rows()
    return found


def test_the_answer_stands_before_what_is_said_there_anyway() -> None:
    found = shown(Row("traction", "3", aside="resets with the key", ref=REF, path=PATH))

    assert found.aside == "usual 8; resets with the key"
    assert found.offer == (SetValue(PATH, 8),)
    assert found.working == BESIDE[PATH].working


def test_a_row_that_takes_no_key_is_offered_nothing_but_explains() -> None:
    found = shown(Row("traction", "3", shut="fixed by the riding mode", ref=REF, path=PATH))

    assert (found.aside, found.offer) == ("", ())
    assert found.working


def test_rows_of_other_records_and_rows_with_trouble_stay_as_they_are() -> None:
    for row in (
        Row("traction", "3", ref=OTHER, path=PATH),
        Row("traction", "x", trouble="cannot be read", ref=REF, path=PATH),
        Row("wheelie", "3", ref=REF, path=("setup", "controls", "wheelie")),
    ):
        assert shown(row) == row


def test_the_working_says_the_answer_then_each_line_by_its_label() -> None:
    section = working_section(("start at 8: a start", "surface: wet (this session)", "no label here"))

    assert [(row.label, row.value) for row in section.rows] == [
        ("", "start at 8: a start"),
        ("surface", "wet (this session)"),
        ("", "no label here"),
    ]
