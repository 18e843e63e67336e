"""What records other than sessions say at their heads, noted by stamp so that their files are not read again.

One file in the user's cache folder, beside the index of the sessions (`store/index.py`) and believed like it:
never against a file. It holds no words of the rider.
"""

import contextlib
import datetime as dt
import json
import time
from collections.abc import Mapping
from types import MappingProxyType
from typing import Any, Final, NamedTuple

from paddock_tui.records.former_ids import former_ids
from paddock_tui.records.paths import Ref
from paddock_tui.store.cached import CACHE_TROUBLES, folder_of, read_cached, write_cached
from paddock_tui.store.listing import RESTS_NS, Stamp
from paddock_tui.store.tree import Tree

_NAME = "others.json"
_VERSION = 1
_LARGEST = 8_000_000
_MOST = 20_000
_FEWEST = 20
"""Notes that are worth writing the file anew for."""


_EMPTY: Final[Mapping[str, Any]] = MappingProxyType({})


class RecordHead(NamedTuple):
    """A record's date, whether it is retired, the names of its tables, and the ids that it had before."""

    date: dt.date | None
    retired: bool
    tables: frozenset[str]
    was: tuple[str, ...] = ()

    def as_data(self) -> Mapping[str, Any]:
        """Return the same as plain data, in which each table is empty."""
        date = {"date": self.date} if self.date is not None else {}
        tables = dict.fromkeys(self.tables, _EMPTY)
        return {**tables, **date, **({"retired": True} if self.retired else {})}


def head_of(data: Mapping[str, Any]) -> RecordHead:
    """Return the head of a record's data."""
    date = data.get("date")
    tables = frozenset(key for key, value in data.items() if isinstance(value, dict | list))
    return RecordHead(date if type(date) is dt.date else None, "retired" in data, tables, former_ids(data))


class Having(NamedTuple):
    """Which of some records have a table, as their files were with these stamps."""

    refs: tuple[Ref, ...]
    stamps: tuple[Stamp, ...]
    found: tuple[Ref, ...]


class _Noted(NamedTuple):
    stamp: Stamp
    head: RecordHead
    sound: str = ""


class KeptHeads:
    """The heads of one garage's records, read once they are asked for.

    Threads may share one: each note is put down at once, and none rests on another.
    """

    def __init__(self, tree: Tree) -> None:
        self._tree = tree
        self._rows: dict[str, _Noted] = {}
        self._given: dict[str, Any] | None = None
        """The notes as they were written, each looked at once it is asked for."""
        self._written = 0
        self._fresh = 0
        self.having: dict[str, Having] = {}
        """What `store/heads.py` found of many records together, by the name of the file it is noted in."""

    def head(self, ref: Ref, stamp: Stamp | None) -> RecordHead | None:
        """Return the head of a record whose file is as it was noted."""
        noted = self._of(ref, stamp)
        return noted.head if noted is not None else None

    def is_sound(self, ref: Ref, stamp: Stamp | None, against: str) -> bool:
        """Return whether a file that is as it was noted was read whole with something."""
        noted = self._of(ref, stamp)
        return noted is not None and noted.sound == against

    def note(self, ref: Ref, stamp: Stamp, head: RecordHead, sound: str = "") -> None:
        """Note what a file says that has rested: a later change shows in its stamp."""
        if time.time_ns() - max(stamp[:2]) > RESTS_NS:
            if len(self._rows) >= _MOST:
                self._rows.clear()
            self._rows[str(ref)] = _Noted(stamp, head, sound)
            self._fresh += 1

    def write(self) -> None:
        """Write what is noted where enough of it is new."""
        if self._fresh >= _FEWEST:
            self._fresh = 0
            for name in list(self._opened()):
                self._noted(name)
            plain = {name: _plain(noted) for name, noted in dict(self._rows).items()}
            text = json.dumps({"version": _VERSION, "rows": plain}, separators=(",", ":"))
            with contextlib.suppress(OSError, RuntimeError):
                write_cached(folder_of(self._tree.real), _NAME, text.encode())

    def _of(self, ref: Ref, stamp: Stamp | None) -> _Noted | None:
        noted = self._noted(str(ref)) if stamp is not None else None
        return noted if noted is not None and noted.stamp == stamp else None

    def _noted(self, name: str) -> _Noted | None:
        known = self._rows.get(name)
        if known is not None:
            return known
        try:
            noted = _read_note(self._opened().pop(name))
        except (KeyError, TypeError, ValueError):
            return None
        if max(noted.stamp[:2]) + RESTS_NS > self._written:
            return None
        return self._rows.setdefault(name, noted)

    def _opened(self) -> dict[str, Any]:
        given = self._given
        if given is None:
            given = self._given = self._read()
        return given

    def _read(self) -> dict[str, Any]:
        """Read the notes; none where they are not as this program writes them."""
        try:
            text, self._written = read_cached(folder_of(self._tree.real), _NAME, _LARGEST)
            given = json.loads(text)
            rows = given["rows"] if given["version"] == _VERSION else {}
        except (*CACHE_TROUBLES, RuntimeError):
            return {}
        return rows if isinstance(rows, dict) else {}


def _plain(noted: _Noted) -> tuple[Any, ...]:
    head = noted.head
    date = head.date.isoformat() if head.date is not None else ""
    return *noted.stamp, noted.sound, date, head.retired, sorted(head.tables), head.was


def _read_note(held: list[Any]) -> _Noted:
    changed, status, size, inode, sound, date, retired, tables, was = held
    if not type(changed) is type(status) is type(size) is type(inode) is int or type(retired) is not bool:
        raise TypeError
    if not {*map(type, (sound, date, *tables, *was))} <= {str}:
        raise TypeError
    named = dt.date.fromisoformat(date) if date else None
    head = RecordHead(named, retired, frozenset(tables), tuple(was))
    return _Noted((changed, status, size, inode), head, sound)
