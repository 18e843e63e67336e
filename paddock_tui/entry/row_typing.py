"""The kinds of value that are typed on a row: what each key does there, and what the help says of it."""

from collections.abc import Mapping, Sequence
from typing import Literal

TypingKind = Literal[
    "",
    "words",
    "yes or no",
    "choice",
    "score",
    "one digit",
    "two digits",
    "three digits",
    "four digits",
    "other",
]
"""How a value is typed; empty: a row without one. `other`: figures with units, dates, laps."""

KeyKind = Literal[
    "letter", "y or n", "digit", "space", "sign", "sideways", "up or down", "backspace", "enter", "alt+letter"
]
"""The keys that mean something on a row, by kind. `sign` is minus, plus and equals."""

Meaning = Literal["edits", "answers", "moves", "acts", "nothing"]
"""What a key does on a row: open its editor, change its value at once, move the cursor, run a command."""


_USUAL: Mapping[KeyKind, Meaning] = {
    "letter": "acts",
    "y or n": "acts",
    "digit": "edits",
    "space": "nothing",
    "sign": "answers",
    "sideways": "answers",
    "up or down": "moves",
    "backspace": "answers",
    "enter": "edits",
    "alt+letter": "acts",
}
"""What keys do where a kind has no other meaning for them."""

MEANS: Mapping[TypingKind, Mapping[KeyKind, Meaning]] = {
    "words": {**_USUAL, "letter": "edits", "y or n": "edits", "sign": "edits", "sideways": "nothing"},
    "yes or no": {
        **_USUAL,
        "letter": "nothing",
        "y or n": "answers",
        "digit": "nothing",
        "space": "answers",
    },
    "choice": {**_USUAL, "space": "answers"},
    "score": {**_USUAL, "digit": "answers"},
    "one digit": {**_USUAL, "digit": "answers", "space": "answers"},
    "two digits": {**_USUAL, "digit": "answers", "space": "answers"},
    "three digits": _USUAL,
    "four digits": _USUAL,
    "other": {**_USUAL, "space": "answers"},
}
"""What each kind of key does on a row of each kind of value; of two digits the first stays open."""

SAID: Mapping[TypingKind, tuple[str, str]] = {
    "words": ("text, list", "its first letter, digit or sign opens it; enter saves it"),
    "yes or no": ("yes or no", "y, n or space; no other letter does anything"),
    "choice": ("one of few", "its number and enter, or enter and a start that fits one alone"),
    "score": ("score 1 to 5", "one digit, and on to the next row that is open"),
    "one digit": ("level to 9", "one digit, at once; + and - one on, space off and back"),
    "two digits": ("to 99", "`1_` waits for a second digit; any other key ends it"),
    "three digits": (
        "pressure, fuel",
        "238 is 2.38 bar, 345 is 34.5 psi, 065 is 6.5 l; it goes on",
    ),
    "four digits": ("time of day", "1341 goes on by itself; 13:41 and enter; a date code too"),
    "other": ("other figures", "the first digit opens it; enter saves it, with or without a unit"),
}
"""What the help says of each kind: what it is, and how it is typed."""

TAKES_LETTERS: tuple[TypingKind, ...] = tuple(kind for kind, by in MEANS.items() if by["letter"] != "acts")
"""The kinds on which no plain letter is a command."""


def numbered(choices: Sequence[str]) -> str:
    """Write choices with the numbers that pick them."""
    return "  ".join(f"{number} {one}" for number, one in enumerate(choices, 1))
