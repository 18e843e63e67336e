"""How far a line has been read: what it sets, asks and cannot say so far."""

import attrs

from paddock_tui.entry.builtin import CLEAR, DOWN, LEFT_OUT, UP
from paddock_tui.entry.line import Choice, LineContext, LineQuestion, Piece, Unread
from paddock_tui.entry.lookup import look_up
from paddock_tui.entry.pieces import piece_of
from paddock_tui.entry.scanner import Token
from paddock_tui.entry.values import NotTaken, Pieces, Taken
from paddock_tui.entry.vocabulary import Vocabulary
from paddock_tui.records.edits import MISSING, Missing, Value
from paddock_tui.records.fields_of_record import Field
from paddock_tui.records.session import Session
from paddock_tui.records.setup import Profile

DAMPING = ("setup", "damping")


def with_damping(context: LineContext, damping: Value | Missing) -> LineContext:
    """Return the context in which another damping mode is set: presets and offsets are its own."""
    record = context.record
    if not isinstance(record, Session | Profile):
        return context
    held = None if damping is MISSING else str(damping)
    return attrs.evolve(context, record=attrs.evolve(record, setup=attrs.evolve(record.setup, damping=held)))


@attrs.define(eq=False)
class State:
    """A line that is being read; `place` is the next of its tokens."""

    text: str
    context: LineContext
    tokens: list[Token]
    place: int = 0
    pieces: list[Piece] = attrs.field(factory=list)
    questions: list[LineQuestion] = attrs.field(factory=list)
    errors: list[Unread] = attrs.field(factory=list)
    awaits: Field | None = None

    @property
    def words(self) -> Vocabulary:
        """The vocabulary; another damping mode on this line changes it."""
        return self.context.words

    def at(self, ahead: int = 0) -> Token | None:
        """Return the token so many places ahead; None behind the last."""
        place = self.place + ahead
        return self.tokens[place] if place < len(self.tokens) else None

    def view(self) -> Pieces:
        """Return what is needed to read values."""
        return Pieces(self.text, self.tokens, self.context, self._is_word, self._is_sure)

    def refuse(self, start: int, end: int, message: str, mend: str = "") -> None:
        """Note a piece that cannot be read or may not be set."""
        self.errors.append(Unread(start, end, message, mend))

    def ask(self, start: int, end: int, question: str, choices: list[Choice]) -> None:
        """Note a piece that may mean several things."""
        self.questions.append(LineQuestion(start, end, question, tuple(choices)))

    def past_values(self) -> None:
        """Pass over what can only belong to a piece that was not read, so that it is said once."""
        token = self.at()
        while token is not None and _is_value(token):
            self.place += 1
            token = self.at()

    def equals(self) -> bool:
        """Pass over an equals sign; tells whether there was one."""
        token = self.at()
        if token is None or token.kind != "equals":
            return False
        self.place += 1
        return True

    def fail(self, field: Field, wrong: NotTaken, start: int, end: int) -> None:
        """Note a value that could not be read; one that is missing is shown at its call."""
        nothing_there = wrong.until == self.place
        if nothing_there and self.at() is None:
            self.awaits = field
        if not nothing_there:
            start, end = wrong.start, wrong.end
        self.refuse(start, end, wrong.message, wrong.mend)
        self.place = wrong.until

    def put(self, field: Field, taken: Taken, start: int) -> None:
        """Set a value that was read; `start` is where its call begins."""
        found = piece_of(taken, field, start, self.text, self.context)
        if isinstance(found, Piece):
            self.add(found)
        elif isinstance(found, LineQuestion):
            self.questions.append(found)
        else:
            self.errors.append(found)

    def add(self, piece: Piece) -> None:
        """Set a value, once."""
        if any(held.path == piece.path for held in self.pieces):
            self.refuse(piece.start, piece.end, f"a second value for {piece.label}", "each value once")
            return
        self.pieces.append(piece)
        if piece.path == DAMPING:
            self.context = with_damping(self.context, piece.value)

    def _is_word(self, text: str) -> bool:
        word = text.casefold()
        return bool(self.words.exact(word)) or word in self.words.absent

    def _is_sure(self, text: str) -> bool:
        found = look_up(self.words, text)
        return found.one is not None or bool(found.absent)


def _is_value(token: Token) -> bool:
    """Return whether a token can only be part of a value."""
    word = token.folded in (LEFT_OUT, UP, DOWN, CLEAR)
    return word or token.figure or token.kind in ("equals", "quoted")
