"""Plain data as the parser gives it: find, compare strictly, and say what an edit makes of it."""

import datetime as dt
import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any, cast

from paddock_tui.records.edits import MISSING, Edit, Missing, Value
from paddock_tui.records.paths import Path


def lookup(data: Mapping[str, Any], path: Path) -> Value | Missing:
    """Return the value at a path; MISSING where the way ends or leads through something that is no table."""
    here: Any = data
    for key in path:
        if not _is_table(here) or key not in here:
            return MISSING
        here = here[key]
    return cast("Value", here)


def blocked(data: Mapping[str, Any], path: Path) -> Value | Missing:
    """Return the value that stands where a table would have to be for this path to exist; else MISSING."""
    for length in range(1, len(path)):
        here = lookup(data, path[:length])
        if here is not MISSING and not isinstance(here, Mapping):
            return here
    return MISSING


_PLAIN = frozenset({str, int, bool})
"""What most values are: asked for first, as every edit compares and copies all of its record."""


def same(one: object, other: object) -> bool:
    """Return whether values and their types are equal at every depth: True is not 1, and 1 is not 1.0."""
    if one is other:
        return True
    if type(one) is type(other) and type(one) in _PLAIN:
        return one == other
    if _is_table(one) and _is_table(other):
        one, other = cast("Mapping[object, object]", one), cast("Mapping[object, object]", other)
        return one.keys() == other.keys() and all(same(one[key], other[key]) for key in one)
    if _is_array(one) and _is_array(other):
        one, other = cast("Sequence[object]", one), cast("Sequence[object]", other)
        return len(one) == len(other) and all(map(same, one, other))
    if type(one) is not type(other):
        return False
    if isinstance(one, float) and isinstance(other, float) and math.isnan(one):
        return math.isnan(other)
    if isinstance(one, dt.date | dt.time) and isinstance(other, dt.date | dt.time):
        return one.isoformat() == other.isoformat()  # the zone counts, not only the moment
    return one == other


def after(data: Mapping[str, Any], edit: Edit, stands: Callable[[Path], bool]) -> dict[str, Any]:
    """Return the data that an edit must give; what it does not touch is the same object in both.

    Where the last value of a table goes, the table goes too unless it `stands` by itself, that is by
    a header or as an inline table.
    """
    result = here = dict(data)
    for key in edit.path[:-1]:
        below = here.get(key, {}) if edit.new is not MISSING else here[key]
        # Only the tables on the way are others than before.
        below = here[key] = dict(below)
        here = below
    if edit.new is MISSING:
        _drop(result, edit.path, stands)
    else:
        here[edit.path[-1]] = _copy(edit.new)
    return result


def facts_between(one: Mapping[str, Any], other: Mapping[str, Any]) -> int:
    """Count the values that differ between two tables, at every depth: changed, come or gone."""
    first, second = dict(leaves(one, ())), dict(leaves(other, ()))
    return sum(
        path not in first or path not in second or not same(first[path], second[path])
        for path in {**first, **second}
    )


def leaves(table: Mapping[str, Any], at: Path = ()) -> Iterator[tuple[Path, object]]:
    """List the values of a table with their paths, at every depth."""
    for key, value in table.items():
        if isinstance(value, Mapping):
            yield from leaves(value, (*at, key))
        else:
            yield (*at, key), value


def edits_toward(mine: Mapping[str, Any], theirs: Mapping[str, Any], at: Path) -> list[Edit]:
    """List the edits that make one table like another, value by value so that comments stay."""
    edits: list[Edit] = []
    for key in dict.fromkeys((*mine, *theirs)):
        path = (*at, key)
        old: Value | Missing = mine.get(key, MISSING)
        new: Value | Missing = theirs.get(key, MISSING)
        if isinstance(old, Mapping) and isinstance(new, Mapping):
            edits += edits_toward(old, new, path)
        elif old is MISSING or new is MISSING:
            edits.append(Edit(path, old, new))
        elif isinstance(old, Mapping) or isinstance(new, Mapping):
            edits += [Edit(path, old, MISSING), Edit(path, MISSING, new)]
        elif not same(old, new):
            edits.append(Edit(path, old, new))
    return edits


def outermost_missing(data: Mapping[str, Any], path: Path) -> Path:
    """Return the shortest part of a path at which nothing stands; the path itself where all of it stands."""
    for length in range(1, len(path)):
        if lookup(data, path[:length]) is MISSING:
            return path[:length]
    return path


def _drop(data: dict[str, Any], path: Path, stands: Callable[[Path], bool]) -> None:
    for length in range(len(path), 0, -1):
        parent = cast("dict[str, Any]", lookup(data, path[: length - 1]))
        del parent[path[length - 1]]
        if parent or stands(path[: length - 1]):
            return


def _is_table(value: object) -> bool:
    # Asking whether it is any mapping takes many times as long, and what was read is mostly of this kind.
    return type(value) is dict or isinstance(value, Mapping)


def _is_array(value: object) -> bool:
    return type(value) is list or (isinstance(value, Sequence) and not isinstance(value, str | bytes))


def _copy(value: Any) -> Any:
    if type(value) in _PLAIN:
        return value
    if _is_table(value):
        return {key: _copy(item) for key, item in value.items()}
    return [_copy(item) for item in value] if _is_array(value) else value


def without_empty(data: Mapping[str, Any]) -> dict[str, Any]:
    """Leave out tables without a value: whether their headings stay is the file's affair."""
    inner = {k: without_empty(one) if isinstance(one, Mapping) else one for k, one in data.items()}
    return {key: one for key, one in inner.items() if one != {}}
