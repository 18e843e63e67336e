"""The garage's own folder: opened without following a link, and trusted only as far as it is this user's.

Whoever sends a garage may have put anything in it. So each file here is opened below the folder's own
handle, must be a plain file of this user with one name and of bounded size, and is readable for nobody else;
where the garage's folder may be written by its group, that group stands for this user.
"""

import contextlib
import os
import stat
from collections.abc import Iterator
from pathlib import Path

import attrs

from paddock_tui.store import system_calls
from paddock_tui.store.errors import Refused
from paddock_tui.store.files import write_beside
from paddock_tui.store.guarded import NotRead, read_all, read_at
from paddock_tui.store.tree import TreePlace, release, sync_names

PRIVATE = ".paddock"
"""The garage's own folder for what is no record; it ignores itself in git."""


class NotOurs(Refused):
    """Something in the private folder that is not used: what it is, and of which name."""

    def __init__(self, name: str, what: str) -> None:
        super().__init__(f"{name} {what}: remove it, the records do not need it")


@attrs.frozen
class Private:
    """The private folder while it is open. `shared` says that the garage's group may write too."""

    folder: int
    name: str = PRIVATE
    shared: bool = False

    def place(self, name: str) -> TreePlace:
        """Return the place of a file in it."""
        return TreePlace(self.folder, name)

    @property
    def file_mode(self) -> int:
        """Return the mode of its files."""
        return 0o660 if self.shared else 0o600

    @contextlib.contextmanager
    def inside(self, name: str, *, make: bool = False) -> Iterator["Private"]:
        """Open a folder in it. Raises OSError."""
        file = _folder(self.folder, name, f"{self.name}/{name}", self.shared, make)
        try:
            yield Private(file, f"{self.name}/{name}", self.shared)
        finally:
            release(file)

    def read(self, name: str, most: int) -> bytes:
        """Read a file whole. Raises NotRead, and OSError where there is none that is ours."""
        called = f"{self.name}/{name}"
        return read_at(self.place(name), most, lambda found: _refuse_foreign(found, called, self.shared))

    def read_end(self, name: str, most: int, largest: int) -> tuple[bytes, bool]:
        """Read the last bytes of a file, and tell whether that is all of it. Raises NotRead and OSError."""
        called = f"{self.name}/{name}"
        file = system_calls.open_file(self.folder, name)
        try:
            found = system_calls.facts(file)
            _refuse_foreign(found, called, self.shared)
            if found.st_size > largest:
                raise NotRead(f"more than {largest} bytes")
            start = max(0, found.st_size - most)
            system_calls.seek(file, start)
            return read_all(file, most), start == 0
        finally:
            release(file)

    def has(self, name: str) -> bool:
        """Return whether something bears this name."""
        try:
            system_calls.status(self.folder, name)
        except OSError:
            return False
        return True

    def names(self) -> list[str]:
        """List what is in it. Raises OSError."""
        here = system_calls.open_here(self.folder)
        try:
            return sorted(system_calls.names(here))
        finally:
            release(here)

    def put(self, name: str, data: bytes, *, own: bool = False) -> None:
        """Write a file of bytes that may be lost with the power. Raises OSError.

        `own` keeps it from the garage's group.
        """
        file = self.open(name, own=own)
        try:
            # Some disks write at once what was emptied, even where it was empty.
            if system_calls.facts(file).st_size:
                system_calls.truncate(file)
            while data:
                data = data[system_calls.write(file, data) :]
        finally:
            release(file)

    def put_durably(self, name: str, data: bytes) -> None:
        """Write a file, which only this user may read, so that it outlives a power cut. Raises OSError."""
        place = self.place(name)
        temporary = write_beside(place, data, None, 0o600)
        try:
            system_calls.replace(temporary.folder, temporary.name, place.folder, place.name)
        except BaseException:
            with contextlib.suppress(OSError):
                system_calls.unlink(temporary.folder, temporary.name)
            raise
        sync_names(self.folder)

    def open(self, name: str, *, own: bool = False) -> int:
        """Open a file for reading and writing, made where it is not there. Raises OSError."""
        mode, called = 0o600 if own else self.file_mode, f"{self.name}/{name}"
        try:
            file = system_calls.open_to_write(self.folder, name, mode)
        except OSError:
            with contextlib.suppress(FileNotFoundError):
                _refuse_foreign(system_calls.status(self.folder, name), called, self.shared)
            raise
        try:
            found = system_calls.facts(file)
            _refuse_foreign(found, called, self.shared)
            if stat.S_IMODE(found.st_mode) != mode and found.st_uid == os.geteuid():
                system_calls.change_mode(file, mode)
        except BaseException:
            release(file)
            raise
        return file

    def remove(self, name: str) -> None:
        """Remove a file, or a link of that name. Raises OSError."""
        system_calls.unlink(self.folder, name)


