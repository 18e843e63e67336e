"""References to a record under an id that it had before: they are read as what it is called now.

A record that is there under the id is always meant. An id that two records had means neither of them.
"""

import re
from collections.abc import Callable, Container, Iterator, Mapping
from typing import Any

from paddock_tui.records.edits import Change, Edit, Rekey
from paddock_tui.records.errors import InputError
from paddock_tui.records.former_ids import FORMER
from paddock_tui.records.paths import ANY, FOLDERS, Path, Ref
from paddock_tui.store.data import lookup, same
from paddock_tui.store.references import KEYED_BY, reference_fields

NAMES_FORMER = re.compile(rb'^[ \t]*"?was"?[ \t]*=', re.MULTILINE)
"""What stands in the bytes of every record that had another id."""


class FormerIds:
    """What ids meant before renames. `there` gives the ids of a kind, `had` its records with former ids.

    `had` may leave out what has none. It is asked when a reference is met that names nothing.
    """

    def __init__(
        self,
        there: Callable[[str], Container[str]],
        had: Callable[[str], Iterator[tuple[Ref, tuple[str, ...]]]],
    ) -> None:
        self._there, self._had = there, had
        self._claims: dict[str, dict[str, list[Ref]]] = {}
        self.state = object()
        """Another one whenever an id may mean something else than before."""

    def renew(self) -> None:
        """Look again when next asked: records came or went, or what one was called is written otherwise."""
        self._claims = {}
        self.state = object()

    def take(self, other: "FormerIds") -> None:
        """Begin with what another knows: it stands until this one is renewed."""
        self._claims, self.state = dict(other._claims), other.state

    def current(self, ref: Ref) -> Ref:
        """Return the record that is meant by an id now: another one where it was renamed."""
        if ref.kind not in FOLDERS or ref.id in self._there(ref.kind):
            return ref
        claims = self.claims(ref)
        return claims[0] if len(claims) == 1 else ref

    def claims(self, ref: Ref) -> list[Ref]:
        """List the records that had an id before."""
        return self._claims_of(ref.kind).get(ref.id, [])

    def _claims_of(self, kind: str) -> dict[str, list[Ref]]:
        # Held in a name of its own: another thread may renew meanwhile, and this is of before.
        claims = self._claims
        if kind not in claims:
            found: dict[str, list[Ref]] = {}
            for one, names in self._had(kind):
                for name in names:
                    found.setdefault(name, []).append(one)
            claims[kind] = found
        return claims[kind]

    def troubles(self, name_of: Callable[[Ref], str]) -> Iterator[InputError]:
        """List the ids that may mean more than one record."""
        for kind in FOLDERS:
            for name, claims in self._claims_of(kind).items():
                here = [*claims, *([Ref(kind, name)] if name in self._there(kind) else [])]
                if len(here) > 1:
                    yield InputError(
                        f'"{name}" was the id of {" and of ".join(one.id for one in claims)}'
                        + (f", and there is a {kind} {name}" if here[1:] != claims[1:] else ""),
                        "one record for each id, so that it is known what is meant",
                        f"take it out of `{FORMER}` where it does not belong",
                        file=name_of(claims[-1]),
                        path=(FORMER,),
                    )

    def resolved(self, kind: str, data: dict[str, Any]) -> dict[str, Any]:
        """Return the data of a record with what it refers to called as it is now; the same where it is."""
        for path, old, new in list(self._moved(kind, data)):
            data = _replaced(data, path, old, new)
        return data

    def _moved(self, kind: str, data: Mapping[str, Any]) -> Iterator[tuple[Path, str, str]]:
        """List what is called otherwise now: values first, then keys from the inside out."""
        for pattern, wanted in reference_fields(kind):
            for path in _fitting(data, pattern):
                old = lookup(data, path)
                new = self.current(Ref(wanted, old)).id if isinstance(old, str) else old
                if isinstance(old, str) and isinstance(new, str) and new != old:
                    yield path, old, new
        table, kinds = KEYED_BY.get(kind, ("", ()))
        for depth in range(len(kinds), 0, -1):
            for path in matching(data, (table, *[ANY] * depth)) if table else ():
                new = self.current(Ref(kinds[depth - 1], path[-1])).id
                if new != path[-1] and new not in _keys(lookup(data, path[:-1])):
                    yield path, "", new

    def as_written(self, change: Change | Rekey, data: dict[str, Any]) -> Change | Rekey:
        """Return a change to the file that holds this, where that still calls a record as it was before."""
        read = self.resolved(change.ref.kind, data)
        if read is data:
            return change
        if isinstance(change, Rekey):
            return Rekey(change.ref, self.written_path(change.ref.kind, data, change.path), change.to)
        edits = (self._written_edit(change.ref.kind, data, read, one) for one in change.edits)
        return Change(change.ref, tuple(edits))

    def _written_edit(self, kind: str, data: dict[str, Any], read: dict[str, Any], edit: Edit) -> Edit:
        path = self.written_path(kind, data, edit.path)
        old = lookup(data, path)
        known = same(lookup(read, edit.path), edit.old)
        return Edit(path, old if known else edit.old, edit.new, edit.raw)

    def written_path(self, kind: str, data: dict[str, Any], path: Path) -> Path:
        """Return a path with the keys under which the file holds what it leads to."""
        table, kinds = KEYED_BY.get(kind, ("", ()))
        found: Path = path[:1]
        for place, key in enumerate(path[1:]):
            held = _keys(lookup(data, found))
            if path[0] == table and place < len(kinds) and key not in held:
                key = next((one for one in held if self.current(Ref(kinds[place], one)).id == key), key)
            found = (*found, key)
        return found


def names_in(kind: str, data: Mapping[str, Any]) -> Iterator[Ref]:
    """List the records that the data of one names, as values and as keys."""
    for pattern, wanted in reference_fields(kind):
        names = (lookup(data, path) for path in _fitting(data, pattern))
        yield from (Ref(wanted, name) for name in names if isinstance(name, str))
    table, kinds = KEYED_BY.get(kind, ("", ()))
    for depth in range(1, len(kinds) + 1):
        for path in matching(data, (table, *[ANY] * depth)):
            yield Ref(kinds[depth - 1], path[-1])


def matching(data: Any, pattern: Path, at: Path = ()) -> list[Path]:
    """List the paths in data that fit a pattern; ANY stands for every key."""
    if not pattern:
        return [at]
    if not isinstance(data, Mapping):
        return []
    keys = list(data) if pattern[0] == ANY else [pattern[0]] if pattern[0] in data else []
    return [path for key in keys for path in matching(data[key], pattern[1:], (*at, key))]


def _fitting(data: Mapping[str, Any], pattern: Path) -> list[Path]:
    """List the paths at which a pattern may have a value: one of a single key is such a path itself."""
    return [pattern] if len(pattern) == 1 else matching(data, pattern)


def _keys(table: object) -> list[str]:
    return list(table) if isinstance(table, Mapping) else []


def _replaced(data: dict[str, Any], path: Path, old: str, new: str) -> dict[str, Any]:
    """Return data with the value at a path, or where `old` is empty its last key, replaced."""
    first, rest = path[0], path[1:]
    if rest:
        return {
            key: _replaced(value, rest, old, new) if key == first else value for key, value in data.items()
        }
    if old:
        return {**data, first: new}
    return {new if key == first else key: value for key, value in data.items()}
