"""Two processes edit one file at once: no edit that was kept is lost.

`python -m tests.bench writers [N]`: N edits each (500) through the desk, each adding a table of its own.
"""

import functools
import os
import sys
import tempfile
import time
import tomllib
from pathlib import Path

from paddock_tui.desk import Desk, setting_value
from paddock_tui.records.paths import Ref
from paddock_tui.store.saving import Saved
from tests.bench._forking import forked
from tests.small import session, write

ONE = Ref("session", "one")
NAMES = (1, 2)
"""The two writers."""


def number_of(name: int, edit: int) -> str:
    """Give the key of a writer's edit."""
    return f"{name * 100_000 + edit}"


def writer(root: Path, name: int, times: int) -> None:
    """Make so many edits, each tried again until it is kept."""
    desk = Desk(root)
    for edit in range(times):
        desk.do(setting_value(desk.files, ONE, ("notes", number_of(name, edit), "text"), f"{edit}"))
        while not isinstance(desk.settled()[-1], Saved):
            desk.try_again()
    desk.close()


def run(times: int, root: Path) -> int:
    """Let two write so many times each; gives how many of their edits are not in the file."""
    write(root, sessions__one=session())
    pids = [forked(functools.partial(writer, root, name, times)) for name in NAMES]
    statuses = [os.waitstatus_to_exitcode(os.waitpid(pid, 0)[1]) for pid in pids]
    assert statuses == [0, 0], f"writers ended with {statuses}"
    notes = tomllib.loads((root / "sessions" / "one.toml").read_text(encoding="utf-8"))["notes"]
    return sum(number_of(name, edit) not in notes for name in NAMES for edit in range(times))


def main(arguments: list[str]) -> int:
    """Run with N edits each (500), and print what was counted; status 1 where an edit is lost."""
    times = int(arguments[0]) if arguments else 500
    begin = time.monotonic()
    with tempfile.TemporaryDirectory() as folder:
        lost = run(times, Path(folder))
    took = time.monotonic() - begin
    sys.stdout.write(f"2 processes with {times} edits each of one file in {took:.0f} s: {lost} lost\n")
    return 1 if lost else 0
