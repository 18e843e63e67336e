"""A folder of small files held in memory and laid out again: each test that takes a garage has its own."""

import os
from pathlib import Path
from typing import NamedTuple


class _Held(NamedTuple):
    """A file, or a folder, which holds no content: its name below the whole, and what is kept of it."""

    name: str
    mode: int
    times: tuple[int, int]
    content: bytes | None


Folder = tuple[_Held, ...]
"""A folder and all that is in it, the folder itself first and each before what it holds."""


def held(folder: Path, *, without: str = "") -> Folder:
    """Read a folder: names, bytes, modes and times; what is called `without` is left out."""
    return tuple(_held(folder, one) for one in (folder, *_within(folder, without)))


def _within(folder: Path, without: str) -> list[Path]:
    found = []
    for one in sorted(folder.iterdir()):
        if one.name != without:
            found += [one, *(_within(one, without) if one.is_dir() else ())]
    return found


def _held(folder: Path, one: Path) -> _Held:
    was = one.stat()
    content = None if one.is_dir() else one.read_bytes()
    name = one.relative_to(folder).as_posix() if one != folder else ""
    return _Held(name, was.st_mode & 0o7777, (was.st_atime_ns, was.st_mtime_ns), content)


def laid_out(folder: Folder, to: Path) -> Path:
    """Write a folder to where none is, as `shutil.copytree` does in six times the time."""
    root = os.fspath(to)
    for name, _, _, content in folder:
        path = f"{root}/{name}"
        if content is None:
            os.mkdir(path, 0o700)  # noqa: PTH102 - paths as text: objects of them take longer than the files
        else:
            _write(path, content)
    # Last, when nothing is written into a folder any more.
    for name, mode, times, _ in folder:
        os.chmod(f"{root}/{name}", mode)  # noqa: PTH101 - as above
        os.utime(f"{root}/{name}", ns=times)
    return to


def _write(path: str, content: bytes) -> None:
    made = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    try:
        assert os.write(made, content) == len(content)
    finally:
        os.close(made)
