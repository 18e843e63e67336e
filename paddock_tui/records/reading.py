"""From plain data to records: a bad value loses only that fact, and is said with its path."""

import copy
import datetime as dt
import functools
import re
from collections.abc import Callable, Iterator, Mapping
from typing import Any

import attrs
import cattrs
from cattrs.errors import (
    AttributeValidationNote,
    ClassValidationError,
    IterableValidationError,
    IterableValidationNote,
)
from cattrs.gen import make_dict_structure_fn, override

from paddock_tui.records.bike import Bike
from paddock_tui.records.common import ADJUSTER
from paddock_tui.records.disputes import CONFLICT, held_disputes, is_dispute
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import Spec, specs
from paddock_tui.records.former_ids import FORMER, are_former_ids
from paddock_tui.records.impossible import is_outside
from paddock_tui.records.kinds import CLASSES, Record
from paddock_tui.records.paths import Path
from paddock_tui.records.shapes.base import Shape, found_words
from paddock_tui.records.shapes_of_bike import set_up_troubles

Hook = Callable[[Any, Any], Any]

_HOLDS_MORE = frozenset({dict, list})
_PLAIN = frozenset({str, int, float, bool, dt.date, dt.time, dt.datetime, list})
_MOST_TABLES = 8192
_TABLES: dict[tuple[Any, ...], Any] = {}
"""What tables of plain values were structured to, by class and content."""


class _Unreadable(ValueError):
    def __init__(self, trouble: InputError) -> None:
        super().__init__(trouble.found)
        self.trouble = trouble


class _Impossible(_Unreadable):
    """A value that can be read and cannot be."""


@attrs.frozen
class RecordRead:
    """A record as far as it could be read: the values that could not, and the keys that nobody declared.

    `possible` is the record without the figures that cannot be, which stand at the paths `impossible`: what
    is worked out or judged rests on that one.
    """

    record: Record
    troubles: tuple[InputError, ...]
    unknown: tuple[Path, ...]
    possible: Record
    impossible: tuple[Path, ...] = ()


def read_record(kind: str, data: Mapping[str, Any], bike: Bike | None = None) -> RecordRead:
    """Read one record of a kind. With the bike, what is set on it is read as the bike's controls are."""
    cls = CLASSES[kind]
    strays = () if _all_known(cls, data) else _unknown(cls, data, ())
    unknown = tuple(path for path in strays if not _kept_beside(data, path))
    troubles = (
        list(set_up_troubles(data, bike)) if bike is not None and kind in ("session", "profile") else []
    )
    if FORMER in data and not are_former_ids(data[FORMER]):
        troubles.append(InputError(found_words(data[FORMER]), "a list of ids", "remove it", path=(FORMER,)))
    readable = _without(data, [trouble.path for trouble in troubles] + list(unknown))
    try:
        record = _POSSIBLE.structure(readable, cls)
    except ClassValidationError as error:
        found = list(_refused(error, ()))
        unreadable = [one.trouble for one in found if not isinstance(one, _Impossible)]
        impossible = tuple(one.trouble.path for one in found if isinstance(one, _Impossible))
        troubles += unreadable
        kept = _without(readable, [trouble.path for trouble in unreadable])
        possible = _POSSIBLE.structure(_without(kept, list(impossible)), cls)
        record = _AS_WRITTEN.structure(kept, cls) if impossible else possible
        return RecordRead(record, tuple(troubles), unknown, possible, impossible)
    return RecordRead(record, tuple(troubles), unknown, record)


def _structure_fn(cls: type, converter: cattrs.Converter) -> Callable[[Any, Any], Any]:
    """Build the function that structures one record class, each attribute by its own shape."""
    overrides: dict[str, Any] = {}
    for key, (name, spec) in specs(cls).items():
        hook = _hook(spec, converter)
        overrides[name] = (
            override(rename=key, struct_hook=hook) if key != name else override(struct_hook=hook)
        )
    inner: Hook = make_dict_structure_fn(cls, converter, **overrides)

    def structure(raw: Any, as_type: Any) -> Any:
        if type(raw) is dict and _HOLDS_MORE.isdisjoint(map(type, raw.values())):
            return _remembered(cls, raw, inner, converter is _POSSIBLE)
        if not isinstance(raw, Mapping):
            raise _Unreadable(InputError(found_words(raw), "a table", "write it under a heading of its own"))
        return inner(raw, as_type)

    return structure


def _remembered(cls: type, raw: dict[str, Any], inner: Hook, possible: bool) -> Any:
    """Structure a table of plain values; the same table of many records is one object, as all are frozen."""
    # With the types: 1, 1.0 and true are the same key else.
    content = cls, possible, *raw.items(), *map(type, raw.values())
    found = _TABLES.get(content)
    if found is None:
        found = inner(raw, cls)
        if len(_TABLES) >= _MOST_TABLES:
            _TABLES.clear()
        _TABLES[content] = found
    return found


def _hook(spec: Spec, converter: cattrs.Converter) -> Hook:
    """Return the hook of one attribute: its shape or its class, inside as many chosen keys as are
    declared.
    """
    if spec.shape is not None:
        hook = _by_shape(spec.shape, converter is _POSSIBLE)
    else:
        hook = _by_class(spec.record or object, converter)
    for _ in spec.keys:
        hook = _by_key(hook)
    return hook


def _by_shape(shape: Shape[Any], possible: bool) -> Hook:
    """Return the hook of a shape; with `possible` it refuses what lies outside the band of the shape.

    How far an adjuster goes is the bike's to say, so that none of its values is refused here.
    """
    band = shape.band() if possible and shape is not ADJUSTER else None

    def hook(raw: Any, _: Any) -> Any:
        found = shape.load(raw)
        if isinstance(found, InputError):
            raise _Unreadable(found)
        if band is not None and is_outside(found, band):
            raise _Impossible(InputError(found_words(raw), shape.expected))
        return found

    return hook


