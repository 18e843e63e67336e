"""Tables of plain data to record classes: each attribute by its own shape, the first bad value ends it."""

import functools
from collections.abc import Callable, Mapping
from typing import Any

from paddock_tui.records.common import ADJUSTER
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import Spec, specs
from paddock_tui.records.impossible import is_outside
from paddock_tui.records.shapes.base import Shape, found_words

Hook = Callable[[Any, Any], Any]
"""What makes a value of plain data, which comes first."""

_HOLDS_MORE = frozenset({dict, list})
_MOST_TABLES = 8192
_TABLES: dict[tuple[Any, ...], Any] = {}
"""What tables of plain values were structured to, by class and content."""


class UnreadableValue(ValueError):
    """A value that cannot be read."""

    def __init__(self, trouble: InputError) -> None:
        super().__init__(trouble.found)
        self.trouble = trouble


class ImpossibleValue(UnreadableValue):
    """A value that can be read and cannot be."""


def structured(cls: type, raw: Any) -> Any:
    """Return the record of a table with known keys. Raises UnreadableValue at the first bad value.

    All of them are found by `records.refused`.
    """
    return _of_class(cls)(raw, cls)


@functools.cache
def _of_class(cls: type) -> Hook:
    known = {key: (name, _hook(spec)) for key, (name, spec) in specs(cls).items()}

    def make(raw: Any, _: Any) -> Any:
        given = {}
        for key, value in raw.items():
            # What is kept beside the fields, as former ids are, is none of them.
            if (declared := known.get(key)) is not None:
                given[declared[0]] = declared[1](value, None)
        return cls(**given)

    return as_table(cls, make, possible=True)


def _hook(spec: Spec) -> Hook:
    if spec.shape is not None:
        hook = by_shape(spec.shape, possible=True)
    else:
        record = spec.record or object

        def hook(raw: Any, _: Any) -> Any:
            # Of most classes no record holds one: they are got ready for the first that does.
            return _of_class(record)(raw, record)

    for _ in spec.keys:
        hook = _by_key(hook)
    return hook


def _by_key(inner: Hook) -> Hook:
    def hook(raw: Any, as_type: Any) -> Any:
        return {key: inner(value, as_type) for key, value in as_mapping(raw).items()}

    return hook


def as_table(cls: type, make: Hook, *, possible: bool) -> Hook:
    """Return the hook of a class whose records `make` makes; with `possible` of values that can be so."""

    def structure(raw: Any, as_type: Any) -> Any:
        if type(raw) is dict and _HOLDS_MORE.isdisjoint(map(type, raw.values())):
            return _remembered(cls, raw, make, possible)
        return make(as_mapping(raw), as_type)

    return structure


def as_mapping(raw: Any) -> Mapping[str, Any]:
    """Return what is a table. Raises UnreadableValue where it is none."""
    if not isinstance(raw, Mapping):
        raise UnreadableValue(InputError(found_words(raw), "a table", "write it under a heading of its own"))
    return raw


def _remembered(cls: type, raw: dict[str, Any], make: Hook, possible: bool) -> Any:
    """Structure a table of plain values; the same table of many records is one object, as all are frozen."""
    # With the types: 1, 1.0 and true are the same key else.
    content = cls, possible, *raw.items(), *map(type, raw.values())
    found = _TABLES.get(content)
    if found is None:
        found = make(raw, cls)
        if len(_TABLES) >= _MOST_TABLES:
            _TABLES.clear()
        _TABLES[content] = found
    return found


def by_shape(shape: Shape[Any], *, possible: bool) -> Hook:
    """Return the hook of a shape; with `possible` it refuses what lies outside the band of the shape.

    How far an adjuster goes is the bike's to say, so that none of its values is refused here.
    """
    band = shape.band() if possible and shape is not ADJUSTER else None

    def hook(raw: Any, _: Any) -> Any:
        found = shape.load(raw)
        if isinstance(found, InputError):
            raise UnreadableValue(found)
        if band is not None and is_outside(found, band):
            raise ImpossibleValue(InputError(found_words(raw), shape.expected))
        return found

    return hook
