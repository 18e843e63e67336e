"""`show GARAGE dash`: the dash card as text, at the width of the terminal."""

from pathlib import Path

import pytest

from paddock_tui.text import width
from tests.commands.running import NEXT, Runner


@pytest.mark.parametrize("columns", ["40", "80"])
def test_the_card_of_a_session_is_printed_within_the_terminal(
    run: Runner, garage: Path, monkeypatch: pytest.MonkeyPatch, columns: str
) -> None:
    monkeypatch.setenv("COLUMNS", columns)

    ran = run("show", garage, f"dash/{NEXT}")

    assert (ran.status, ran.err) == (0, "")
    assert ran.out.startswith("dash card · session 4")
    assert "resets at ignition off" in ran.out
    assert "3 range 0-10" in ran.out
    assert "battery" not in ran.out
    assert [line for line in ran.out.splitlines() if width(line) > int(columns)] == []


def test_a_garage_without_a_session_has_no_card(run: Runner, tmp_path: Path) -> None:
    run("new", tmp_path / "bare")

    ran = run("show", tmp_path / "bare", "dash")

    assert ran.status == 3
    assert "no session" in ran.err