def _by_class(record: type, converter: cattrs.Converter) -> Hook:
    made: list[Hook] = []

    def hook(raw: Any, _: Any) -> Any:
        if not made:
            # Of most classes no record holds one: they are made for the first that does.
            made.append(converter.get_structure_hook(record))
        return made[0](raw, record)

    return hook


def _by_key(inner: Hook) -> Hook:
    def hook(raw: Any, as_type: Any) -> Any:
        if not isinstance(raw, Mapping):
            raise _Unreadable(InputError(found_words(raw), "a table", "write it under a heading of its own"))
        found: dict[str, Any] = {}
        errors: list[Exception] = []
        for key, value in raw.items():
            try:
                found[key] = inner(value, as_type)
            except Exception as error:
                error.__notes__ = [
                    *getattr(error, "__notes__", []),
                    IterableValidationNote(key, key, as_type),
                ]
                errors.append(error)
        if errors:
            raise IterableValidationError("values that cannot be read", errors, dict)
        return found

    return hook


def _refused(error: Exception, at: Path) -> Iterator[_Unreadable]:
    """Walk what cattrs raised and give each refusal its path."""
    if isinstance(error, _Unreadable):
        yield type(error)(attrs.evolve(error.trouble, path=at))
    elif isinstance(error, ClassValidationError | IterableValidationError):
        for child in error.exceptions:
            yield from _refused(child, (*at, *_key_of(child, error)))
    else:
        raise error


def _key_of(child: Exception, parent: Exception) -> Path:
    """Return the key under which an error was raised: of an attribute, or one that the owner chose."""
    notes = reversed(getattr(child, "__notes__", []))
    if isinstance(parent, ClassValidationError):
        # The key of an attribute whose name Python keeps for itself stands without the underscore.
        names = (note.name for note in notes if isinstance(note, AttributeValidationNote))
        return tuple(name.rstrip("_") for name in names)[:1]
    return tuple(str(note.index) for note in notes if isinstance(note, IterableValidationNote))[:1]


def _all_known(cls: type, data: dict[str, Any] | Mapping[str, Any]) -> bool:
    """Return whether every key is declared, as in most records; False where that takes a closer look."""
    keys, below = _declared_keys(cls)
    if type(data) is not dict or not data.keys() <= keys:
        return False
    for key, value in data.items():
        if type(value) in _PLAIN:
            continue
        spec = below.get(key)
        if spec is not None and not _all_known_below(spec, value, spec.keys):
            return False
    return True


def _all_known_below(spec: Spec, value: Any, rules: tuple[str, ...]) -> bool:
    if type(value) is not dict:
        return type(value) in _PLAIN
    if not rules:
        return spec.record is None or _all_known(spec.record, value)
    rule, rest = rules[0], rules[1:]
    for key, inner in value.items():
        if not _fits(rule, key) or (type(inner) not in _PLAIN and not _all_known_below(spec, inner, rest)):
            return False
    return True


@functools.cache
def _declared_keys(cls: type) -> tuple[frozenset[str], dict[str, Spec]]:
    """Return the keys of a class, and the declarations of those below which there may be more."""
    known = specs(cls)
    return frozenset(known), {key: spec for key, (_, spec) in known.items() if spec.keys or spec.record}


def _unknown(cls: type, data: Mapping[str, Any], at: Path) -> Iterator[Path]:
    """List the keys that no field declares; they are kept in the file and noted."""
    known = specs(cls)
    for key, value in data.items():
        if key not in known:
            yield (*at, key)
        elif type(value) is dict or _is_table(value):
            yield from _unknown_below(known[key][1], value, (*at, key), known[key][1].keys)


def _kept_beside(data: Mapping[str, Any], path: Path) -> bool:
    """Return whether a key that no field declares holds former ids, or facts that two laptops disagree on."""
    disputed = path == (CONFLICT,) and all(is_dispute(held) for held in held_disputes(data).values())
    return disputed or path == (FORMER,)


def _unknown_below(spec: Spec, value: Any, at: Path, rules: tuple[str, ...]) -> Iterator[Path]:
    if type(value) is not dict and not _is_table(value):
        return
    if rules:
        for key, inner in value.items():
            if not _fits(rules[0], key):
                yield (*at, key)
            else:
                yield from _unknown_below(spec, inner, (*at, key), rules[1:])
    elif spec.record is not None:
        yield from _unknown(spec.record, value, at)


def _is_table(value: Any) -> bool:
    return type(value) not in _PLAIN and isinstance(value, Mapping)


@functools.lru_cache(maxsize=4096)
def _fits(rule: str, key: str) -> bool:
    return re.fullmatch(rule, key) is not None


def _without(data: Mapping[str, Any], paths: list[Path]) -> Mapping[str, Any]:
    """Return the data without the values at some paths."""
    if not paths:
        return data
    kept = copy.deepcopy(dict(data))
    for path in paths:
        here: Any = kept
        for key in path[:-1]:
            here = here.get(key) if isinstance(here, dict) else None
        if isinstance(here, dict):
            here.pop(path[-1], None)
    return kept


_POSSIBLE = cattrs.Converter(detailed_validation=True)
_POSSIBLE.register_structure_hook_factory(attrs.has, lambda cls: _structure_fn(cls, _POSSIBLE))

_AS_WRITTEN = cattrs.Converter(detailed_validation=True)
_AS_WRITTEN.register_structure_hook_factory(attrs.has, lambda cls: _structure_fn(cls, _AS_WRITTEN))
