"""What changed on a line is sent, and no more: the stock compositor sends a line from its left edge.

Each run of cells goes out from its first to its last column, and of a style only what differs from the
one before it. On a slow link both count: a digit on a row costs half of what it costs otherwise.
"""

from functools import lru_cache
from typing import TYPE_CHECKING

from rich.color import ColorSystem
from rich.console import Console
from rich.control import Control
from rich.style import Style
from textual._compositor import ChopsUpdate, Compositor

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from rich.segment import Segment

Codes = tuple[str, str, str]
"""The codes of a style: weight and the like, foreground, background; each empty where it is unset."""

_PLAIN: Codes = ("", "", "")


class SparingUpdate(ChopsUpdate):
    """The changed spans as terminal sequences."""

    def render_segments(self, console: Console) -> str:
        """Write every span where it begins; the style stands until one differs, and ends plain."""
        system = console._color_system or ColorSystem.TRUECOLOR
        sent: list[str] = []
        last = _PLAIN
        for x, y, segments in self._pieces():
            sent.append(Control.move_to(x, y).segment.text)
            for segment in segments:
                codes = codes_of(segment.style, system) if segment.style else _PLAIN
                sent.append(between(last, codes) + segment.text)
                last = codes
        sent.append(between(last, _PLAIN))
        return "".join(sent)

    def _pieces(self) -> "Iterator[tuple[int, int, Sequence[Segment]]]":
        for y, left, right in self.spans:
            for end, (x, strip) in zip(self.chop_ends[y], self.chops[y].items(), strict=False):
                start, stop = max(x, left), min(end, right)
                if strip is not None and start < stop:
                    yield start, y, list(strip.crop(start - x, stop - x))


class SparingCompositor(Compositor):
    """The stock compositor with updates that are sparing on the link."""

    def render_partial_update(self) -> ChopsUpdate | None:
        """Render what changed since the last time; None where nothing did."""
        update = super().render_partial_update()
        return SparingUpdate(update.chops, update.spans, update.chop_ends) if update is not None else None


@lru_cache(maxsize=512)
def codes_of(style: Style, system: ColorSystem) -> Codes:
    """Return the codes of a style on a terminal with so many colours."""
    front = style.color.downgrade(system).get_ansi_codes() if style.color else ()
    back = style.bgcolor.downgrade(system).get_ansi_codes(foreground=False) if style.bgcolor else ()
    weight = style.without_color.render("x", color_system=system)
    bare = weight.removeprefix("\x1b[").partition("mx")[0] if weight != "x" else ""
    return bare, ";".join(front), ";".join(back)


def between(old: Codes, new: Codes) -> str:
    """Write the shortest change from one style to the next; what is unset again takes a reset first."""
    if old == new:
        return ""
    if new == _PLAIN:
        return "\x1b[0m"
    changed = [part for part, before in zip(new, old, strict=True) if part != before]
    if (old[0] and old[0] != new[0]) or "" in changed:
        changed = ["0", *filter(None, new)]
    return f"\x1b[{';'.join(changed)}m"
