"""The words of one record: what each call and name means on this bike."""

from collections.abc import Iterator

import attrs

from paddock_tui.entry.builtin import LONE, READINGS, ROWS, SPECIAL, Absent, RowWords, of_a_bike
from paddock_tui.entry.field_names import (
    SET_UP,
    has_a_word,
    names_of,
    names_with_heading,
    said_label,
    typed_at_once,
)
from paddock_tui.entry.own_calls import own_calls, why_not
from paddock_tui.records import common as c
from paddock_tui.records.bike import Bike
from paddock_tui.records.calls import ADJUSTER_CALLS, adjuster_call, control_call, place_of
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import Field, field_at, fields
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Path, spell

_OF_BIKE = ("controls", "adjusters", "offsets")


@attrs.frozen(eq=False)
class Single:
    """One value; or two that are always set alike, the same adjuster in both fork legs."""

    label: str
    fields: tuple[Field, ...]


@attrs.frozen(eq=False)
class CallPlace:
    """One place of a row: which end or moment, and what stands there; several where legs differ."""

    name: str
    options: tuple[Single, ...]


@attrs.frozen(eq=False)
class PlacedCall:
    """A call that several figures follow: a pair, or the moments of feel."""

    call: str
    label: str
    slots: tuple[CallPlace, ...]


@attrs.frozen(eq=False)
class SpecialWord:
    """A word that takes pieces of its own: laps, note, ago."""

    word: str
    label: str


@attrs.frozen(eq=False)
class LoneWord:
    """A word that stands alone for a value."""

    field: Field
    value: str

    @property
    def label(self) -> str:
        """What it sets, and to what."""
        return f"{self.field.label} {self.value}"


Target = Single | PlacedCall | SpecialWord | LoneWord


@attrs.define(eq=False)
class Vocabulary:
    """The vocabulary of one record. `problems` lists the calls of the bike's file that cannot be used."""

    kind: str
    calls: dict[str, Target] = attrs.field(factory=dict)
    names: dict[str, list[Target]] = attrs.field(factory=dict)
    absent: dict[str, Absent] = attrs.field(factory=dict)
    problems: list[InputError] = attrs.field(factory=list)
    singles: dict[Path, Single] = attrs.field(factory=dict)
    own: dict[Path, str] = attrs.field(factory=dict)

    def exact(self, word: str) -> tuple[Target, ...]:
        """Return what a whole call or name means; several where fields share the name."""
        if word in self.calls:
            return (self.calls[word],)
        return tuple(self.names.get(word, ()))

    def call_of(self, path: Path) -> str:
        """Return the word under which one value is typed: its call, else its name, else its path."""
        single = self.singles.get(path)
        field = single.fields[0] if single is not None else None
        if single is None or field is None:
            return next((call for call, where in READINGS.items() if where == path), spell(path))
        known = (
            self.own.get(path, ""),
            *self._calls_of(single),
            *names_of(field),
            *names_with_heading(field),
        )
        for word in known:
            if typed_at_once(word) and self.exact(word) == (single,):
                return word
        return spell(path)

    def word_of(self, target: Target) -> str:
        """Return the word under which a target is typed."""
        if isinstance(target, Single):
            shared = next(self._calls_of(target), "") if len(target.fields) > 1 else ""
            return shared or self.call_of(target.fields[0].path)
        if isinstance(target, PlacedCall):
            return target.call
        return target.word if isinstance(target, SpecialWord) else target.value.partition(" ")[0]

    def listing(self) -> Iterator[tuple[str, str]]:
        """List every call with what it sets, values by their one call, rows and words after them."""
        for path, single in self.singles.items():
            yield self.call_of(path), single.label
        for word, target in self.calls.items():
            lone_value = isinstance(target, Single) and len(target.fields) == 1
            if not lone_value and word == self.word_of(target):
                yield word, target.label

    def _calls_of(self, single: Single) -> Iterator[str]:
        return (call for call, target in self.calls.items() if target is single)


def calls_of(kind: str, record: Record, bike: Bike | None = None) -> Vocabulary:
    """Make the vocabulary of a record and its bike."""
    words = Vocabulary(kind)
    known = [field for field in fields(kind, record, bike) if _is_there(kind, field.path, record, bike)]
    for field in known:
        words.singles[field.path] = Single(said_label(kind, field), (field,))
    _add_calls(words, bike)
    _add_names(words)
    _add_rows(words, kind, record, bike)
    _add_lone_and_special(words, kind, record, bike)
    if bike is not None and hasattr(record, SET_UP):
        _add_own(words, bike)
    if hasattr(record, SET_UP):
        words.absent.update({word: what for word, what in of_a_bike().items() if not words.exact(word)})
    return words


def _is_there(kind: str, path: Path, record: Record, bike: Bike | None) -> bool:
    """Return whether a value has a word: what a set-up still holds of a part the bike has not, has none."""
    if not has_a_word(kind, path):
        return False
    if bike is None or path[0] != SET_UP or path[1] not in _OF_BIKE:
        return True
    damping = bike.damping.get(getattr(record, SET_UP).damping or "")
    offsets = damping.offsets if damping is not None else {}
    return path[2] in {"controls": bike.controls, "adjusters": bike.adjusters, "offsets": offsets}[path[1]]


