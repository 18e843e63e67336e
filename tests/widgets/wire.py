"""A program at the other end of a terminal: what it sends is read and counted, keys are typed to it."""

import fcntl
import os
import pty
import select
import signal
import struct
import subprocess
import sys
import termios
import time
from pathlib import Path
from types import TracebackType

from tests.widgets.ready import Forked, ready
from tests.widgets.terminal import Terminal

PATIENCE = 20.0
"""Seconds to wait for what must come; generous, since the machine may be busy."""


class Wire:
    """A Python program in a pseudo-terminal of its own, `columns` by `lines`."""

    def __init__(
        self,
        code: str,
        columns: int = 80,
        lines: int = 24,
        settings: dict[str, str] | None = None,
        loaded: bool = True,
    ) -> None:
        """Start the program; it leads its own terminal session, as a login shell's child would.

        Unless `loaded`, an interpreter starts for it from nothing: for what is decided while it starts.
        """
        self.near, far = pty.openpty()
        fcntl.ioctl(far, termios.TIOCSWINSZ, struct.pack("HHHH", lines, columns, 0, 0))
        env = {**os.environ, "TERM": "xterm-256color", "PYTHONPATH": str(Path.cwd()), **(settings or {})}
        for name in ("COLUMNS", "LINES", "COLORTERM"):
            env.pop(name, None)
        self.process: Forked | subprocess.Popen[bytes] = (
            ready().start(code, far, env) if loaded else _fresh(code, far, env)
        )
        os.close(far)
        self.open = True
        self.terminal = Terminal(columns, lines)

    def __enter__(self) -> "Wire":
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self.process.poll() is None:
            self.process.kill()
        self.process.wait()
        self.hang_up()

    def read(self, quiet: float = 0.3, patience: float = PATIENCE) -> bytes:
        """Read until nothing has come for `quiet` seconds."""
        got, end = b"", time.monotonic() + patience
        while time.monotonic() < end and select.select([self.near], [], [], quiet)[0]:
            try:
                piece = os.read(self.near, 65536)
            except OSError:
                break
            if not piece:
                break
            got += piece
        self.terminal.feed(got)
        return got

    @property
    def shown(self) -> str:
        """The text that stands on the screen."""
        return self.terminal.text()

    def read_until(self, mark: str) -> bytes:
        """Read until a text is sent or shown, and then until it is quiet; AssertionError without it."""
        got, end = b"", time.monotonic() + PATIENCE
        while mark.encode() not in got and mark not in self.shown:
            piece = self.read(0.1)
            got += piece
            ended = self.process.poll() is not None and not piece
            assert time.monotonic() < end, f"{mark} never came: {got!r}"
            assert not ended, f"ended with {self.process.returncode} before {mark}: {got!r}"
        return got + self.read()

    def type(self, keys: str | bytes) -> None:
        """Send keys as a terminal does."""
        os.write(self.near, keys.encode() if isinstance(keys, str) else keys)

    def after(self, keys: str | bytes, quiet: float = 0.3, mark: str = "") -> bytes:
        """Send keys, and read what they bring, until nothing has come for `quiet` seconds.

        With a `mark`, until that is shown first, however long a busy machine takes.
        """
        self.type(keys)
        return self.read_until(mark) if mark else self.read(quiet)

    def signal(self, number: signal.Signals) -> None:
        """Send a signal to the program."""
        self.process.send_signal(number)

    def hang_up(self) -> None:
        """Close the terminal, as a lost connection does."""
        if self.open:
            self.open = False
            os.close(self.near)

    def ended(self) -> int:
        """Wait for the end and return the exit code, below zero for a signal."""
        end = time.monotonic() + PATIENCE
        while (status := self.process.poll()) is None:
            assert time.monotonic() < end, "the program goes on"
            if self.open:
                self.read(0.05, 0.2)
        return status


def _fresh(code: str, terminal: int, env: dict[str, str]) -> "subprocess.Popen[bytes]":
    """Start an interpreter on a terminal."""
    return subprocess.Popen(
        [sys.executable, "-c", _LEAD + code],
        stdin=terminal,
        stdout=terminal,
        stderr=terminal,
        env=env,
        start_new_session=True,
    )


_LEAD = """
import fcntl, signal, termios
fcntl.ioctl(0, termios.TIOCSCTTY, 0)
signal.signal(signal.SIGHUP, signal.SIG_DFL)
"""
