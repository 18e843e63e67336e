"""What a key does on a row of each kind of value, driven through the board and held to the table."""

import random

from textual import events
from textual.app import App, ComposeResult

from paddock_tui.entry.row_typing import MEANS, SAID, KeyKind, Meaning, TypingKind
from paddock_tui.entry.typing_kinds import choices_of, typing_kind
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.fields import declared
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import Ref
from paddock_tui.widgets import messages
from paddock_tui.widgets.board import Board

FIELDS = [(kind, one) for kind, record in CLASSES.items() for one in declared(record)]

KEYS: dict[KeyKind, tuple[tuple[str, str | None], ...]] = {
    "letter": (("u", "u"), ("x", "x"), ("U", "U")),
    "y or n": (("y", "y"), ("n", "n")),
    "digit": (("4", "4"),),
    "space": (("space", " "),),
    "sign": (("minus", "-"), ("plus", "+")),
    "sideways": (("left", None), ("right", None)),
    "up or down": (("up", None), ("down", None)),
    "backspace": (("backspace", "\x7f"),),
    "enter": (("enter", "\r"),),
}
"""Keys of each kind; alt and a letter are two events, and are tried apart."""

ASKED: dict[type[messages.BoardMessage], Meaning] = {
    messages.Accepted: "answers",
    messages.Stepped: "answers",
    messages.Cleared: "answers",
    messages.Toggled: "answers",
    messages.Moved: "moves",
}
"""What the board asks of its listener, in the words of the table; a digit is its listener's to read."""


def row_of(number: int) -> Row:
    """Make the row of a declared value, as a page has it."""
    kind, one = FIELDS[number]
    shape = one.shape
    return Row(
        one.label,
        "3",
        ref=Ref(kind, "a"),
        path=(*one.path, str(number)),
        edit="3",
        typing=typing_kind(shape),
        choices=choices_of(shape),
    )


class OneBoard(App[None]):
    """A board with a declared value between two others; what it asks for is noted."""

    def __init__(self) -> None:
        super().__init__()
        self.board = Board(plain=False)
        self.heard: list[messages.BoardMessage] = []
        self.commands: list[str] = []
        self.board.listener = self.heard.append
        self.board.letter = self._letter

    def compose(self) -> ComposeResult:
        yield self.board

    def _letter(self, key: str) -> bool:
        self.commands.append(key)
        return True

    def pressed(self, number: int, *keys: tuple[str, str | None]) -> Meaning | str:
        """Press keys on a row, and give what they did there in the words of the table."""
        if self.board.is_typing:
            self.board.done()
        self.board.on_key(events.Key("home", None))  # what was typed before is over
        rows = tuple(row_of((number + by) % len(FIELDS)) for by in (-1, 0, 1))
        self.board.show(Page("values", (Section("values", rows),)))
        self.board.go(rows[1].identity)
        self.heard.clear()
        self.commands.clear()
        for key, character in keys:
            self.board.on_key(events.Key(key, character))
        if self.commands:
            return "acts"
        if self.board.is_typing:
            return "edits"
        asked = [one for one in self.heard if not isinstance(one, messages.Editing)]
        if asked and isinstance(asked[0], messages.Digit):
            return "digit"
        return ASKED[type(asked[0])] if asked else "nothing"


def expected(kind: TypingKind, key: KeyKind) -> set[str]:
    """Return what may be seen at the board for a meaning of the table.

    The board hands digits on, and steps, clears and toggles where a value has none: its listener says so.
    """
    meant = MEANS[kind][key]
    if key == "digit":
        return {"digit"}
    if key in ("sideways", "space") and meant == "nothing":
        return {"answers", "nothing"}
    return {meant}


async def test_every_declared_value_does_by_key_what_the_table_says() -> None:
    assert {typing_kind(one.shape) for _, one in FIELDS} == set(MEANS) == set(SAID)
    first = {typing_kind(one.shape): number for number, (_, one) in reversed([*enumerate(FIELDS)])}
    drawn = random.Random(20)
    pairs = [(number, kind) for number in first.values() for kind in KEYS]
    pairs += [(drawn.randrange(len(FIELDS)), drawn.choice([*KEYS])) for _ in range(200)]
    app = OneBoard()
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        for number, key in pairs:
            kind = typing_kind(FIELDS[number][1].shape)
            for one in KEYS[key]:
                found = app.pressed(number, one)
                assert found in expected(kind, key), (FIELDS[number], one, found)
        for number in (*first.values(), *(drawn.randrange(len(FIELDS)) for _ in range(20))):
            kind = typing_kind(FIELDS[number][1].shape)
            if kind in ("words", "yes or no"):
                assert app.pressed(number, ("escape", "\x1b"), ("u", "u")) == "acts"
                assert app.commands == ["u"]


async def test_where_words_or_answers_are_typed_no_plain_letter_reaches_a_command() -> None:
    app = OneBoard()
    takes = [
        number for number, (_, one) in enumerate(FIELDS) if typing_kind(one.shape) in ("words", "yes or no")
    ]
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        for place, number in enumerate(takes):
            letter = "abcdefghijklmnopqrstuvwxyz"[place % 26]
            assert app.pressed(number, (letter, letter)) != "acts", FIELDS[number]
