"""One value read from the pieces behind its call: a figure with its unit, a word, a text, a step."""

import datetime as dt
from collections.abc import Callable, Iterator, Sequence
from typing import Any

import attrs

from paddock_tui.entry.builtin import CLEAR, DOWN, LEFT_OUT, NOW, UP
from paddock_tui.entry.line import LineContext
from paddock_tui.entry.own_calls import UNIT_WORDS
from paddock_tui.entry.scanner import Token, split, unquoted
from paddock_tui.entry.typed import read_typed
from paddock_tui.records.edits import MISSING, Missing, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import Field
from paddock_tui.records.shapes import (
    Amount,
    AmountOrWord,
    AnySetting,
    DateCode,
    Day,
    Flag,
    LapTime,
    LevelSetting,
    Named,
    Number,
    Reference,
    Shape,
    SpeedSetting,
    Text,
    TimeOfDay,
    Whole,
    Word,
    WordSetting,
)
from paddock_tui.records.shapes.laps import MARKS

_MINUS = str.maketrans("−", "-")

_ONE_OR_MORE_WORDS = (Amount, AmountOrWord, AnySetting, Flag, Named, Word)
_ONE_WORD = (TimeOfDay, DateCode, Day, LapTime, Number, Reference, Whole)
_OF_WORDS = (Named, Reference, Word, WordSetting)
_MOST_WORDS = 6
_PLURALS = {"clicks": "click", "turns": "turn", "tooth": "teeth", "link": "links"}


@attrs.frozen
class Taken:
    """What stands behind a call: a value, or so many steps; `until` is the place of the next piece."""

    start: int
    end: int
    until: int
    value: Value | Missing = MISSING
    steps: int | None = None


@attrs.frozen
class NotTaken:
    """Why no value could be read, where that shows, and where to go on."""

    start: int
    end: int
    until: int
    message: str
    mend: str = ""


@attrs.frozen
class Pieces:
    """A line in pieces, and what is needed to read values out of them."""

    text: str
    tokens: Sequence[Token]
    context: LineContext
    is_word: Callable[[str], bool]
    """Whether a word is a whole call or name, which begins the next piece."""
    is_sure: Callable[[str], bool]
    """Whether a word surely means one call or name, if only by its start."""

    def at(self, place: int) -> Token | None:
        """Return the piece at a place; None behind the last."""
        return self.tokens[place] if place < len(self.tokens) else None


def take(pieces: Pieces, place: int, field: Field, *, sets: bool = False) -> Taken | NotTaken:
    """Read the value of a field from a place on; `sets` says that an equals sign stood before it.

    A text is cleared by 'clear' alone at the end of the line, or anywhere behind an equals sign.
    """
    token = pieces.at(place)
    if token is None:
        end = len(pieces.text)
        return _waits(field, end, end, place)
    if token.kind == "quoted":
        return _quoted(token, place, field, pieces.context)
    if sets and token.folded == CLEAR:
        return Taken(token.start, token.end, place + 1)
    if takes_the_rest(field.shape):
        return _rest(pieces, token, field)
    if token.kind in ("equals", "stray"):
        return NotTaken(token.start, token.end, place + 1, f"{token.text} is no value of {field.label}")
    if token.folded == CLEAR:
        return Taken(token.start, token.end, place + 1)
    steps = None if sets else _steps(pieces, place, field)
    return steps or _read(pieces, place, field)


def takes_the_rest(shape: Shape[Any]) -> bool:
    """Return whether a value goes on to the end of the line unless it stands in quotes."""
    return isinstance(shape, Text) or not isinstance(shape, _ONE_OR_MORE_WORDS + _ONE_WORD)


def below_zero(shape: Shape[Any]) -> bool:
    """Return whether a range goes below zero, so that a sign is part of the value."""
    if isinstance(shape, LevelSetting):
        return shape.low < 0
    band = shape.band()
    return band is not None and band[0] < 0


def _read(pieces: Pieces, place: int, field: Field) -> Taken | NotTaken:
    token = pieces.tokens[place]
    date = pieces.context.data.get("date")
    of_today = type(date) is not dt.date or date >= pieces.context.now.date()
    if isinstance(field.shape, TimeOfDay) and token.folded == NOW and of_today:
        return Taken(token.start, token.end, place + 1, to_the_minute(pieces.context.now))
    wrong = _waits(field, token.start, token.end, place)
    for text, until in _extents(pieces, place, field.shape):
        found = _typed(pieces.context, field, text)
        end = pieces.tokens[until - 1].end
        if not isinstance(found, InputError):
            return Taken(token.start, end, until, found)
        if isinstance(field.shape, _OF_WORDS) or not _begins_a_piece(pieces, token):
            wrong = _not_taken(found, token.start, end, until)
        if token.figure and pieces.tokens[until - 1].folded in UNIT_WORDS:
            break
    return wrong


def _typed(context: LineContext, field: Field, text: str) -> Value | InputError:
    """Read a text for a field; a lap beside the usual one."""
    if not isinstance(field.shape, LapTime):
        return read_typed(field, text, context.units)
    lap = field.shape.read_beside(text, context.usual_s)
    return lap if isinstance(lap, InputError) else field.shape.dump(lap)


def _not_taken(trouble: InputError, start: int, end: int, until: int) -> NotTaken:
    return NotTaken(start, end, until, f"{trouble.found}: expected {trouble.expected}", trouble.mend)


def to_the_minute(moment: dt.datetime) -> dt.time:
    """Return the time of day without seconds."""
    return moment.time().replace(second=0, microsecond=0)