def default_call(path: Path, bike: Bike | None) -> str:
    """Return the built-in call of a control or adjuster in the set-up; empty where it has none."""
    if bike is None or path[:1] != (SET_UP,):
        return ""
    if path[1] == "controls" and path[2] in bike.controls:
        return control_call(path[2], bike.controls[path[2]])
    if path[1] == "adjusters" and path[2] in bike.adjusters:
        return adjuster_call(path[2], bike.adjusters[path[2]])
    return ""


def _add_calls(words: Vocabulary, bike: Bike | None) -> None:
    shared: dict[str, list[Single]] = {}
    for path, single in words.singles.items():
        of_bike = path[0] == SET_UP and path[1] in _OF_BIKE
        call = default_call(path, bike) if of_bike else single.fields[0].call
        if call:
            shared.setdefault(call, []).append(single)
    for call, singles in shared.items():
        both = _both_legs(singles, bike) if len(singles) == 2 else None
        if len(singles) == 1 or both is not None:
            words.calls[call] = both or singles[0]
        else:
            words.names.setdefault(call, []).extend(singles)


def _both_legs(singles: list[Single], bike: Bike | None) -> Single | None:
    """Join the same adjuster in the left and the right leg; None where they are not that."""
    paths = [single.fields[0].path for single in singles]
    if bike is None or any(path[1] != "adjusters" for path in paths):
        return None
    adjusters = [bike.adjusters[path[2]] for path in paths]
    if {adjuster.leg for adjuster in adjusters} != {"left", "right"}:
        return None
    end, what = place_of(paths[0][2], adjusters[0])
    return Single(f"{end} {what}, both legs", tuple(single.fields[0] for single in singles))


def _add_names(words: Vocabulary) -> None:
    bare: dict[str, list[Single]] = {}
    for single in words.singles.values():
        for name in names_of(single.fields[0]):
            bare.setdefault(name, []).append(single)
    for name, singles in bare.items():
        words.names.setdefault(name, []).extend(singles)
        for single in singles if len(singles) > 1 else ():
            for longer in names_with_heading(single.fields[0]):
                held = words.names.setdefault(longer, [])
                held += [single] if single not in held else []


def _add_rows(words: Vocabulary, kind: str, record: Record, bike: Bike | None) -> None:
    for row in ROWS:
        slots = tuple(
            CallPlace(name, tuple(_options(words, row, path, kind, record, bike))) for name, path in row.slots
        )
        for word in (row.call, *row.also):
            if any(slot.options for slot in slots):
                words.calls.setdefault(word, PlacedCall(row.call, row.label, slots))
            elif hasattr(record, SET_UP):
                words.absent[word] = Absent(row.label, "record")


def _options(
    words: Vocabulary, row: RowWords, path: Path, kind: str, record: Record, bike: Bike | None
) -> Iterator[Single]:
    """List what a slot of a row may be: one value, or several adjusters of the same place."""
    if not row.adjusters:
        field = field_at(kind, path, record, bike)
        if field is not None:
            yield words.singles.get(path) or Single(said_label(kind, field), (field,))
        return
    end, what = path
    both = words.calls.get(ADJUSTER_CALLS.get((end, what), ""))
    if isinstance(both, Single) and len(both.fields) > 1:
        yield both
        return
    for held, single in words.singles.items():
        if held[:2] == (SET_UP, "adjusters"):
            adjuster = bike.adjusters.get(held[2]) if bike is not None else None
            place = place_of(held[2], adjuster) if adjuster is not None else tuple(held[2].split("-", 1))
            if place[0] == end and place[-1].split(" ")[0] == what:
                yield single


def _add_lone_and_special(words: Vocabulary, kind: str, record: Record, bike: Bike | None) -> None:
    surface = [one.fields[0] for one in words.singles.values() if one.fields[0].shape is c.SURFACE]
    for word, value in LONE.items() if len(surface) == 1 else ():
        words.calls[word] = LoneWord(surface[0], value)
    if kind != "session":
        return
    for word, label in SPECIAL.items():
        words.calls[word] = SpecialWord(word, label)
    for word, path in READINGS.items():
        field = field_at(kind, path, record, bike)
        if field is not None:
            words.calls[word] = Single(said_label(kind, field), (field,))


def _add_own(words: Vocabulary, bike: Bike) -> None:
    """Add the calls of the bike's file; one that cannot be used is a problem, and the built-in call stays."""
    for path, (call, where) in own_calls(bike).items():
        single = words.singles.get(path)
        if single is None:
            continue
        others = {
            word
            for word, targets in (*words.names.items(), *((call, [one]) for call, one in words.calls.items()))
            if any(target is not single for target in targets)
        }
        wrong = why_not(call, default_call(path, bike), others)
        if wrong:
            keeps = words.call_of(path)
            mend = f'choose another word; "{keeps}" is typed for it meanwhile'
            words.problems.append(InputError(f'the call "{call}"', wrong, mend, path=where))
        else:
            words.calls[call] = single
            words.own[path] = call
