"""Two programs never write to one garage at once, and the one that waits knows for whom."""

import datetime as dt
import errno
import os
import subprocess
import sys
from pathlib import Path
from unittest.mock import Mock

import pytest

from paddock_tui.store import system_calls
from paddock_tui.store.errors import NotWritten
from paddock_tui.store.lock import Holder, Locked, hold, holder
from paddock_tui.store.private import private


def test_the_second_hold_is_told_who_has_the_lock(tmp_path: Path) -> None:
    since = dt.datetime(2026, 5, 16, 10, 37, 5)

    with hold(tmp_path, since=since), pytest.raises(Locked) as caught, hold(tmp_path, wait=0):
        pass

    found = caught.value.holder
    assert found is not None
    assert (found.pid, found.since) == (os.getpid(), since)
    assert (
        str(caught.value) == f"the garage is in use by process {os.getpid()} on {found.host} since 10:37:05"
    )


def test_a_lock_that_was_let_go_can_be_taken_again(tmp_path: Path) -> None:
    with hold(tmp_path):
        pass
    assert holder(tmp_path) is None

    with hold(tmp_path, wait=0):
        assert holder(tmp_path) is not None


def test_a_lock_is_let_go_after_an_error(tmp_path: Path) -> None:
    with pytest.raises(KeyError), hold(tmp_path):
        raise KeyError

    with hold(tmp_path, wait=0):
        pass


def test_another_process_is_kept_out(tmp_path: Path) -> None:
    code = (
        "import sys, pathlib\n"
        "from paddock_tui.store.lock import Locked, hold\n"
        "try:\n"
        "    with hold(pathlib.Path(sys.argv[1]), wait=0): print('in')\n"
        "except Locked as error: print(error.holder.pid)\n"
    )
    command = [sys.executable, "-c", code, str(tmp_path)]

    with hold(tmp_path):
        during = subprocess.run(command, capture_output=True, text=True, check=True).stdout
    afterwards = subprocess.run(command, capture_output=True, text=True, check=True).stdout

    assert during.strip() == str(os.getpid())
    assert afterwards.strip() == "in"


def test_the_private_folder_ignores_itself_in_git(tmp_path: Path) -> None:
    with private(tmp_path, make=True):
        ignore = tmp_path / ".paddock" / ".gitignore"
    assert ignore.read_text() == "*\n"
    ignore.write_text("own\n")

    with private(tmp_path, make=True):
        assert ignore.read_text() == "own\n"


def test_a_note_that_cannot_be_read_names_nobody(tmp_path: Path) -> None:
    with private(tmp_path, make=True):
        note = tmp_path / ".paddock" / "lock"

    for text in ("", "not toml", "pid = 'x'\nhost = 1\nsince = 2026-05-16\n"):
        note.write_text(text)
        assert holder(tmp_path) is None

    note.write_text("pid = 7\nhost = 'laptop'\nsince = 2026-05-16T10:00:00\n")
    assert holder(tmp_path) == Holder(7, "laptop", dt.datetime(2026, 5, 16, 10))


def test_a_disk_that_takes_no_locks_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def no_locks(_: int) -> None:
        raise OSError(errno.ENOSYS, "not implemented")

    monkeypatch.setattr(system_calls, "lock", no_locks)

    with pytest.raises(NotWritten, match="no locks"), hold(tmp_path, wait=0):
        pass


def test_a_garage_that_takes_no_lock_is_said(tmp_path: Path) -> None:
    (tmp_path / ".paddock").write_text("a file")

    with pytest.raises(NotWritten, match="cannot be locked"), hold(tmp_path, wait=0):
        pass


def test_what_is_left_of_a_longer_note_is_not_read(tmp_path: Path) -> None:
    with private(tmp_path, make=True):
        note = tmp_path / ".paddock" / "lock"
    note.write_text("pid = 7\nhost = 'laptop'\nsince = 2026-05-16T10:00:00\n\nop'\nsince = 2026-05-16\n")

    assert holder(tmp_path) == Holder(7, "laptop", dt.datetime(2026, 5, 16, 10))
    note.write_text("x" * 500)
    with hold(tmp_path):
        assert holder(tmp_path) is not None
    assert holder(tmp_path) is None


def test_no_file_comes_and_goes_with_a_hold_nor_is_one_emptied(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with hold(tmp_path):
        pass
    made, changed = Mock(wraps=system_calls.create), Mock(wraps=system_calls.truncate)
    monkeypatch.setattr(system_calls, "create", made)
    monkeypatch.setattr(system_calls, "truncate", changed)
    before = sorted((tmp_path / ".paddock").iterdir())

    with hold(tmp_path):
        assert sorted((tmp_path / ".paddock").iterdir()) == before

    assert not made.called
    assert not changed.called
