"""What a key asks of a row while nothing is typed there: pure."""

from collections.abc import Callable
from typing import Literal

from paddock_tui.pages.rows import Row
from paddock_tui.widgets import messages

_ANSWERS: dict[str, Literal["yes", "no"]] = {"y": "yes", "n": "no"}


class Escaped:
    """What escape makes of the keys after it, on rows that take letters.

    Escape and a small letter, or alt and a letter, which send the same bytes, are a command there. An arrow
    key that a slow link has split is escape, a bracket or O, and a capital: none of them types or acts.
    """

    def __init__(self) -> None:
        self._after = ""

    def part(self, key: str, character: str, *, arms: bool) -> Literal["", "armed", "command", "swallowed"]:
        """Say what a key is: the escape, the command after it, a part of a split arrow; empty: none of these.

        `arms`: the row takes letters, so that escape makes the next one a command.
        """
        after, self._after = self._after, ""
        if after == "arrow" or (after and character in ("[", "O")):
            self._after = "arrow" if after == "escape" else ""
            return "swallowed"
        if after and (key == "escape" or (character.isascii() and character.islower())):
            return "command"
        if arms and key == "escape":
            self._after = "escape"
            return "armed"
        return ""


def letter_on(row: Row, character: str) -> Literal["", "types", "yes", "no", "neither"]:
    """Return what a character does on a row that takes letters; empty where it is none of its text."""
    if row.typing == "words":
        return "types" if character and (character.isalpha() or character in "-+=") else ""
    return _ANSWERS.get(character.casefold(), "neither") if character.isalpha() else ""


def goes_on(key: str, character: str) -> bool:
    """Return whether a key goes on with, or ends for itself, a digit that a second one may follow."""
    ending = ("backspace", "escape", "ctrl+c", "ctrl+u", "up", "down", "enter")
    return character.isdecimal() or key in ending


_Maker = Callable[[Row], messages.BoardMessage]


def asked_of(row: Row, key: str, character: str) -> messages.BoardMessage | None:
    """Return what a key asks of a row; None where it asks nothing."""
    if character.isascii() and character.isdigit():
        return messages.Digit(row, character)
    helps = row.bar is not None
    makers: dict[str, _Maker] = {
        "-": lambda row: messages.Stepped(row, -1),
        "+": lambda row: messages.Stepped(row, 1),
        "=": lambda row: messages.Stepped(row, 1),
        "left": lambda row: messages.Stepped(row, -1, False if helps else None),
        "right": lambda row: messages.Stepped(row, 1, True if helps else None),
        "backspace": messages.Cleared,
        "space": messages.Toggled,
    }
    maker = makers.get(character) or makers.get(key)
    return maker(row) if maker else None
