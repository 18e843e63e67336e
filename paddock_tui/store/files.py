"""Files read strictly and written so that a power cut leaves the old text or the new one, never half."""

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
from paddock_tui.store.lock import PRIVATE

_serial = itertools.count()
_TEMPORARY = re.compile(r"\..+\.([1-9]\d{0,8})-\d+\.paddock-new")
_NO_LINKS = (errno.EPERM, errno.EOPNOTSUPP, errno.ENOTSUP, errno.ENOSYS, errno.EMLINK)
_NO_FOLDER_SYNC = (errno.EINVAL, errno.EBADF, errno.EOPNOTSUPP, errno.ENOTSUP)


def replace_durably(path: Path, text: str, *, create: bool = False, before: str | None = None) -> None:
    """Write a whole file: a temporary file beside it, synced, takes its place.

    The file must be there, and have its owner's write bit, whoever runs this. A symbolic link is
    followed, so that the file it names is replaced; the mode stays, and the owner where that is
    allowed. With `create` the file must not be there yet (two that create it at once cannot both
    win), and its folder is made. With `before` the file must still hold this text at the last moment,
    else Replaced is raised: editors know nothing of our lock. Raises NotWritten.
    """
    with _plain_words():
        data = text.encode("utf-8")
        if create:
            _make_folder(path.parent)
            if os.path.lexists(path):
                raise NotWritten("a file of this name is there already")
        target = path if create else system_calls.real(path)
        found = None if create else _writable(target)
        temporary = _write_beside(target, data, found)
        try:
            if create:
                _move_to_new(temporary, target)
            else:
                if before is not None and system_calls.read(target) != before.encode("utf-8"):
                    raise Replaced
                system_calls.replace(temporary, target)
        except BaseException:
            with contextlib.suppress(OSError):
                system_calls.unlink(temporary)
            raise
    _sync_folder(target.parent)


def check_writable(path: Path) -> None:
    """Look whether a file may be written, without writing. Raises NotWritten."""
    with _plain_words():
        _writable(system_calls.real(path))


def remove_durably(path: Path) -> None:
    """Remove a file (of a symbolic link: the link); one that its owner may not write to is refused."""
    with _plain_words():
        _writable(system_calls.real(path))
        system_calls.unlink(path)
    _sync_folder(path.parent)


def rename_durably(path: Path, to: Path) -> None:
    """Return a file another name; one that exists already is refused, and never overwritten."""
    with _plain_words():
        _writable(system_calls.real(path))
        _make_folder(to.parent)
        if _is_same_name(path, to):
            system_calls.replace(path, to)
        elif os.path.lexists(to):
            raise NotWritten("a file of this name is there already")
        else:
            _move_to_new(path, to)
    _sync_folder(to.parent)
    if path.parent != to.parent:
        _sync_folder(path.parent)


def sweep(folder: Path) -> list[Path]:
    """Remove what dead processes left half-written, in sub-folders too; returns what was removed.

    Call it with the garage's lock held: a process on another computer cannot be seen to be alive.
    """
    removed = []
    for place, folders, names in os.walk(folder):
        folders[:] = [name for name in folders if not name.startswith(".") or name == PRIVATE]
        for name in names:
            match = _TEMPORARY.fullmatch(name)
            if match and not _is_alive(int(match[1])):
                with contextlib.suppress(OSError):
                    (Path(place) / name).unlink()
                    removed.append(Path(place) / name)
    return removed


@contextlib.contextmanager
def _plain_words() -> Iterator[None]:
    try:
        yield
    except UnicodeEncodeError as error:
        raise NotWritten("half a character (a lone surrogate) cannot be kept") from error
    except (OSError, RuntimeError) as error:  # RuntimeError: a loop of symbolic links
        raise NotWritten(in_plain_words(error)) from error


def _writable(target: Path) -> os.stat_result:
    """Return the file's status; raise NotWritten where it must not be written."""
    found = system_calls.status(target)
    if not stat.S_ISREG(found.st_mode):
        raise NotWritten("this is not a plain file")
    if not found.st_mode & stat.S_IWUSR:
        raise NotWritten("the file is marked read-only", mend="make it writable (chmod u+w), and try again")
    if not system_calls.allowed(target):
        raise NotWritten("no permission to write this file")
    return found


def _write_beside(target: Path, data: bytes, found: os.stat_result | None) -> Path:
    """Write a synced temporary file with these bytes, beside the target, with the target's mode and owner."""
    mode = stat.S_IMODE(found.st_mode) if found else 0o666
    while True:
        temporary = target.with_name(f".{target.name}.{os.getpid()}-{next(_serial)}.paddock-new")
        try:
            file = system_calls.create(temporary, mode)
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
            system_calls.unlink(temporary)
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


def _move_to_new(source: Path, target: Path) -> None:
    """Move to a name that must be free, without a moment in which another could take it."""
    try:
        system_calls.link(source, target)
    except OSError as error:
        if error.errno not in _NO_LINKS:
            raise
        # No hard links here: claim the name with an empty file, then put ours over it.
        system_calls.close(system_calls.create(target, 0o666))
        try:
            system_calls.replace(source, target)
        except OSError:
            with contextlib.suppress(OSError):
                system_calls.unlink(target)
            raise
        return
    try:
        system_calls.unlink(source)
    except OSError:  # one name or the other, never both
        with contextlib.suppress(OSError):
            system_calls.unlink(target)
        raise


def _is_same_name(path: Path, to: Path) -> bool:
    """Return whether only the case of the letters changes, on a disk that does not tell them apart."""
    if path.parent != to.parent or path.name.casefold() != to.name.casefold():
        return False
    return os.path.lexists(to) and path.samefile(to) and to not in set(to.parent.iterdir())


def _make_folder(folder: Path) -> None:
    if folder.is_dir():
        return
    _make_folder(folder.parent)
    system_calls.make_folder(folder)
    try:
        _sync_folder(folder.parent)
    except NotWritten as error:  # nothing is in it yet
        raise NotWritten("the disk did not confirm the new folder") from error


def _sync_folder(folder: Path) -> None:
    """Make a change of names lasting, where the system can."""
    try:
        file = system_calls.open_folder(folder)
    except OSError:  # a folder that may be written but not read
        return
    try:
        system_calls.sync(file)
    except OSError as error:
        if error.errno not in _NO_FOLDER_SYNC:
            raise NotWritten("written, but the disk did not confirm it", replaced=True) from error
    finally:
        with contextlib.suppress(OSError):
            system_calls.close(file)


def _is_alive(process: int) -> bool:
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    except OSError:
        return True
    return True
