"""Long pages folded to headings: what stays open, what a heading says, and how it is opened."""

import attrs
import hypothesis.strategies as st
from hypothesis import given

from paddock_tui.pages.folding import (
    folded,
    folds_of,
    hidden_in,
    key_of,
    opens,
    waiting,
    waiting_first,
    with_folds,
)
from paddock_tui.pages.layout import View, layout
from paddock_tui.pages.rows import FOLD, Page, Row, Section
from paddock_tui.records.paths import Ref
from paddock_tui.widgets.opened import OpenedSections
from tests.examples import examples

REF = Ref("session", "one")


def section(title: str, *keys: str, known: bool = True) -> Section:
    """Make a section of fields."""
    return Section(
        title,
        tuple(Row(key, "1" if known else "not known", ref=REF, path=(key,), known=known) for key in keys),
    )


PAGE = Page(
    "p",
    (
        section("first", "a", "b", "c"),
        section("found", "d", "e", "f"),
        section("controls · x", "g", "h", "i"),
        section("controls · y", "j", "k", "l"),
        section("controls · z", "m", "n", "o"),
        section("short", "q"),
    ),
    place="room",
)
FOUND = opens({(REF, ("e",))})


def fold(most: int) -> Page:
    """Fold the page to so many lines."""
    return with_folds(PAGE, folds_of(PAGE, FOUND, lambda one: len(one.rows) + 1, most), FOUND)


def titles(page: Page) -> list[str]:
    return [one.title for one in page.sections if one.folded]


def test_a_page_that_fits_is_left_as_it_is() -> None:
    assert fold(100) == PAGE
    assert folded(PAGE, {}) is PAGE


def test_the_only_section_of_a_page_is_never_folded() -> None:
    page = attrs.evolve(PAGE, sections=PAGE.sections[:1])
    assert folds_of(page, FOUND, lambda one: len(one.rows) + 1, 2) == {}


def shown(page: Page) -> int:
    """Count the lines of a page as it shows: a heading is one, a section one more than its rows."""
    sections = folded(page, {}).sections
    return sum(1 if [row.kind for row in one.rows] == [FOLD] else len(one.rows) + 1 for one in sections)


@given(
    st.lists(st.tuples(st.sampled_from("ab"), st.integers(1, 6)), min_size=2, max_size=12), st.integers(2, 40)
)
@examples(150)
def test_nothing_stays_folded_that_has_room(drawn: list[tuple[str, int]], most: int) -> None:
    rows = ([f"{at} {row}" for row in range(count)] for at, (_, count) in enumerate(drawn))
    made = (
        section(f"{head} · {at}", *keys) for (at, (head, _)), keys in zip(enumerate(drawn), rows, strict=True)
    )
    page = Page("p", tuple(made), place="room")
    folds = folds_of(page, FOUND, lambda one: len(one.rows) + 1, most)
    if set(folds) <= {one.title for one in page.sections}:
        for title in (one for one, is_folded in folds.items() if is_folded):
            assert shown(with_folds(page, {**folds, title: False}, FOUND)) > most


def test_what_has_a_finding_stays_open_and_the_first_that_fit_do_before_what_is_short() -> None:
    assert titles(fold(10)) == ["controls · x", "controls · y", "controls · z", "short"]
    assert titles(fold(13)) == ["controls · x", "controls · y", "controls · z"]


def test_a_heading_says_first_values_how_many_rows_and_what_is_open() -> None:
    every = opens({(REF, ("a",)), (REF, ("b",))})
    page = folded(with_folds(PAGE, {"first": True}, every), {})
    row = page.rows()[0]
    assert (row.kind, row.label, row.value, row.range) == (FOLD, "first", "a 1 · b 1 · c 1", "2 open of 3")
    drawn = layout(page, View(80, 24, 0)).text().splitlines()
    # No rule behind a summary: twenty headings would send it twenty times.
    assert drawn[1].startswith(">─ first ── a 1 · b 1 · c 1   ")
    assert drawn[1].endswith("2 open of 3 ──")


