"""Records in which all is well, read quickly: of many seasons nearly all are.

It is made for tables of which the same stand in many records: what was made of one is remembered with it.
Whatever is not plainly in order is left to `records.reading`, which says what it is.
"""

import datetime as dt
import functools
from collections.abc import Callable, Hashable, Mapping
from typing import Any, cast

from paddock_tui.records.bike import Bike
from paddock_tui.records.fields import Spec, specs
from paddock_tui.records.kinds import CLASSES, Record
from paddock_tui.records.reading import fits
from paddock_tui.records.shapes.base import Shape
from paddock_tui.records.shapes_of_bike import SET, set_up_troubles
from paddock_tui.records.structured import UnreadableValue, by_shape

_Make = Callable[[Any], Any]

_MOST = 512
"""Texts of one field whose values are remembered."""


class _Unlike(Exception):
    """A record of which not everything is plainly in order."""


def untroubled(kind: str, data: Mapping[str, Any], bike: Bike | None = None) -> Record | None:
    """Return the record that `read_record` reads where it finds no trouble, no key that it does not know and
    no figure that cannot be; None else, and where that takes a closer look.
    """
    cls = CLASSES[kind]
    if bike is not None and kind in ("session", "profile") and not _is_plainly_set(data, bike):
        return None
    try:
        record: Record = _record(cast(Hashable, cls))(data)
    except (_Unlike, UnreadableValue):
        return None
    return record


def _is_plainly_set(data: Mapping[str, Any], bike: Bike) -> bool:
    """Return whether all that is set can be read as what the bike's controls are.

    That is remembered with the tables, which are the same from one session to the next.
    """
    by = "set on", id(bike)
    tables = [data[key][inner] for key, inner in SET if type(data.get(key)) is dict and inner in data[key]]
    made = [getattr(one, "made", None) for one in tables]
    if all(one is not None and one.get(by) is bike for one in made):
        return True
    if next(set_up_troubles(data, bike), None) is not None:
        return False
    for one in made:
        if one is not None:
            one[by] = bike
    return True


@functools.cache
def _record(cls: type) -> _Make:
    """Return what makes the records of a class."""
    known = {key: (name, _value(spec)) for key, (name, spec) in specs(cls).items()}
    # What is not written down is the same in all of them, and nothing changes it.
    blank = cls()
    without = {name: getattr(blank, name) for name, spec in specs(cls).values() if spec.nature != "one"}

    def make(raw: Any) -> Any:
        if type(raw) is not dict:
            return _of_shared(raw, cls, fresh)
        return fresh(raw)

    def fresh(raw: Any) -> Any:
        given = without.copy()
        try:
            for key, value in raw.items():
                name, made = known[key]
                given[name] = made(value)
        except KeyError:
            raise _Unlike from None
        return cls(**given)

    return make


def _of_shared(raw: Any, by: object, fresh: _Make) -> Any:
    """Return what was made of a table before, or make it.

    Such a table is the same object wherever it stands; `made` holds what was made of it, by what.
    """
    made = getattr(raw, "made", None)
    if made is None:
        raise _Unlike
    found = made.get(by)
    if found is None:
        found = made[by] = fresh(raw)
    return found


def _value(spec: Spec) -> _Make:
    record = spec.record
    if spec.shape is not None:
        make, by = _plain(spec.shape), None
    else:
        make, by = _of_record(record or object), record
    for rule in reversed(spec.keys):
        make, by = _keyed(rule, make, by), None
    return make


def _of_record(record: type) -> _Make:
    """Return what makes records of a class, which is got ready for the first one."""

    def make(raw: Any) -> Any:
        return _record(record)(raw)

    return make


def _keyed(rule: str, inner: _Make, by: type | None) -> _Make:
    """Return what makes a table of values under keys of a rule; of records `by` is their class."""
    fitting: set[str] = set()
    shared = _Shared()

    def make(raw: Any) -> Any:
        if type(raw) is not dict:
            # A table that holds no others: where it is the same in many records, so is what is made of it.
            return _of_shared(raw, shared, fresh)
        return fresh(raw)

    def fresh(raw: Any) -> Any:
        if not fitting.issuperset(raw):
            if not all(fits(rule, key) for key in raw):
                raise _Unlike
            if len(fitting) >= _MOST:
                fitting.clear()
            fitting.update(raw)
        if by is not None:
            # Of many checks and readings all were made before.
            try:
                return shared({key: value.made[by] for key, value in raw.items()})
            except (AttributeError, KeyError):
                pass
        return shared({key: inner(value) for key, value in raw.items()})

    return make


class _Shared:
    """Gives one table in place of all that hold the very same values under the same keys.

    Nothing changes the tables of a record; from one session to the next most of them stay as they are.
    """

    def __init__(self) -> None:
        self._known: dict[tuple[Any, ...], dict[str, Any]] = {}

    def __call__(self, table: dict[str, Any]) -> dict[str, Any]:
        # What is held here keeps its values, so that none of these ids is another's meanwhile.
        same = (*table, *map(id, table.values()))
        known = self._known.get(same)
        if known is None:
            if len(self._known) >= _MOST:
                self._known.clear()
            known = self._known[same] = table
        return known


def _plain(shape: Shape[Any]) -> _Make:
    """Return what makes a value of a shape; what is made of the same once more is the same.

    Of a text, a date, a time or a whole number nothing is made that can change; 1 and true are two keys.
    """
    load = by_shape(shape, possible=True)
    of_type: dict[type, dict[Any, Any]] = {str: {}, int: {}, bool: {}, dt.date: {}, dt.time: {}}

    def make(raw: Any) -> Any:
        known = of_type.get(type(raw))
        if known is None:
            return load(raw, None)
        found = known.get(raw)
        if found is None:
            if len(known) >= _MOST:
                known.clear()
            found = known[raw] = load(raw, None)
        return found

    return make
