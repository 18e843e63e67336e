"""From plain data to records: a bad value loses only that fact, and is said with its path."""

import copy
import datetime as dt
import functools
import re
from collections.abc import Iterator, Mapping
from typing import Any

import attrs

from paddock_tui.records.bike import Bike
from paddock_tui.records.disputes import CONFLICT, held_disputes, is_dispute
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import Spec, specs
from paddock_tui.records.former_ids import FORMER, are_former_ids
from paddock_tui.records.kinds import CLASSES, Record
from paddock_tui.records.paths import Path
from paddock_tui.records.shapes.base import found_words
from paddock_tui.records.shapes_of_bike import set_up_troubles
from paddock_tui.records.structured import ImpossibleValue, UnreadableValue, structured

_PLAIN = frozenset({str, int, float, bool, dt.date, dt.time, dt.datetime, list})


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
        record = structured(cls, readable)
    except UnreadableValue:
        return _with_refusals(cls, readable, troubles, unknown)
    return RecordRead(record, tuple(troubles), unknown, record)


def _with_refusals(
    cls: type, readable: Mapping[str, Any], troubles: list[InputError], unknown: tuple[Path, ...]
) -> RecordRead:
    """Read a record in which some values cannot be read, or cannot be, as far as it goes."""
    # Most records have none: what finds all of them is loaded with the first.
    from paddock_tui.records.refused import refused, structured_as_written

    found = refused(cls, readable)
    unreadable = [one.trouble for one in found if not isinstance(one, ImpossibleValue)]
    impossible = tuple(one.trouble.path for one in found if isinstance(one, ImpossibleValue))
    kept = _without(readable, [trouble.path for trouble in unreadable])
    possible = structured(cls, _without(kept, list(impossible)))
    record = structured_as_written(cls, kept) if impossible else possible
    return RecordRead(record, (*troubles, *unreadable), unknown, possible, impossible)


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
        if not fits(rule, key) or (type(inner) not in _PLAIN and not _all_known_below(spec, inner, rest)):
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
            if not fits(rules[0], key):
                yield (*at, key)
            else:
                yield from _unknown_below(spec, inner, (*at, key), rules[1:])
    elif spec.record is not None:
        yield from _unknown(spec.record, value, at)


def _is_table(value: Any) -> bool:
    return type(value) not in _PLAIN and isinstance(value, Mapping)


@functools.lru_cache(maxsize=4096)
def fits(rule: str, key: str) -> bool:
    """Return whether a key that the owner chose is as its rule says."""
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
