"""The files of a garage that is gone through once: of many seasons only the latest read are held."""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.index import Stamp
from paddock_tui.store.loaded import FileText, Loaded

if TYPE_CHECKING:
    from paddock_tui.store.untroubled_files import UntroubledFiles

HELD = 64
"""Sessions and days that are held: those of the day at hand, which are looked at again, are far fewer."""

_MANY = ("session", "day")
"""The kinds that grow with every season."""


class PassingFiles(GarageFiles):
    """Files of which no more than a few sessions and days are in memory; an older one is read anew.

    All others are taken as they were when they were first read: each review asks for the same lists, bikes
    and riders again, and all reviews of one run rest on the same ones.
    """

    def __init__(self, root: Path) -> None:
        super().__init__(root)
        self._latest: dict[Ref, None] = {}
        self._quick: UntroubledFiles | None = None
        self._untroubled: dict[Ref, tuple[FileText, Record]] = {}
        """What was made of the files that were read quickly and wait to be asked for as records."""

    @contextmanager
    def looked_at_only(self) -> Iterator[None]:
        """Read sessions and days quickly while this lasts: their data is not to be changed."""
        from paddock_tui.store.untroubled_files import UntroubledFiles

        with UntroubledFiles(self) as self._quick:
            try:
                yield
            finally:
                self._quick = None

    def _read_raw(self, ref: Ref) -> FileText | None:
        known = self._raw.get(ref) if ref.kind not in _MANY and ref not in self.staged else None
        if known is not None:
            return self._as_called(ref, known)
        found = super()._read_raw(ref)
        if ref.kind in _MANY and found is not None:
            self._latest.pop(ref, None)
            self._latest[ref] = None
            if len(self._latest) > HELD:
                oldest = next(iter(self._latest))
                del self._latest[oldest]
                self.let_go(oldest)
        return found

    def let_go(self, ref: Ref) -> None:
        """Hold a record in memory no more, nor what was made of it."""
        super().let_go(ref)
        self._untroubled.pop(ref, None)

    def _text_of(self, ref: Ref, path: Path, stamp: Stamp) -> FileText:
        found = self._quick.read(ref) if self._quick is not None and ref.kind in _MANY else None
        if found is None:
            return super()._text_of(ref, path, stamp)
        raw = FileText(found.stamp, found.text, found.data)
        self._untroubled[ref] = raw, found.record
        return raw

    def _structure(self, ref: Ref, raw: FileText) -> Loaded:
        quickly, record = self._untroubled.pop(ref, (None, None))
        path = self.path_of(ref)
        if quickly is not raw or raw.data is not raw.written or path is None:
            return super()._structure(ref, raw)
        if ref.kind == "session":
            self.sessions_read.add(ref.id)
        name = os.path.relpath(path, self.root)
        return Loaded(ref, path, name, raw.text, raw.data, record, possible=record)
