"""The system calls of a save, all in one place: what may fail while a file is saved is seen here."""

import os
import stat
from pathlib import Path


def status(path: Path) -> os.stat_result:
    """Return a file's status; symbolic links are followed."""
    return path.stat()


def real(path: Path) -> Path:
    """Return the file that a path leads to, symbolic links followed."""
    return path.resolve(strict=True)


def allowed(path: Path) -> bool:
    """Return whether this process may write to a file."""
    return os.access(path, os.W_OK)


def read(path: Path) -> bytes:
    """Read a whole file."""
    return path.read_bytes()


def create(path: Path, mode: int) -> int:
    """Make a file that is not there yet, open for writing."""
    return os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, mode)


def change_owner(file: int, user: int, group: int) -> None:
    """Return an open file to its owner."""
    os.fchown(file, user, group)


def change_mode(file: int, mode: int) -> None:
    """Set the mode of an open file."""
    os.fchmod(file, stat.S_IMODE(mode))


def write(file: int, data: bytes) -> int:
    """Write to an open file; return how many bytes went out, which may be fewer."""
    return os.write(file, data)


def sync(file: int) -> None:
    """Make what was written to an open file, or the names of an open folder, last."""
    os.fsync(file)


def close(file: int) -> None:
    """Close a file."""
    os.close(file)


def replace(source: Path, target: Path) -> None:
    """Return a file the name of another, which it takes the place of."""
    source.replace(target)


def link(source: Path, target: Path) -> None:
    """Return a file a second name, which must be free."""
    os.link(source, target, follow_symlinks=False)


def unlink(path: Path) -> None:
    """Take a name away from a file."""
    path.unlink()


def open_folder(folder: Path) -> int:
    """Open a folder, to make its names last."""
    return os.open(folder, os.O_RDONLY)


def make_folder(folder: Path) -> None:
    """Make a folder, unless it is there."""
    folder.mkdir(exist_ok=True)
