"""The pen that draws one line: text made safe, cut and placed in cells, in named styles.

Units are drawn as they are read: degrees with their sign, and litres with the letter that is no figure one.
Files and typing keep the plain letters; a terminal that shows ASCII alone has no degree sign.
"""

from collections.abc import Sequence

import attrs

from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.text import as_read, clip, in_ascii, printable, width

Span = tuple[str, str]
"""Text and the name of its style; the empty name is the ground."""

Line = tuple[Span, ...]


@attrs.frozen
class Pen:
    """How wide a line is, whether the terminal shows ASCII alone (`plain`), and whether rules are `heavy`."""

    width: int
    plain: bool = False
    heavy: bool = False

    @property
    def rule(self) -> str:
        """The character that a rule is drawn with."""
        if self.heavy:
            return "=" if self.plain else "━"
        return "-" if self.plain else "─"

    def say(self, text: str) -> str:
        """Return what may reach this terminal of a text from anywhere."""
        text = printable(text)
        return in_ascii(text) if self.plain else text

    def cut(self, text: str, cells: int) -> str:
        """Cut safe text to at most `cells` cells; what is cut ends in an ellipsis."""
        if width(text) <= cells:
            return text
        if not self.plain:
            return clip(text, cells)
        return clip(text, cells - 2)[:-1] + "..." if cells > 3 else "..."[: max(cells, 0)]

    def arrows(self, above: int, below: int) -> str:
        """Say how many rows stand above and below what is shown; empty where none do."""
        up, down = ("^", "v") if self.plain else ("↑", "↓")
        parts = [f"{arrow} {count}" for arrow, count in ((up, above), (down, below)) if count]
        return f"{' '.join(parts)} more" if parts else ""


@attrs.define
class Ink:
    """One line being drawn from left to right; nothing goes past the pen's width."""

    pen: Pen
    at: int = 0
    _spans: list[Span] = attrs.Factory(list)

    @property
    def room(self) -> int:
        """How many cells are left."""
        return self.pen.width - self.at

    def put(self, text: str, style: str = "", cells: int | None = None) -> bool:
        """Draw safe text, cut to `cells` and to the room; return whether all of it was drawn."""
        drawn = self.pen.cut(text, self.room if cells is None else min(cells, self.room))
        if drawn:
            self._spans.append((drawn, style))
            self.at += width(drawn)
        return drawn == text

    def to(self, column: int) -> None:
        """Leave a gap up to a column; nothing where the line is already there."""
        gap = min(column, self.pen.width) - self.at
        if gap > 0:
            self.put(" " * gap)

    def line(self) -> Line:
        """Return what was drawn, without a gap at its end."""
        spans = list(self._spans)
        while spans and not spans[-1][1] and not spans[-1][0].strip(" "):
            spans.pop()
        return tuple(spans)


def text_of(line: Line) -> str:
    """Return the bare text of a line."""
    return "".join(text for text, _ in line)


def rule(pen: Pen, title: str, note: str = "", tail: str = "") -> Line:
    """Draw a title rule: title left, a quiet note beside it, and a tail at the right end."""
    ink = Ink(pen)
    end = f" {tail} {pen.rule * 2}" if tail else ""
    ink.put(pen.rule * 2 + " ", "rule")
    ink.put(pen.say(title), "title", max(ink.room - width(end) - 2, 1))
    if note:
        ink.put(f" {pen.rule * 2} ", "rule")
        ink.put(pen.say(note), "aside", max(ink.room - width(end) - 2, 1))
    ink.put(" ", "rule")
    ink.put(pen.rule * (ink.room - width(end)), "rule")
    if tail:
        ink.put(" ", "rule")
        ink.put(tail, "hint")
        ink.put(f" {pen.rule * 2}", "rule")
    return ink.line()


_LAST: list[tuple[Page, Page]] = []
"""The page that was asked last: each arrow draws it again."""


def with_units(page: Page) -> Page:
    """Return a page with its units as they are read."""
    if not (_LAST and _LAST[0][0] is page):
        made = attrs.evolve(
            page,
            sections=sections_with_units(page.sections),
            findings=tuple(map(_row, page.findings)),
            answer=as_read(page.answer),
            answer_mid=as_read(page.answer_mid),
            answer_short=as_read(page.answer_short),
        )
        _LAST[:] = [(page, made)]
    return _LAST[0][1]


def sections_with_units(sections: Sequence[Section]) -> tuple[Section, ...]:
    """Return sections with their units as they are read."""
    return tuple(map(_section, sections))


def _section(section: Section) -> Section:
    rows, note, summary = tuple(map(_row, section.rows)), as_read(section.note), as_read(section.summary)
    if (rows, note, summary) == (section.rows, section.note, section.summary):
        return section
    return attrs.evolve(section, rows=rows, note=note, summary=summary)


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
