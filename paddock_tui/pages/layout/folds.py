"""The heading of a section that can be folded, as a line: a rule that the cursor stops at."""

from paddock_tui.pages.layout.cells import sign
from paddock_tui.pages.layout.columns import Columns
from paddock_tui.pages.layout.fields import RAILS
from paddock_tui.pages.layout.pen import Ink, Line
from paddock_tui.pages.rows import Row
from paddock_tui.text import width


def fold_line(row: Row, columns: Columns, on: bool) -> Line:
    """Draw it: mark, rail of the worst inside, title, summary; how many rows it holds at the right end."""
    pen = columns.pen
    ink = Ink(pen)
    ink.put(">" if on else pen.rule, "focus" if on else "rule")
    rail = RAILS.get(row.severity, "")
    ink.put(sign(rail, pen.plain) if rail else pen.rule, f"rail-{row.severity}" if rail else "rule")
    end = pen.say(row.range)
    room = width(end) + 4 if end else 0
    ink.put(" ", "rule")
    ink.put(pen.say(row.label), "focus" if on else "title", max(ink.room - room - 2, 1))
    if row.value and ink.room - room > 12:
        ink.put(f" {pen.rule * 2} ", "rule")
        ink.put(pen.say(row.value), "aside", max(ink.room - room - 1, 1))
    ink.put(" ", "rule")
    ink.put(pen.rule * (ink.room - room), "rule")
    if end:
        ink.put(" ", "rule")
        ink.put(end, "hint")
        ink.put(f" {pen.rule * 2}", "rule")
    return ink.line()
