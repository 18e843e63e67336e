"""Printable text: what may reach a terminal, how many cells it takes, cutting and wrapping it."""

import functools
import os
import re
import sys
import unicodedata
from collections.abc import Mapping

STAND_IN = "\N{REPLACEMENT CHARACTER}"
"""What is drawn for a character that must not reach a terminal and has no picture of its own."""

ELLIPSIS = "…"

_FORBIDDEN = re.compile(
    "["
    "\x00-\x1f\x7f-\x9f"  # C0, DEL, C1: escape sequences begin here
    "\xad\u034f\u061c\u180b-\u180f"  # soft hyphen, joiners, Arabic letter mark, Mongolian selectors
    "\u0600-\u0605\u06dd\u070f\u0890\u0891\u08e2"  # Arabic and Syriac format characters
    "\u115f\u1160\u3164\uffa0\u17b4\u17b5"  # fillers and vowels that draw nothing
    "\u200b-\u200f\u2028-\u202e\u2060-\u206f"  # zero width, separators, bidirectional controls
    "\ufe00-\ufe0f\ufeff\ufff9-\ufffb"  # variation selectors, byte order mark, annotation
    "\U000110bd\U000110cd\U00013430-\U00013440\U0001bca0-\U0001bca3\U0001d173-\U0001d17a"
    "\ud800-\udfff"  # lone surrogates cannot be encoded
    "\U000e0000-\U000e0fff"  # tags and further variation selectors
    "\ufdd0-\ufdef"
    + "".join(f"{chr(plane * 0x10000 + 0xFFFE)}{chr(plane * 0x10000 + 0xFFFF)}" for plane in range(17))
    + "]"
)

_PICTURES = {
    **{code: chr(0x2400 + code) for code in range(0x20)},
    0x7F: "\u2421",
    # A tab or a line end inside one line is a gap, not a danger.
    0x09: " ",
    0x0A: " ",
}

_NARROW = re.compile("[ -~\xa0-\xac\xae-\u02ff\u0370-\u0377\u2010-\u2027\u2190-\u2199\u2500-\u259f]*")
"""What takes a cell each, whoever counts: told without loading the table of all other characters."""

_GAP = re.compile(r"[ \t\n\r]+")


_UNITS = re.compile(r"(?<=\d )(?:C|l)(?![\w'])")
_AS_READ = {"C": "\N{DEGREE SIGN}C", "l": "L"}
"""Units as they are read: degrees with their sign, litres with the letter that is no figure one."""


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


def ascii_asked() -> bool:
    """Return whether ASCII alone is asked for: by the variable, or by a locale named C or POSIX.

    Where no locale is named the terminal may well have UTF-8. In those two Python writes UTF-8 all the same,
    and puts C.UTF-8 into LC_CTYPE itself; its UTF-8 mode tells that from one that the user named.
    """
    if os.environ.get("PADDOCK_PLAIN", "") not in ("", "0"):
        return True
    own = "" if sys.flags.utf8_mode else os.environ.get("LC_CTYPE", "")
    return (os.environ.get("LC_ALL") or own or os.environ.get("LANG", "")) in ("C", "POSIX")


def in_ascii(text: str) -> str:
    """Write safe text for a terminal that shows ASCII alone: readable, and the signs of a legend as drawn."""
    if text.isascii():
        return text
    if not _LEGEND.isdisjoint(text):
        text = "".join(IN_ASCII.get(one, one) for one in text)
    for char, instead in _IN_ASCII.items():
        text = text.replace(char, instead)
    letters = (c for c in unicodedata.normalize("NFKD", text) if not unicodedata.combining(c))
    return printable("".join(letters).encode("ascii", "replace").decode())


def as_read(text: str) -> str:
    """Write the units of a text as they are read."""
    if " C" not in text and " l" not in text:
        return text
    return _UNITS.sub(lambda found: _AS_READ[found[0]], text)


def printable(text: str) -> str:
    """Replace every character that must not reach a terminal by a stand-in one cell wide.

    Tab and line feed become a space, other C0 controls and DEL their control picture, all else
    (C1, bidirectional and zero-width characters, separators, surrogates, noncharacters, tags,
    variation selectors) U+FFFD. The length in characters stays the same.
    """
    if text.isascii() and text.isprintable():
        return text
    return _FORBIDDEN.sub(_stand_in, text)


def width(text: str) -> int:
    """Count the terminal cells of printable text: wide characters take 2, combining marks 0.

    The table is wcwidth's, for every part of the program. Where an older table may give a character more
    cells, the wider counts: what is drawn never runs past its line.
    """
    if text.isascii() or _NARROW.fullmatch(text):
        return len(text)
    return sum(map(_cells, text))


def clip(text: str, cells: int) -> str:
    """Cut text to at most `cells` cells; where something is cut, the last cell is an ellipsis."""
    if width(text) <= cells:
        return text
    if cells < 1:
        return ""
    return _head(text, cells - 1) + ELLIPSIS


def fold(text: str, cells: int) -> list[str]:
    """Wrap words at spaces into lines of at most `cells` cells; a longer word is split where it must.

    Runs of spaces and line ends count as one space; a no-break space never breaks. Blank text gives
    no lines. Raises ValueError below two cells, where a wide character could not stand.
    """
    if cells < 2:
        raise ValueError(f"cannot wrap to {cells} cells")
    lines: list[str] = []
    line, used = "", 0
    for word in _GAP.split(text):
        if not word:
            continue
        size = width(word)
        if line and used + 1 + size <= cells:
            line, used = f"{line} {word}", used + 1 + size
            continue
        if line:
            lines.append(line)
        *full, line = _pieces(word, cells)
        lines.extend(full)
        used = width(line)
    return [*lines, line] if line else lines


def _stand_in(match: re.Match[str]) -> str:
    return _PICTURES.get(ord(match[0]), STAND_IN)


@functools.lru_cache(maxsize=1024)
def _cells(char: str) -> int:
    if _NARROW.fullmatch(char):
        return 1
    # Heavy for what the command line mostly prints: loaded when a character outside the narrow ones comes.
    from wcwidth import wcwidth

    # A mark too new for this interpreter is drawn in a cell of its own by what does not know it either.
    newer = unicodedata.category(char) == "Cn"
    return max(wcwidth(char), 1 if newer else 0)


def _head(text: str, cells: int) -> str:
    """Return the longest beginning that fits, with the marks that belong to its last character."""
    used = 0
    for at, char in enumerate(text):
        used += _cells(char)
        if used > cells:
            return text[:at]
    return text


def _pieces(word: str, cells: int) -> list[str]:
    """Split a word into pieces that fit; a word that fits is its own only piece."""
    pieces: list[str] = []
    while len(piece := _head(word, cells)) < len(word):
        pieces.append(piece)
        word = word[len(piece) :]
    return [*pieces, word]
