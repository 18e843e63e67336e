"""What a set-up is compared with on its page: the start, the last session and the profile, as marks."""

from collections.abc import Iterator, Mapping, Sequence

import attrs

from paddock_tui.advice.levels import suggested_words
from paddock_tui.desk.sessions.compared import ComparedSetUp
from paddock_tui.pages.pictured import picture_row, with_picture
from paddock_tui.pages.pictures import Mark
from paddock_tui.pages.pictures.suspension import LEGEND as SHARES
from paddock_tui.pages.pictures.suspension import ComparedAdjusters, suspension_pairs
from paddock_tui.pages.rows import Page, Row
from paddock_tui.pages.setup import position_on, scale_of
from paddock_tui.records.bike import Bike
from paddock_tui.records.in_force import value_in_force
from paddock_tui.records.paths import Path
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes import Setting
from paddock_tui.text import printable

LEGEND = "█ now  s start  l last  p profile  * several"


def with_comparisons(
    page: Page,
    bike: Bike,
    setup: SetUp,
    starts: Mapping[Path, Setting],
    others: Sequence[ComparedSetUp],
    turned: Mapping[str, float] | None = None,
) -> Page:
    """Put the marks to compare with on each scale of a set-up page, and front beside rear.

    `starts` and `turned` are where aids and adjusters start for this group and surface.
    """
    sections = tuple(
        attrs.evolve(section, rows=tuple(_compared(row, bike, starts, others) for row in section.rows))
        for section in page.sections
    )
    page = attrs.evolve(page, sections=sections)
    page = attrs.evolve(
        page,
        sections=tuple(
            attrs.evolve(one, note=LEGEND) if any(row.bar and row.bar.marks for row in one.rows) else one
            for one in page.sections
        ),
    )
    beside = [ComparedAdjusters("s", "start", turned)] if turned else []
    beside += [ComparedAdjusters(one.sign, one.word, one.setup.adjusters) for one in others]
    pairs = suspension_pairs(bike, setup, beside)
    row = picture_row("front and rear", pairs, apart=True) if pairs is not None else None
    return with_picture(page, "suspension", row, SHARES)


def _compared(row: Row, bike: Bike, starts: Mapping[Path, Setting], others: Sequence[ComparedSetUp]) -> Row:
    if row.bar is None or row.path[1:2] != ("controls",) or row.trouble:
        return row
    name = row.path[2]
    control = bike.controls.get(name)
    scale = scale_of(name, control) if control is not None else None
    if control is None or scale is None:
        return row
    held = list(_held(name, bike, row.path, starts, others))
    marks = tuple(
        Mark(sign, at, word) for sign, word, value in held if (at := position_on(scale, value)) is not None
    )
    if row.bar.fixed:
        return row
    said = _words(row, held)
    # The picture's own mark says it already.
    told = suggested_words(starts[row.path]) if row.path in starts else ""
    rest = [part for part in row.aside.split("; ") if part and part != told]
    return attrs.evolve(
        row, bar=attrs.evolve(row.bar, marks=marks), aside="; ".join(filter(None, (said, *rest)))
    )


def _held(
    name: str, bike: Bike, path: Path, starts: Mapping[Path, Setting], others: Sequence[ComparedSetUp]
) -> Iterator[tuple[str, str, Setting]]:
    if path in starts:
        yield "s", "start", starts[path]
    for one in others:
        value = value_in_force(name, one.setup, bike)
        if value is not None:
            yield one.sign, one.word, value


def _words(row: Row, held: Sequence[tuple[str, str, Setting]]) -> str:
    """Say what each letter stands at; those that stand as now do in one."""
    alike = [sign for sign, _, value in held if row.known and printable(str(value)) == row.value]
    # A figure stands close to its letter: "8 l 5" would be read as litres.
    apart = [
        f"{sign}{'' if isinstance(value, int) else ' '}{printable(str(value))}"
        for sign, _, value in held
        if sign not in alike
    ]
    return " ".join(filter(None, (*apart, f"as {' '.join(alike)}" if alike else "")))
