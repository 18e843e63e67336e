"""The heading of a section that can be folded, as a line: a rule that the cursor stops at."""

from paddock_tui.pages.layout.cells import sign
from paddock_tui.pages.layout.columns import NARROW, Columns
from paddock_tui.pages.layout.fields import RAILS, folded
from paddock_tui.pages.layout.pen import Ink, Line, Pen
from paddock_tui.pages.rows import Row
from paddock_tui.text import width

_LEAST_SAID = 12
"""In fewer cells a summary says nothing: a mark stands for it."""

_PARTS = (" · ", ", ")
"""What parts a summary: where it is too long the last parts go whole, with a mark for them."""


def fold_lines(row: Row, columns: Columns, on: bool) -> tuple[Line, ...]:
    """Draw it; on a narrow screen a summary that has no room follows whole under the cursor.

    On a wider one it says enough, and no key through the headings moves the lines below.
    """
    line, whole = _line(row, columns, on)
    if whole or not on or columns.pen.width >= NARROW:
        return (line,)
    return (line, *folded(columns.pen.say(row.value), "aside", columns, 4))


def _line(row: Row, columns: Columns, on: bool) -> tuple[Line, bool]:
    """Draw mark, rail of the worst inside, title and summary, how many rows it holds at the right end; also
    whether all of that had room.
    """
    pen = columns.pen
    ink = Ink(pen)
    ink.put(">" if on else pen.rule, "focus" if on else "rule")
    rail = RAILS.get(row.severity, "")
    ink.put(sign(rail, pen.plain) if rail else pen.rule, f"rail-{row.severity}" if rail else "rule")
    end = pen.say(row.range)
    room = width(end) + 4 if end else 0
    ink.put(" ", "rule")
    style = "hold" if row.severity == "hold" else "focus" if on else "title"
    whole = ink.put(pen.say(row.label), style, max(ink.room - room - 2, 1))
    if row.value and ink.room - room <= _LEAST_SAID:
        ink.put(pen.say(" …"), "aside", max(ink.room - room - 1, 0))
        whole = False
    elif row.value:
        ink.put(f" {pen.rule * 2} ", "rule")
        said = _fitting(row.value, ink.room - room - 1, pen)
        whole = ink.put(said, "aside", max(ink.room - room - 1, 1)) and said == pen.say(row.value)
    ink.put(" ", "rule")
    # No rule between summary and count: of headings below each other it would be most of what is sent.
    ink.put((" " if row.value and end else pen.rule) * (ink.room - room), "rule")
    if end:
        ink.put(" ", "rule")
        ink.put(end, "hint")
        ink.put(f" {pen.rule * 2}", "rule")
    return ink.line(), whole or not row.value


def _fitting(text: str, room: int, pen: Pen) -> str:
    """Return as many whole parts of a summary as have room, and a mark for the others; else all of it."""
    between = next((one for one in _PARTS if one in text), None)
    parts = text.split(between) if between is not None and width(pen.say(text)) > room else []
    while len(parts) > 1:
        parts.pop()
        said = pen.say(f"{(between or '').join(parts)}{between}…")
        if width(said) <= room:
            return said if width(said) > room // 2 else pen.say(text)
    return pen.say(text)
