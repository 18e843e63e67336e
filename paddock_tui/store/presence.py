"""Who has a garage open: each run of the screens leaves a note while it runs, for others to read.

A note is a stranger's word like everything in a garage: bounded, and only shown. One of this computer whose
process is gone is passed over, and one of another computer after a day.
"""

import contextlib
import datetime as dt
import getpass
import json
import os
import platform
import sys
from collections.abc import Iterator
from pathlib import Path

import attrs

from paddock_tui.store.guarded import NotRead
from paddock_tui.store.private import Private, private
from paddock_tui.store.processes import is_alive

_FOLDER = "open"
_LONGEST = 1000
_MOST = 50
_OLD = dt.timedelta(days=1)


@attrs.frozen
class Present:
    """Somebody who has the garage open: user, computer, terminal where there is one, since when (local)."""

    user: str
    host: str
    terminal: str
    since: dt.datetime

    def __str__(self) -> str:
        at = f" ({self.terminal})" if self.terminal else ""
        return f"{self.user} on {self.host}{at} since {self.since:%H:%M}"


def _name() -> str:
    return f"{platform.node() or 'here'}-{os.getpid()}"


def enter(garage: Path, now: dt.datetime) -> None:
    """Note that this run has the garage open; where nothing can be noted nobody is told."""
    note = {
        "pid": os.getpid(),
        "host": platform.node(),
        "user": _user(),
        "terminal": _terminal(),
        "since": now.replace(microsecond=0, tzinfo=None).isoformat(),
    }
    with contextlib.suppress(OSError), contextlib.ExitStack() as stack:
        folder = stack.enter_context(private(garage, make=True))
        here = stack.enter_context(folder.inside(_FOLDER, make=True))
        _tidy(here)
        here.put(_name(), json.dumps(note).encode("ascii"))


def _tidy(here: Private) -> None:
    """Take away notes of this computer whose process is gone."""
    start = f"{platform.node() or 'here'}-"
    for name in here.names()[:_MOST]:
        number = name.removeprefix(start)
        if name.startswith(start) and number.isdecimal() and not is_alive(int(number)):
            with contextlib.suppress(OSError):
                here.remove(name)


def leave(garage: Path) -> None:
    """Take the note of this run away."""
    with contextlib.suppress(OSError), private(garage) as folder, folder.inside(_FOLDER) as here:
        here.remove(_name())


def others(garage: Path, now: dt.datetime) -> tuple[Present, ...]:
    """List who else has the garage open, by the time since when."""
    return tuple(sorted(_others(garage, now.replace(tzinfo=None)), key=lambda one: one.since))


def _others(garage: Path, now: dt.datetime) -> Iterator[Present]:
    with contextlib.suppress(OSError), private(garage) as folder, folder.inside(_FOLDER) as here:
        for name in here.names()[:_MOST]:
            if name == _name():
                continue
            with contextlib.suppress(OSError, NotRead, ValueError, KeyError, TypeError, RecursionError):
                note = json.loads(here.read(name, _LONGEST))
                since = dt.datetime.fromisoformat(str(note["since"])).replace(tzinfo=None)
                host, pid = str(note["host"]), int(note["pid"])
                if host == platform.node():
                    if not is_alive(pid):
                        continue
                elif abs(now - since) > _OLD:
                    continue
                yield Present(_short(note["user"]), _short(host), _short(note.get("terminal", "")), since)


def _short(text: object) -> str:
    return str(text)[:30]


def _user() -> str:
    try:
        return getpass.getuser()
    except (KeyError, OSError, ImportError):
        return "somebody"


def _terminal() -> str:
    """Return the terminal of this run, and whether it is reached over a network."""
    try:
        at = os.ttyname(sys.stdin.fileno()).removeprefix("/dev/")
    except (OSError, ValueError, AttributeError):
        at = ""
    return f"{at}, over ssh" if at and os.environ.get("SSH_CONNECTION") else at
