"""One field or link as lines: mark, label, value, range, and then bar, aside or trouble."""

from functools import lru_cache

from paddock_tui.entry.row_typing import numbered
from paddock_tui.pages.layout.caret import put_editor
from paddock_tui.pages.layout.cells import sign
from paddock_tui.pages.layout.columns import MARK, NUMBER, SHORT_VALUE, Columns
from paddock_tui.pages.layout.help_bar import put_bar
from paddock_tui.pages.layout.pen import Ink, Line, Span
from paddock_tui.pages.layout.view import Editor
from paddock_tui.pages.rows import NOTHING, Bar, Row
from paddock_tui.records.verdict_words import HOLD_WORD
from paddock_tui.text import fold, width

_GAP = 2
_LEAST_ASIDE = 4
UNKNOWN = "?"
"""What is not known, before a bar on a narrow screen: the row under the cursor says it in words."""

_SHORT_NUMBER = 2
"""Cells of a number before a bar on a narrow screen."""

Ends = tuple[str, str] | None


@lru_cache(maxsize=4096)
def field_lines(row: Row, columns: Columns, ends: Ends, on: bool) -> tuple[Line, ...]:
    """Draw a field; under the cursor (`on`) whatever had to be cut follows whole, on lines of its own."""
    if _has_bar_beside(row, columns, ends):
        return _with_bar_beside(row, columns, ends, on)
    ink = Ink(columns.pen)
    cut = _label(ink, row, columns, on)
    words = _words(row, columns, on)
    cut += _value(ink, row, columns, bool(words[0]))
    bar_below = None
    if row.bar and row.bar.is_drawn and not row.trouble:
        start = max(columns.right, ink.at + _GAP)
        if columns.below or start + columns.bar > columns.pen.width or _wordy(row.bar, columns):
            bar_below = Ink(columns.pen)
            bar_below.to(columns.value)
            put_bar(bar_below, row.bar, _below(row.bar, columns, ends, bar_below.room), ends)
        else:
            ink.to(start)
            put_bar(ink, row.bar, columns.bar, ends)
    full = ink.room < 1 and bool(words[0])
    cut += _right(ink, words, columns, row, on)
    lines = [ink.line(), *([bar_below.line()] if bar_below else [])]
    if on:
        return (*lines, *_whole(cut, columns))
    # A value that fills its line leaves no cell for the mark of what had to go.
    return (*lines, *_whole([words], columns)) if full else tuple(lines)


def _has_bar_beside(row: Row, columns: Columns, ends: Ends) -> bool:
    """Return whether a row of a narrow screen has its bar behind its value: its words stand above it."""
    bar = row.bar
    drawn = bar is not None and bar.is_drawn and not bar.two_ended and bar.ends == ends
    is_short = not row.known or width(row.value) <= SHORT_VALUE
    return drawn and bool(columns.beside) and not (row.trouble or row.shut) and is_short


def _with_bar_beside(row: Row, columns: Columns, ends: Ends, on: bool) -> tuple[Line, ...]:
    """Draw label, value and bar on one line; what else there is to say stands below, under the cursor."""
    pen, bar = columns.pen, row.bar
    assert bar is not None
    ink = Ink(pen)
    mark(ink, on, row.severity)
    whole = ink.put(pen.say(row.label), "focus" if on else "label", columns.value - MARK - 1)
    cut = [] if whole else [(pen.say(row.label), "label")]
    ink.to(columns.value)
    number = NUMBER.match(row.value)
    ink.to(ink.at + (max(_SHORT_NUMBER - width(number[0]), 0) if number else 0))
    ink.put(pen.say(row.value) if row.known else UNKNOWN, "value" if row.known else "unknown")
    ink.to(columns.value + SHORT_VALUE + 1)
    put_bar(ink, bar, columns.beside, ends)
    if not on:
        return (ink.line(),)
    lost = " ".join(filter(None, ("" if row.known else "not known", row.range)))
    return (ink.line(), *_whole([*cut, (pen.say(lost), "range"), _words(row, columns, on)], columns))


