"""Run a script in a terminal of 80x24 and type keys once its full screen has settled."""

import fcntl
import os
import pty
import re
import select
import signal
import struct
import termios
import time
from pathlib import Path

FULL_SCREEN = b"\x1b[?1049h"
NAMED_KEYS = {
    "enter": "\r",
    "tab": "\t",
    "space": " ",
    "escape": "\x1b",
    "backspace": "\x7f",
    "up": "\x1b[A",
    "down": "\x1b[B",
    "right": "\x1b[C",
    "left": "\x1b[D",
}
_ROWS, _COLUMNS = 24, 80
_UNTIL_SCREEN = 900.0  # s: what comes before the screen may install packages
_AT_SCREEN = 120.0  # s
_QUIET = 1.0  # s without output: settled
_NEVER_QUIET = 8.0  # s: a screen with a clock need not settle
_CONTROL_SEQUENCE = rb"\[[0-?]*[ -/]*[@-~]"
_STRING_SEQUENCE = rb"[]PX^_][^\x07\x1b]*(?:\x07|\x1b\\)"
_ESCAPES = re.compile(rb"\x1b(?:" + _CONTROL_SEQUENCE + rb"|" + _STRING_SEQUENCE + rb"|.)", re.DOTALL)


class Stuck(Exception):
    """The script showed no full screen, or did not end in time after its keys."""


class _Terminal:
    """One child process and the master side of its terminal."""

    def __init__(self, script: str, folder: Path, environment: dict[str, str]) -> None:
        self.output = bytearray()
        self._pid, self._master = pty.fork()
        if self._pid == 0:
            fcntl.ioctl(0, termios.TIOCSWINSZ, struct.pack("HHHH", _ROWS, _COLUMNS, 0, 0))
            os.chdir(folder)
            os.execvpe("bash", ["bash", "-c", script], environment)

    def read(self, seconds: float) -> bool | None:
        """True when output came within the time, False when none did, None at the end of the script."""
        if not select.select([self._master], [], [], seconds)[0]:
            return False
        try:
            piece = os.read(self._master, 65536)
        except OSError:  # Linux reports the far side closed as an input/output error
            piece = b""
        self.output += piece
        return True if piece else None

    def type(self, key: str) -> None:
        os.write(self._master, NAMED_KEYS.get(key, key).encode())

    def settle(self) -> bool:
        """Wait for a pause in the output; False when the script has ended instead."""
        deadline = time.monotonic() + _NEVER_QUIET
        while came := self.read(_QUIET):
            if time.monotonic() > deadline:
                break
        return came is not None

    def kill(self) -> None:
        os.killpg(self._pid, signal.SIGKILL)
        self.status()

    def status(self) -> int:
        return os.waitstatus_to_exitcode(os.waitpid(self._pid, 0)[1])

    def text(self) -> str:
        return _ESCAPES.sub(b" ", bytes(self.output)).decode("utf-8", "replace")


def _wait_for_screen(child: _Terminal) -> None:
    deadline = time.monotonic() + _UNTIL_SCREEN
    while FULL_SCREEN not in child.output:
        if child.read(1.0) is None:
            raise Stuck(f"ended with {child.status()} before any full screen\n{child.text()[-2000:]}")
        if time.monotonic() > deadline:
            child.kill()
            raise Stuck(f"no full screen within {_UNTIL_SCREEN:g} s\n{child.text()[-2000:]}")


def run(script: str, folder: Path, environment: dict[str, str], keys: tuple[str, ...]) -> tuple[int, str]:
    """Exit status, and all output without its escape sequences.

    Keys are names from NAMED_KEYS or are typed as they stand. Raises Stuck.
    """
    plain = {name: value for name, value in environment.items() if name not in ("COLUMNS", "LINES")}
    child = _Terminal(script, folder, plain | {"TERM": "xterm-256color"})
    _wait_for_screen(child)
    before = child.text()
    deadline = time.monotonic() + _AT_SCREEN
    for key in keys:
        if not child.settle():
            raise Stuck(f"ended with {child.status()} before {key!r} was typed\n{child.text()[-4000:]}")
        child.type(key)
    while child.read(1.0) is not None:
        if time.monotonic() > deadline:
            child.kill()
            raise Stuck(f"still running {_AT_SCREEN:g} s after its screen came\n{child.text()[-4000:]}")
    print(before.rstrip())
    print(f"a full screen came, {len(child.output)} bytes in all; keys typed: {' '.join(keys)}")
    return child.status(), child.text()