@contextlib.contextmanager
def private(root: Path, *, make: bool = False) -> Iterator[Private]:
    """Open the private folder of a garage, made where it is not there. Raises OSError."""
    with own_folder(root, PRIVATE, make=make, may_share=True) as opened:
        yield opened


@contextlib.contextmanager
def own_folder(root: Path, name: str, *, make: bool = False, may_share: bool = False) -> Iterator[Private]:
    """Open a folder of a garage that is this user's alone and ignores itself in git.

    It is made where it is not there. Where it `may_share`, the group that may write the garage may use it
    too. Raises OSError.
    """
    above = system_calls.open_root(root)
    try:
        shared = may_share and bool(system_calls.facts(above).st_mode & stat.S_IWGRP)
        file = _folder(above, name, name, shared, make)
    finally:
        release(above)
    try:
        opened = Private(file, name, shared)
        if make and not opened.has(".gitignore"):
            opened.put(".gitignore", b"*\n")
        yield opened
    finally:
        release(file)


def _folder(above: int, name: str, called: str, shared: bool, make: bool) -> int:
    mode = 0o770 if shared else 0o700
    try:
        file = _opened(above, name, called)
    except FileNotFoundError:
        if not make:
            raise
        system_calls.make_folder(above, name, mode)
        sync_names(above)
        file = _opened(above, name, called)
    try:
        found = system_calls.facts(file)
        _refuse_owner(found, called, shared)
        if make and found.st_mode & 0o777 != mode and found.st_uid == os.geteuid():
            _set_mode(file, found.st_mode & 0o7000 | mode)
    except BaseException:
        release(file)
        raise
    return file


def _set_mode(folder: int, mode: int) -> None:
    """Set the rights of a folder that an earlier version, or somebody else, made wider; where that goes."""
    with contextlib.suppress(OSError):
        here = system_calls.open_here(folder)
        try:
            system_calls.change_mode(here, mode)
        finally:
            release(here)


def _opened(above: int, name: str, called: str) -> int:
    try:
        return system_calls.open_folder(above, name)
    except OSError:
        found = system_calls.status(above, name)
        if stat.S_ISLNK(found.st_mode):
            raise NotOurs(called, "is a link") from None
        if not stat.S_ISDIR(found.st_mode):
            raise NotOurs(called, "is no folder") from None
        raise


def _refuse_foreign(found: os.stat_result, name: str, shared: bool) -> None:
    if stat.S_ISLNK(found.st_mode):
        raise NotOurs(name, "is a link")
    if not stat.S_ISREG(found.st_mode):
        raise NotOurs(name, "is not a plain file")
    if found.st_nlink > 1:
        raise NotOurs(name, "has a second name elsewhere")
    _refuse_owner(found, name, shared)


def _refuse_owner(found: os.stat_result, name: str, shared: bool) -> None:
    if found.st_uid == os.geteuid():
        return
    if shared and found.st_gid in {os.getegid(), *os.getgroups()}:
        return
    raise NotOurs(name, "belongs to somebody else")
