"""The files of a garage that is gone through once: of many seasons only the latest read are held."""

from pathlib import Path

from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.index import Stamp
from paddock_tui.store.loaded import FileText

HELD = 64
"""Sessions and days that are held: those of the day at hand, which are looked at again, are far fewer."""

_MANY = ("session", "day")
"""The kinds that grow with every season."""


class PassingFiles(GarageFiles):
    """Files of which no more than a few sessions and days are in memory; an older one is read anew."""

    def __init__(self, root: Path) -> None:
        super().__init__(root)
        self._latest: dict[Ref, None] = {}
        self._set_down: dict[Ref, Stamp] = {}

    def _read_raw(self, ref: Ref, path: Path | None) -> FileText | None:
        found = super()._read_raw(ref, path)
        if ref.kind in _MANY and found is not None:
            self._latest.pop(ref, None)
            self._latest[ref] = None
            if len(self._latest) > HELD:
                self._let_go(next(iter(self._latest)))
        return found

    def _let_go(self, ref: Ref) -> None:
        del self._latest[ref]
        raw = self._raw.pop(ref, None)
        self._loaded.pop(ref, None)
        if raw is not None and raw.stamp is not None:
            self._set_down[ref] = raw.stamp

    def _touch(self, ref: Ref) -> None:
        # A file that is read again as it was reads as it did: nothing that rests on it is to be made anew.
        before = self._set_down.pop(ref, None)
        if before is None or before != self.stamp(ref):
            super()._touch(ref)
