"""Records of bygone seasons that are read when something of them is asked for."""

from pathlib import Path

import attrs

from paddock_tui.records.bike import Bike
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.store.former_ids import FormerIds
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.listing import NONE, RecordFiles, stamp_of
from paddock_tui.store.loaded import Loaded, record_of, text_of
from paddock_tui.store.tree import Tree

_MANY = 4
"""What reads many quickly takes longer to get ready than a few take to be read with care."""


class LaterFiles:
    """Reads records as they lay when the garage was listed, and leaves what the garage holds in memory alone.

    A file that was changed since reads as it does now: whoever looks at the garage's files finds that.
    """

    def __init__(self, files: GarageFiles, bike: tuple[str, Bike]) -> None:
        self.tree: Tree = files.tree
        self.former: FormerIds = files.former
        self._there: dict[str, RecordFiles] = files.there()
        self._bike = bike

    def place_of(self, ref: Ref) -> tuple[Path, str] | None:
        """Return the folder and the name of a record's file."""
        return self._there.get(ref.kind, NONE).place_of(ref.id)

    def is_in_memory(self, _ref: Ref) -> bool:
        """Return that no record is: all are read anew."""
        return False

    def read(self, ref: Ref) -> Loaded | None:
        """Read a record with care; None where there is no such file."""
        place = self.place_of(ref)
        if place is None:
            return None
        path = place[0] / place[1]
        raw = text_of(self.tree, path, stamp_of(path) or (0, 0, 0, 0))
        data = self.former.resolved(ref.kind, raw.written)
        named = data.get("bike")
        bike = self._loaded_bike(named) if isinstance(named, str) and ref.kind != "bike" else None
        return record_of(self.tree, ref, path, attrs.evolve(raw, data=data), bike)

    def records(self, refs: list[Ref]) -> list[Record | None]:
        """Read records without the figures that cannot be, one by one; None for each that is lost."""
        if len(refs) < _MANY:
            return [self._with_care(ref) for ref in refs]
        from paddock_tui.store.untroubled_files import UntroubledFiles

        with UntroubledFiles(self, dict((self._bike,))) as reader:
            found = [(ref, reader.read(ref)) for ref in refs]
            return [one.record if one is not None else self._with_care(ref) for ref, one in found]

    def _with_care(self, ref: Ref) -> Record | None:
        loaded = self.read(ref)
        return loaded.possible if loaded is not None else None

    def _loaded_bike(self, name: str) -> Loaded | None:
        own, record = self._bike
        return (
            Loaded(Ref("bike", name), Path(), "", "", {}, record)
            if name == own
            else self.read(Ref("bike", name))
        )
