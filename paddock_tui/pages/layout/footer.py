"""The last line: what was just done at the left, which keys act at the right; or a question."""

import re

from paddock_tui.pages.layout.caret import put_editor
from paddock_tui.pages.layout.columns import Columns
from paddock_tui.pages.layout.fields import folded
from paddock_tui.pages.layout.pen import Ink, Line, Pen
from paddock_tui.pages.layout.view import Prompt
from paddock_tui.text import as_read, width

_BETWEEN = "  "


def last_line(
    last: str, hints: tuple[str, ...], arrows: str, pen: Pen, clock: str = "", now: str = ""
) -> Line:
    """Draw the message, else clock and next thing; then the hints that fit, the first dropped first."""
    said = pen.say(as_read(last)) or _next(pen.say(clock), pen.say(now), pen) or _clock(pen.say(clock), pen)
    kept = [pen.say(hint) for hint in hints]
    if arrows:
        kept.append(arrows)
    room = pen.width - (width(said) + len(_BETWEEN) if said else 0)
    while kept and width(_BETWEEN.join(kept)) > room:
        kept.pop(0)
    ink = Ink(pen)
    ink.put(said, "message")
    if kept:
        hint = _BETWEEN.join(kept)
        ink.to(pen.width - width(hint))
        ink.put(hint, "hint")
    return ink.line()


def _next(clock: str, now: str, pen: Pen) -> str:
    """Return the next thing to do in most of the line: with the clock, alone, or without its time."""
    first, short = re.split(r" [·-] ", clock)[0], re.sub(r", due \d\d:\d\d", "", now)
    shorter = re.sub(r"^(out) \d\d:\d\d in", r"\1 in", first)
    with_clock = (f"{first}, {now}", f"{shorter}, {now}", f"{shorter}, {short}") if first else ()
    forms = (*with_clock, now, short) if now else ()
    return next((said for said in forms if width(said) <= pen.width * 2 // 3), "")


def _clock(clock: str, pen: Pen) -> str:
    """Return the clock, its first part where it would take more than half the line; nothing on a narrow
    one.
    """
    first = re.split(r" [·-] ", clock)[0]
    return next((said for said in (clock, first) if width(said) <= pen.width // 2), "")


def prompt_line(prompt: Prompt, pen: Pen) -> Line:
    """Draw a question and the answer being typed."""
    ink = Ink(pen)
    ink.put(pen.say(as_read(prompt.label)), "focus", _label_width(pen.width))
    ink.put(" ")
    put_editor(ink, prompt.editor, ink.room)
    return ink.line()


def is_cut(prompt: Prompt, wide: int) -> bool:
    """Return whether a question is too long for the last line of such a width, beside its answer."""
    return width(prompt.label) > _label_width(wide)


def _label_width(wide: int) -> int:
    return max(wide // 2, wide - 20)


def preview(prompt: Prompt, columns: Columns) -> list[Line]:
    """Draw what an answer would do: what is wrong with it first, then line by line.

    A question that is too long for its line stands whole before it.
    """
    said = [(prompt.editor.error, "trouble")] if prompt.editor.error else []
    said += [(prompt.label, "focus")] if is_cut(prompt, columns.pen.width) else []
    said += [(text, "value") for text in prompt.more if text != prompt.editor.error]
    return [
        line for text, style in said for line in folded(columns.pen.say(as_read(text)), style, columns, 2)
    ]
