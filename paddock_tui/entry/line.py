"""What one typed line is read into, and what has to be known to read it."""

import datetime as dt
import functools
from collections.abc import Callable, Mapping
from typing import Any

import attrs

from paddock_tui.entry.vocabulary import Vocabulary, calls_of
from paddock_tui.records.bike import Bike
from paddock_tui.records.common import Units
from paddock_tui.records.edits import Missing, Value
from paddock_tui.records.fields_of_record import Field
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Path

LONGEST = 1000
"""How many characters a line may have: room for a whole set-up in its printed form."""


def _no_ids(kind: str) -> tuple[str, ...] | None:  # noqa: ARG001 - stands in for a listing
    return None


def _not_known() -> None:
    return None


@attrs.frozen
class LineContext:
    """The record in hand as it stands: what a line is read against.

    `data` is the record as plain data; `last` holds values of this bike from before, for telling a
    pressure typed in another unit; `ids` lists the ids of a kind, None where they are not looked up.
    `usual_lap` works out the usual lap in s once laps are read; `no_laps` why no lap may be entered, and the
    mend.
    """

    kind: str
    record: Record
    data: Mapping[str, Any]
    now: dt.datetime
    bike: Bike | None = None
    units: Units | None = None
    last: Mapping[Path, Value] = attrs.field(factory=dict)
    ids: Callable[[str], tuple[str, ...] | None] = _no_ids
    usual_lap: Callable[[], float | None] = _not_known
    no_laps: tuple[str, str] | None = None

    @functools.cached_property
    def usual_s(self) -> float | None:
        """The usual lap in s; None where none is known."""
        return self.usual_lap()

    @functools.cached_property
    def words(self) -> Vocabulary:
        """The vocabulary of this record on this bike."""
        return calls_of(self.kind, self.record, self.bike)


@attrs.frozen
class Piece:
    """One value that the line sets: from `start` to `end` in the text; MISSING clears it."""

    start: int
    end: int
    path: Path
    value: Value | Missing
    label: str


@attrs.frozen
class Unread:
    """A piece that cannot be read or may not be set: where it stands, what is wrong, how to mend it."""

    start: int
    end: int
    message: str
    mend: str = ""


@attrs.frozen
class Choice:
    """One answer to a question: what it is called, and the text to put in place of the piece."""

    label: str
    text: str


@attrs.frozen
class LineQuestion:
    """A piece that may mean several things."""

    start: int
    end: int
    ask: str
    choices: tuple[Choice, ...]


@attrs.frozen
class TypedLine:
    """A line as it was read. It may be applied only where it is `clear`.

    `edits` are in the order typed. `awaits` is the field whose value the line breaks off before.
    """

    text: str
    pieces: tuple[Piece, ...] = ()
    questions: tuple[LineQuestion, ...] = ()
    errors: tuple[Unread, ...] = ()
    awaits: Field | None = None

    @property
    def clear(self) -> bool:
        """Whether every piece could be read, and none may mean several things."""
        return not self.questions and not self.errors

    @property
    def edits(self) -> dict[Path, Value | Missing]:
        """What the line sets, in order; nothing at all unless it is clear."""
        return {piece.path: piece.value for piece in self.pieces} if self.clear else {}


def answered(text: str, question: LineQuestion, choice: Choice) -> str:
    """Put an answer in place of the piece that was asked about."""
    return text[: question.start] + choice.text + text[question.end :]
