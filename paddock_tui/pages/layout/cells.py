"""A line of a picture as single cells, in which later signs cover earlier ones."""

import attrs

from paddock_tui.pages.layout.pen import Ink, Pen
from paddock_tui.text import IN_ASCII, width


def sign(text: str, plain: bool) -> str:
    """Return signs of a picture as this terminal shows them, each still one cell."""
    return "".join(IN_ASCII.get(one, one) for one in text) if plain else text


@attrs.define
class Cells:
    """Cells of one line, each with its style; what stands outside is left out."""

    pen: Pen
    count: int
    _signs: list[str] = attrs.field(init=False)
    _styles: list[str] = attrs.field(init=False)

    def __attrs_post_init__(self) -> None:
        self._signs = [" "] * self.count
        self._styles = [""] * self.count

    def at(self, place: int) -> str:
        """Return the sign of a cell; empty outside."""
        return self._signs[place] if 0 <= place < self.count else ""

    def fill(self, low: int, high: int, one: str, style: str) -> None:
        """Put one sign into each cell from `low` to `high`, both included."""
        for place in range(max(low, 0), min(high, self.count - 1) + 1):
            self._signs[place], self._styles[place] = sign(one, self.pen.plain), style

    def put(self, at: int, text: str, style: str) -> None:
        """Put text, a character a cell; wide characters are left to the lines that can measure them."""
        for place, one in enumerate(sign(text, self.pen.plain)):
            if 0 <= at + place < self.count and width(one) == 1:
                self._signs[at + place], self._styles[at + place] = one, style

    def onto(self, ink: Ink) -> None:
        """Draw the cells where a line has come to; neighbours in one style are one span."""
        start = 0
        for place in range(1, self.count + 1):
            if place == self.count or self._styles[place] != self._styles[start]:
                ink.put("".join(self._signs[start:place]), self._styles[start])
                start = place
