"""Records of bygone seasons, read one after the other: of each only what it says is wanted, not its file."""

from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.loaded import FileText
from paddock_tui.store.untroubled_files import UntroubledFile, UntroubledFiles


class Bygone(UntroubledFiles):
    """Reads records of a garage quickly while it is entered, and lets go of them at once.

    A record that takes a closer look, and one that is in memory, is read as any other and then let go of.
    What somebody made a record of before stays: a review of it stands while that is the very same object.
    """

    def __init__(self, files: GarageFiles) -> None:
        super().__init__(files)
        self._garage = files

    def possible(self, ref: Ref) -> Record | None:
        """Return a record without the figures that cannot be; None where it cannot be read."""
        found = self.read(ref)
        if found is not None and _noted(self._garage, ref, found):
            return found.record
        stays = ref in self._garage._loaded
        loaded = self._garage.read(ref)
        if not stays:
            self._garage.let_go(ref)
        return loaded.possible if loaded is not None else None


def _noted(files: GarageFiles, ref: Ref, read: UntroubledFile) -> bool:
    """Note what was read of a record, which goes on being looked at; gives whether it may be let go of.

    It reads as before where its row, or who let go of it, knew the very same file.
    """
    if not files._released.forget(ref, read.stamp) and files.rows.indexed.get(ref) != read.stamp:
        files._touch(ref)
    if not files._released.took(
        ref, FileText(read.stamp, read.text, read.data, None, read.data), files.there()
    ):
        return False
    files.rows.indexed[ref] = read.stamp
    if ref.kind == "session":
        files.sessions_read.add(ref.id)
    return True
