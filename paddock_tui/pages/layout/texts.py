"""Rows of words as lines: texts, findings and headings; they wrap and are never cut."""

from functools import lru_cache

from paddock_tui.pages.layout.columns import MARK, Columns
from paddock_tui.pages.layout.fields import folded, mark
from paddock_tui.pages.layout.pen import Ink, Line
from paddock_tui.pages.rows import Row
from paddock_tui.text import fold, width

SEVERITIES = ("hold", "serious", "caution", "note", "trouble")
_SEVERITY = 9
"""Cells of the severity's word and its gap."""


@lru_cache(maxsize=4096)
def text_lines(row: Row, columns: Columns, on: bool) -> tuple[Line, ...]:
    """Draw a row of words: severity or label first, the text wrapped beside it, the aside below."""
    say = columns.pen.say
    if row.kind == "finding" or (row.severity and not row.value):
        lead, text = say(row.severity), finding_text(row, columns)
        style, column = severity_style(row.severity), MARK + _SEVERITY
    elif row.value:
        lead, text = say(row.label), say(row.value)
        style, column = "label", columns.value if row.label else MARK
    else:
        lead, text = "", say(row.label)
        style, column = "", MARK
    words = "title" if row.kind == "heading" else "value" if row.known else "unknown"
    lines = _beside(lead, style, text, words, columns, column, on)
    for quiet, quiet_style in ((row.shut, "shut"), (row.trouble, "trouble"), (row.aside, "aside")):
        lines += folded(say(quiet), quiet_style, columns, column if column <= 11 else 4)
    return tuple(lines)


def finding_text(row: Row, columns: Columns) -> str:
    """Return the words of a finding without its severity."""
    label = "" if row.label == row.severity else row.label
    return columns.pen.say(" ".join(filter(None, (label, row.value))))


def severity_style(severity: str) -> str:
    """Return the style of a severity's word; anything else is quiet."""
    return severity if severity in SEVERITIES else "aside"


def finding_line(row: Row, columns: Columns) -> Line:
    """Draw a finding on one line, cut where it must be."""
    ink = Ink(columns.pen)
    ink.to(MARK)
    ink.put(columns.pen.say(row.severity), severity_style(row.severity))
    if row.severity:
        ink.to(max(MARK + _SEVERITY, ink.at + 1))
    ink.put(finding_text(row, columns), "value")
    return ink.line()


def _beside(
    lead: str, lead_style: str, text: str, style: str, columns: Columns, column: int, on: bool
) -> list[Line]:
    """Draw `lead` and the text wrapped to its right; under it where there is too little room."""
    pen = columns.pen
    ink = Ink(pen)
    mark(ink, on)
    lines: list[Line] = []
    if lead and (pen.width - column < 16 or width(lead) > column - MARK - 1):
        ink.put(lead, "focus" if on and lead_style == "label" else lead_style)
        lines.append(ink.line())
        return [*lines, *folded(text, style, columns, 4)]
    if lead:
        ink.put(lead, "focus" if on and lead_style == "label" else lead_style)
    column = min(column, max(pen.width - 2, 0))
    for piece in fold(text, max(pen.width - column, 2)) or [""]:
        ink.to(column)
        ink.put(piece, style)
        lines.append(ink.line())
        ink = Ink(pen)
    return lines