def editor_lines(row: Row, columns: Columns, editor: Editor) -> tuple[Line, ...]:
    """Draw a field whose value is being typed, what was wrong with it below.

    What an asking row says of how it is typed stays where it stood: it is read while one types, and no line
    below moves.
    """
    pen = columns.pen
    ink = Ink(pen)
    cut = _label(ink, row, columns, on=True)
    ink.to(max(columns.value, ink.at + 1))
    first = []
    if ink.room < min(12, pen.width // 2):
        first, ink = [ink.line()], Ink(pen)
        ink.to(MARK if pen.width > 8 else 0)
    quiet = pen.say(row.range)
    keep = width(quiet) + _GAP if 0 < width(quiet) < ink.room // 2 else 0
    put_editor(ink, editor, ink.room - keep)
    if keep:
        ink.put("  ")
        ink.put(quiet, "range")
    error = [(pen.say(editor.error), "trouble")] if editor.error else []
    choices = [(pen.say(numbered(row.choices)), "aside")] if row.choices else []
    if row.kind == "ask" and not (error or choices or first):
        return (ink.line(), *field_lines(row, columns, None, on=True)[1:])
    return (*first, ink.line(), *_whole([*error, *choices, *cut], columns))


RAILS = {"hold": "█", "serious": "▌", "trouble": "▌", "caution": "│"}
"""What stands at the start of every line that a finding is about: the graver, the heavier."""


def mark(ink: Ink, on: bool, severity: str = "", first: bool = True) -> None:
    """Draw the cursor mark, or its place, and the rail of a finding beside it."""
    ink.put(">" if on and first else " ", "focus" if on and first else "")
    if ink.pen.width <= 8:
        return
    rail = RAILS.get(severity, "")
    if rail:
        ink.put(sign(rail, ink.pen.plain), f"rail-{'serious' if severity == 'trouble' else severity}")
    else:
        ink.put(" ")


def _label(ink: Ink, row: Row, columns: Columns, on: bool) -> list[Span]:
    mark(ink, on, row.severity)
    label = ink.pen.say(row.label)
    room = columns.value - MARK - 1
    if width(label) > room:
        # A long label pushes its own value to the right while there is room for both.
        beside = width(row.value) + 1 + width(row.range)
        room = max(room, columns.pen.width - MARK - beside - _GAP)
    style = "hold" if row.severity == row.label == "hold" else "focus" if on else "label"
    whole = ink.put(label, style, room)
    return [] if whole else [(label, "label")]


def _words(row: Row, columns: Columns, on: bool) -> Span:
    """Return what is said in words at the right, and how; under the cursor choices with their numbers."""
    if row.trouble:
        text, style = row.trouble, "trouble"
    elif row.shut:
        text, style = "; ".join(filter(None, (row.shut, row.aside))), "shut"
    else:
        choices = numbered(row.choices) if on else ""
        # A verdict that holds looks on a row as it does at the top.
        held = row.severity == "hold" and row.aside.startswith(HOLD_WORD)
        text, style = "; ".join(filter(None, (choices, row.aside))), "hold" if held else "aside"
    return columns.pen.say(text), style


def _value(ink: Ink, row: Row, columns: Columns, more: bool) -> list[Span]:
    say = ink.pen.say
    value, style = say(row.value), "value" if row.known else "aside" if row.value == NOTHING else "unknown"
    if row.trouble:
        style = "trouble"
    elif not value and not row.known:
        # A question that nobody answered yet is quiet: it asks already.
        value, style = (NOTHING, "aside") if row.kind == "ask" else ("not known", style)
    quiet = say(row.range)
    if not value and not quiet:
        return []
    ink.to(columns.value if ink.at < columns.value else ink.at + 1)
    if (
        not row.trouble
        and width(value) + width(quiet) + _GAP + _aligned(value, columns) <= columns.right - columns.value
    ):
        ink.to(ink.at + _aligned(value, columns))
    room = ink.room - (_LEAST_ASIDE if more and ink.room > 2 * _LEAST_ASIDE else 0)
    if width(value) > room:
        # Cut either way: the value has the room, and its ellipsis says that there is more.
        room = ink.room
    cut = [] if ink.put(value, style, room) else [(value, style)]
    if quiet:
        gap = 1 if ink.pen.width < 60 else 2
        room -= width(value)
        if cut or room < gap + min(width(quiet), 3):
            return [*cut, (quiet, "range")]
        ink.put(" " * gap if value else "")
        if not ink.put(quiet, "range", room - gap):
            cut.append((quiet, "range"))
    return cut


def _aligned(value: str, columns: Columns) -> int:
    """Return the cells before a number, so that numbers end in one column and their units begin in one."""
    number = NUMBER.match(value)
    return max(columns.number - width(number[0]), 0) if number else 0


def _wordy(bar: Bar, columns: Columns) -> bool:
    """Return whether a bar with its own words has no room for the first one of each beside a scale."""
    return bar.two_ended and columns.bar < sum(width(end.split(" ")[0]) + 1 for end in bar.ends) + 3


def _below(bar: Bar, columns: Columns, ends: Ends, room: int) -> int:
    """Return cells of a bar on its own line: as wide as the others, wider where its words stand beside it."""
    words = 0 if bar.ends == ends and not bar.two_ended else sum(width(end) + 1 for end in bar.ends)
    return min(columns.bar + words, room)


def _right(ink: Ink, words: Span, columns: Columns, row: Row, on: bool) -> list[Span]:
    """Draw what is said at the right; choices that have no room there stand below alone, and it stays."""
    text, style = words
    if not text:
        return []
    ink.to(min(max(columns.right, ink.at + _GAP), columns.pen.width - 1))
    if on and style == "aside" and row.choices and width(text) > ink.room:
        aside = ink.pen.say(row.aside)
        if width(aside) <= ink.room:
            ink.put(aside, style)
            return [(ink.pen.say(numbered(row.choices)), style)]
    return [] if ink.put(text, style) else [words]


def _whole(cut: list[Span], columns: Columns) -> list[Line]:
    return [line for text, style in cut if text for line in folded(text, style, columns, 4)]


def folded(text: str, style: str, columns: Columns, indent: int) -> list[Line]:
    """Wrap safe text into lines that stand `indent` cells in, less where the line is short."""
    total = columns.pen.width
    indent = min(indent, total // 6)
    lines = []
    for piece in fold(text, max(total - indent, 2)):
        ink = Ink(columns.pen)
        ink.to(indent)
        ink.put(piece, style)
        lines.append(ink.line())
    return lines
