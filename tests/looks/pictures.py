"""Committed looks as pictures for the README: the same text, drawn as SVG."""

from collections.abc import Iterator
from html import escape
from pathlib import Path

from tests.looks import FOLDER

PICTURES = ("setup-80x24", "review-80x24", "return-80x24")
"""The looks that the README shows."""

_CELL, _LINE, _EDGE = 8.4, 18, 14


def renewed_pictures(folder: Path = FOLDER) -> Iterator[tuple[Path, str]]:
    """Return the file and the text of every picture, made from the looks in a folder."""
    for name in PICTURES:
        look = (folder / f"{name}.txt").read_text(encoding="utf-8")
        yield folder / f"{name}.svg", picture([line[:-1].rstrip() for line in look.splitlines()])


def picture(lines: list[str], wide: int = 80) -> str:
    """Draw lines of text in a frame; the first one, the heading, is bold."""
    width, height = round(wide * _CELL) + 2 * _EDGE, len(lines) * _LINE + 2 * _EDGE
    drawn = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" width="{width}">',
        f'<rect width="{width}" height="{height}" rx="6" fill="#16181d"/>',
        '<g font-family="monospace" font-size="14" fill="#d8dadf" xml:space="preserve">',
    ]
    for number, line in enumerate(lines):
        if line:
            weight = ' font-weight="bold"' if number == 0 else ""
            size = f'textLength="{round(len(line) * _CELL)}" lengthAdjust="spacingAndGlyphs"'
            at = f'x="{_EDGE}" y="{_EDGE + number * _LINE + 13}"'
            drawn.append(f"<text {at} {size}{weight}>{escape(line)}</text>")
    return "\n".join([*drawn, "</g>", "</svg>"]) + "\n"
