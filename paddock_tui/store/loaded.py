"""What was read of one file: its text and data, and the record as far as it could be read."""

import os
from collections.abc import Callable, Container, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path as FilePath
from typing import TYPE_CHECKING, Any, NamedTuple, Protocol, TypeVar
from weakref import WeakKeyDictionary

import attrs

from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Path, Ref
from paddock_tui.store.former_ids import names_in
from paddock_tui.store.listing import Stamp
from paddock_tui.store.reading import loads, read_text
from paddock_tui.store.session_rows import SessionRows
from paddock_tui.store.tree import Tree

if TYPE_CHECKING:
    from paddock_tui.records.kinds import Record


@attrs.frozen
class Loaded:
    """One record as it stands: its file, text and data, and what could be read of it.

    `record` is None where the file is lost (not TOML, not readable). `troubles` carry file and line.
    `possible` is the record without the figures that cannot be, which stand at the paths `impossible`.
    """

    ref: Ref
    file: FilePath
    name: str
    text: str
    data: Mapping[str, Any]
    record: "Record | None"
    troubles: tuple[InputError, ...] = ()
    unknown: tuple[InputError, ...] = ()
    possible: "Record | None" = None
    impossible: tuple[Path, ...] = ()


@attrs.define(eq=False)
class FileText:
    """A file's text; `data` is what is `written` with its references as they are called by now."""

    stamp: Stamp | None
    text: str
    written: dict[str, Any]
    trouble: InputError | None = None
    data: dict[str, Any] = attrs.field(factory=dict)
    resolved: object = None


def text_of(tree: Tree, path: FilePath, stamp: Stamp) -> FileText:
    """Read a file and its data; what is wrong with it says where."""
    name = os.path.relpath(path, tree.root)
    text = read_text(tree, path)
    if isinstance(text, InputError):
        return FileText(stamp, "", {}, attrs.evolve(text, file=name))
    data = loads(text, name)
    if isinstance(data, InputError):
        return FileText(stamp, text, {}, data)
    return FileText(stamp, text, data)


def record_of(tree: Tree, ref: Ref, path: FilePath, raw: FileText, bike: Loaded | None) -> Loaded:
    """Read the record of a file, a set-up as the controls of its bike say."""
    # The records are loaded with the first that is asked for: listing and plain data take none.
    from paddock_tui.records.bike import Bike
    from paddock_tui.records.reading import read_record
    from paddock_tui.store.placed import placed

    name = os.path.relpath(path, tree.root)
    if raw.trouble is not None:
        return Loaded(ref, path, name, raw.text, {}, None, (raw.trouble,))
    found = read_record(ref.kind, raw.data, bike.record if bike and isinstance(bike.record, Bike) else None)
    troubles, unknown = placed(found, name, raw.text)
    held = (found.record, troubles, unknown, found.possible, found.impossible)
    return Loaded(ref, path, name, raw.text, raw.data, *held)


MANY = 400
"""So many files in memory, and those read for their rows alone are let go of."""


class _Released(NamedTuple):
    """What tells whether a file reads as it did: its stamp, its text, and the records that it names."""

    stamp: Stamp
    text: int
    names: tuple[Ref, ...]


class Released:
    """Files of which others made what they need: not in memory, and looked at for changes all the same."""

    def __init__(self) -> None:
        self._held: dict[Ref, _Released] = {}
        self._named: dict[Ref, Ref] = {}
        """What several name together, held once."""

    def __contains__(self, ref: Ref) -> bool:
        return ref in self._held

    def took(self, ref: Ref, raw: FileText, there: Mapping[str, Container[str]]) -> bool:
        """Remember a file that is let go of; gives whether it may be.

        It may not where it is not as written, or where what it names is not `there` and may be found later.
        """
        names = tuple([self._named.setdefault(one, one) for one in names_in(ref.kind, raw.data)])
        if raw.stamp is None or raw.data is not raw.written or _names_others(names, there):
            return False
        self._held[ref] = _Released(raw.stamp, hash(raw.text), names)
        return True

    def forget(self, ref: Ref, stamp: Stamp | None) -> bool:
        """Forget a file that is read again; gives whether it is as it was."""
        held = self._held.pop(ref, None)
        return held is not None and held.stamp == stamp

    def is_same(self, ref: Ref, raw: FileText) -> bool:
        """Return whether a file that was written again holds the same text; then that is remembered of it."""
        held = self._held[ref]
        if raw.stamp is None or held.text != hash(raw.text):
            return False
        self._held[ref] = held._replace(stamp=raw.stamp)
        return True

    def naming_others(self, there: Mapping[str, Container[str]]) -> list[Ref]:
        """List those that name a record that is not there: it may be called otherwise by now."""
        return [ref for ref, held in self._held.items() if _names_others(held.names, there)]

    def stamps(self, *refs: Ref) -> Iterator[tuple[Ref, Stamp]]:
        """Give these, or all, each with its stamp."""
        return ((ref, self._held[ref].stamp) for ref in refs or self._held)

    def take(self, other: "Released", but: Container[Ref] = ()) -> None:
        """Take over what another knows, but for some."""
        self._held.update({ref: held for ref, held in other._held.items() if ref not in but})


