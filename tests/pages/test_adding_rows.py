"""Rows by which entries are added and dropped, on the pages of records and of the garage."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from paddock_tui.desk.edits.tables import dropping, wanted
from paddock_tui.pages.garage import garage_page
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.rows import Page
from paddock_tui.records.edits import MISSING, Change, Step
from paddock_tui.records.fields import specs
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import FOLDERS, Ref
from paddock_tui.records.paths import Path as Keys
from paddock_tui.store.data import lookup
from paddock_tui.store.patch import Patched, patch
from tests.desk.opened import at_desk
from tests.every import every
from tests.pages.opened import FILES, sample_page
from tests.small import session, write

EVERY = [pytest.param(ref, id=str(ref)) for ref in FILES.all()]
MAGPIE = Ref("bike", "magpie")


def adds(page: Page) -> list[Keys]:
    return [row.adds for row in page.rows() if row.kind == "add"]


def growing(cls: type, data: object, at: Keys = ()) -> Iterator[Keys]:
    """List the tables of a record that grow, those inside entries that are there too."""
    for key, (_, spec) in specs(cls).items():
        inner = data.get(key, {}) if isinstance(data, dict) else {}
        if spec.keys:
            yield (*at, key)
        if spec.record is not None:
            for keys, below in entries(inner, len(spec.keys)):
                yield from growing(spec.record, below, (*at, key, *keys))


def entries(data: object, depth: int) -> Iterator[tuple[Keys, object]]:
    if depth == 0:
        yield (), data
        return
    for key, inner in data.items() if isinstance(data, dict) else ():
        for keys, below in entries(inner, depth - 1):
            yield (key, *keys), below


@every("ref", EVERY)
def test_each_table_that_grows_has_one_row_to_add_by(ref: Ref) -> None:
    found = adds(sample_page(ref))

    expected = set(growing(CLASSES[ref.kind], FILES.data(ref)))
    if ref.kind in ("session", "profile"):
        # Controls, adjusters and offsets of a set-up are the bike's: there is a row for each.
        expected = {table for table in expected if table[0] != "setup"}
    assert len(set(found)) == len(found)
    assert set(found) == expected
    assert all(wanted(ref, table) is not None for table in found)


@every("ref", EVERY)
def test_every_row_of_an_entry_says_what_is_dropped_and_what_is_added_to(ref: Ref) -> None:
    loaded = FILES.read(ref)
    assert loaded is not None
    for row in sample_page(ref).rows():
        if row.kind == "field" and row.drops:
            assert row.path[: len(row.drops)] == row.drops
            assert row.drops[: len(row.adds)] == row.adds
            assert wanted(ref, row.adds) is not None
            assert lookup(loaded.data, row.drops) is not MISSING
        elif row.kind == "field":
            assert row.adds == ()


@every("ref", EVERY)
def test_the_first_entry_of_each_table_of_the_sample_is_dropped_and_comes_back_byte_for_byte(
    ref: Ref,
) -> None:
    loaded = FILES.read(ref)
    assert loaded is not None
    first = {row.adds: row.drops for row in reversed(sample_page(ref).rows()) if row.drops}
    for entry in first.values():
        step = dropping(FILES, ref, entry)
        assert isinstance(step, Step)
        (change,) = step.changes
        assert isinstance(change, Change)

        dropped = patch(loaded.text, change.edits)

        assert isinstance(dropped, Patched), entry
        back = patch(dropped.text, dropped.undo)
        assert isinstance(back, Patched)
        assert back.text == loaded.text


def test_a_row_to_add_by_says_what_is_asked_for_and_stands_behind_the_entries() -> None:
    page = sample_page(MAGPIE)
    (controls,) = [section for section in page.sections if section.title == "controls"]

    assert [row.label for row in controls.rows] == ["add: control"]
    titles = [section.title for section in page.sections]
    assert titles.index("controls · pit limiter") < titles.index("controls")


def test_rows_to_add_by_are_for_the_screen_and_not_for_print() -> None:
    text = "\n".join(plain_page(sample_page(MAGPIE)))

    assert "add: control" not in text
    assert "-- controls --" not in text


def test_every_kind_of_record_can_be_made_in_the_garage(garage: Path) -> None:
    page = garage_page(at_desk(garage))
    made = {row.adds: row for row in page.rows() if row.kind == "add"}

    assert set(made) == {(kind,) for kind in FOLDERS}
    assert made["tyres",].label == "new tyre set"
    assert made["checklist",].label == "new checklist"
    told = ("problems", "earlier sessions")
    assert all(section.rows[-1].kind == "add" for section in page.sections if section.title not in told)


def test_a_retired_session_is_shown_with_the_retired_so_that_it_can_be_brought_back(tmp_path: Path) -> None:
    root = write(tmp_path, sessions__a=session(retired="2026-05-17"), sessions__b=session(2))
    desk = at_desk(root)

    def said(*, retired: bool) -> dict[str, str]:
        rows = garage_page(desk, retired=retired).sections[0].rows
        return {row.label: row.aside for row in rows if row.kind == "link"}

    assert said(retired=False) == {"b": "current"}
    assert said(retired=True) == {"b": "current", "a": "retired"}
