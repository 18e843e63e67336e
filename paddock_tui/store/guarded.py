"""The one way to read a file that anybody may have made: plain, bounded, never waited for."""

import stat
import time
from collections.abc import Callable
from os import stat_result
from pathlib import Path

from paddock_tui.store import system_calls
from paddock_tui.store.errors import in_plain_words
from paddock_tui.store.tree import Tree, TreePlace, release

PATIENCE = 2.0
"""Seconds that reading one file may take; a disk that is slower than that is said."""

_PIECE = 1 << 18
_TRIES = 3


class NotRead(Exception):
    """A file that cannot be read: what was found, and what was expected."""

    def __init__(self, found: str, expected: str = "a file that can be read") -> None:
        super().__init__(found)
        self.found = found
        self.expected = expected


def anywhere(_: TreePlace) -> None:
    """Accept wherever a file stands."""


def read_file(tree: Tree, path: Path, most: int, look: Callable[[TreePlace], object] = anywhere) -> bytes:
    """Read a file below a tree's root, whole, and `look` at its place while that is open. Raises NotRead."""
    try:
        with tree.place(path) as place:
            data = read_at(place, most)
            look(place)
            return data
    except (OSError, RuntimeError) as error:  # RuntimeError: a loop of symbolic links
        raise NotRead(in_plain_words(error)) from None


def anybodys(_: stat_result) -> None:
    """Accept whoever's file it is."""


def read_at(place: TreePlace, most: int, accept: Callable[[stat_result], None] = anybodys) -> bytes:
    """Read the file at a place, whole. Raises NotRead, and OSError where it cannot be opened.

    `accept` looks at the open file's status, and raises where it is not to be read. A file that is written
    meanwhile is read again, a few times.
    """
    file = system_calls.open_file(place.folder, place.name)
    try:
        found = system_calls.facts(file)
        accept(found)
        for _ in range(_TRIES):
            _refuse_odd(found, most)
            before, data = found, read_all(file, most, found.st_size)
            found = system_calls.facts(file)
            if before.st_mtime_ns == found.st_mtime_ns and found.st_size == len(data):
                return data
            system_calls.seek(file, 0)
    finally:
        release(file)
    raise NotRead("the file changes while it is read", "a file that rests")


def _refuse_odd(found: stat_result, most: int) -> None:
    if stat.S_ISDIR(found.st_mode):
        raise NotRead("this is a folder", "a text file")
    if not stat.S_ISREG(found.st_mode):
        raise NotRead("not a plain file", "a text file")
    if found.st_size > most:
        raise NotRead(f"more than {most} bytes", "a record, some kilobytes long")


def read_all(file: int, most: int, whole: int | None = None) -> bytes:
    """Read an open file from here to its end. Raises NotRead, and OSError.

    Where it is known how much is there, no more is asked for than the `whole` of it. That is used however
    long it took: waiting is refused, and it is over then.
    """
    pieces: list[bytes] = []
    size, end = 0, time.monotonic() + PATIENCE
    while (whole is None or not size or size < whole) and (piece := system_calls.read(file, _PIECE)):
        pieces.append(piece)
        size += len(piece)
        if size > most:
            raise NotRead(f"more than {most} bytes", "a record, some kilobytes long")
        if time.monotonic() > end and (whole is None or size < whole):
            raise NotRead(f"the disk needs more than {PATIENCE:.0f} seconds for it", "a disk that answers")
    return b"".join(pieces)
