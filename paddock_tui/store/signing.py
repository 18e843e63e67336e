"""What this user's own program wrote, told from what others put in its place: a key, and marks under it.

The key is 32 random bytes, made once for this user and kept outside every garage, readable for nobody else.
A mark is an HMAC (RFC 2104) with SHA-256 over a line, the garage's random id and the line before it: a line
that was changed, moved, or copied from another garage does not verify.
"""

import contextlib
import os
import stat
import threading
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING

import attrs

from paddock_tui.on_demand import load_later
from paddock_tui.store import system_calls
from paddock_tui.store.errors import in_plain_words
from paddock_tui.store.guarded import NotRead, read_at
from paddock_tui.store.private import NotOurs, Private
from paddock_tui.store.tree import TreePlace, release

if TYPE_CHECKING:
    from hmac import HMAC

load_later("hmac")
"""Else the first key that keeps something would wait for it."""

_NAME = "key"
_BYTES = 32
_ID = "id"
# The thread that keeps and the one that draws both come here with the first key of a run.
_first = threading.Lock()


@attrs.frozen
class Key:
    """The key; `lost` says why it lasts for this run only, and is empty where it is saved."""

    secret: bytes = attrs.field(repr=False)
    lost: str = ""


def user_folder() -> Path:
    """Return the folder for what this program keeps about one user, outside every garage.

    Raises RuntimeError where there is no home.
    """
    return _folder_of(os.environ.get("XDG_STATE_HOME", ""), os.environ.get("HOME", ""))


@lru_cache(maxsize=4)
def _folder_of(named: str, _: str) -> Path:
    """Return the folder where the state is `named`, else in the home, which the second names mostly."""
    base = Path(named) if Path(named).is_absolute() else Path.home() / ".local" / "state"
    return base / "paddock-tui"


def user_key() -> Key:
    """Return this user's key, made where there is none yet; the same one for all of a run.

    Where it cannot be saved, the next who asks tries again: a full disk is emptied.
    """
    # One at a time: two threads that make it at once would get two keys, and neither verifies the other's.
    with _first:
        try:
            folder = user_folder()
        except RuntimeError:
            return _keys.setdefault(None, Key(os.urandom(_BYTES), "there is no home folder"))
        key = _keys.get(folder)
        if key is None or key.lost:
            key = _keys[folder] = _key_in(folder, key)
        return key


_keys: dict[Path | None, Key] = {}


def _key_in(folder: Path, had: Key | None) -> Key:
    """Return the key that is saved in a folder, with what this run `had` until now, if anything, kept."""
    secret = had.secret if had is not None else os.urandom(_BYTES)
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        here = system_calls.open_root(folder)
        try:
            saved = _read(here) or _made(here, secret)
        finally:
            release(here)
    except (OSError, NotRead) as error:
        why = error.found if isinstance(error, NotRead) else in_plain_words(error)
        return Key(secret, f"no key can be saved in {folder}: {why}")
    # What this run marked so far verifies under its own alone.
    return Key(saved) if had is None or saved == secret else had


def _read(here: int) -> bytes:
    """Return the key that is there; nothing where there is none."""
    try:
        secret = read_at(TreePlace(here, _NAME), _BYTES, _is_private)
    except FileNotFoundError:
        return b""
    if len(secret) != _BYTES:
        raise NotRead("what is there is no key: remove it")
    return secret


def _is_private(found: os.stat_result) -> None:
    if found.st_uid != os.geteuid():
        raise NotOurs(_NAME, "belongs to somebody else")
    if stat.S_ISREG(found.st_mode) and found.st_mode & 0o077:
        raise NotRead("others can read it: remove it")


def _made(here: int, secret: bytes) -> bytes:
    """Save a key and return what is saved; of two programs that save one at once both get the same."""
    # Never a name of another's: programs of two containers that share a home may have one number.
    beside = f".{_NAME}.{os.urandom(8).hex()}"
    file = system_calls.create(here, beside, 0o600)
    try:
        system_calls.write(file, secret)
        system_calls.sync(file)
    finally:
        release(file)
    try:
        system_calls.link(here, beside, here, _NAME)
    except FileExistsError:
        pass
    except OSError:  # a disk without hard links
        system_calls.replace(here, beside, here, _NAME)
    with contextlib.suppress(FileNotFoundError):
        system_calls.unlink(here, beside)
    return _read(here)


def garage_id(folder: Private, *, make: bool = False) -> bytes:
    """Return the garage's random id; nothing where there is none, unless it is to be made."""
    if found := _id_in(folder):
        return found
    if not make:
        return b""
    with _first:
        return _id_in(folder) or _id_made(folder)


def _id_in(folder: Private) -> bytes:
    with contextlib.suppress(OSError, NotRead):
        found = folder.read(_ID, 64).strip()
        if len(found) == 32 and found.isalnum():
            return found
    return b""


def _id_made(folder: Private) -> bytes:
    fresh = os.urandom(16).hex().encode()
    folder.put(_ID, fresh + b"\n")
    return fresh


def mark(key: Key, garage: bytes, before: bytes, line: bytes) -> bytes:
    """Return the mark of a line: 64 hexadecimal digits."""
    # Each part with its length, so that no two sets of parts read the same.
    parts = b"".join(b"%d:%s" % (len(part), part) for part in (garage, before, line))
    begun = _begun(key.secret).copy()
    begun.update(parts)
    return begun.hexdigest().encode()


@lru_cache(maxsize=4)
def _begun(secret: bytes) -> "HMAC":
    """Return what every mark under a key begins with: to look the algorithm up took longer than the mark."""
    from hmac import new

    return new(secret, digestmod="sha256")


_MARK = b', "mark": "'


def signed(key: Key, garage: bytes, before: bytes, line: bytes) -> bytes:
    """Return a line, a JSON object, with its mark in it."""
    return b'%s%s%s"}' % (line[:-1], _MARK, mark(key, garage, before, line))


def verifies(key: Key, garage: bytes, before: bytes, line: bytes) -> bool:
    """Return whether a line bears the mark that only this user's program could give it."""
    body, found, rest = line.rpartition(_MARK)
    if not found or not garage or not rest.endswith(b'"}'):
        return False
    from hmac import compare_digest

    return compare_digest(rest[:-2], mark(key, garage, before, body + b"}"))


def mark_of(line: bytes) -> str:
    """Return the mark that a line bears, whether it verifies or not; nothing where it bears none."""
    _, found, rest = line.rpartition(_MARK)
    return rest[:-2].decode("ascii", "replace") if found else ""
