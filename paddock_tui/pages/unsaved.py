"""Values that show and are not on disk: said beside them, and counted in the heading of every page."""

from collections.abc import Mapping

import attrs

from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.paths import Path, Ref
from paddock_tui.text import printable


def marked(page: Page, marks: Mapping[tuple[Ref, Path], str], unkept: int = 0) -> Page:
    """Say beside each row of these values that it waits to be kept, or why it is not."""
    if not marks and not unkept:
        return page
    sections = tuple(
        Section(one.title, tuple(_marked(row, marks) for row in one.rows), one.note) for one in page.sections
    )
    heading = f"{unkept} not saved · {page.heading}" if unkept else page.heading
    return attrs.evolve(page, sections=sections, heading=heading)


def _marked(row: Row, marks: Mapping[tuple[Ref, Path], str]) -> Row:
    if row.ref is None or not row.path:
        return row
    for length in range(len(row.path), 0, -1):
        words = marks.get((row.ref, row.path[:length]))
        if words is not None:
            return attrs.evolve(row, trouble=printable(words))
    return row
