"""Any set of edits as a line: what it prints reads back as the same edits."""

import datetime as dt
from collections.abc import Callable, Iterator, Mapping
from decimal import Decimal
from typing import Any

from paddock_tui.entry.builtin import CLEAR, LAPS, LEFT_OUT, NOTE
from paddock_tui.entry.line import LineContext
from paddock_tui.entry.line_state import DAMPING, with_damping
from paddock_tui.entry.numbering import next_number
from paddock_tui.entry.reading import read_line
from paddock_tui.entry.scanner import quoted
from paddock_tui.entry.special_words import NOTES
from paddock_tui.entry.values import below_zero, takes_the_rest
from paddock_tui.entry.vocabulary import PlacedCall, Vocabulary
from paddock_tui.records.edits import MISSING, Missing, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import field_at
from paddock_tui.records.paths import Path, spell
from paddock_tui.records.shapes import Shape, Text, TimeOfDay

Edits = Mapping[Path, Value | Missing]

_FIRST: tuple[Path, ...] = (("setup", "mode"), DAMPING)
"""Read before the rest: what else can be set depends on them."""


def printed(edits: Edits, context: LineContext) -> str:
    """Write edits as one line that reads back as the same edits, in the same context.

    Whole tables are written value by value. That holds for what can be typed: values that the keyboard
    can give, paths that are declared, and lines of at most LONGEST characters.
    """
    flat = dict(_leaves(edits))
    inner = with_damping(context, flat[DAMPING]) if DAMPING in flat else context
    short = " ".join(_pieces(flat, inner, _plain))
    if _reads_back(short, flat, context):
        return short
    exact = " ".join(_pieces(flat, inner, _exact))
    return exact if _reads_back(exact, flat, context) else _by_paths(flat, inner)


def _leaves(edits: Edits) -> Iterator[tuple[Path, Value | Missing]]:
    """List single values, those in tables by their paths."""
    for path, value in edits.items():
        if isinstance(value, Mapping):
            yield from _leaves({(*path, key): inner for key, inner in value.items()})
        else:
            yield path, value


def _pieces(edits: Edits, context: LineContext, write: "_Writer") -> Iterator[str]:
    """Write the pieces: modes first, then rows and values as they come, a text without quotes last."""
    words = context.words
    left = dict(edits)
    for path in _FIRST:
        if path in left:
            yield _value_piece(path, left.pop(path), words, context, write)
    yield from _rows(left, words, write)
    yield from _laps(left, context)
    last = _text_last(left, words, context) if write is _plain else ""
    yield from _notes(left, context)
    for path, value in left.items():
        yield _value_piece(path, value, words, context, write)
    if last:
        yield last


def _rows(left: dict[Path, Value | Missing], words: Vocabulary, write: "_Writer") -> Iterator[str]:
    """Write the rows of which every slot, or one of a pair, is set."""
    for call, row in words.calls.items():
        if not isinstance(row, PlacedCall) or call != row.call:
            continue
        if any(len(slot.options) != 1 or len(slot.options[0].fields) != 1 for slot in row.slots):
            continue
        fields = [slot.options[0].fields[0] for slot in row.slots]
        given = [field for field in fields if field.path in left and left[field.path] is not MISSING]
        if not given or (len(given) == 1 and words.call_of(given[0].path) != spell(given[0].path)):
            continue
        texts = [write(field.shape, left.pop(field.path)) if field in given else LEFT_OUT for field in fields]
        signed = any(text[:1] in "+-" and text != LEFT_OUT for text in texts)
        yield f"{call}{'=' if signed else ' '}{' '.join(texts)}"


def _laps(left: dict[Path, Value | Missing], context: LineContext) -> Iterator[str]:
    """Write the laps that follow those that are there."""
    number = next_number(context.data, LAPS)
    texts: list[str] = []
    while isinstance(left.get((LAPS, str(number))), str):
        texts.append(str(left.pop((LAPS, str(number)))))
        number += 1
    if texts:
        yield f"{LAPS} {' '.join(texts)}"


