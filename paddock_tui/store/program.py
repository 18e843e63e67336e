"""What tells this program from any other, one that was edited too: what one noted counts for it alone."""

import contextlib
import functools
import os
import sys
from pathlib import Path

import paddock_tui
from paddock_tui.store.digests import digest


@functools.cache
def program(*parts: str) -> str:
    """Return what tells some packages of this program from any others: their files, by size and time."""
    found = [f"{paddock_tui.__version__} {sys.version}"]
    for folder in sorted({Path(one) for one in paddock_tui.__path__}):
        for part in parts:
            for path, size, changed in sorted(_sources(folder / part)):
                found.append(f"{path} {size} {changed}\n")
    return digest("".join(found).encode())


def _sources(folder: Path) -> list[tuple[str, int, int]]:
    """List the sources below a folder; those that are no plain files are known by the version alone."""
    found: list[tuple[str, int, int]] = []
    with contextlib.suppress(OSError), os.scandir(folder) as entries:
        for entry in entries:
            if entry.is_dir():
                found += _sources(Path(entry.path))
            elif entry.name.endswith(".py"):
                status = entry.stat()
                found.append((entry.path, status.st_size, status.st_mtime_ns))
    return found
