"""A terminal's screen, as far as what the program sends needs one: cells, each with its look."""

import re

from paddock_tui.text import width

_SEQUENCE = re.compile(
    r"\x1b\[(?P<codes>[0-9;]*)(?P<final>[HmrLMKABCD])|\x1b\[[0-?]*[ -/]*[@-~]"
    r"|(?P<next>\x1bE)|(?P<back>[\r\b])"
    r"|\x1b[]PX^_][^\x07\x1b]*(?:\x07|\x1b\\)|\x1b[^\[\]PX^_]|(?P<end>\n)|(?P<char>[^\x1b])",
    re.DOTALL,
)
_RESET = ("0", "")
_WAYS = {"A": (0, -1), "B": (0, 1), "C": (1, 0), "D": (-1, 0)}


class Terminal:
    """Cells of one character and its look: weights such as "1" (bold) and "7" (reverse), and colours."""

    def __init__(self, columns: int = 80, lines: int = 24) -> None:
        self.columns = columns
        self.cells: list[list[tuple[str, frozenset[str]]]] = [
            [(" ", frozenset())] * columns for _ in range(lines)
        ]
        self._x = self._y = 0
        self._top, self._bottom = 0, lines - 1
        self._look: frozenset[str] = frozenset()

    def feed(self, sent: bytes) -> None:
        """Draw what was sent; a sequence must not be cut in two."""
        for found in _SEQUENCE.finditer(sent.decode("utf-8", "replace")):
            if found["final"]:
                self._obey(found["final"], found["codes"])
            elif found["end"] or found["next"]:
                self._x, self._y = 0, self._y + 1
            elif found["back"]:
                self._x = 0 if found["back"] == "\r" else max(self._x - 1, 0)
            elif found["char"] and found["char"] >= " ":
                self._put(found["char"])

    def _obey(self, final: str, codes: str) -> None:
        """Do what a sequence says."""
        if final == "H":
            line, _, column = codes.partition(";")
            self._y, self._x = int(line or 1) - 1, int(column or 1) - 1
        elif final == "r":
            self._margins(codes)
        elif final in ("L", "M"):
            self._move(int(codes or 1), final == "L")
        elif final in _WAYS:
            self._go(final, int(codes or 1))
        elif final == "K":
            self._erase()
        else:
            self._look = _looks(self._look, codes)

    def _go(self, final: str, count: int) -> None:
        """Move the cursor by cells or lines, no further than to the edges."""
        assert self._x < self.columns, "where the cursor stands behind the last column differs"
        across, down = _WAYS[final]
        self._x = min(max(self._x + across * count, 0), self.columns - 1)
        self._y = min(max(self._y + down * count, 0), len(self.cells) - 1)

    def _erase(self) -> None:
        """Erase to the end of the line; some terminals leave blanks in the style in force."""
        at = min(self._x, self.columns - 1)
        self.cells[self._y][at:] = [(" ", self._look)] * (self.columns - at)

    def _margins(self, codes: str) -> None:
        """Set the lines that scroll, all without figures; the cursor goes to the first cell."""
        top, _, bottom = codes.partition(";")
        self._top, self._bottom = int(top or 1) - 1, int(bottom or len(self.cells)) - 1
        self._x = self._y = 0

    def _move(self, count: int, down: bool) -> None:
        """Insert or delete lines at the cursor, within the margins; blank ones come in."""
        if not self._top <= self._y <= self._bottom:
            return
        lines = self.cells[self._y : self._bottom + 1]
        empty = [[(" ", self._look)] * self.columns for _ in range(min(count, len(lines)))]
        kept = lines[: len(lines) - len(empty)] if down else lines[len(empty) :]
        self.cells[self._y : self._bottom + 1] = [*empty, *kept] if down else [*kept, *empty]

    def _put(self, char: str) -> None:
        if self._y < len(self.cells) and self._x < self.columns:
            self.cells[self._y][self._x] = (char, self._look)
            for beyond in range(self._x + 1, min(self._x + width(char), self.columns)):
                self.cells[self._y][beyond] = ("", self._look)
        self._x += width(char)

    def line(self, y: int) -> str:
        """Return the text of a line."""
        return "".join(char for char, _ in self.cells[y])

    def text(self) -> str:
        """Return the text of all lines."""
        return "\n".join(self.line(y).rstrip() for y in range(len(self.cells)))

    def look_of(self, words: str) -> frozenset[str]:
        """Return the look of the first character of words on the screen; AssertionError without them."""
        for y, cells in enumerate(self.cells):
            at = self.line(y).find(words)
            if at >= 0:
                return cells[at][1]
        raise AssertionError(f"{words} is not on the screen:\n{self.text()}")


def _looks(old: frozenset[str], codes: str) -> frozenset[str]:
    """Apply SGR codes: a colour takes the place of the one before, a weight is added."""
    look, parts = set(old), codes.split(";")
    while parts:
        code = parts.pop(0)
        if code in _RESET:
            look.clear()
            continue
        if code in ("38", "48"):
            taken = 2 if parts[:1] == ["5"] else 4
            code, parts = ";".join([code, *parts[:taken]]), parts[taken:]
        ground = _ground(code)
        look = {one for one in look if not ground or _ground(one) != ground} | {code}
    return frozenset(look)


def _ground(code: str) -> str:
    if code.startswith("38") or re.fullmatch(r"(3|9)[0-79]", code):
        return "front"
    return "back" if code.startswith("48") or re.fullmatch(r"(4|10)[0-79]", code) else ""