def _notes(left: dict[Path, Value | Missing], context: LineContext) -> Iterator[str]:
    """Write the notes of now that follow those that are there, in quotes."""
    number = next_number(context.data, NOTES)
    while (text := _note_of_now(left, number, context)) is not None:
        yield f"{NOTE} {quoted(text)}"
        number += 1


def _note_of_now(left: dict[Path, Value | Missing], number: int, context: LineContext) -> str | None:
    text_at: Path = (NOTES, str(number), "text")
    time_at: Path = (NOTES, str(number), "at")
    text = left.get(text_at)
    if not isinstance(text, str) or left.get(time_at) != context.now.time().replace(
        microsecond=0, tzinfo=None
    ):
        return None
    del left[text_at], left[time_at]
    return text


def _text_last(left: dict[Path, Value | Missing], words: Vocabulary, context: LineContext) -> str:
    """Take the one text out that may stand at the end without quotes; empty where there is none."""
    number = next_number(context.data, NOTES)
    if (NOTES, str(number + 1), "text") not in left:
        held = dict(left)
        text = _note_of_now(held, number, context)
        if text is not None and _bare(text, Text()):
            _note_of_now(left, number, context)
            return f"{NOTE} {text}"
    for path, value in left.items():
        field = field_at(context.kind, path, context.record, context.bike)
        if field is not None and isinstance(value, str) and _bare(value, field.shape) and path[0] != NOTES:
            del left[path]
            return f"{words.call_of(path)} {value}"
    return ""


def _bare(text: str, shape: Shape[Any]) -> bool:
    """Return whether a text can stand at the end of a line as it is."""
    plain = text.isprintable() and text == text.strip() and text[:1] not in ('"', "=", ",", ";", "")
    return isinstance(shape, Text) and plain and text.casefold() != CLEAR


def _value_piece(
    path: Path, value: Value | Missing, words: Vocabulary, context: LineContext, write: "_Writer"
) -> str:
    field = field_at(context.kind, path, context.record, context.bike)
    text = write(field.shape, value) if field is not None else _exact_text(value)
    signed = text[:1] in "+-" and (field is None or not below_zero(field.shape))
    if field is not None and value is MISSING:
        signed = takes_the_rest(field.shape)
    return f"{words.call_of(path)}{'=' if signed else ' '}{text}"


def _by_paths(edits: Edits, context: LineContext) -> str:
    """Write every value under its path, exactly; what the shortest way of saying it cannot say."""
    pieces = []
    for path, value in sorted(edits.items(), key=lambda edit: edit[0] not in _FIRST):
        field = field_at(context.kind, path, context.record, context.bike)
        pieces.append(f"{spell(path)}={_exact(field.shape, value) if field else _exact_text(value)}")
    return " ".join(pieces)


_Writer = Callable[[Shape[Any], Value | Missing], str]


def _plain(shape: Shape[Any], value: Value | Missing) -> str:
    """Write a value as it is typed; a text in quotes."""
    if isinstance(value, str) and not takes_the_rest(shape):
        return value
    return _exact(shape, value)


def _exact(shape: Shape[Any], value: Value | Missing) -> str:
    """Write a value so that it can be read one way only; words and texts in quotes."""
    if isinstance(value, dt.time | list | tuple):
        held = shape.load(list(value) if isinstance(value, tuple) else value)
        if not isinstance(held, InputError):
            shown = shape.show(held)
            return shown if isinstance(shape, TimeOfDay) else quoted(shown)
    return _exact_text(value)


def _exact_text(value: Value | Missing) -> str:
    if value is MISSING:
        return CLEAR
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{Decimal(repr(value)):f}"
    if isinstance(value, dt.date | dt.time):
        return value.isoformat()
    return quoted(value) if isinstance(value, str) else str(value)


def _reads_back(text: str, edits: Edits, context: LineContext) -> bool:
    found = read_line(text, context).edits
    return found.keys() == edits.keys() and all(_same(found[path], edits[path]) for path in edits)


def _same(one: Value | Missing, other: Value | Missing) -> bool:
    if isinstance(one, list | tuple) and isinstance(other, list | tuple):
        return list(one) == list(other)
    return type(one) is type(other) and one == other
