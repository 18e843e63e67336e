"""Which records can be read as a whole: those that were found to be are not read again to say so.

That a session was is noted in the index, for its file as it was, its bike's file and this program as they
were. What is read only to be looked at for this is not kept in memory.
"""

import hashlib
from collections.abc import Iterator
from functools import cache
from pathlib import Path as FilePath
from typing import TYPE_CHECKING, Protocol

from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.store.former_ids import FormerIds
from paddock_tui.store.loaded import Loaded, record_of, stamp_of, text_of
from paddock_tui.store.session_rows import SessionRows
from paddock_tui.store.tree import Tree

if TYPE_CHECKING:
    from paddock_tui.store.untroubled_files import UntroubledFiles

_READS = ("records", "quantities")
"""The packages that decide what can be read."""


class Records(Protocol):
    """What is asked of the files of a garage."""

    tree: Tree
    former: FormerIds
    rows: SessionRows

    def all(self) -> Iterator[Ref]:
        """List every record."""

    def path_of(self, ref: Ref) -> FilePath | None:
        """Return the file of a record that is there."""

    def place_of(self, ref: Ref) -> tuple[FilePath, str] | None:
        """Return the folder and the name of a record's file."""

    def is_in_memory(self, ref: Ref) -> bool:
        """Return whether a record was read, and is remembered."""

    def read(self, ref: Ref) -> Loaded | None:
        """Read a record."""


class Soundness:
    """Remembers of the records of a garage which have no trouble, until they are touched."""

    def __init__(self, files: Records) -> None:
        self._files = files
        self._sound: dict[Ref, str] = {}

    def forget(self, ref: Ref) -> None:
        """Look at a record anew when it is next asked for."""
        self._sound.pop(ref, None)

    def take(self, other: "Soundness") -> None:
        """Begin with what another knows."""
        self._sound = dict(other._sound)

    def learn(self, other: "Soundness") -> None:
        """Take over what another found of the same files since, and note it in the index."""
        for ref, against in other._sound.items():
            if ref not in self._sound:
                self._sound[ref] = against
                rows, stamp = self._files.rows, other._files.rows.indexed.get(ref)
                if stamp is not None and not self._files.is_in_memory(ref):
                    rows.indexed.setdefault(ref, stamp)
                if ref.kind == "session":
                    rows.note_sound(ref, against)
        self._files.rows.write()

    def unknown(self) -> int:
        """Count the records that would have to be looked at."""
        return sum(1 for ref in self._files.all() if ref not in self._sound)

    def troubles(self) -> Iterator[InputError]:
        """List what cannot be read in the records, kind by kind."""
        # What reads many quickly is loaded with what asks for all.
        from paddock_tui.store.untroubled_files import UntroubledFiles

        marks: dict[str, str] = {}
        with UntroubledFiles(self._files) as quick:
            for ref in self._files.all():
                yield from self._troubles(ref, self._against(ref, marks), quick)
        self._files.rows.write()

    def _troubles(self, ref: Ref, against: str | None, quick: "UntroubledFiles") -> tuple[InputError, ...]:
        files = self._files
        if against is not None and self._sound.get(ref) == against:
            return ()
        noted = against and not files.is_in_memory(ref) and files.rows.is_sound(ref, against)
        found = () if noted else self._read(ref, quick)
        if against is not None and not found:
            self._sound[ref] = against
            if against and not noted:
                files.rows.note_sound(ref, against)
        return found

    def _read(self, ref: Ref, quick: "UntroubledFiles") -> tuple[InputError, ...]:
        """Return what cannot be read in a record; what is not in memory is not kept there for it."""
        files = self._files
        found = quick.read(ref)
        if found is not None:
            files.rows.indexed.setdefault(ref, found.stamp)
            return ()
        path = files.path_of(ref)
        stamp = stamp_of(path)
        if files.is_in_memory(ref) or path is None or stamp is None:
            loaded = files.read(ref)
            return loaded.troubles if loaded is not None else ()
        raw = text_of(files.tree, path, stamp)
        raw.data = files.former.resolved(ref.kind, raw.written)
        named = raw.data.get("bike")
        bike = files.read(Ref("bike", named)) if isinstance(named, str) and ref.kind != "bike" else None
        files.rows.indexed.setdefault(ref, stamp)
        return record_of(files.tree, ref, path, raw, bike).troubles

    def _against(self, ref: Ref, marks: dict[str, str]) -> str | None:
        """Return what decides whether a record can be read, beside its own file: nothing for most.

        None where that is not known without reading it.
        """
        if ref.kind not in ("session", "profile"):
            return ""
        row = self._files.rows.of(ref) if ref.kind == "session" else None
        if row is None:
            return None
        if row.bike not in marks:
            bike = self._files.read(Ref("bike", row.bike)) if row.bike else None
            marks[row.bike] = _mark(row.bike, bike.text if bike is not None else "")
        return marks[row.bike]


@cache
def _mark(bike: str, text: str) -> str:
    """Return a mark of a bike's file and of this program."""
    return hashlib.blake2b("\0".join((bike, text, _program())).encode(), digest_size=8).hexdigest()


@cache
def _program() -> str:
    """Return what tells that this program reads otherwise than another."""
    here = FilePath(__file__).parent.parent
    files = [path for package in _READS for path in sorted((here / package).rglob("*.py"))]
    return " ".join(str(stamp_of(path)) for path in files)