def test_the_gravest_inside_shows_on_the_heading() -> None:
    rows = (*PAGE.sections[0].rows[:2], attrs.evolve(PAGE.sections[0].rows[2], severity="hold"))
    page = attrs.evolve(PAGE, sections=(attrs.evolve(PAGE.sections[0], rows=rows, folded=True),))
    assert layout(folded(page, {}), View(80, 24)).text().splitlines()[1].startswith(">█ first")


def test_sections_of_one_kind_share_a_heading_until_it_is_opened() -> None:
    shut = folded(fold(10), {})
    assert [row.label for row in shut.rows() if row.kind == FOLD] == ["controls", "short"]
    assert hidden_in(fold(10), (str(REF), "k", "")) == ("controls · *", "controls · y")
    part = folded(fold(10), {"controls · *": True})
    assert [row.label for row in part.rows() if row.kind == FOLD] == ["controls", *titles(fold(10))]
    whole = folded(fold(10), dict.fromkeys(("controls · *", *map(key_of, PAGE.sections)), True))
    assert {row.label for row in PAGE.rows()} <= {row.label for row in whole.rows()}


def test_enter_opens_and_folds_tab_opens_while_it_is_there_and_a_row_opens_what_hides_it() -> None:
    page, opened = fold(13), OpenedSections()
    heading = next(row for row in opened.shown(page).rows() if row.kind == FOLD)
    assert opened.peek(page, heading)
    assert len(opened.shown(page).rows()) > len(folded(page, {}).rows())
    assert opened.peek(page, None)
    assert opened.shown(page) == folded(page, {})

    opened.toggle(page, heading)
    assert opened.shown(page) != folded(page, {})
    opened.toggle(page, heading)
    assert opened.shown(page) == folded(page, {})

    assert opened.open_for(page, (str(REF), "k", ""))
    assert any(row.label == "k" for row in opened.shown(page).rows())
    assert not opened.open_for(page, (str(REF), "k", ""))
    elsewhere = attrs.evolve(page, place="other")
    assert opened.shown(elsewhere) == folded(elsewhere, {})


def item(key: str, *, known: bool = False, severity: str = "") -> Row:
    return Row(
        "ok" if known else "open", key, kind="check", ref=REF, path=(key,), known=known, severity=severity
    )


LISTS = Page(
    "p",
    (
        Section("one", tuple(item(key, known=True) for key in "abc")),
        Section("two", tuple(item(key, known=True) for key in "def")),
        Section("three", tuple(item(key, known=True) for key in "ghi")),
        Section("due", (item("j", known=True), item("k"), item("l", known=True), item("m", severity="hold"))),
    ),
    place="room",
)
DUE = opens({(REF, ("k",))})


def test_answered_lists_share_a_heading_and_of_the_one_that_is_due_what_is_open_stays() -> None:
    page = with_folds(LISTS, folds_of(LISTS, DUE, lambda one: len(one.rows) + 1, 5), DUE)
    shut = folded(page, {})
    assert [(row.kind, row.label, row.value, row.range) for row in shut.rows()] == [
        (FOLD, "answered", "one · two · three", "3"),
        ("check", "open", "k", ""),
        ("check", "open", "m", ""),
        (FOLD, "answered", "j, l", "2"),
    ]
    assert hidden_in(page, (str(REF), "l", "")) == ("due · rest",)
    assert hidden_in(page, (str(REF), "k", "")) == ()

    opened = OpenedSections()
    assert opened.open_for(page, (str(REF), "l", ""))
    assert [row.value for row in opened.shown(page).sections[-1].rows] == ["k", "m", "", "j", "l"]


def test_what_waits_stands_before_the_order_of_the_file_and_stays_there_once_it_is_answered() -> None:
    waits = waiting(PAGE, FOUND)
    first = waiting_first(PAGE, waits)

    assert waits == {"found"}
    assert [one.title for one in first.sections] == [
        "found",
        "first",
        "controls · x",
        "controls · y",
        "controls · z",
        "short",
    ]
    assert waiting_first(PAGE, waiting(PAGE, opens(frozenset()))) == PAGE
