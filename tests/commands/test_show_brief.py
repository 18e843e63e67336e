"""`show GARAGE brief`: a set-up in sentences, read in a minute at any width."""

from pathlib import Path

import pytest

from paddock_tui.text import width
from tests.commands.running import NEXT, Runner
from tests.every import every


def as_novice(garage: Path) -> None:
    """Let the novice of the garage, who rode nothing before, have the wet session on the full bike."""
    file = garage / f"sessions/2026/{NEXT}.toml"
    file.write_text(file.read_text().replace('rider = "ines"', 'rider = "wim"'))


@every(("long", "most"), [((), 25), (("--long",), 60)])
@every("of", ["", "/magpie-ines-wet", "/otter-tobin-cold", f"/{NEXT}"])
def test_it_is_read_in_a_minute_at_78_columns(
    run: Runner, garage: Path, monkeypatch: pytest.MonkeyPatch, long: tuple[str, ...], most: int, of: str
) -> None:
    monkeypatch.setenv("COLUMNS", "78")
    as_novice(garage)
    lines = run("show", garage, f"brief{of}", *long).out.splitlines()

    assert len(lines) <= most
    assert max(map(width, lines)) <= 78
    assert lines[0].startswith("for you")
    assert long or any(line.startswith("it does") for line in lines[:8])


def test_on_a_narrow_terminal_nothing_is_cut(
    run: Runner, garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    as_novice(garage)
    monkeypatch.setenv("COLUMNS", "78")
    wide = run("show", garage, "brief").out.split()
    monkeypatch.setenv("COLUMNS", "38")
    ran = run("show", garage, "brief")

    assert max(map(width, ran.out.splitlines())) <= 38
    assert [word.rstrip(":") for word in ran.out.split()] == [word.rstrip(":") for word in wide]


def test_only_the_briefing_has_a_long_form(run: Runner, garage: Path) -> None:
    assert run("show", garage, "dash", "--long").status == 64


def test_a_garage_without_a_session_has_none(run: Runner, tmp_path: Path) -> None:
    run("new", tmp_path / "bare")

    ran = run("show", tmp_path / "bare", "brief")

    assert ran.status == 3
    assert "brief/SESSION" in ran.err


def test_it_may_be_told_what_its_rider_comes_from(run: Runner, garage: Path) -> None:
    from_otter = run("show", garage, "brief/magpie-ines-wet", "--from", "otter-tobin-cold").out
    usual = run("show", garage, "brief/magpie-ines-wet").out

    assert "counts the other way" in from_otter
    assert "counts the other way" not in usual
    assert run("show", garage, "dash", "--from", "otter-tobin-cold").status == 64
    assert run("show", garage, "brief", "--from", "nobody").status == 3
