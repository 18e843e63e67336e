"""What was read of one file: its text and data, and the record as far as it could be read."""

from collections.abc import Mapping
from pathlib import Path as FilePath
from typing import TYPE_CHECKING, Any

import attrs

from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Path, Ref
from paddock_tui.store.index import Stamp

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
    try:
        found = path.stat() if path is not None else None
    except OSError:
        return None
    if found is None:
        return None
    return (found.st_mtime_ns, found.st_ctime_ns, found.st_size, found.st_ino)
