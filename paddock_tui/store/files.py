"""Files written so that a power cut leaves the old text or the new one, never half."""

import contextlib
import errno
import itertools
import os
import re
import stat
from collections.abc import Iterator
from pathlib import Path

from paddock_tui.store import system_calls
from paddock_tui.store.errors import NotWritten, Replaced, in_plain_words
from paddock_tui.store.guarded import NotRead, read_at
from paddock_tui.store.listing import DEEPEST
from paddock_tui.store.processes import is_alive
from paddock_tui.store.tree import Tree, TreePlace, release, sync_names

_serial = itertools.count()
_TEMPORARY = re.compile(r"\..+\.([1-9]\d{0,8})-\d+\.paddock-new")
_NO_LINKS = (errno.EPERM, errno.EOPNOTSUPP, errno.ENOTSUP, errno.ENOSYS, errno.EMLINK)


def replace_durably(
    tree: Tree, path: Path, text: str, *, create: bool = False, before: str | None = None, mode: int = 0o666
) -> None:
    """Write a whole file: a temporary file beside it, synced, takes its place.

    The file must be there, and have its owner's write bit, whoever runs this. A symbolic link is
    followed as far as the tree allows, so that the file it names is replaced; the mode stays, and the
    owner where that is allowed. With `create` the file must not be there yet (two that create it at once
    cannot both win), its folder is made, and it gets `mode`. With `before` the file must still hold this
    text at the last moment, else Replaced is raised: editors know nothing of our lock. Raises NotWritten.
    """
    with _plain_words():
        data = text.encode("utf-8")
        with tree.place(path, make=create, itself=create) as place:
            if create and _is_there(place):
                raise NotWritten("a file of this name is there already")
            found = None if create else writable(place)
            temporary = write_beside(place, data, found, mode)
            try:
                if create:
                    _move_to_new(temporary, place)
                else:
                    if before is not None and read_at(place, _AT_MOST) != before.encode("utf-8"):
                        raise Replaced
                    system_calls.replace(temporary.folder, temporary.name, place.folder, place.name)
            except BaseException:
                with contextlib.suppress(OSError):
                    system_calls.unlink(temporary.folder, temporary.name)
                raise
            _confirm(place)


_AT_MOST = 64_000_000
"""Bytes: what is compared with what was read is never larger."""


def _check_writable(tree: Tree, path: Path) -> None:
    """Look whether a file may be written, without writing. Raises NotWritten."""
    with _plain_words(), tree.place(path) as place:
        writable(place)


def remove_durably(tree: Tree, path: Path) -> None:
    """Remove a file (of a symbolic link: the link); one that its owner may not write to is refused."""
    _check_writable(tree, path)
    with _plain_words(), tree.place(path, itself=True) as place:
        system_calls.unlink(place.folder, place.name)
        _confirm(place)


def rename_durably(tree: Tree, path: Path, to: Path) -> None:
    """Give a file another name; one that exists already is refused, and never overwritten."""
    _check_writable(tree, path)
    with (
        _plain_words(),
        tree.place(path, itself=True) as source,
        tree.place(to, make=True, itself=True) as target,
    ):
        if path.parent == to.parent and _is_same_name(source, target):
            system_calls.replace(source.folder, source.name, target.folder, target.name)
        elif _is_there(target):
            raise NotWritten("a file of this name is there already")
        else:
            _move_to_new(source, target)
        _confirm(target)
        if path.parent != to.parent:
            _confirm(source)


def sweep(tree: Tree) -> list[Path]:
    """Remove what dead processes left half-written, in sub-folders too; return what was removed.

    Call it with the garage's lock held: a process on another computer cannot be seen to be alive.
    """
    removed = []
    for folder, names in _folders(tree.root):
        for name in names:
            match = _TEMPORARY.fullmatch(name) if name.startswith(".") else None
            if match and not is_alive(int(match[1])):
                with contextlib.suppress(OSError), tree.place(folder / name, itself=True) as place:
                    system_calls.unlink(place.folder, place.name)
                    removed.append(folder / name)
    return removed


@contextlib.contextmanager
def _plain_words() -> Iterator[None]:
    try:
        yield
    except UnicodeEncodeError as error:
        raise NotWritten("half a character (a lone surrogate) cannot be saved") from error
    except NotRead as error:
        raise NotWritten(error.found) from error
    except (OSError, RuntimeError) as error:  # RuntimeError: a loop of symbolic links
        raise NotWritten(in_plain_words(error)) from error


