"""`slip` prints the paper slip of a session."""

from pathlib import Path

import pytest

from paddock_tui.__main__ import main
from paddock_tui.commands.common import NOT_DONE, OK


def test_it_prints_the_slip_of_the_session_in_hand_in_the_riders_units(
    garage: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["slip", str(garage), "--at", "2026-06-20T13:00"]) == OK
    lines = capsys.readouterr().out.splitlines()

    assert lines[0].startswith("debrief sheet · session 4 · Sat 20 Jun 13:20 · magpie")
    assert len(lines) <= 60
    assert any("238 is 2.38 bar" in line for line in lines)

    assert main(["slip", str(garage), "--session", "2026-06-20-2-otter"]) == OK
    assert "345 is 34.5 psi" in capsys.readouterr().out


def test_without_a_session_it_says_what_is_missing(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["new", str(tmp_path / "empty")]) == OK
    assert main(["slip", str(tmp_path / "empty")]) == NOT_DONE
    assert "no session" in capsys.readouterr().err
