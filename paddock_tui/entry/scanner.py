"""A line taken apart into words, texts in quotes and equals signs, each with its place."""

import json
import re
from typing import Literal

import attrs

_TOKEN = re.compile(
    r"""
    (?P<path>[A-Za-z][A-Za-z0-9_-]*(?:\.(?:[A-Za-z0-9_-]+|"(?:[^"\\]|\\.)*"))+(?=[\s=,;]|\Z)) |
    (?P<quoted>"(?:[^"\\]|\\.)*"(?=[\s,;]|\Z)) |
    (?P<equals>=) |
    (?P<stray>") |
    (?P<word>(?:[^\s,;="]|(?<=[0-9])[,"](?=[0-9]))+)
    """,
    re.VERBOSE,
)
_GLUED = re.compile(r"([^\W\d_]+(?:-[^\W\d_]+)*)([+−-]?[0-9].*)", re.DOTALL)
_MIXED = re.compile(r"(?:[^\W\d_]+(?:-[^\W\d_]+)*)?[+−-]?[0-9]{1,3}")
_PROPER = re.compile(r"([1-9][0-9]?)/([1-9][0-9]?)")
_FIGURE = re.compile(r"[+−-]?[.,]?[0-9]")

TokenKind = Literal["path", "quoted", "equals", "stray", "word"]


@attrs.frozen
class Token:
    """One piece of a line: from `start` to `end` in the text."""

    kind: TokenKind
    text: str
    start: int
    end: int

    @property
    def folded(self) -> str:
        """The text without regard to capitals."""
        return self.text.casefold()

    @property
    def figure(self) -> bool:
        """Whether it begins as a number does."""
        return self.kind == "word" and _FIGURE.match(self.text) is not None


def tokens(text: str) -> list[Token]:
    """List the pieces of a line. A comma between digits is part of a number, any other parts pieces.

    A whole number and a fraction of one behind it are one number, as turns are written: "5 1/2".
    """
    found: list[Token] = []
    for match in _TOKEN.finditer(text):
        kind: TokenKind = match.lastgroup  # type: ignore[assignment]
        token = Token(kind, match[0], match.start(), match.end())
        if found and _is_rest_of(found[-1], token):
            whole = found.pop()
            token = Token("word", text[whole.start : token.end], whole.start, token.end)
        found.append(token)
    return found


def _is_rest_of(whole: Token, part: Token) -> bool:
    """Return whether a piece is the fraction of a mixed number whose whole part stands before it."""
    ratio = _PROPER.fullmatch(part.text)
    if ratio is None or whole.kind != "word" or part.kind != "word":
        return False
    return int(ratio[1]) < int(ratio[2]) and _MIXED.fullmatch(whole.text) is not None


def split(token: Token) -> tuple[Token, Token] | None:
    """Part a word from the number behind it ("t4", "fr12", "hot-1"); None where there is no number."""
    found = _GLUED.fullmatch(token.text)
    if found is None:
        return None
    middle = token.start + found.end(1)
    return (
        Token("word", found[1], token.start, middle),
        Token("word", found[2], middle, token.end),
    )


def unquoted(text: str) -> str | None:
    """Return what a text in quotes says; None where an escape in it cannot be read."""
    try:
        found = json.loads(text, strict=False)
    except ValueError:
        return None
    return found if isinstance(found, str) and storable(found) else None


def storable(text: str) -> bool:
    """Return whether a text can be written in UTF-8: half a surrogate pair cannot."""
    return not any("\ud800" <= char <= "\udfff" for char in text)


def quoted(text: str) -> str:
    """Write a text in quotes, so that `unquoted` gives it back."""
    return json.dumps(text, ensure_ascii=False)