def _extents(pieces: Pieces, place: int, shape: Shape[Any]) -> Iterator[tuple[str, int]]:
    """List what the text of a value may be, longest first, each with the place behind it."""
    token = pieces.tokens[place]
    follow = pieces.at(place + 1)
    if isinstance(shape, LapTime) and follow is not None and follow.folded in MARKS:
        yield f"{token.text} {follow.folded}", place + 2
    elif isinstance(shape, Number | Whole) and _names_unit(pieces, place + 1, shape.unit):
        yield token.text.translate(_MINUS), place + 2
    elif token.figure and isinstance(shape, Amount | AmountOrWord | SpeedSetting):
        yield from _with_unit(pieces, place)
    elif isinstance(shape, _ONE_OR_MORE_WORDS):
        yield from _runs(pieces, place, shape)
    yield token.text.translate(_MINUS), place + 1


def _with_unit(pieces: Pieces, place: int) -> Iterator[tuple[str, int]]:
    """List a figure with the one or two words behind it that may be its unit."""
    token, first, second = (pieces.at(place + ahead) for ahead in range(3))
    if token is None or first is None or first.kind != "word" or first.figure:
        return
    if second is not None and f"{first.folded} {second.folded}" in UNIT_WORDS:
        yield f"{token.text} {first.text} {second.text}", place + 3
    if pieces.is_word(first.text):
        return
    # A unit beyond the everyday ones is looked for only where the word cannot be the next call.
    if first.folded in UNIT_WORDS or not pieces.is_sure(first.text):
        yield f"{token.text} {first.text}", place + 2


def _runs(pieces: Pieces, place: int, shape: Shape[Any]) -> Iterator[tuple[str, int]]:
    """List the runs of words that may be one word of a shape, longest first."""
    most = max((len(word.split()) for word in shape.words()), default=1)
    run: list[str] = []
    found: list[tuple[str, int]] = []
    for token in pieces.tokens[place : place + min(most, _MOST_WORDS)]:
        if token.kind not in ("word", "path"):
            break
        run.append(token.text)
        found.append((" ".join(run), place + len(run)))
    yield from reversed(found[1:])


def _names_unit(pieces: Pieces, place: int, unit: str) -> bool:
    """Return whether a word is the unit of the number before it; "teeth" with figures behind is the pair."""
    token, behind = pieces.at(place), pieces.at(place + 1)
    word = token.folded if token is not None else ""
    if not unit or _PLURALS.get(word, word) != unit:
        return False
    figures = behind is not None and (behind.figure or behind.text == LEFT_OUT or behind.kind == "equals")
    return not (figures and pieces.is_word(word))


def _steps(pieces: Pieces, place: int, field: Field) -> Taken | NotTaken | None:
    """Read '+1', '-1', 'up 1' or 'down 1'; None where no step is meant."""
    token, follow = pieces.tokens[place], pieces.at(place + 1)
    text = token.text.translate(_MINUS)
    for word, sign in ((UP, 1), (DOWN, -1)):
        count = token.folded.removeprefix(word)
        if token.folded == word and follow is not None and follow.text.isdecimal():
            return _counted(field, token, follow, place + 2, follow.text, sign)
        if count != token.folded and count.isdecimal():
            return _counted(field, token, token, place + 1, count, sign)
    if text[:1] not in ("+", "-") or len(text) < 2 or below_zero(field.shape):
        return None
    if text in field.shape.words():
        return None
    return _counted(field, token, token, place + 1, text[1:], 1 if text[0] == "+" else -1)


def _counted(field: Field, first: Token, last: Token, until: int, count: str, sign: int) -> Taken | NotTaken:
    if not count.isdecimal() or len(count) > 3:
        mend = "+2 goes two steps up; = before a number sets it"
        return NotTaken(first.start, last.end, until, f"{field.label} goes in whole steps, at most 999", mend)
    return Taken(first.start, last.end, until, steps=sign * int(count))


def _quoted(token: Token, place: int, field: Field, context: LineContext) -> Taken | NotTaken:
    """Read a text in quotes: exactly what the file would hold, else what would be typed."""
    text = unquoted(token.text)
    if text is None:
        message = "an escape in the quotes cannot be read"
        return NotTaken(token.start, token.end, place + 1, message, 'write \\" and \\\\ for " and \\')
    held = field.shape.load(text)
    found = read_typed(field, text, context.units) if isinstance(held, InputError) else field.shape.dump(held)
    if isinstance(found, InputError):
        return _not_taken(found, token.start, token.end, place + 1)
    return Taken(token.start, token.end, place + 1, found)


def _rest(pieces: Pieces, token: Token, field: Field) -> Taken | NotTaken:
    """Read the rest of the line."""
    text, until = pieces.text[token.start :].rstrip(), len(pieces.tokens)
    end = token.start + len(text)
    if text.casefold() == CLEAR:
        return Taken(token.start, end, until)
    found = read_typed(field, text, pieces.context.units)
    if isinstance(found, InputError):
        return _not_taken(found, token.start, end, until)
    return Taken(token.start, end, until, found)


def _begins_a_piece(pieces: Pieces, token: Token) -> bool:
    """Return whether a word is the next call, so that the value before it is missing."""
    if token.kind not in ("word", "path") or token.figure:
        return False
    parts = split(token)
    return pieces.is_sure(token.text) or (parts is not None and pieces.is_sure(parts[0].text))


def _waits(field: Field, start: int, end: int, until: int) -> NotTaken:
    return NotTaken(start, end, until, f"{field.label} waits for its value", f"type {field.shape.expected}")
