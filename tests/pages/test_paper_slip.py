"""The paper slip: one page, in exactly the order of the return."""

from paddock_tui.entry.return_rows import LATER, groups
from paddock_tui.pages.paper_slip import BOX, LINES, WIDTH, slip_lines, slip_page
from paddock_tui.records.common import Units
from paddock_tui.text import width
from tests.every import every

HEADING = "session 4 · Sat 20 Jun 13:20 · magpie · ines · anvilfen"


@every("units", [Units(), Units(pressure="psi", volume="US gal"), Units(pressure="kPa")])
def test_it_is_one_page_of_60_lines_by_80_cells(units: Units) -> None:
    lines = slip_lines(HEADING, units)

    assert len(lines) <= LINES == 60
    assert max(width(line) for line in lines) <= WIDTH == 80
    assert lines[-1].startswith("Type it in this order")


def test_its_boxes_stand_in_the_order_of_the_return_with_as_many_boxes_as_keys() -> None:
    lines = slip_lines(HEADING, Units())
    at = -1
    for group in groups():
        at = next(
            place for place, line in enumerate(lines) if place > at and line[2:24].strip() == group.label
        )
        assert lines[at].count(BOX) == group.boxes
    later = [line[2:24].strip() for line in lines[at + 1 :]]
    assert "laps" in later
    assert len([label for label in later if label]) >= 1 + sum(len(paths) for _, paths in LATER)


def test_the_rules_are_in_the_units_of_the_rider() -> None:
    text = "\n".join(slip_lines(HEADING, Units(pressure="psi", volume="US gal")))

    assert "345 is 34.5 psi" in text
    assert "065 is 6.5 US gal" in text


def test_the_page_shows_the_same_lines_under_their_headings() -> None:
    lines = [line.strip() for line in slip_lines(HEADING, Units())[1:] if line.strip()]
    sections = slip_page(HEADING, Units()).sections
    headings = [f"{one.title}: {one.note}" if one.note else one.title for one in sections]

    assert len(sections) > 5
    assert [row.value for one in sections for row in one.rows] == [
        line for line in lines if line not in headings
    ]
    assert all(line in headings for line in lines if line.startswith(("hot pressures:", "feel:", "later")))
