"""Rows of words as lines: texts, findings and headings; they wrap and are never cut."""

from functools import lru_cache

from paddock_tui.pages.layout.columns import MARK, Columns
from paddock_tui.pages.layout.fields import folded, mark
from paddock_tui.pages.layout.pen import Ink, Line
from paddock_tui.pages.rows import Row
from paddock_tui.text import fold, width

SEVERITIES = ("hold", "serious", "caution", "note", "trouble")
_LABEL = 6
"""Cells of the label of a part of a finding and its gap."""

_WIDE = 60
"""From this width on parts stand under the message, and whether an answer is owed at the right."""

_SEVERITY = 9
"""Cells of the severity's word and its gap."""


@lru_cache(maxsize=4096)
def text_lines(row: Row, columns: Columns, on: bool) -> tuple[Line, ...]:
    """Draw a row of words: severity or label first, the text wrapped beside it, the aside below.

    A finding takes one line until it is under the cursor; of a hold what is to be done is always in sight.
    """
    if opens(row):
        return finding_lines(row, columns, on, is_open=on)
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
    words = (
        "title" if row.kind == "heading" or (row.whole and row.known) else "value" if row.known else "unknown"
    )
    severity = row.severity if row.kind == "finding" else ""
    lines = _beside(lead, style, text, words, columns, column, on, severity)
    for quiet, quiet_style in ((row.shut, "shut"), (row.trouble, "trouble"), (row.aside, "aside")):
        lines += folded(say(quiet), quiet_style, columns, column if column <= 11 else 4)
    return tuple(lines)


def opens(row: Row) -> bool:
    """Return whether a row says more under the cursor than without it."""
    return row.kind == "finding" and bool(row.more)


@lru_cache(maxsize=256)
def finding_lines(row: Row, columns: Columns, on: bool, is_open: bool) -> tuple[Line, ...]:
    """Draw a finding that opens: `is_open` is not always the one under the cursor (`on`)."""
    return tuple(_opened(row, columns, on) if is_open else folded_finding(row, columns, on))


def finding_text(row: Row, columns: Columns) -> str:
    """Return the words of a finding without its severity."""
    label = "" if row.label == row.severity else row.label
    return columns.pen.say(" ".join(filter(None, (label, row.value))))


def severity_style(severity: str) -> str:
    """Return the style of a severity's word; anything else is quiet."""
    return severity if severity in SEVERITIES else "aside"


def finding_line(row: Row, columns: Columns, on: bool = False) -> Line:
    """Draw a finding on one line, cut where it must be; whether it waits for an answer at the right end."""
    ink = Ink(columns.pen)
    mark(ink, on, row.severity)
    quiet = columns.pen.say(row.range) if columns.pen.width >= _WIDE else ""
    whole = finding_text(row, columns)
    room = columns.pen.width - MARK - _SEVERITY - (width(quiet) + 2 if quiet else 0)
    text = columns.pen.say(row.short) if row.short and width(whole) > room else whole
    # Where even the few words need the line, the rail alone tells how grave it is; a hold is named always.
    if row.severity and (not row.short or width(text) <= room or row.severity == "hold"):
        ink.put(columns.pen.say(row.severity), severity_style(row.severity))
        ink.to(max(MARK + _SEVERITY, ink.at + 1) if width(text) <= room or not row.short else ink.at + 1)
    ink.put(text, "value", ink.room - (width(quiet) + 2 if quiet else 0))
    if quiet:
        ink.to(columns.pen.width - width(quiet))
        ink.put(quiet, "range")
    return ink.line()


def folded_finding(row: Row, columns: Columns, on: bool = False) -> list[Line]:
    """Draw a finding on its line; of a hold what is to be done follows."""
    lines = [finding_line(row, columns, on)]
    if row.severity == "hold":
        lines += [
            line for label, text in row.more if label == "do" for line in _part(row, label, text, columns)
        ]
    return lines


def hold_lines(row: Row, columns: Columns, room: int) -> list[Line]:
    """Draw a hold and what is to be done in at most `room` lines, the latter cut where it must be."""
    lines = folded_finding(row, columns)
    if len(lines) <= room:
        return lines
    ink = Ink(columns.pen)
    mark(ink, False, row.severity)
    ink.put("do ", "aside")
    ink.put(columns.pen.say(dict(row.more).get("do", "")), "value")
    return [lines[0], ink.line()][:room]


def _opened(row: Row, columns: Columns, on: bool) -> list[Line]:
    """Draw a finding whole: its message, then why, what to do, what `f` would do, each behind its label."""
    start = MARK + _SEVERITY
    pieces = fold(finding_text(row, columns), max(columns.pen.width - start, 2)) or [""]
    lines = []
    for place, piece in enumerate(pieces):
        ink = Ink(columns.pen)
        mark(ink, on, row.severity, place == 0)
        if place == 0:
            ink.put(columns.pen.say(row.severity), severity_style(row.severity))
        ink.to(min(start, max(columns.pen.width - 2, 0)))
        ink.put(piece, "title")
        lines.append(ink.line())
    return [*lines, *(line for label, text in row.more for line in _part(row, label, text, columns))]


def _part(row: Row, label: str, text: str, columns: Columns) -> list[Line]:
    """Draw one part of a finding, its label once, the rail along all of it."""
    at = MARK + _SEVERITY if columns.pen.width >= _WIDE else MARK
    start = min(at + _LABEL, max(columns.pen.width - 2, 0))
    lines = []
    for place, piece in enumerate(fold(columns.pen.say(text), max(columns.pen.width - start, 2))):
        ink = Ink(columns.pen)
        mark(ink, False, row.severity)
        if place == 0:
            ink.to(at)
            ink.put(label, "aside", _LABEL - 1)
        ink.to(start)
        ink.put(piece, "value")
        lines.append(ink.line())
    return lines


def _beside(
    lead: str,
    lead_style: str,
    text: str,
    style: str,
    columns: Columns,
    column: int,
    on: bool,
    severity: str = "",
) -> list[Line]:
    """Draw `lead` and the text wrapped to its right; under it where there is too little room."""
    pen = columns.pen
    ink = Ink(pen)
    mark(ink, on, severity)
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
