"""The thread that keeps: in order, whatever fails, and to the end though nobody closes it."""

import subprocess
import sys
import threading
from pathlib import Path

import pytest

from paddock_tui.desk.writer import Writer


def test_what_is_given_is_done_in_order_in_one_other_thread() -> None:
    writer, seen = Writer(), list[tuple[int, threading.Thread]]()
    for number in range(50):
        writer.submit(lambda number=number: seen.append((number, threading.current_thread())))  # type: ignore[misc]
    writer.wait()

    (thread,) = {thread for _, thread in seen}
    assert [number for number, _ in seen] == list(range(50))
    assert thread is not threading.current_thread()
    assert thread.name == "keep"
    writer.close()
    assert not thread.is_alive()


def test_who_waits_no_longer_than_so_many_seconds_goes_on() -> None:
    writer, gate = Writer(), threading.Event()
    writer.wait()  # nothing was given: there is nothing to wait for
    writer.submit(gate.wait)
    done: list[int] = []
    writer.submit(lambda: done.append(1))

    writer.wait(0.01)
    assert done == []

    gate.set()
    writer.wait()
    assert done == [1]
    writer.close()
    writer.submit(lambda: done.append(2))  # begins anew
    writer.close()
    assert done == [1, 2]


def test_what_fails_is_reported_and_the_next_is_done(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path))
    writer, done = Writer(), list[int]()
    writer.submit(lambda: 1 // 0)
    writer.submit(lambda: done.append(1))
    writer.close()

    assert done == [1]
    (report,) = (tmp_path / "paddock-tui").glob("crash-*")
    assert "ZeroDivisionError" in report.read_text()


def test_the_end_of_the_program_waits_for_what_was_given(tmp_path: Path) -> None:
    code = (
        "import sys, time; from paddock_tui.desk.writer import Writer\n"
        "writer = Writer()\n"
        "writer.submit(lambda: time.sleep(0.3))\n"
        "writer.submit(lambda: open(sys.argv[1], 'w').write('kept'))\n"
    )
    subprocess.run([sys.executable, "-c", code, str(tmp_path / "file")], check=True, timeout=60)

    assert (tmp_path / "file").read_text() == "kept"


def test_a_command_that_is_interrupted_ends_when_what_it_began_is_kept(tmp_path: Path) -> None:
    kept = tmp_path / "kept"
    code = f"""
import pathlib, time
import paddock_tui.__main__ as program
from paddock_tui.desk.writer import Writer

def interrupted():
    global writer
    writer = Writer()
    writer.submit(lambda: (time.sleep(0.3), pathlib.Path({str(kept)!r}).write_text("whole")))
    return program.INTERRUPTED

program.main = interrupted
program.script()
"""
    done = subprocess.run([sys.executable, "-c", code], check=False)

    assert done.returncode == 130
    assert kept.read_text() == "whole"
