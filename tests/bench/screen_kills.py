"""The screens are killed at random moments while a rider edits: what showed without a mark is on disk.

`python -m tests.bench screen_kills [N]` kills N times (300). The screens run in a pseudo-terminal, where
digits are typed on a row; the witness is what stood on the terminal when the process was gone, with all
that it had sent. A value without a mark that is not in the file was shown and lost.
"""

import datetime as dt
import fcntl
import os
import pty
import random
import re
import select
import shutil
import signal
import struct
import sys
import tempfile
import termios
import time
import tomllib
import warnings
from pathlib import Path

import attrs

from paddock_tui.app import PaddockApp
from paddock_tui.desk import Desk
from paddock_tui.desk.unsaved import NOT_YET
from paddock_tui.records.edits import Change
from paddock_tui.records.paths import Ref
from paddock_tui.screens.place import Place
from paddock_tui.store.journal import entries
from tests.small import session, write
from tests.widgets.terminal import Terminal

ONE = Ref("session", "one")
ROW = re.compile(r"wheelie(?: control)?\s+(\d|not known)[^\n]*")
NOW = dt.datetime(2026, 5, 16, 9)
PATIENCE = 30.0


@attrs.define
class Tally:
    """What was counted."""

    kills: int = 0
    typed: int = 0
    shown: int = 0
    marked: int = 0
    lost: int = 0


class Screens(PaddockApp):
    """The screens with the cursor on the row that is edited."""

    def on_mount(self) -> None:
        """Go to the row once it is there."""
        self.set_timer(0.05, self._go)

    def _go(self) -> None:
        board = self.main.board
        row = next(one for one in board.page.rows() if one.path == ("setup", "controls", "wheelie"))
        board.go(row.identity)
        board.say("ready")


def screens(root: Path) -> None:
    """Run the screens."""
    Screens(Desk(root, lambda: NOW), Place(room="setup", subject=ONE)).run(mouse=False)


def started(root: Path) -> tuple[int, int]:
    """Start the screens in a terminal of their own; give process and terminal."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", DeprecationWarning)
        pid, near = pty.fork()
    if pid == 0:
        try:
            screens(root)
        finally:
            os._exit(1)
    fcntl.ioctl(near, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
    return pid, near


def taken_in(near: int, terminal: Terminal, seconds: float) -> bool:
    """Read what comes for so long; False once there is nobody at the other end."""
    end = time.monotonic() + seconds
    while (left := end - time.monotonic()) > 0:
        if select.select([near], [], [], left)[0]:
            try:
                piece = os.read(near, 65536)
            except OSError:
                return False
            if not piece:
                return False
            terminal.feed(piece)
    return True


def killed_once(root: Path, chance: random.Random, tally: Tally) -> str:
    """Edit a few values, kill, and compare what showed with the file; give what is wrong."""
    before, first = len(entries(root)), on_disk(root)
    pid, near = started(root)
    terminal = Terminal(80, 24)
    end = time.monotonic() + PATIENCE
    while "ready" not in terminal.text() and time.monotonic() < end and taken_in(near, terminal, 0.05):
        pass
    for _ in range(chance.randrange(2, 8)):
        os.write(near, str(chance.randrange(1, 7)).encode())
        tally.typed += 1
        taken_in(near, terminal, chance.random() * 0.08)
    os.kill(pid, signal.SIGKILL)
    os.waitpid(pid, 0)
    taken_in(near, terminal, 0.2)
    os.close(near)
    tally.kills += 1
    row = ROW.search(terminal.text())
    if row is None:
        return f"no row on the screen:\n{terminal.text()}"
    if NOT_YET in row[0]:
        tally.marked += 1
        return ""
    if row[1] == "not known":
        return ""
    tally.shown += 1
    shown = int(row[1])
    # What is on disk may be a later edit, not painted any more: then what showed was there before it.
    if shown in (on_disk(root), first, *saved_since(root, before)):
        return ""
    tally.lost += 1
    return f"shown {shown}, on disk {on_disk(root)}"


def on_disk(root: Path) -> object:
    """Return the value that is in the file."""
    data = tomllib.loads((root / "sessions" / "one.toml").read_text(encoding="utf-8"))
    return data["setup"]["controls"].get("wheelie")


def saved_since(root: Path, before: int) -> list[object]:
    """List the values that the journal noted after so many lines, in order."""
    return [
        edit.new
        for one in entries(root)[before:]
        for change in one.step.changes
        if isinstance(change, Change)
        for edit in change.edits
    ]


def main(arguments: list[str]) -> int:
    """Kill N times (300), and print what was counted; status 1 where anything was shown and lost."""
    times = int(arguments[0]) if arguments else 300
    tally, chance, wrong = Tally(), random.Random(1), []
    begin = time.monotonic()
    with tempfile.TemporaryDirectory() as folder:
        os.environ["XDG_STATE_HOME"] = str(Path(folder) / "state")
        os.environ["TERM"] = "xterm-256color"
        root = Path(folder) / "garage"
        for number in range(times):
            if number % 20 == 0:  # a garage of some days, not of years
                shutil.rmtree(root, ignore_errors=True)
                write(root, sessions__one=session())
            wrong.append(killed_once(root, chance, tally))
    wrong = [one for one in wrong if one]
    sys.stdout.write(
        f"{tally.kills} kills of the screens in {time.monotonic() - begin:.0f} s: {tally.typed} values typed,"
        f" {tally.shown} shown without a mark at the end, {tally.marked} with one;"
        f" {tally.lost} shown and lost\n"
    )
    sys.stdout.writelines(f"{line}\n" for line in wrong[:10])
    return 1 if wrong else 0
