"""What was read of one file: its text and data, and the record as far as it could be read."""

import os
from collections.abc import Mapping
from pathlib import Path as FilePath
from typing import TYPE_CHECKING, Any

import attrs

from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Path, Ref
from paddock_tui.store.index import Stamp
from paddock_tui.store.reading import loads, read_text
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


def stamp_of(path: FilePath | None) -> Stamp | None:
    """Return what tells that a file changed; None where there is none."""
    if path is None:
        return None
    try:
        found = os.stat(path)  # noqa: PTH116 - hundreds are looked at each second
    except OSError:
        return None
    return (found.st_mtime_ns, found.st_ctime_ns, found.st_size, found.st_ino)


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
