"""Committed looks as colour pictures: the very lines of a page in the colours of a theme, drawn as SVG."""

import re
from collections.abc import Iterator
from html import escape
from pathlib import Path

from paddock_tui.desk import Desk
from paddock_tui.pages.layout import Line
from paddock_tui.text import width
from paddock_tui.widgets.look import STYLES
from paddock_tui.widgets.themes import COLOURS, VARIABLES, Colours
from tests.looks import FOLDER, LOOKS, laid_out

PICTURES = (
    "setup",
    "review",
    "return",
    "out",
    "garage",
    "session-ridden",
    "ledger",
    "record-day",
    "record-tyres",
    "modes",
)
"""The looks that are drawn in colour, at 80x24; the README shows the first three."""

THEMES = {"out": "day", "record-day": "day"}
"""Those that are drawn in another theme than the one for the night."""

_CELL, _LINE, _EDGE = 8.4, 18, 14


def renewed_pictures(desk: Desk, folder: Path = FOLDER) -> Iterator[tuple[Path, str]]:
    """Return the file and the text of every picture, on a desk of the sample garage."""
    for name in PICTURES:
        yield folder / f"{name}-80x24.svg", drawn_picture(desk, name)


def drawn_picture(desk: Desk, name: str) -> str:
    """Draw one look in its colours."""
    return picture(laid_out(desk, LOOKS[name], (80, 24)).lines, COLOURS[THEMES.get(name, "night")])


def picture(lines: tuple[Line, ...], colours: Colours, wide: int = 80) -> str:
    """Draw lines of named styles in a frame."""
    across, high = round(wide * _CELL) + 2 * _EDGE, len(lines) * _LINE + 2 * _EDGE
    drawn = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {across} {high}" width="{across}">',
        f'<rect width="{across}" height="{high}" rx="6" fill="{colours.ground}"/>',
        f'<g font-family="monospace" font-size="14" fill="{colours.text}" xml:space="preserve">',
    ]
    for number, line in enumerate(lines):
        at = 0
        for text, style in line:
            if text.strip():
                drawn.append(_span(text, style, at, number, colours))
            at += width(text)
    return "\n".join([*drawn, "</g>", "</svg>"]) + "\n"


def _span(text: str, style: str, at: int, line: int, colours: Colours) -> str:
    rules = STYLES.get(style, "")
    variable = re.search(r"\$([a-z-]+)", rules)
    colour = getattr(colours, VARIABLES[variable[1]]) if variable else colours.text
    x, y = round(_EDGE + at * _CELL, 1), _EDGE + line * _LINE
    length = round(width(text) * _CELL, 1)
    behind = ""
    if "reverse" in rules:
        behind = f'<rect x="{x}" y="{y}" width="{length}" height="{_LINE}" fill="{colour}"/>'
        colour = colours.ground
    looks = f' fill="{colour}"' if colour != colours.text else ""
    looks += ' font-weight="bold"' if "bold" in rules else ""
    looks += ' font-style="italic"' if "italic" in rules else ""
    size = f'textLength="{length}" lengthAdjust="spacingAndGlyphs"'
    return f'{behind}<text x="{x}" y="{y + 13}" {size}{looks}>{escape(text)}</text>'
