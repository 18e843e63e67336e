"""Which records can be read as a whole: those that were found to be are not read again to say so.

That a record was is noted in the user's cache, for its file as it was, a session's bike and this program as
they were. What is read only to be looked at for this is not kept in memory.
"""

from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from pathlib import Path as FilePath
from typing import TYPE_CHECKING, Any, Protocol

from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.store.digests import digest
from paddock_tui.store.former_ids import FormerIds
from paddock_tui.store.kept_heads import head_of
from paddock_tui.store.listing import Stamp, stamp_of
from paddock_tui.store.loaded import Loaded, record_of, text_of
from paddock_tui.store.program import program
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
        """Count the records that would have to be read; what is noted of the others is taken over."""
        left = self._left()
        self._take_noted(left, {})
        return sum(1 for ref in left if ref not in self._sound)

    def troubles(self) -> Iterator[InputError]:
        """List what cannot be read in the records, kind by kind."""
        # What reads many quickly is loaded with what asks for all.
        from paddock_tui.store.untroubled_files import UntroubledFiles

        marks: dict[str, str] = {}
        self._take_noted(self._left(), marks)
        with UntroubledFiles(self._files) as quick:
            for ref in self._files.all():
                yield from self._troubles(ref, self._against(ref, marks), quick)
        self._files.rows.write()

    def _left(self) -> list[Ref]:
        """List the records of which it is not known in this run that they have no trouble."""
        return [ref for ref in self._files.all() if ref not in self._sound]

    def _take_noted(self, refs: Iterable[Ref], marks: dict[str, str]) -> None:
        """Take over which records are noted to have been read whole, of those not in memory.

        Of sessions all are looked up at once.
        """
        files = self._files
        refs = [ref for ref in refs if not files.is_in_memory(ref)]
        for ref, bike, against in files.rows.noted_sound([ref for ref in refs if ref.kind == "session"]):
            if against and against == self._mark_of(bike, marks):
                self._sound[ref] = against
        for ref in refs:
            mark = self._against(ref, marks) if ref.kind != "session" else None
            if mark is not None and files.rows.is_sound(ref, mark):
                self._sound[ref] = mark

    def _troubles(self, ref: Ref, against: str | None, quick: "UntroubledFiles") -> tuple[InputError, ...]:
        files = self._files
        if against is not None and self._sound.get(ref) == against:
            return ()
        noted = against is not None and not files.is_in_memory(ref) and files.rows.is_sound(ref, against)
        found = () if noted else self._read(ref, against, quick)
        if against is not None and not found:
            self._sound[ref] = against
            if not noted and ref.kind == "session":
                files.rows.note_sound(ref, against)
        return found

    def _read(self, ref: Ref, against: str | None, quick: "UntroubledFiles") -> tuple[InputError, ...]:
        """Return what cannot be read in a record; what is not in memory is not kept there for it."""
        files = self._files
        found = quick.read(ref)
        if found is not None:
            files.rows.indexed.setdefault(ref, found.stamp)
            self._note(ref, found.stamp, found.data, against or "")
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
        troubles = record_of(files.tree, ref, path, raw, bike).troubles
        if raw.trouble is None:
            self._note(ref, stamp, raw.written, against or "" if not troubles else "")
        return troubles

    def _note(self, ref: Ref, stamp: Stamp, written: Mapping[str, Any], sound: str) -> None:
        if ref.kind != "session":
            self._files.rows.others.note(ref, stamp, head_of(written), sound)

    def _against(self, ref: Ref, marks: dict[str, str]) -> str | None:
        """Return what decides whether a record can be read, beside its own file: for most this program alone.

        None where that is not known without reading it.
        """
        if ref.kind not in ("session", "profile"):
            return marks.setdefault("", _mark("", ""))
        row = self._files.rows.of(ref) if ref.kind == "session" else None
        return self._mark_of(row.bike, marks) if row is not None else None

    def _mark_of(self, bike: str, marks: dict[str, str]) -> str:
        if bike not in marks:
            marks[bike] = _mark(bike, _decides(self._files.read(Ref("bike", bike)) if bike else None))
        return marks[bike]


DECIDING = ("controls",)
"""What of a bike decides whether a session of it can be read: all else of it may be edited meanwhile."""


def _decides(bike: Loaded | None) -> str:
    if bike is None or bike.record is None:
        return ""
    return repr([bike.data.get(key) for key in DECIDING])


@cache
def _mark(bike: str, decides: str) -> str:
    """Return a mark of what of a bike decides, and of this program."""
    return digest("\0".join((bike, decides, program(*_READS))).encode(), size=8)
