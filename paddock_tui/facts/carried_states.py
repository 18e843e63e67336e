"""The states of walks as plain values for a file, and back: without any words that somebody typed.

What a rider typed stands in a state as where it is written, and is read there when the state is taken up
again. What cannot be written so, is not: whoever asked walks from the beginning.
"""

import datetime as dt
import enum
import importlib
import math
from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping
from decimal import Decimal
from functools import cache
from typing import Any, cast

import attrs

from paddock_tui.facts.begun import NotCarried
from paddock_tui.facts.past import PastSession
from paddock_tui.records.fields import Spec, specs
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.shapes.texts import Word

Carried = Any
"""A plain value: what JSON knows."""

OURS = "paddock_tui."

_SHORTEST = 4
"""Letters of a text that is looked for within others; a shorter one is found where it stands alone."""


class StateWriter:
    """Writes states. `texts_of` are the records in which their words stand."""

    def __init__(self, texts_of: Iterable[tuple[Ref, Record]]) -> None:
        self._at: dict[str, tuple[Ref, Path]] = {}
        self._parts: dict[int, tuple[Ref, Path, object]] = {}
        for ref, record in texts_of:
            self._parts[id(record)] = (ref, (), record)
            for path, value in _typed(record):
                self._at.setdefault(value, (ref, path))
            for key, (name, spec) in specs(type(record)).items():
                part = getattr(record, name)
                if spec.nature == "table" and part is not None:
                    self._parts[id(part)] = (ref, (key,), part)
        self._within = sorted((text for text in self._at if len(text) >= _SHORTEST), key=len, reverse=True)
        self._places: dict[str, int] = {}
        self.words: list[list[str]] = []
        """Where each text that was left out is written: kind, id and path of it."""

    def write(self, value: object) -> Carried:
        """Return a value as plain data. Raises NotCarried."""
        if value is None or value is True or value is False or type(value) is int:
            return value
        if type(value) is float:
            if not math.isfinite(value):
                raise NotCarried(value)
            return value
        if type(value) is str:
            return self._text(value)
        return self._made_of(value)

    def _made_of(self, value: object) -> Carried:
        kind = type(value)
        if isinstance(value, PastSession):
            return ["p", value.id]
        if isinstance(value, Mapping):
            return ["m", *([self.write(key), self.write(held)] for key, held in value.items())]
        if kind is tuple:
            return ["t", *map(self.write, cast(tuple[object, ...], value))]
        if kind is frozenset:
            return ["s", *sorted(map(self.write, cast(frozenset[object], value)), key=repr)]
        for sign, one in _WRITTEN.items():
            if kind is one:
                return [sign, str(value) if one is Decimal else cast(dt.date, value).isoformat()]
        return self._of_class(value, kind)

    def _of_class(self, value: object, kind: Any) -> Carried:
        if isinstance(value, enum.Enum):
            return ["e", _name_of(kind), value.name]
        if isinstance(value, tuple) and hasattr(kind, "_fields"):
            return ["c", _name_of(kind), *map(self.write, value)]
        if not attrs.has(kind):
            raise NotCarried(kind)
        if not specs(kind):
            called = _name_of(kind)
            held = [(name, getattr(value, name)) for name, _, _ in _arguments(kind)]
            later = {name for name, _ in held if (called, name) in _LATER}
            return [
                "c",
                called,
                *(self._later(one) if name in later else self.write(one) for name, one in held),
            ]
        ref, path, part = self._parts.get(id(value), (None, (), None))
        if ref is None or part is not value:
            raise NotCarried(kind)
        return ["r", ref.kind, ref.id, *path]

    def _later(self, held: Mapping[object, object]) -> Carried:
        """Return a mapping whose values are taken up when they are asked for, where none needs a record."""
        sign, *entries = self.write(held)
        return [sign if any(_needs_records(value) for _, value in entries) else "l", *entries]

    def _text(self, text: str) -> Carried:
        if text in self._at:
            return ["w", self._place(text)]
        parts: list[str | int] = [text]
        for typed in self._within:
            if typed in text:
                parts = [piece for part in parts for piece in self._split(part, typed)]
        return text if parts == [text] else ["j", *parts]

    def _split(self, part: str | int, typed: str) -> Iterator[str | int]:
        if isinstance(part, int) or typed not in part:
            yield part
            return
        first, *others = part.split(typed)
        yield first
        for other in others:
            yield self._place(typed)
            yield other

    def _place(self, text: str) -> int:
        if text not in self._places:
            ref, path = self._at[text]
            self._places[text] = len(self.words)
            self.words.append([ref.kind, ref.id, *path])
        return self._places[text]


