"""The files of a garage that is gone through once: of many seasons only the latest read are held."""

from pathlib import Path

from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.loaded import FileText

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

    def _read_raw(self, ref: Ref) -> FileText | None:
        known = self._raw.get(ref) if ref.kind not in _MANY and ref not in self._staged else None
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
