"""Records of bygone seasons, read one after the other: of each only what it says is wanted, not its file."""

from collections import OrderedDict
from functools import cache
from os import stat_result
from pathlib import Path
from types import TracebackType

from paddock_tui.records.bike import Bike
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.records.untroubled import untroubled
from paddock_tui.store.everyday import in_blocks
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.guarded import NotRead, read_at
from paddock_tui.store.index import Stamp
from paddock_tui.store.lines import BOM
from paddock_tui.store.loaded import FileText, stamp_in
from paddock_tui.store.reading import LARGEST
from paddock_tui.store.references import KEYED_BY, reference_fields
from paddock_tui.store.tree import TreePlace, release

_OPEN = 8
"""Folders that are held open: sessions lie in one a year."""


class Bygone:
    """Reads records of a garage quickly while it is entered, and lets go of them at once.

    A record that takes a closer look, and one that is in memory, is read as any other and then let go of.
    """

    def __init__(self, files: GarageFiles) -> None:
        self._files = files
        self._folders: OrderedDict[Path, int] = OrderedDict()
        self._bikes: dict[str, Bike | None] = {}

    def __enter__(self) -> "Bygone":
        return self

    def __exit__(
        self, _type: type[BaseException] | None, _error: BaseException | None, _at: TracebackType | None
    ) -> None:
        while self._folders:
            release(self._folders.popitem()[1])

    def read(self, ref: Ref) -> Record | None:
        """Return a record without the figures that cannot be; None where it cannot be read."""
        found = self._quickly(ref)
        if found is None:
            loaded = self._files.read(ref)
            found = loaded.possible if loaded is not None else None
            self._files.let_go(ref)
        return found

    def _quickly(self, ref: Ref) -> Record | None:
        files = self._files
        place = files.place_of(ref)
        if place is None or files.is_in_memory(ref):
            return None
        found = self._text(*place)
        if found is None:
            return None
        stamp, text = found
        data = in_blocks(text.removeprefix(BOM))
        if data is None or (_names_below(ref.kind) and files.former.resolved(ref.kind, data) is not data):
            return None
        record = untroubled(ref.kind, data, self._bike(ref, data.get("bike")))
        if record is None or not _noted(files, ref, FileText(stamp, text, data, None, data)):
            return None
        return record

    def _text(self, folder: Path, name: str) -> tuple[Stamp, str] | None:
        """Read a file that is no link; None where it takes a closer look."""
        seen: list[stat_result] = []
        try:
            data = read_at(TreePlace(self._folder(folder), name), LARGEST, seen.append)
            return stamp_in(seen[0]), data.decode("utf-8")
        except (OSError, RuntimeError, NotRead, UnicodeDecodeError):
            return None

    def _folder(self, path: Path) -> int:
        """Return the handle of a folder. Raises OSError."""
        found = self._folders.get(path)
        if found is None:
            if len(self._folders) >= _OPEN:
                release(self._folders.popitem(last=False)[1])
            found = self._folders[path] = self._files.tree.folder(path)
        return found

    def _bike(self, ref: Ref, name: object) -> Bike | None:
        """Return the bike by whose controls a record is read."""
        if ref.kind not in ("session", "profile") or not isinstance(name, str):
            return None
        if name not in self._bikes:
            loaded = self._files.read(Ref("bike", name))
            self._bikes[name] = loaded.record if loaded and isinstance(loaded.record, Bike) else None
        return self._bikes[name]


@cache
def _names_below(kind: str) -> bool:
    """Return whether tables of a kind name other records; those named above all tables are seen to apart."""
    return kind in KEYED_BY or any(len(path) > 1 for path, _ in reference_fields(kind))


def _noted(files: GarageFiles, ref: Ref, raw: FileText) -> bool:
    """Note what was read of a record, which goes on being looked at; gives whether it may be let go of.

    It reads as before where its row, or who let go of it, knew the very same file.
    """
    if not files._released.forget(ref, raw.stamp) and files.rows.indexed.get(ref) != raw.stamp:
        files._touch(ref)
    if raw.stamp is None or not files._released.took(ref, raw, files._files()):
        return False
    files.rows.indexed[ref] = raw.stamp
    if ref.kind == "session":
        files.sessions_read.add(ref.id)
    return True