class StateReader:
    """Takes states up again. `read` gives a record, `past` an earlier session, `words` say where texts stand.

    Raises NotCarried for what was not written so, or where a text is not there any more.
    """

    def __init__(
        self,
        words: list[list[str]],
        read: Callable[[Ref], Record | None],
        past: Callable[[str], PastSession | None],
    ) -> None:
        self._words, self._read, self._past = words, read, past
        self._texts: dict[int, str] = {}

    def take(self, value: Carried) -> Any:
        """Return the value of what `write` gave. Raises NotCarried."""
        try:
            return self._take(value)
        except _TROUBLES as error:
            raise NotCarried(error) from error

    def _take(self, value: Carried) -> Any:
        if value.__class__ is not list:
            return value
        sign = value[0]
        if sign == "c":
            return self._of_class(value)
        if sign in _WRITTEN:
            one: Any = _WRITTEN[sign]
            return one(value[1]) if one is Decimal else one.fromisoformat(value[1])
        return _MAKERS[sign](self, *value[1:])

    def _tuple_of(self, *held: Any) -> tuple[Any, ...]:
        return tuple(self._each(held))

    def _set_of(self, *held: Any) -> frozenset[Any]:
        return frozenset(self._each(held))

    def _each(self, held: Iterable[Carried]) -> list[Any]:
        # Most are plain: that is seen without a call.
        return [self._take(one) if one.__class__ is list else one for one in held]

    def _mapping_of(self, *held: Any) -> dict[Any, Any]:
        return {self._take(key): self._take(kept) for key, kept in held}

    def _mapping_later(self, *held: Any) -> "_TakenLater":
        # Later nothing is missing any more: each word stands by then.
        for place in range(len(self._words)):
            self._typed(place)
        return _TakenLater({self._take(key): kept for key, kept in held}, self._take)

    def _joined(self, *parts: Any) -> str:
        return "".join(part if isinstance(part, str) else self._typed(part) for part in parts)

    def _past_of(self, name: str) -> PastSession:
        found: PastSession = self._there(self._past(name))
        return found

    @staticmethod
    def _word_of(name: str, word: str) -> Any:
        return _class_of(name)[0][word]

    def _of_class(self, value: list[Any]) -> Any:
        kind, by_place, by_name = _class_of(value[1])
        values = self._each(value[2:])
        if not by_name:
            return kind(*values)
        if len(values) != by_place + len(by_name):
            raise NotCarried(value[1])
        return kind(*values[:by_place], **dict(zip(by_name, values[by_place:], strict=True)))

    def _typed(self, place: int) -> str:
        if place not in self._texts:
            kind, name, *path = self._words[place]
            text = self._written(kind, name, *path)
            if not isinstance(text, str):
                raise NotCarried(path)
            self._texts[place] = text
        return self._texts[place]

    def _written(self, kind: str, name: str, *path: str) -> Any:
        here: Any = self._there(self._read(Ref(kind, name)))
        for key in path:
            if isinstance(here, tuple):
                here = here[int(key)]
            elif isinstance(here, Mapping):
                here = here[key]
            else:
                here = getattr(here, specs(type(here))[key][0])
        return self._there(here)

    @staticmethod
    def _there(found: Any) -> Any:
        if found is None:
            raise NotCarried("gone")
        return found


_TROUBLES = (ValueError, TypeError, LookupError, AttributeError, ArithmeticError, ImportError)
"""What taking up may fail with that was not written as it is written here."""

_MAKERS: dict[str, Callable[..., Any]] = {
    "t": StateReader._tuple_of,
    "s": StateReader._set_of,
    "m": StateReader._mapping_of,
    "l": StateReader._mapping_later,
    "p": StateReader._past_of,
    "w": StateReader._typed,
    "j": StateReader._joined,
    "e": lambda _taker, name, word: StateReader._word_of(name, word),
    "r": StateReader._written,
}

_LATER = frozenset({("matters.seen:Seen", "tyres")})
"""Mappings, by class and field, of which mostly few values are asked for: of all tyres the mounted ones."""


