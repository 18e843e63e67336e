"""`show`: the garage or a record as text, at the width of the terminal."""

from pathlib import Path

import pytest

from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.text import printable, width
from tests.commands.running import NEXT, Runner, spoil
from tests.every import every
from tests.pages.opened import SAMPLE
from tests.small import snapshot

REFS = [pytest.param(ref, id=str(ref)) for ref in GarageFiles(SAMPLE).all()]


@every("columns", ["40", "80"])
@every("ref", REFS)
def test_every_record_is_shown_within_the_terminal(
    run: Runner, monkeypatch: pytest.MonkeyPatch, ref: Ref, columns: str
) -> None:
    monkeypatch.setenv("COLUMNS", columns)

    ran = run("show", SAMPLE, str(ref))

    assert (ran.status, ran.err) == (0, "")
    kind = "tyre set" if ref.kind == "tyres" else ref.kind
    assert ran.out.startswith(f"{kind} · ")
    assert [line for line in ran.out.splitlines() if width(line) > int(columns)] == []


def test_the_garage_lists_the_names_that_show_takes(run: Runner, garage: Path) -> None:
    before = snapshot(garage)
    listed = run("show", garage)

    assert listed.status == 0
    for name in (NEXT, "2026-06-20-anvilfen", "magpie", "tobin", "otter-slick", "magpie-ines-wet", "grid"):
        assert name in listed.out.split()
    assert snapshot(garage) == before


def test_paths_are_those_that_set_takes(run: Runner, garage: Path) -> None:
    out = run("show", garage, NEXT, "--paths").out
    paths = [line.rpartition("path ")[2] for line in out.splitlines() if "path " in line]

    assert "setup.controls.traction" in paths
    assert "track" in paths
    for path in ("track", "setup.controls.wheelie", "setup.adjusters.front-rebound"):
        assert run("set", garage, NEXT, f"{path}=").status == 0


def test_a_value_that_cannot_be_read_is_shown_as_it_stands_with_the_mend(run: Runner, garage: Path) -> None:
    spoil(garage, 'front_start = "2.15 bar"', 'front_start = "2,3 bar"')

    ran = run("show", garage, NEXT)

    assert ran.status == 0
    assert "  front start pressure  2,3 bar\n" in ran.out
    assert 'write "2.3 bar"' in ran.out


def test_a_file_that_is_lost_shows_why_and_ends_with_three(run: Runner, garage: Path) -> None:
    (garage / "bikes" / "otter.toml").write_text("name = Otter\n")

    ran = run("show", garage, "otter")

    assert ran.status == 3
    assert "bikes/otter.toml:1" in ran.out
    assert "put words in quotes" in ran.out
    assert "bikes/otter.toml:1" in run("show", garage).out


@every(
    ("name", "said"),
    [
        ("nothing", 'there is no record "nothing"'),
        ("bike/nothing", "expected one of: badger, magpie, otter, shrew"),
        ("magpie-ines", "may be profile/magpie-ines-2025"),
        ("\x1b[2Jx", "there is no record"),
    ],
)
def test_a_name_that_is_no_record_is_said(run: Runner, name: str, said: str) -> None:
    ran = run("show", SAMPLE, name)

    assert (ran.status, ran.out) == (3, "")
    assert said in ran.err
    assert all(line == printable(line) for line in ran.err.splitlines())


def test_the_ledger_is_printed_of_all_bikes_or_of_one(run: Runner) -> None:
    every, one = run("show", SAMPLE, "ledger"), run("show", SAMPLE, "ledger/magpie")

    assert (every.status, one.status) == (0, 0)
    assert "otter" in every.out
    assert "otter" not in one.out
    assert "helped, -0.94 s, you: better" in one.out
    assert run("show", SAMPLE, "ledger/no-such-bike").status == 3
