"""The pen that draws one line: text made safe, cut and placed in cells, in named styles."""

import unicodedata
from collections.abc import Mapping

import attrs

from paddock_tui.text import clip, printable, width

Span = tuple[str, str]
"""Text and the name of its style; the empty name is the ground."""

Line = tuple[Span, ...]

_IN_ASCII = {
    "…": "...",
    "°": "",
    "·": "-",
    "─": "-",
    "→": "->",
    "–": "-",
    "—": "-",
    "×": "x",
    "≥": ">=",
    "≤": "<=",
}


IN_ASCII: Mapping[str, str] = {
    "─": "-",
    "━": "=",
    "┄": "-",
    "·": ".",
    "│": "|",
    "┃": "|",
    "▏": "|",
    "┊": ":",
    "├": "|",
    "┤": "|",
    "┼": "+",
    "█": "#",
    "▌": "!",
    "░": ":",
}
"""What stands for each sign of a picture where a terminal shows ASCII alone: a cell for a cell."""

_LEGEND = frozenset("█░┊")
"""Signs by which a text is the legend of a picture: its signs are those of the picture then."""


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
        if not self.plain or text.isascii():
            return text
        if not _LEGEND.isdisjoint(text):
            text = "".join(IN_ASCII.get(one, one) for one in text)
        for char, instead in _IN_ASCII.items():
            text = text.replace(char, instead)
        letters = (c for c in unicodedata.normalize("NFKD", text) if not unicodedata.combining(c))
        return printable("".join(letters).encode("ascii", "replace").decode())

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
