"""What the sessions of a garage say in short: out of memory, else the index, else their files."""

import contextlib
import operator
from collections.abc import Callable, Container, Hashable, Iterable, Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Any, TypeVar

from paddock_tui.records.paths import Ref
from paddock_tui.store.index import Noted, SessionIndex, SessionRow, row_of
from paddock_tui.store.listing import NONE, RecordFiles, Stamp
from paddock_tui.store.tree import Tree

if TYPE_CHECKING:
    from paddock_tui.store.kept_heads import KeptHeads

D = TypeVar("D")

_MANY = 20
"""So many rows that are not known yet are taken out of the index at once."""

_Named = tuple[str, str, str, str]
"""The bike, rider, tyre set and day of a session."""


class SessionRows:
    """Remembers each session's row until its record is touched. Nothing is looked at that nobody asks for.

    `tree` is the garage's folder, `there` are the files, `stamp_of` looks at one, `held` gives what data
    of them is in memory, `data_of` reads it as it is written; `current` says what a record is called by now.
    The index holds what is written.
    """

    def __init__(
        self,
        tree: Tree,
        there: Callable[[], Mapping[str, RecordFiles]],
        stamp_of: Callable[[Ref], Stamp | None],
        held: Callable[[Iterable[Ref]], Mapping[Ref, Mapping[str, Any]]],
        data_of: Callable[[Ref], tuple[Stamp | None, Mapping[str, Any]]],
        current: Callable[[Ref], Ref],
    ) -> None:
        self._tree, self._there, self._stamp_of = tree, there, stamp_of
        self._held, self._data_of = held, data_of
        self._current = current
        self._renamed: set[Ref] = set()
        self._called: dict[_Named, _Named] = {}
        """What the records are called by now that sessions name together, as all of a day do."""
        self._index: SessionIndex | None = None
        self._others: list[KeptHeads] = []
        self._rows: dict[Ref, SessionRow | None] = {}
        self._doubted: set[Ref] = set()
        self._version = 0
        self._writes = True
        self._derived: dict[Hashable, tuple[tuple[Ref, ...], int, Any]] = {}
        self.indexed: dict[Ref, Stamp] = {}
        """The stamps of the files whose rows are the index's: they were not read in this run."""

    def of(self, ref: Ref) -> SessionRow | None:
        """Return what a session says; None where it is retired or its date is not known."""
        if ref in self._rows and ref not in self._doubted:
            return self._rows[ref]
        self._doubted.discard(ref)
        found = self._as_called(ref, self._found(ref))
        if ref in self._rows and found != self._rows[ref]:
            self._version += 1
        self._rows[ref] = found
        return found

    def each(self, refs: Sequence[Ref]) -> list[SessionRow | None]:
        """Return what each of many sessions says, as `of` does."""
        if not self._doubted:
            with contextlib.suppress(KeyError):
                return list(map(self._rows.__getitem__, refs))
        unknown = [ref for ref in refs if ref not in self._rows]
        if len(unknown) >= _MANY:
            held = self._held(unknown)
            self._take_noted([ref for ref in unknown if ref not in held] if held else unknown)
        rows, doubted = self._rows, self._doubted
        if not doubted:
            with contextlib.suppress(KeyError):
                return list(map(rows.__getitem__, refs))
        return [rows[ref] if ref in rows and ref not in doubted else self.of(ref) for ref in refs]

    def _take_noted(self, refs: Sequence[Ref]) -> None:
        """Take rows out of the index at once, of those files that are as noted."""
        noted = self._noted(refs)
        if noted is None:
            return
        self.indexed.update(zip(noted.refs, noted.stamps, strict=True))
        self._rows.update(zip(noted.refs, noted.rows, strict=True))
        if self._doubted:
            self._doubted.difference_update(noted.refs)
        there = self._there()
        others = zip(_KINDS, zip(*{row[_NAMES] for row in noted.rows}, strict=True), strict=False)
        if any(set(names).difference(there[kind], ("",)) for kind, names in others):
            for ref, row in zip(noted.refs, noted.rows, strict=True):
                self._rows[ref] = self._as_called(ref, row)

    def _noted(self, refs: Sequence[Ref]) -> Noted | None:
        """Return what is noted of those files, of many, that are still the same; None without an index."""
        index = self._opened()
        if index is None:
            return None
        try:
            stamps = self._there().get("session", NONE).stamps([ref.id for ref in refs])
        except (KeyError, OSError):
            # One is gone since they were listed: each is looked at by itself.
            return None
        return index.all_noted(refs, stamps)

    def noted_sound(self, refs: Sequence[Ref]) -> Iterator[tuple[Ref, str, str]]:
        """Give those sessions, of many, that are as noted: each with its bike, and what it was read with."""
        index, noted = self._opened(), self._noted(refs)
        if index is None or noted is None:
            return
        for ref, sound in zip(noted.refs, index.sound(noted.refs), strict=True):
            row = self._rows.get(ref)
            if row is not None and ref not in self._doubted:
                yield ref, row.bike, sound

    @property
    def others(self) -> "KeptHeads":
        """What is noted of all other records, which those that began with this one note in too."""
        if not self._others:
            # Most runs ask for none of them.
            from paddock_tui.store.kept_heads import KeptHeads

            self._others.append(KeptHeads(self._tree))
        return self._others[0]

    def former_ids(self, ref: Ref) -> tuple[str, ...] | None:
        """Return the ids that a record had before; None where its file would have to be read for it."""
        if ref.kind != "session":
            head = self.others.head(ref, self._stamp_of(ref))
            return head.was if head is not None else None
        row = self._rows.get(ref) if ref not in self._doubted else None
        if row is None:
            index = self._opened()
            stamp = self._stamp_of(ref) if index is not None else None
            row = index.row(ref.id, stamp) if index is not None and stamp is not None else None
        return row.was if row is not None else None

    def is_sound(self, ref: Ref, against: str) -> bool:
        """Return whether a record is noted to have been read whole, a session with its bike as it is."""
        if ref.kind != "session":
            return self.others.is_sound(ref, self._stamp_of(ref), against)
        index = self._opened()
        stamp = self._stamp_of(ref) if index is not None else None
        return index is not None and stamp is not None and index.is_sound(ref.id, stamp, against)

    def note_sound(self, ref: Ref, against: str) -> None:
        """Note that a session was read whole."""
        index = self._opened()
        if index is not None:
            index.note_sound(ref.id, self._stamp_of(ref), against)

    def forget(self, ref: Ref) -> None:
        """Look at a record anew when it is next asked for; all others than sessions have no row."""
        if ref.kind == "session":
            self._doubted.add(ref)
        self.indexed.pop(ref, None)

    def doubt_names(self, there: Mapping[str, Container[str]]) -> None:
        """Look again at sessions whose names are none of those that are `there`, or were read as others."""
        self._called = {}
        for ref, row in self._rows.items():
            if row is not None and (ref in self._renamed or _names_another(row, there)):
                self._doubted.add(ref)

    def _as_called(self, ref: Ref, row: SessionRow | None) -> SessionRow | None:
        """Return a row with the records that it names called as they are by now."""
        if row is None:
            return None
        names = _NAMED(row)
        called = self._called.get(names)
        if called is None:
            bike, rider, tyres, day = (
                self._current(Ref(kind, name)).id if name else ""
                for kind, name in zip(_KINDS, names, strict=True)
            )
            called = self._called[names] = bike, rider, tyres, day
        if called == names:
            return row
        self._renamed.add(ref)
        bike, rider, tyres, day = called
        return row._replace(bike=bike, rider=rider, tyres=tyres, day=day)

    def derived(self, refs: tuple[Ref, ...], key: Hashable, make: Callable[[], D]) -> D:
        """Return what is made of the rows of these sessions, made anew only when a row changed."""
        for ref in list(self._doubted):
            self.of(ref)
        known = self._derived.get(key)
        if known is None or known[0] is not refs or known[1] != self._version:
            made = make()
            known = self._derived[key] = refs, self._version, made
        found: D = known[2]
        return found

    def take(self, other: "SessionRows") -> None:
        """Begin with what another remembers."""
        self._rows, self.indexed, self._index = dict(other._rows), dict(other.indexed), other._index
        self._doubted, self._renamed = set(other._doubted), set(other._renamed)
        self._version, self._derived = other._version, dict(other._derived)
        self._others = other._others

    def part(self) -> None:
        """Go on by itself, in another thread: the index is opened anew, and never written."""
        self._index, self._writes = None, False

    def write(self) -> None:
        """Write the index where enough is new in it."""
        if not self._writes:
            return
        if self._index is not None:
            self._index.write()
        for others in self._others:
            others.write()

    def _found(self, ref: Ref) -> SessionRow | None:
        held = self._held((ref,))
        if ref in held:
            return row_of(held[ref])
        index = self._opened()
        stamp = self._stamp_of(ref) if index is not None else None
        noted = index.row(ref.id, stamp) if index is not None and stamp is not None else None
        if noted is not None and stamp is not None:
            self.indexed[ref] = stamp
            return noted
        stamp, data = self._data_of(ref)
        row = row_of(data)
        if index is not None and stamp is not None and row is not None:
            index.note(ref.id, stamp, row)
        return row

    def _opened(self) -> SessionIndex | None:
        if self._index is None:
            try:
                self._index = SessionIndex(self._tree.real)
            except (OSError, RuntimeError):
                return None
        return self._index


_KINDS = ("bike", "rider", "tyres", "day")
"""The kinds of records that a session names, each under its own name."""

_NAMES = slice(SessionRow._fields.index(_KINDS[0]), SessionRow._fields.index(_KINDS[-1]) + 1)
"""Where these stand in a row, one beside the other."""

_NAMED: Callable[[SessionRow], _Named] = operator.attrgetter(*_KINDS)


def _names_another(row: SessionRow, there: Mapping[str, Container[str]]) -> bool:
    return any(
        name and name not in there.get(kind, ()) for kind, name in zip(_KINDS, _NAMED(row), strict=True)
    )
