"""Files in the user's cache folder: what may be lost, and is never in the garage."""

import contextlib
import os
from pathlib import Path

from paddock_tui.store import system_calls
from paddock_tui.store.guarded import NotRead, read_at
from paddock_tui.store.tree import TreePlace, release


def cache_folder() -> Path:
    """Return the user's folder for what may be lost. Raises RuntimeError where there is no home."""
    named = os.environ.get("XDG_CACHE_HOME", "")
    base = Path(named) if Path(named).is_absolute() else Path.home() / ".cache"
    return base / "paddock-tui"


def folder_of(real: Path) -> Path:
    """Return the folder for what belongs to a garage, by its real path. Raises RuntimeError."""
    return cache_folder().joinpath(*real.parts[1:])


def read_cached(folder: Path, name: str, most: int) -> tuple[bytes, int]:
    """Read a file, and when it was written in ns. Raises OSError, NotRead."""
    here = system_calls.open_root(folder)
    try:
        written = system_calls.status(here, name).st_mtime_ns
        return read_at(TreePlace(here, name), most), written
    finally:
        release(here)


def write_cached(folder: Path, name: str, data: bytes) -> None:
    """Put a file in place of another at once, readable for this user alone; a power cut may lose it.

    That it cannot be written is no harm.
    """
    with contextlib.suppress(OSError):
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        _replace(folder, name, data)


def _replace(folder: Path, name: str, data: bytes) -> None:
    here = system_calls.open_root(folder)
    beside = f".{name}.{os.getpid()}"
    try:
        with contextlib.suppress(FileNotFoundError):
            system_calls.unlink(here, beside)
        file = system_calls.create(here, beside, 0o600)
        try:
            while data:
                data = data[system_calls.write(file, data) :]
        finally:
            release(file)
        system_calls.replace(here, beside, here, name)
    finally:
        release(here)


CACHE_TROUBLES = (OSError, NotRead, ValueError, TypeError, LookupError, AttributeError, RecursionError)
"""What a file in the cache may fail with: whatever is wrong with it, one does without."""