def _is_there(place: TreePlace) -> bool:
    """Return whether something bears a name, a link to nowhere included."""
    try:
        system_calls.status(place.folder, place.name)
    except FileNotFoundError:
        return False
    return True


def writable(place: TreePlace) -> os.stat_result:
    """Return the file's status; raise NotWritten where it must not be written."""
    found = system_calls.status(place.folder, place.name)
    if not stat.S_ISREG(found.st_mode):
        raise NotWritten("this is not a plain file")
    if not found.st_mode & stat.S_IWUSR:
        raise NotWritten("the file is marked read-only", mend="make it writable (chmod u+w), and try again")
    if not system_calls.allowed(place.folder, place.name):
        raise NotWritten("no permission to write this file")
    return found


def write_beside(place: TreePlace, data: bytes, found: os.stat_result | None, mode: int) -> TreePlace:
    """Write a synced temporary file with these bytes, beside the place, with the mode and owner found."""
    mode = stat.S_IMODE(found.st_mode) if found else mode
    while True:
        temporary = TreePlace(place.folder, f".{place.name}.{os.getpid()}-{next(_serial)}.paddock-new")
        try:
            file = system_calls.create(temporary.folder, temporary.name, mode)
            break
        except FileExistsError:  # left by a dead process that had our number
            continue
    try:
        try:
            _fill(file, data, found)
        finally:
            system_calls.close(file)
    except BaseException:
        with contextlib.suppress(OSError):
            system_calls.unlink(temporary.folder, temporary.name)
        raise
    return temporary


def _fill(file: int, data: bytes, found: os.stat_result | None) -> None:
    if found is not None:
        with contextlib.suppress(PermissionError):
            system_calls.change_owner(file, found.st_uid, found.st_gid)
        system_calls.change_mode(file, found.st_mode)
    while data:
        data = data[system_calls.write(file, data) :]
    system_calls.sync(file)


def _move_to_new(source: TreePlace, target: TreePlace) -> None:
    """Move to a name that must be free, without a moment in which another could take it."""
    try:
        system_calls.link(source.folder, source.name, target.folder, target.name)
    except OSError as error:
        if error.errno not in _NO_LINKS:
            raise
        # No hard links here: claim the name with an empty file, then put ours over it.
        system_calls.close(system_calls.create(target.folder, target.name, 0o666))
        try:
            system_calls.replace(source.folder, source.name, target.folder, target.name)
        except OSError:
            with contextlib.suppress(OSError):
                system_calls.unlink(target.folder, target.name)
            raise
        return
    try:
        system_calls.unlink(source.folder, source.name)
    except OSError:  # one name or the other, never both
        with contextlib.suppress(OSError):
            system_calls.unlink(target.folder, target.name)
        raise


def _is_same_name(source: TreePlace, target: TreePlace) -> bool:
    """Return whether only the case of the letters changes, on a disk that does not tell them apart."""
    if source.name.casefold() != target.name.casefold() or not _is_there(target):
        return False
    one = system_calls.status(source.folder, source.name)
    other = system_calls.status(target.folder, target.name)
    return (one.st_dev, one.st_ino) == (other.st_dev, other.st_ino) and not _is_listed(target)


def _is_listed(place: TreePlace) -> bool:
    here = system_calls.open_here(place.folder)
    try:
        return place.name in system_calls.names(here)
    finally:
        release(here)


def _confirm(place: TreePlace) -> None:
    """Make a change of names lasting, where the system can."""
    try:
        sync_names(place.folder)
    except OSError as error:
        raise NotWritten("written, but the disk did not confirm it", replaced=True) from error


def _folders(root: Path) -> Iterator[tuple[Path, list[str]]]:
    """List the folders of a garage that records may be in, and its own, each with the names in it."""
    stack = [(root, 0), (root / ".paddock", DEEPEST), (root / ".paddock" / "journal", DEEPEST)]
    while stack:
        folder, depth = stack.pop()
        try:
            with os.scandir(folder) as found:
                entries = list(found)
        except OSError:
            continue
        yield folder, [entry.name for entry in entries]
        for entry in entries:
            if depth < DEEPEST and not entry.name.startswith(".") and _is_folder(entry):
                stack.append((Path(entry.path), depth + 1))


def _is_folder(entry: "os.DirEntry[str]") -> bool:
    try:
        # The listing tells this by itself on most disks: no look at each of thousands of files.
        return entry.is_dir(follow_symlinks=False)
    except OSError:
        return False
