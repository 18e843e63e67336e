"""The way in: usage, versions, pipes that close, terminals that know few characters."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from paddock_tui import __main__ as way_in
from paddock_tui import __version__
from tests.commands.running import NEXT, Runner
from tests.every import every
from tests.pages.opened import SAMPLE

COMMAND = [sys.executable, "-m", "paddock_tui"]


@every("words", [[], ["--nonsense"], ["show"], ["check"], ["set", "x"], ["accept", "x"]])
def test_words_that_make_no_command_are_wrong_usage(run: Runner, words: list[str]) -> None:
    ran = run(*words)

    assert (ran.status, ran.out) == (64, "")
    assert "usage: paddock-tui" in ran.err


def test_help_is_printed_with_the_statuses_and_the_caution(run: Runner) -> None:
    ran = run("--help")

    words = " ".join(ran.out.split())
    assert (ran.status, ran.err) == (0, "")
    assert "status 0 NO FINDINGS, 1 CARE or NOT YET, 2 HOLD, 3 not read, 64 wrong usage" in words
    assert "not a guarantee of safety" in words
    assert run("check", "--help").status == 0


def test_the_version_names_program_and_libraries(run: Runner) -> None:
    ran = run("--version")

    assert (ran.status, ran.err) == (0, "")
    lines = dict(line.split(" ", 1) for line in ran.out.splitlines())
    assert lines["paddock-tui"] == __version__
    assert set(lines) == {
        "paddock-tui",
        "python",
        "textual",
        "attrs",
        "cattrs",
        "tomlkit",
        "pint",
    }
    assert "not installed" not in lines.values()


def test_the_screens_without_a_terminal_say_how_to_go_on(run: Runner) -> None:
    ran = run(SAMPLE)

    assert (ran.status, ran.out) == (3, "")
    assert "the screens need a terminal" in ran.err


def test_a_terminal_that_draws_nothing_gets_the_pages_as_text(
    run: Runner, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("TERM", "dumb")

    ran = run(SAMPLE)

    assert ran.status == 0
    assert NEXT in ran.out
    assert "CARE" in ran.out


def test_a_reader_that_leaves_early_is_one_line_and_the_status_of_what_was_done() -> None:
    with subprocess.Popen(
        [*COMMAND, "check", str(SAMPLE), "--all"], stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as process:
        assert process.stdout is not None
        assert process.stderr is not None
        process.stdout.close()
        said = process.stderr.read()

    assert said == b"the output could not be written: whoever read it is gone\n"
    assert process.returncode == 0


def test_a_terminal_that_is_not_utf_8_gets_what_reads_in_ascii(tmp_path: Path) -> None:
    done = subprocess.run(
        [*COMMAND, "show", str(SAMPLE)],
        env=os.environ | {"PYTHONIOENCODING": "ascii", "HOME": str(tmp_path)},
        capture_output=True,
        check=False,
    )

    assert (done.returncode, done.stderr) == (0, b"")
    assert done.stdout.startswith(b"garage - The shed")


def test_an_interrupt_is_no_traceback(run: Runner, monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupted(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(way_in, "_run", interrupted)

    ran = run("show", SAMPLE)

    assert (ran.status, ran.err) == (way_in.INTERRUPTED, "")


def test_a_folder_whose_name_is_no_text_is_said(run: Runner) -> None:
    ran = run("show", "/nowhere/\udcff\x1b[2J")

    assert ran.status == 3
    assert "\x1b" not in ran.err


def test_inside_a_garage_the_folder_may_be_left_out(
    garage: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(garage)
    monkeypatch.setenv("TERM", "dumb")

    status = way_in.main([])

    assert status == 0
    assert "The shed by the allotments" in capsys.readouterr().out
