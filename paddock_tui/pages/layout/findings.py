"""The block of findings at the bottom: its height depends on the size of the screen alone."""

import attrs

from paddock_tui.pages.layout.columns import MARK, Columns
from paddock_tui.pages.layout.fields import folded
from paddock_tui.pages.layout.pen import Ink, Line, rule, text_of
from paddock_tui.pages.layout.texts import finding_line, hold_lines, text_lines
from paddock_tui.pages.rows import Page
from paddock_tui.text import width

_CAUTION = 3
"""Lines of a caution, at most, below a page that keeps no room for findings."""

_WIDE = 60
"""Cells from which a title holds both the findings and the caution."""


def block_height(height: int) -> int:
    """Return how many lines the block takes, its title among them, on a screen of this height."""
    for least, lines in ((36, 8), (24, 5), (14, 3), (10, 2)):
        if height >= least:
            return lines
    return 0


def findings_block(page: Page, columns: Columns, height: int, arrows: str) -> list[Line]:
    """Draw the title rule and as many findings as there is room for; the rule says how many more."""
    if height < 1:
        return []
    room = height - 1
    rows = [attrs.evolve(row, kind="finding", aside="", shut="", trouble="") for row in page.findings]
    lines = [line for row in rows for line in text_lines(row, columns, False)]
    note = ""
    if len(lines) > room:
        # What is to be done of the first hold stays in sight, whatever has to leave.
        first = rows[0]
        lines = hold_lines(first, columns, room) if first.severity == "hold" else []
        shown = [first] if lines else []
        left = rows[len(shown) :][: room - len(lines)]
        lines += [finding_line(row, columns) for row in left]
        note = _more(len(rows) - len(shown) - len(left), arrows, columns)
    title = "findings"
    if page.caution and len(lines) >= room:
        # No line is left for the caution: it stands in the title, so short that no width here cuts it.
        title = "no safety check" if columns.pen.width < _WIDE else "findings: no safety check"
    elif page.caution:
        # At the foot of the block and on one line, whatever comes and goes above it: it is never sent again.
        lines = [*padded(lines, room - 1), _one_line(page.caution, columns)]
    return [rule(columns.pen, title, note, arrows), *padded(lines, room)]


def caution_lines(page: Page, columns: Columns, height: int) -> list[Line]:
    """Draw the caution of a page that keeps no room for findings: up to three lines on a tall screen.

    Where it is longer its short form stands for it: a caution cut before its end says something else.
    """
    if page.judged or height < 14:
        return []
    lines = folded(columns.pen.say(page.caution), "note", columns, MARK)
    if len(lines) <= _CAUTION:
        return lines
    if page.caution_short:
        return folded(columns.pen.say(page.caution_short), "note", columns, MARK)
    # A last line too long for the screen, so that the pen marks that more was to be said.
    rest = " ".join(text_of(line).strip() for line in lines[_CAUTION - 1 :])
    return [*lines[: _CAUTION - 1], _one_line(rest, columns)]


def caution_in_full(page: Page, columns: Columns) -> list[Line]:
    """Draw the whole caution, to stand behind the last row where its short form has the place below."""
    if page.judged or not page.caution_short:
        return []
    lines = folded(columns.pen.say(page.caution), "note", columns, MARK)
    return [rule(columns.pen, "caution"), *lines] if len(lines) > _CAUTION else []


def padded(lines: list[Line], height: int) -> list[Line]:
    """Return exactly `height` lines: the first ones, or empty ones after them."""
    return [*lines[:height], *[()] * (height - len(lines))]


def _more(count: int, arrows: str, columns: Columns) -> str:
    said = f"{count} more, r shows them" if count > 0 else "r shows them whole"
    taken = width("── findings: no safety check ──  ") + (width(arrows) + 4 if arrows else 0)
    if taken + width(said) <= columns.pen.width:
        return said
    return f"{count} more" if count > 0 else "r"


def _one_line(text: str, columns: Columns) -> Line:
    ink = Ink(columns.pen)
    ink.to(MARK)
    ink.put(columns.pen.say(text), "note")
    return ink.line()