def _names_others(names: tuple[Ref, ...], there: Mapping[str, Container[str]]) -> bool:
    return any(name.id not in there.get(name.kind, ()) for name in names)


Shown = TypeVar("Shown")
Show = Callable[[Ref, Mapping[str, Any]], Shown]


class _Lists(Protocol):
    """What is asked of the files of a garage by what lists them."""

    rows: SessionRows

    def data(self, ref: Ref) -> Mapping[str, Any]:
        """Return the plain data of a record."""

    def stamp(self, ref: Ref) -> Stamp | None:
        """Return what tells that a record's file changed."""

    def is_in_memory(self, ref: Ref) -> bool:
        """Return whether a record was read, and is remembered."""

    def let_go(self, ref: Ref) -> None:
        """Hold a record in memory no more."""

    def touched_since(self, place: int) -> tuple[int, set[Ref]]:
        """List the records that may read otherwise than they did at a place of this run."""


class _Glimpses:
    """What lists show of records that are not in memory, with the stamp of the file that it was made of."""

    def __init__(self) -> None:
        self.known: dict[Ref, dict[Show[Any], tuple[Stamp | None, Any]]] = {}
        self._place = 0

    def forget_touched(self, files: _Lists) -> None:
        self._place, touched = files.touched_since(self._place)
        for ref in touched:
            self.known.pop(ref, None)


_GLIMPSES: WeakKeyDictionary[_Lists, _Glimpses] = WeakKeyDictionary()


def glimpse(files: _Lists, ref: Ref, show: Show[Shown]) -> Shown:
    """Return what `show` makes of a record's data, which is all that it may look at.

    A file that nobody else has in memory is let go of, and goes on being looked at for changes.
    """
    if files.is_in_memory(ref):
        return show(ref, files.data(ref))
    here = _GLIMPSES.setdefault(files, _Glimpses())
    here.forget_touched(files)
    stamp, made = here.known.get(ref, {}).get(show, (None, None))
    if stamp is not None and stamp == files.stamp(ref):
        found: Shown = made
        return found
    fresh = show(ref, files.data(ref))
    files.let_go(ref)
    # Reading it touched it: what was made knows that already.
    here.forget_touched(files)
    if not files.is_in_memory(ref):
        here.known.setdefault(ref, {})[show] = files.rows.indexed.get(ref), fresh
    return fresh


class Once:
    """What was read of files since one began to look at each of them once; nothing while nobody does."""

    def __init__(self) -> None:
        self._found: dict[Ref, FileText | None] | None = None

    @contextmanager
    def each(self) -> Iterator[None]:
        """Look at each file once while this lasts, as long as none is known to read otherwise."""
        is_outer = self._found is None
        self._found = {} if self._found is None else self._found
        try:
            yield
        finally:
            self._found = None if is_outer else self._found

    def forget(self) -> None:
        """Look at every file again: one of them reads otherwise."""
        if self._found:
            self._found = {}

    def leave(self, ref: Ref) -> None:
        """Look at a file again that is held no more."""
        if self._found:
            self._found.pop(ref, None)

    def of(self, ref: Ref, read: Callable[[Ref], FileText | None]) -> FileText | None:
        """Return what a file holds, as it was read before or by `read`."""
        if self._found is None:
            return read(ref)
        if ref not in self._found:
            raw = read(ref)
            # Reading may itself have come upon a change.
            self._found[ref] = raw
        return self._found[ref]
