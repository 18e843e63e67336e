"""Which records may speak of another."""

import contextlib
from collections.abc import Iterator

from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.guarded import NotRead, read_file
from paddock_tui.store.reading import LARGEST


def mentioning(files: GarageFiles, name: str) -> Iterator[Ref]:
    """List the records whose text contains a name: a quick search of bytes, to be looked at closer."""
    wanted = name.encode()
    for ref in files.all():
        path = files.path_of(ref)
        with contextlib.suppress(NotRead):
            if path is not None and wanted in read_file(files.tree, path, LARGEST):
                yield ref
