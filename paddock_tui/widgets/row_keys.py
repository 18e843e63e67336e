"""What a key asks of a row while nothing is typed there: pure."""

from collections.abc import Callable
from typing import Literal

from paddock_tui.pages.rows import Page, Row
from paddock_tui.widgets import messages
from paddock_tui.widgets.cursor import Identity

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


class AfterDigits:
    """Remembers the row that digits have just set: enter behind them is done, and a unit is their text."""

    def __init__(self) -> None:
        self.digits: tuple[Identity, str] | None = None
        self._done_on: Identity | None = None

    def note(self, key: str, before: tuple[Row | None, str], on: Identity | None, *, typing: bool) -> None:
        """Note a key: `before` are the row and its text before it, `on` is where the cursor is now.

        `typing`: what is typed is still open.
        """
        by_digit = key.isdecimal() and not typing
        self._done_on = on if by_digit else None
        row, text = before
        self.digits = (row.identity, text + key) if by_digit and row is not None else None

    def is_done(self, on: Identity | None) -> bool:
        """Return whether enter on a row only ends the digits that have set it."""
        return on is not None and on == self._done_on

    def with_unit(self, page: Page, character: str) -> tuple[Identity, str] | None:
        """Return the row and the text that a unit behind digits goes on with; None where it is no unit."""
        row = None
        if self.digits is not None:
            row = next((one for one in page.rows() if one.identity == self.digits[0]), None)
        if row is None or self.digits is None or not begins_unit(row, character):
            return None
        return row.identity, self.digits[1] + character


def letter_on(row: Row, character: str) -> Literal["", "types", "yes", "no", "neither"]:
    """Return what a character does on a row that takes letters; empty where it is none of its text."""
    if row.typing == "words":
        return "types" if character and (character.isalpha() or character in "-+=") else ""
    return _ANSWERS.get(character.casefold(), "neither") if character.isalpha() else ""


def begins_unit(row: Row, character: str) -> bool:
    """Return whether a character behind digits that were whole begins their unit: a space, or its letter."""
    if row.kind not in ("field", "ask") or not row.typing or row.takes_letters:
        return False
    if character == " ":
        return bool(row.unit) or row.typing in ("three digits", "four digits")
    return bool(row.unit) and character.isalpha() and row.unit.startswith(character)


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
