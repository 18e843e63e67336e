"""The doctor: what it finds, what it says to do, and that it leaves nothing behind."""

import datetime as dt
import locale
import os
from pathlib import Path

import pytest

from paddock_tui.commands import doctor as tests_of
from paddock_tui.store import system_calls
from paddock_tui.store.settings import settings_file
from tests.commands.running import Runner
from tests.every import every
from tests.small import snapshot

LATER = dt.datetime(2099, 1, 2, 12, 0).astimezone()


def test_a_garage_that_is_well_has_nothing_to_fix_and_stays_as_it_was(
    run: Runner, garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(tests_of, "_now", lambda: LATER)
    before = snapshot(garage)
    ran = run("doctor", garage)

    assert (ran.status, ran.err) == (0, "")
    of_machine = ("TERM", "size", "colours", "locale", "clock", "settings", "git")
    for label in (*of_machine, "mosh", "writing", "lock", "clock beside records", "free space"):
        assert f"  {label} " in ran.out, label
    assert "fix:" not in ran.out
    assert snapshot(garage) == before


@every(
    ("name", "value", "said"),
    [
        ("TERM", "dumb", "draws no screens"),
        ("COLUMNS", "30", "40x20 at least"),
        ("NO_COLOR", "1", "NO_COLOR is set"),
    ],
)
def test_a_terminal_that_could_be_better_says_how(
    run: Runner, monkeypatch: pytest.MonkeyPatch, name: str, value: str, said: str
) -> None:
    monkeypatch.setenv(name, value)
    ran = run("doctor")

    assert said in ran.out
    assert ran.status == (0 if name == "NO_COLOR" else 1)


@every(("delay", "status"), [("500", 1), ("10", 0), ("", 0)])
def test_tmux_that_holds_escape_back_is_told_to_let_it_go(
    run: Runner, monkeypatch: pytest.MonkeyPatch, tmp_path: Path, delay: str, status: int
) -> None:
    program = tmp_path / "tmux"
    program.write_text(f"#!/bin/sh\necho {delay}\n")
    program.chmod(0o755)
    monkeypatch.setenv("TMUX", "there")
    monkeypatch.setenv("PATH", f"{tmp_path}:{os.environ['PATH']}")
    ran = run("doctor")

    assert ran.status == status
    assert ("escape-time 10" in ran.out) == (status == 1)


def test_a_disk_that_cannot_be_written_or_locked_and_a_full_one_are_said(
    run: Runner, garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(_: int) -> None:
        raise OSError(95, "not supported")

    monkeypatch.setattr(tests_of, "lock", refused)
    assert "one program at a time" in run("doctor", garage).out
    monkeypatch.setattr(tests_of, "sync", refused)
    ran = run("doctor", garage)
    assert ran.status == 3
    assert "nothing can be saved here" in ran.out
    assert system_calls.lock is not refused


def test_files_that_cannot_be_read_and_settings_that_are_refused_are_named(run: Runner, garage: Path) -> None:
    (garage / "bikes" / "magpie.toml").write_text("name = ")
    file = settings_file()
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text('theme = "neon"\n')
    try:
        ran = run("doctor", garage)
    finally:
        file.unlink()

    assert ran.status == 3
    assert "bikes/magpie.toml" in ran.out
    assert "settings.toml:1" in ran.out


def test_a_folder_of_undo_that_is_not_ones_own_alone_is_said(run: Runner, garage: Path) -> None:
    (garage / ".paddock").symlink_to(garage / "bikes")
    ran = run("doctor", garage)

    assert ran.status == 1
    assert "only for one run" in ran.out


def test_a_folder_that_is_none_is_refused(run: Runner, tmp_path: Path) -> None:
    ran = run("doctor", tmp_path / "nowhere")

    assert ran.status == 3
    assert "paddock-tui new" in ran.err


@pytest.mark.parametrize(
    ("now", "said"),
    [
        (dt.datetime(2026, 5, 1), "behind: a session of 2026-06-20 was ridden already"),
        (LATER, "behind: a file was written 3 h from now"),
    ],
)
def test_a_clock_behind_the_newest_record_is_said(
    run: Runner, garage: Path, monkeypatch: pytest.MonkeyPatch, now: dt.datetime, said: str
) -> None:
    monkeypatch.setattr(tests_of, "_now", lambda: now.astimezone())
    written = LATER.timestamp() + 3 * 3600
    os.utime(garage / "bikes" / "magpie.toml", (written, written))
    ran = run("doctor", garage)

    assert said in " ".join(ran.out.split())
    assert ran.status == 1


@pytest.mark.parametrize(("encoding", "status"), [("UTF-8", 0), ("ISO-8859-1", 1)])
def test_mosh_is_found_and_needs_utf_8(
    run: Runner, monkeypatch: pytest.MonkeyPatch, tmp_path: Path, encoding: str, status: int
) -> None:
    assert "tmux keeps the screen" in " ".join(run("doctor").out.split())
    program = tmp_path / "mosh-server"
    program.write_text("#!/bin/sh\n")
    program.chmod(0o755)
    monkeypatch.setenv("PATH", f"{tmp_path}:{os.environ['PATH']}")
    monkeypatch.setattr(locale, "getpreferredencoding", lambda _: encoding)
    ran = run("doctor")

    assert ("it needs UTF-8" in ran.out) == bool(status)
    assert ran.status == status