def _needs_records(carried: Carried) -> bool:
    """Return whether a value is not made of plain values and words alone."""
    return isinstance(carried, list) and (carried[0] in ("p", "r") or any(map(_needs_records, carried[1:])))


class _TakenLater(Mapping[Any, Any]):
    """A mapping of which each value is taken up when it is asked for first."""

    def __init__(self, carried: dict[Any, Carried], take: Callable[[Carried], Any]) -> None:
        self._carried, self._take = carried, take
        self._taken: dict[Any, Any] = {}

    def __getitem__(self, key: Any) -> Any:
        if key not in self._taken:
            self._taken[key] = self._take(self._carried[key])
        return self._taken[key]

    def __contains__(self, key: object) -> bool:
        return key in self._carried

    def __iter__(self) -> Iterator[Any]:
        return iter(self._carried)

    def __len__(self) -> int:
        return len(self._carried)


_WRITTEN: dict[str, type] = {"dt": dt.datetime, "d": dt.date, "h": dt.time, "n": Decimal}


def mentioned(value: object) -> Iterator[str]:
    """List the texts of a state, and the ids of the sessions in it: some of these name records."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, PastSession):
        yield value.id
    elif isinstance(value, Mapping):
        for key, held in value.items():
            yield from mentioned(key)
            yield from mentioned(held)
    elif isinstance(value, tuple | frozenset):
        for held in value:
            yield from mentioned(held)
    elif attrs.has(type(value)) and not specs(type(value)):
        for name, _, _ in _arguments(cast(Hashable, type(value))):
            yield from mentioned(getattr(value, name))


def _typed(record: object, at: Path = ()) -> Iterator[tuple[Path, str]]:
    """List the texts in a record that no list of words gave."""
    for key, name, spec in _texts_of(cast(Hashable, type(record))):
        value = getattr(record, name)
        if value:
            yield from _typed_below(value, spec, (*at, key))


def _typed_below(value: object, spec: Spec, at: Path) -> Iterator[tuple[Path, str]]:
    if isinstance(value, str):
        if not (isinstance(spec.shape, Word) and value in spec.shape.choices):
            yield at, value
    elif isinstance(value, Mapping):
        for key, held in value.items():
            yield from _typed_below(held, spec, (*at, key))
    elif type(value) is tuple:
        for place, held in enumerate(value):
            yield from _typed_below(held, spec, (*at, str(place)))
    elif spec.record is not None and value is not None:
        yield from _typed(value, at)


@cache
def _texts_of(kind: Any) -> tuple[tuple[str, str, Spec], ...]:
    """List what of a record may hold texts: the keys, the attributes, and what is declared of them."""
    known = specs(kind) if attrs.has(kind) else {}
    return tuple(
        (key, name, spec)
        for key, (name, spec) in known.items()
        if spec.record is not None or _may_be_typed(spec)
    )


def _may_be_typed(spec: Spec) -> bool:
    from paddock_tui.records.shapes.references import Reference

    return not isinstance(spec.shape, Reference)


@cache
def _arguments(kind: Any) -> tuple[tuple[str, str, bool], ...]:
    """List what a class is made of: attribute, argument, and whether it is given by name, these last."""
    found = ((one.name, one.alias or one.name, one.kw_only) for one in attrs.fields(kind) if one.init)
    return tuple(sorted(found, key=lambda one: one[2]))


def _name_of(kind: type) -> str:
    if not kind.__module__.startswith(OURS) or "<" in kind.__qualname__:
        raise NotCarried(kind)
    return f"{kind.__module__.removeprefix(OURS)}:{kind.__qualname__}"


@cache
def _class_of(name: str) -> tuple[Any, int, tuple[str, ...]]:
    """Return a class of values of this package by its name, and how many arguments it takes by their place
    and which by name, as it is written here. Raises NotCarried.
    """
    module, _, attribute = name.partition(":")
    found = getattr(importlib.import_module(f"{OURS}{module}"), attribute)
    if not isinstance(found, type):
        raise NotCarried(name)
    if attrs.has(found):
        arguments = _arguments(cast(Hashable, found))
        by_name = tuple(alias for _, alias, by_name in arguments if by_name)
        return found, len(arguments) - len(by_name), by_name
    if issubclass(found, enum.Enum) or hasattr(found, "_fields"):
        return found, 0, ()
    raise NotCarried(name)
