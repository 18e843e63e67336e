"""The system calls by which files are read and written, all in one place: what may fail is seen here.

A file is named by the handle of its folder and its name in it, and a link of that name is never followed:
whoever swaps a folder or a file for a link between two calls gains nothing.
"""

import fcntl
import os
import stat
from pathlib import Path

_SEARCH = os.O_DIRECTORY | os.O_CLOEXEC | getattr(os, "O_PATH", os.O_RDONLY)


def open_root(path: Path) -> int:
    """Open the folder that a path leads to, links followed, as the place to go on from."""
    return os.open(path, _SEARCH)


def open_folder(folder: int, name: str) -> int:
    """Open a folder inside another; a link of that name is refused."""
    return os.open(name, _SEARCH | os.O_NOFOLLOW, dir_fd=folder)


def open_here(folder: int) -> int:
    """Open a folder once more, to read its names or to make them last."""
    return os.open(".", os.O_RDONLY | os.O_DIRECTORY | os.O_CLOEXEC, dir_fd=folder)


def names(folder: int) -> list[str]:
    """List the names in a folder that `open_here` opened."""
    return os.listdir(folder)


def status(folder: int, name: str) -> os.stat_result:
    """Return the status of what bears this name: of a link its own."""
    return os.stat(name, dir_fd=folder, follow_symlinks=False)


def real(path: Path) -> Path:
    """Return the place that a path leads to, links followed."""
    return Path(os.path.realpath(path, strict=True))


def allowed(folder: int, name: str) -> bool:
    """Return whether this process may write to a file."""
    return os.access(name, os.W_OK, dir_fd=folder)


def open_file(folder: int, name: str) -> int:
    """Open a file for reading; what would have to be waited for, such as a pipe, opens at once."""
    flags = os.O_RDONLY | os.O_NOFOLLOW | os.O_NONBLOCK | os.O_NOCTTY | os.O_CLOEXEC
    return os.open(name, flags, dir_fd=folder)


def open_to_write(folder: int, name: str, mode: int) -> int:
    """Open a file for reading and writing, made if it is not there."""
    flags = os.O_RDWR | os.O_CREAT | os.O_NOFOLLOW | os.O_NONBLOCK | os.O_NOCTTY | os.O_CLOEXEC
    return os.open(name, flags, mode, dir_fd=folder)


def create(folder: int, name: str, mode: int) -> int:
    """Make a file that is not there yet, open for writing."""
    return os.open(name, os.O_WRONLY | os.O_CREAT | os.O_EXCL | os.O_CLOEXEC, mode, dir_fd=folder)


def facts(file: int) -> os.stat_result:
    """Return the status of an open file."""
    return os.fstat(file)


def read(file: int, most: int) -> bytes:
    """Read from an open file, at most so many bytes; none at its end."""
    return os.read(file, most)


def seek(file: int, at: int) -> None:
    """Go to a place in an open file."""
    os.lseek(file, at, os.SEEK_SET)


def lock(file: int) -> None:
    """Lock an open file until it is closed; one that others have locked raises at once."""
    fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)


def truncate(file: int) -> None:
    """Empty an open file."""
    os.ftruncate(file, 0)


def change_owner(file: int, user: int, group: int) -> None:
    """Give an open file to its owner."""
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


def replace(folder: int, source: str, to_folder: int, target: str) -> None:
    """Give a file the name of another, which it takes the place of."""
    os.replace(source, target, src_dir_fd=folder, dst_dir_fd=to_folder)


def link(folder: int, source: str, to_folder: int, target: str) -> None:
    """Give a file a second name, which must be free."""
    os.link(source, target, src_dir_fd=folder, dst_dir_fd=to_folder, follow_symlinks=False)


def unlink(folder: int, name: str) -> None:
    """Take a name away from a file."""
    os.unlink(name, dir_fd=folder)


def make_folder(folder: int, name: str, mode: int) -> None:
    """Make a folder, unless it is there."""
    try:
        os.mkdir(name, mode, dir_fd=folder)
    except FileExistsError:
        return
