"""One lock for a whole garage, so that two programs never write to it at once."""

import contextlib
import datetime as dt
import errno
import functools
import os
import platform
import time
from collections.abc import Iterator
from pathlib import Path

import attrs

from paddock_tui.store import system_calls
from paddock_tui.store.errors import NotWritten, in_plain_words
from paddock_tui.store.guarded import NotRead
from paddock_tui.store.private import PRIVATE as PRIVATE
from paddock_tui.store.private import Private, private
from paddock_tui.store.processes import is_alive
from paddock_tui.store.render import render_line
from paddock_tui.store.tree import release

_LOCK = "lock"
_END = "\n\n"
"""Behind a holder's note: what stands after it is left of a longer one."""
_LOOK_AGAIN = 0.02
_LONGEST_NOTE = 1000
_BUSY = (errno.EAGAIN, errno.EACCES)
_NO_LOCKS = (errno.ENOSYS, errno.ENOLCK, errno.EOPNOTSUPP, errno.ENOTSUP, errno.EINVAL)


@attrs.frozen
class Holder:
    """Who holds a lock: process number, computer, and since when (local time, without zone)."""

    pid: int
    host: str
    since: dt.datetime

    def __str__(self) -> str:
        return f"process {self.pid} on {self.host} since {self.since:%H:%M:%S}"


class Locked(Exception):
    """Another program holds the lock, and kept it for as long as we waited."""

    def __init__(self, holder: Holder | None) -> None:
        super().__init__(f"the garage is in use by {holder or 'another program'}")
        self.holder = holder


@contextlib.contextmanager
def hold(garage: Path, *, wait: float = 2.0, since: dt.datetime | None = None) -> Iterator[Private]:
    """Hold the garage's lock; `wait` is in seconds. Gives the garage's private folder, open meanwhile.

    Not to be nested: a second hold waits for the first, in the same process too. Raises Locked, and
    NotWritten where the folder takes no lock.
    """
    with contextlib.ExitStack() as stack:
        try:
            folder = stack.enter_context(private(garage, make=True))
            file = folder.open(_LOCK)
            stack.callback(release, file)
            taken = _taken(file, wait)
        except OSError as error:
            reason = "this disk takes no locks" if error.errno in _NO_LOCKS else in_plain_words(error)
            raise NotWritten(f"the garage cannot be locked: {reason}") from error
        if not taken:
            raise Locked(_holder(folder))
        with contextlib.suppress(OSError):  # only for the message to others
            _sign(file, since or dt.datetime.now())
        try:
            yield folder
        finally:
            with contextlib.suppress(OSError):
                system_calls.seek(file, 0)
                system_calls.write(file, _END.encode("ascii"))


def holder(garage: Path) -> Holder | None:
    """Return who signed for the lock last; None where nobody did, or who did is gone."""
    try:
        with private(garage) as folder:
            return _holder(folder)
    except OSError:
        return None


def _taken(file: int, wait: float) -> bool:
    """Take the lock of an open file, which closing it gives back; False where others keep it."""
    end = time.monotonic() + wait
    while True:
        try:
            system_calls.lock(file)
        except OSError as error:
            if error.errno not in _BUSY:
                raise
        else:
            return True
        if time.monotonic() >= end:
            return False
        time.sleep(_LOOK_AGAIN)


def _holder(folder: Private) -> Holder | None:
    import tomllib  # most that loads this module meets no other holder

    try:
        text, _, _ = folder.read(_LOCK, _LONGEST_NOTE).decode("utf-8").partition(_END)
        note = tomllib.loads(text)
        pid, host, since = note["pid"], note["host"], note["since"]
    except (OSError, NotRead, ValueError, KeyError, RecursionError):
        return None
    if not (isinstance(pid, int) and isinstance(host, str) and isinstance(since, dt.datetime)):
        return None
    if host == platform.node() and not is_alive(pid):
        return None
    return Holder(pid, host, since)


def _sign(file: int, since: dt.datetime) -> None:
    """Say in the lock's own file who holds it.

    Written over what stands there: a file that comes and goes, or is emptied, has the disk write each time.
    """
    at = since.replace(tzinfo=None).isoformat(timespec="seconds")
    text = f"pid = {os.getpid()}\n{_host_line()}\nsince = {at}{_END}"
    system_calls.write(file, text.encode("utf-8"))


@functools.cache
def _host_line() -> str:
    return render_line(("host",), platform.node())
