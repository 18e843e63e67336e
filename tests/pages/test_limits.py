"""The page of limits: each with value, unit, range, meaning and source, and whose it is."""

from pathlib import Path

from paddock_tui.limits import LIMITS, Limits
from paddock_tui.pages.limits import limits_page, path_of, written
from paddock_tui.quantities import Quantity, parse
from paddock_tui.records.paths import GARAGE
from paddock_tui.store.garage import GarageFiles
from paddock_tui.text import printable
from tests.small import write

FUEL = LIMITS["fuel-short-at-the-flag", "reserve"]


def test_every_limit_has_a_row_with_its_unit_range_meaning_and_source() -> None:
    rows = {row.path: row for row in limits_page(Limits()).rows()}

    assert set(rows) == {path_of(one) for one in LIMITS.values()}
    for one in LIMITS.values():
        row = rows[path_of(one)]
        assert row.ref == GARAGE
        assert row.edit == written(one, one.value)
        assert row.value == (row.edit if one.unit != "K" else row.edit.replace("K", "°C difference"))
        assert row.aside == printable(row.aside)
        assert all(words in row.aside for words in (one.meaning, "default", one.source))
        assert "range " in row.range


def test_a_limit_of_the_owners_is_marked_with_the_declared_one_beside() -> None:
    three = parse("3 l")
    assert isinstance(three, Quantity)
    found = limits_page(Limits({FUEL.rule: {FUEL.name: three}}))
    row = next(row for row in found.rows() if row.path == path_of(FUEL))

    assert row.value == "3 l"
    assert "yours; default 2 l" in row.aside
    assert "1 of them yours" in found.heading


def test_what_does_not_fit_is_shown_first_and_not_used() -> None:
    found = limits_page(Limits({FUEL.rule: {FUEL.name: 3}, "no-such-rule": {"x": 1}}))

    assert found.sections[0].title == "in the file, but not used"
    assert [row.value for row in found.sections[0].rows] == [
        "expected 0 to 10 l",
        "no rule has such a threshold",
    ]
    row = next(row for row in found.rows() if row.path == path_of(FUEL) and row.key == "")
    assert row.value == "2 l"


def test_what_cannot_be_read_in_the_file_is_said_on_its_row(tmp_path: Path) -> None:
    text = f'name = "small"\nschema = 1\n\n[limits.{FUEL.rule}]\n{FUEL.name} = "plenty"\n'
    files = GarageFiles(write(tmp_path, garage=text))
    found = limits_page(Limits(files.garage().limits), files.read(GARAGE))
    row = next(row for row in found.rows() if row.path == path_of(FUEL))

    assert row.trouble.startswith("cannot be read")
    assert row.value == "2 l"


def test_the_page_says_that_a_wider_limit_makes_nothing_safer() -> None:
    assert "makes nothing safer" in limits_page(Limits()).caution
