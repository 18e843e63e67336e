"""A folder and all below it, reached by the handles of folders alone, so that no link leads out unseen.

The way to the folder itself may hold links. Below it each name is opened without following one; where a
link stands, its target is looked up once and walked to in the same way: inside the folder, or to a target
outside that was allowed.
"""

import contextlib
import errno
import stat
from collections.abc import Callable, Iterator
from pathlib import Path

import attrs

from paddock_tui.store import system_calls
from paddock_tui.store.errors import LeadsOut

_ROOT = Path("/")


@attrs.frozen
class TreePlace:
    """A name in a folder that is open; nothing has to bear it yet."""

    folder: int
    name: str


class _Link(Exception):
    """A link stands on the way."""


def never(_: Path) -> bool:
    """Allow no target outside."""
    return False


class Tree:
    """A folder and all below it; `allows` tells of a place outside whether a link may lead there."""

    def __init__(self, root: Path, allows: Callable[[Path], bool] = never) -> None:
        self.root = root
        self._allows = allows
        self._real: Path | None = None

    @property
    def real(self) -> Path:
        """Return where the folder really is, looked up once. Raises OSError."""
        if self._real is None:
            self._real = system_calls.real(self.root)
        return self._real

    @contextlib.contextmanager
    def place(self, path: Path, *, make: bool = False, itself: bool = False) -> Iterator[TreePlace]:
        """Open the folder of a path below the root, for as long as the name in it is dealt with.

        `make` makes the folders on the way. Of a link `itself` means the link, not what it leads to.
        Raises LeadsOut where a link leads to a place that is not allowed, and OSError.
        """
        parts = self._below(path)
        try:
            found = _walked(self.real, parts, make, itself)
        except _Link:
            found = self._followed(path, itself)
        try:
            yield found
        finally:
            release(found.folder)

    def folder(self, path: Path) -> int:
        """Open a folder below the root to which no link leads. Raises OSError."""
        parts = self._below(path)
        try:
            return _walked(self.real, (*parts, "."), False, True).folder
        except _Link:
            raise OSError(errno.ELOOP, "a link stands on the way") from None

    def _below(self, path: Path) -> tuple[str, ...]:
        """Return the names on the way from the root to a path. Raises ValueError where it is not below."""
        # A path remembers its parts; another path for the way would have to find its own each time.
        above, parts = self.root.parts, path.parts
        return parts[len(above) :] if parts[: len(above)] == above else path.relative_to(self.root).parts

    def target(self, path: Path, itself: bool = False) -> Path:
        """Return where a path leads through its links. Raises LeadsOut where that is not allowed."""
        real = system_calls.real(path.parent) / path.name if itself else system_calls.real(path)
        if not real.is_relative_to(self.real) and not self._allows(real):
            raise LeadsOut(real)
        return real

    def _followed(self, path: Path, itself: bool) -> TreePlace:
        real = self.target(path, itself)
        base = self.real if real.is_relative_to(self.real) else _ROOT
        try:
            return _walked(base, real.relative_to(base).parts, False, itself)
        except _Link:  # it was no link a moment ago
            raise OSError(errno.EAGAIN, "a link took its place meanwhile") from None


def outside(path: Path) -> Tree:
    """Return the tree of a path that the user named and no garage holds: the folder that it is in."""
    return Tree(path.parent)


def _walked(base: Path, parts: tuple[str, ...], make: bool, itself: bool) -> TreePlace:
    """Walk down from a folder, name by name. Raises _Link where one of them is a link."""
    if not parts or ".." in parts:
        raise OSError(errno.EISDIR, "this is a folder")
    here = system_calls.open_root(base)
    try:
        for part in parts[:-1]:
            below = _opened(here, part, make)
            release(here)
            here = below
        if not itself and _is_link(here, parts[-1]):
            raise _Link
    except BaseException:
        release(here)
        raise
    return TreePlace(here, parts[-1])


def _opened(here: int, part: str, make: bool) -> int:
    try:
        return system_calls.open_folder(here, part)
    except FileNotFoundError:
        if not make:
            raise
        system_calls.make_folder(here, part, 0o777)
        sync_names(here)
        return system_calls.open_folder(here, part)
    except OSError as error:
        # For a link the systems differ: a circle of links, or no folder.
        if error.errno in (errno.ELOOP, errno.ENOTDIR, errno.EMLINK) and _is_link(here, part):
            raise _Link from None
        raise


def _is_link(folder: int, name: str) -> bool:
    try:
        return stat.S_ISLNK(system_calls.status(folder, name).st_mode)
    except FileNotFoundError:
        return False


_NO_FOLDER_SYNC = (errno.EINVAL, errno.EBADF, errno.EOPNOTSUPP, errno.ENOTSUP)


def sync_names(folder: int) -> None:
    """Make a change of names in a folder last, where the system can. Raises OSError."""
    try:
        file = system_calls.open_here(folder)
    except OSError:  # a folder that may be written but not read
        return
    try:
        system_calls.sync(file)
    except OSError as error:
        if error.errno not in _NO_FOLDER_SYNC:
            raise
    finally:
        release(file)


def release(file: int) -> None:
    """Close what was read, or synced already: that this fails loses nothing."""
    try:
        system_calls.close(file)
    except OSError:
        return
