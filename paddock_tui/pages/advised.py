"""Answers on the rows they belong to: a few words beside, values to take over, the working behind."""

from collections.abc import Mapping

import attrs

from paddock_tui.advice.beside_setup import BesideRow
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.paths import Path, Ref


def advised(page: Page, ref: Ref, beside: Mapping[Path, BesideRow]) -> Page:
    """Return a page whose rows of one record carry their answers."""
    sections = tuple(
        attrs.evolve(section, rows=tuple(_row(row, ref, beside) for row in section.rows))
        for section in page.sections
    )
    return attrs.evolve(page, sections=sections)


def _row(row: Row, ref: Ref, beside: Mapping[Path, BesideRow]) -> Row:
    found = beside.get(row.path) if row.kind == "field" and row.ref == ref else None
    if found is None or row.trouble:
        return row
    if row.shut:
        return attrs.evolve(row, working=found.working)
    aside = "; ".join(filter(None, (found.short, row.aside)))
    return attrs.evolve(row, aside=aside, offer=found.puts, working=found.working)


def working_section(working: tuple[str, ...]) -> Section:
    """Return the working of an answer line by line: the answer first, then inputs, formula and source."""
    rows = tuple(_line(text, place) for place, text in enumerate(working))
    return Section("worked out", rows)


def _line(text: str, place: int) -> Row:
    label, colon, rest = text.partition(": ")
    if place == 0 or not colon or len(label) > _LABEL:
        return Row("", text, kind="text", key=f"working {place}")
    return Row(label, rest, kind="text", key=f"working {place}")


_LABEL = 24
