"""The files of a garage that is gone through once: of many seasons only the latest read are held."""

import os
from collections.abc import Container, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.listing import Stamp
from paddock_tui.store.loaded import FileText, Loaded, Released

if TYPE_CHECKING:
    from paddock_tui.store.untroubled_files import UntroubledFiles

HELD = 64
"""Sessions that are held: those of the day at hand, which are looked at again, are far fewer."""

_READ_ANEW = ("session", "profile")
"""What is read as another record says; of all others the first that was read stands."""


class _Unwatched(Released):
    """Files that are let go of for good: each is gone through once, and nothing looks for changes of them."""

    def took(self, _ref: Ref, raw: FileText, _there: Mapping[str, Container[str]]) -> bool:
        """Return whether a file may be let go of."""
        return raw.stamp is not None and raw.data is raw.written


class PassingFiles(GarageFiles):
    """Files of which no more than a few sessions are in memory; an older one is read anew.

    All others are taken as they were when they were first read: each review asks for the same lists, bikes
    and riders again, and all reviews of one run rest on the same ones.
    """

    def __init__(self, root: Path) -> None:
        super().__init__(root)
        self._released = _Unwatched()
        self._latest: dict[Ref, None] = {}
        self._quick: UntroubledFiles | None = None
        self._untroubled: dict[Ref, tuple[FileText, Record]] = {}
        """What was made of the files that were read quickly and wait to be asked for as records."""
        self._settled: dict[Ref, Loaded] = {}
        self._settled_at: object = None
        """What all was called when these were read."""

    @contextmanager
    def looked_at_only(self) -> Iterator[None]:
        """Read records quickly while this lasts: their data is not to be changed."""
        from paddock_tui.store.untroubled_files import UntroubledFiles

        with UntroubledFiles(self) as self._quick:
            try:
                yield
            finally:
                self._quick = None

    def read(self, ref: Ref) -> Loaded | None:
        """Read a record, or give it as remembered; None where there is no such file."""
        if ref.kind in _READ_ANEW or self.staged:
            return super().read(ref)
        if self._settled_at is not self.former.state:
            self._settled, self._settled_at = {}, self.former.state
        known = self._settled.get(ref)
        if known is None:
            known = super().read(ref)
            if known is not None:
                self._settled[ref] = known
        return known

    def _read_raw(self, ref: Ref) -> FileText | None:
        known = self._raw.get(ref) if ref not in self.staged else None
        if known is not None and ref.kind != "session":
            return self._as_called(ref, known)
        stands = known is not None and known.stamp is not None and known.stamp == self.stamp(ref)
        found = self._as_called(ref, known) if stands and known is not None else super()._read_raw(ref)
        if ref.kind == "session" and found is not None:
            self._latest.pop(ref, None)
            self._latest[ref] = None
            if len(self._latest) > HELD:
                oldest = next(iter(self._latest))
                del self._latest[oldest]
                self.let_go(oldest)
        return found

    def let_go(self, ref: Ref) -> None:
        """Hold a session in memory no more, nor what was made of it; all others are asked for again."""
        if ref.kind == "session":
            super().let_go(ref)
            self._untroubled.pop(ref, None)

    def _text_of(self, ref: Ref, path: Path, stamp: Stamp) -> FileText:
        found = self._quick.read(ref) if self._quick is not None else None
        if found is None:
            return super()._text_of(ref, path, stamp)
        # It calls all that it names as these are called by now, or it had not been read quickly.
        raw = FileText(found.stamp, found.text, found.data, None, found.data, self.former.state)
        self._untroubled[ref] = raw, found.record
        return raw

    def _structure(self, ref: Ref, raw: FileText) -> Loaded:
        quickly, record = self._untroubled.pop(ref, (None, None))
        path = self.path_of(ref)
        if quickly is not raw or raw.data is not raw.written or path is None:
            return super()._structure(ref, raw)
        if ref.kind == "session":
            self.sessions_read.add(ref.id)
        return Loaded(ref, path, self._name_in(path), raw.text, raw.data, record, possible=record)

    def _name_in(self, path: Path) -> str:
        """Return the name of a file as messages say it: most stand plainly below the garage's folder."""
        name, begin = str(path), f"{self.root}{os.sep}"
        return name[len(begin) :] if name.startswith(begin) else os.path.relpath(path, self.root)
