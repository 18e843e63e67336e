"""`show GARAGE modes`: riding modes and presets as a table, with or without a set-up beside them."""

from pathlib import Path

import pytest

from paddock_tui.text import width
from tests.commands.running import Runner


@pytest.mark.parametrize("columns", ["40", "80"])
def test_the_modes_of_the_session_in_hand_are_printed_within_the_terminal(
    run: Runner, garage: Path, monkeypatch: pytest.MonkeyPatch, columns: str
) -> None:
    monkeypatch.setenv("COLUMNS", columns)

    ran = run("show", garage, "modes")

    assert (ran.status, ran.err) == (0, "")
    assert ran.out.startswith("riding modes · Magpie")
    assert "WILD" in ran.out
    assert "set now" in ran.out
    assert [line for line in ran.out.splitlines() if width(line) > int(columns)] == []


def test_another_bike_is_shown_without_a_set_up(run: Runner, garage: Path) -> None:
    ran = run("show", garage, "modes/otter")

    assert ran.status == 0
    assert "drizzle" in ran.out
    assert "set now" not in ran.out


def test_a_garage_without_a_session_asks_for_a_bike(run: Runner, tmp_path: Path) -> None:
    run("new", tmp_path / "bare")

    ran = run("show", tmp_path / "bare", "modes")

    assert ran.status == 3
    assert "modes/BIKE" in ran.err
