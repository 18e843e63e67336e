"""Files of records in which all is well, read quickly one after the other; all others take a closer look."""

from collections import OrderedDict
from collections.abc import Mapping
from functools import cache
from os import stat_result
from pathlib import Path
from types import TracebackType
from typing import Any, NamedTuple, Protocol

from paddock_tui.records.bike import Bike
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.records.untroubled import untroubled
from paddock_tui.store.everyday import in_blocks
from paddock_tui.store.former_ids import FormerIds
from paddock_tui.store.guarded import NotRead, read_at
from paddock_tui.store.lines import BOM
from paddock_tui.store.listing import Stamp, stamp_in
from paddock_tui.store.loaded import Loaded
from paddock_tui.store.reading import LARGEST
from paddock_tui.store.references import KEYED_BY, reference_fields
from paddock_tui.store.tree import Tree, TreePlace, release

_OPEN = 8
"""Folders that are held open: sessions lie in one a year."""


class RecordSource(Protocol):
    """What is asked of the files of a garage."""

    tree: Tree
    former: FormerIds

    def place_of(self, ref: Ref) -> tuple[Path, str] | None:
        """Return the folder and the name of a record's file."""

    def is_in_memory(self, ref: Ref) -> bool:
        """Return whether a record was read, and is remembered."""

    def read(self, ref: Ref) -> Loaded | None:
        """Read a record."""


class UntroubledFile(NamedTuple):
    """A record's file: its stamp, text and data, and the record. The data is for looking at only."""

    stamp: Stamp
    text: str
    data: dict[str, Any]
    record: Record


class UntroubledFiles:
    """Reads files of a garage while it is entered. Folders stay open meanwhile, bikes are read once."""

    def __init__(self, files: RecordSource, bikes: Mapping[str, Bike] | None = None) -> None:
        self._files = files
        self._folders: OrderedDict[Path, int] = OrderedDict()
        self._bikes: dict[str, Bike | None] = dict(bikes or {})
        self._current: set[tuple[str, str]] = set()
        """The kinds and ids of records that are called so by now; of sessions each is named once."""

    def __enter__(self) -> "UntroubledFiles":
        return self

    def __exit__(
        self, _type: type[BaseException] | None, _error: BaseException | None, _at: TracebackType | None
    ) -> None:
        while self._folders:
            release(self._folders.popitem()[1])

    def read(self, ref: Ref) -> UntroubledFile | None:
        """Read a record that is not in memory; None where it takes a closer look."""
        place = self._files.place_of(ref)
        if place is None or self._files.is_in_memory(ref):
            return None
        found = self._text(*place)
        if found is None:
            return None
        stamp, text = found
        data = in_blocks(text.removeprefix(BOM))
        if data is None or not self._is_as_called(ref.kind, data):
            return None
        record = untroubled(ref.kind, data, self._bike(ref, data.get("bike")))
        return UntroubledFile(stamp, text, data, record) if record is not None else None

    def _is_as_called(self, kind: str, data: dict[str, Any]) -> bool:
        """Return whether a record calls all that it names as these are called by now."""
        former = self._files.former
        if _names_below(kind):
            return former.resolved(kind, data) is data
        for path, wanted in reference_fields(kind):
            name = data.get(path[0])
            if not isinstance(name, str) or (wanted, name) in self._current:
                continue
            ref = Ref(wanted, name)
            if former.current(ref) is not ref:
                return False
            if wanted != "session":
                self._current.add((wanted, name))
        return True

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
    """Return whether tables of a kind name other records, and not only values above all tables."""
    return kind in KEYED_BY or any(len(path) > 1 for path, _ in reference_fields(kind))
