"""Units as they are read: degrees with their sign, and litres with the letter that is no figure one.

Files, typing and the terminals that show ASCII alone keep the plain letters.
"""

import re
from collections.abc import Sequence

import attrs

from paddock_tui.pages.rows import Page, Row, Section

_UNITS = re.compile(r"(?<=\d )(?:C|l)(?![\w'])")
_AS_READ = {"C": "\N{DEGREE SIGN}C", "l": "L"}

_LAST: list[tuple[Page, Page]] = []
"""The page that was asked last: each arrow draws it again."""


def as_read(text: str) -> str:
    """Write the units of a text as they are read."""
    if " C" not in text and " l" not in text:
        return text
    return _UNITS.sub(lambda found: _AS_READ[found[0]], text)


def with_units(page: Page) -> Page:
    """Return a page with its units as they are read."""
    if not (_LAST and _LAST[0][0] is page):
        made = attrs.evolve(
            page,
            sections=sections_with_units(page.sections),
            findings=tuple(map(_row, page.findings)),
            answer=as_read(page.answer),
            answer_short=as_read(page.answer_short),
        )
        _LAST[:] = [(page, made)]
    return _LAST[0][1]


def sections_with_units(sections: Sequence[Section]) -> tuple[Section, ...]:
    """Return sections with their units as they are read."""
    return tuple(
        attrs.evolve(
            one, rows=tuple(map(_row, one.rows)), note=as_read(one.note), summary=as_read(one.summary)
        )
        for one in sections
    )


def _row(row: Row) -> Row:
    """Return a row with its units as they are read; what the owner writes in words stays as it is."""
    noted = row.kind == "field" and row.takes_letters
    value = row.value if noted else as_read(row.value)
    made = {
        "value": value,
        "range": as_read(row.range),
        "aside": as_read(row.aside),
        "label": as_read(row.label),
        "cells": tuple(map(as_read, row.cells)),
        "more": tuple((label, as_read(text)) for label, text in row.more),
    }
    changed = {name: text for name, text in made.items() if text != getattr(row, name)}
    return attrs.evolve(row, **changed) if changed else row  # type: ignore[arg-type]
