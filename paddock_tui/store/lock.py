"""One lock for a whole garage, so that two programs never write to it at once."""

import contextlib
import datetime as dt
import os
import platform
import tomllib
from collections.abc import Iterator
from pathlib import Path

import attrs

from paddock_tui.store.errors import NotWritten, in_plain_words
from paddock_tui.store.render import render_line

PRIVATE = ".paddock"
"""The garage's own folder for what is no record; it ignores itself in git."""


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


def private_folder(garage: Path) -> Path:
    """Make the garage's own folder if it is not there, and return it. Raises OSError."""
    folder = garage / PRIVATE
    folder.mkdir(exist_ok=True)
    ignore = folder / ".gitignore"
    if not ignore.exists():
        ignore.write_text("*\n", encoding="utf-8")
    return folder


@contextlib.contextmanager
def hold(garage: Path, *, wait: float = 2.0, since: dt.datetime | None = None) -> Iterator[None]:
    """Hold the garage's lock; `wait` is in seconds.

    Not to be nested: a second hold waits for the first, in the same process too. Raises Locked, and
    NotWritten where the folder takes no lock.
    """
    from filelock import FileLock, Timeout

    try:
        folder = private_folder(garage)
        lock = FileLock(folder / "lock")
        lock.acquire(timeout=wait, poll_interval=0.02)
    except Timeout:
        raise Locked(holder(garage)) from None
    except OSError as error:
        raise NotWritten(f"the garage cannot be locked: {in_plain_words(error)}") from error
    except NotImplementedError as error:
        raise NotWritten("the garage cannot be locked: this disk takes no locks") from error
    note = folder / "holder"
    try:
        with contextlib.suppress(OSError):  # only for the message to others
            _sign(note, since or dt.datetime.now())
        yield
    finally:
        with contextlib.suppress(OSError):
            note.unlink()
        lock.release()


def holder(garage: Path) -> Holder | None:
    """Return who signed for the lock last; None where nobody did or the note cannot be read."""
    try:
        note = tomllib.loads((garage / PRIVATE / "holder").read_text(encoding="utf-8"))
        pid, host, since = note["pid"], note["host"], note["since"]
    except (OSError, ValueError, KeyError):
        return None
    if isinstance(pid, int) and isinstance(host, str) and isinstance(since, dt.datetime):
        return Holder(pid, host, since)
    return None


def _sign(note: Path, since: dt.datetime) -> None:
    values = {"pid": os.getpid(), "host": platform.node(), "since": since.replace(microsecond=0)}
    lines = [render_line((key,), value) for key, value in values.items()]
    note.write_text("\n".join(lines) + "\n", encoding="utf-8")
