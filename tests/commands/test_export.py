"""`export`: tables that other programs read, the same sums as the program's own, nothing personal unasked."""

import csv
import errno
import json
import shutil
import sqlite3
import subprocess
from decimal import Decimal
from pathlib import Path

import pytest

from paddock_tui.__main__ import main
from paddock_tui.desk import Desk
from paddock_tui.export import writing
from paddock_tui.export.registry import PERSONAL, TABLES
from paddock_tui.records.session import Session
from tests.commands.running import NEXT, Runner
from tests.sample import SAMPLE
from tests.small import snapshot

EVERYTHING = [word for one in PERSONAL for word in ("--with", one)]


def table(folder: Path, name: str) -> list[dict[str, str]]:
    with (folder / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def sessions(garage: Path) -> dict[str, Session]:
    desk = Desk(garage)
    read = {ref.id: desk.files.read(ref) for ref in desk.files.listing("session")}
    return {
        name: one.record
        for name, one in read.items()
        if one is not None and isinstance(one.record, Session) and one.record.retired is None
    }


@pytest.fixture(scope="module")
def out(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the sample as tables, nothing personal in them."""
    folder = tmp_path_factory.mktemp("export") / "out"
    assert main(["export", str(SAMPLE), "--to", str(folder)]) == 0
    return folder


def test_the_tables_hold_what_the_program_holds(out: Path) -> None:
    held = sessions(SAMPLE)
    assert {row["session"] for row in table(out, "sessions")} == set(held)
    laps = table(out, "laps")
    assert len(laps) == sum(len(one.laps) for one in held.values())
    assert sum(Decimal(row["lap_s"]) for row in laps) == sum(
        lap.seconds for one in held.values() for lap in one.laps.values()
    )
    fuel = sum(float(row["fuel_added_l"] or 0) for row in table(out, "sessions"))
    assert fuel == pytest.approx(sum(one.fuel_added.to("l") for one in held.values() if one.fuel_added))


def test_the_tables_join_in_a_database(out: Path) -> None:
    base = sqlite3.connect(":memory:")
    for name in ("sessions", "laps", "settings", "changes"):
        rows = table(out, name)
        names = ", ".join(f'"{key}"' for key in rows[0])
        base.execute(f"create table {name} ({names})")
        marks = ", ".join("?" for _ in rows[0])
        base.executemany(f"insert into {name} values ({marks})", [tuple(row.values()) for row in rows])

    lost = "select count(*) from {} left join sessions using (session) where date is null"
    assert [base.execute(lost.format(one)).fetchone()[0] for one in ("laps", "settings", "changes")] == [
        0,
        0,
        0,
    ]
    best = dict(
        base.execute(
            "select session, min(cast(lap_s as real)) from laps join sessions using (session) where mark = ''"
            " group by session"
        )
    )
    clean = {
        name: min(float(lap.seconds) for lap in one.laps.values() if not lap.mark)
        for name, one in sessions(SAMPLE).items()
        if any(not lap.mark for lap in one.laps.values())
    }
    assert best == clean


def test_every_column_stands_in_the_dictionary_and_the_same_garage_gives_the_same_bytes(
    run: Runner, garage: Path, tmp_path: Path, out: Path
) -> None:
    before = snapshot(garage)
    ran = run("export", garage, "--to", tmp_path / "two")

    assert (ran.status, ran.err) == (0, "")
    assert snapshot(garage) == before
    assert snapshot(out) == snapshot(tmp_path / "two")
    said = {(row["table"], row["column"]) for row in table(out, "columns")}
    for one in TABLES:
        if one.personal:
            continue
        with (out / f"{one.name}.csv").open(encoding="utf-8", newline="") as file:
            header = next(csv.reader(file))
        assert len(set(header)) == len(header)
        assert {(one.name, name) for name in header} <= said


def test_lines_of_json_say_the_same(run: Runner, garage: Path, tmp_path: Path, out: Path) -> None:
    run("export", garage, "--to", tmp_path / "json", "--format", "jsonl")

    for one in ("sessions", "readings"):
        lines = (tmp_path / "json" / f"{one}.jsonl").read_text(encoding="utf-8").splitlines()
        rows = table(out, one)
        assert [json.loads(line)["session"] for line in lines] == [row["session"] for row in rows]
        assert list(json.loads(lines[0])) == list(rows[0])


def test_only_what_is_wanted(run: Runner, garage: Path, tmp_path: Path) -> None:
    run("export", garage, "--to", tmp_path / "out", "--since", "2026-06-01", "--bike", "magpie")
    rows = table(tmp_path / "out", "sessions")
    assert rows
    assert {row["bike"] for row in rows} == {"magpie"}
    assert all(row["date"] >= "2026-06-01" for row in rows)
    assert {row["session"] for row in table(tmp_path / "out", "changes")} <= {row["session"] for row in rows}


def test_nothing_personal_is_written_unless_asked_for_by_name(
    run: Runner, garage: Path, tmp_path: Path
) -> None:
    file = garage / f"sessions/2026/{NEXT}.toml"
    text = file.read_text(encoding="utf-8") + (
        '\n[incidents.1]\nwhat = "fall"\nhead_contact = true\nconcussion = true\nnote = "plantedfall"\n'
        'cleared_by = "planteddoctor"\n\n[accepted.some-rule.traction]\nreason = "plantedreason"\nby = "IS"\n'
    )
    file.write_text(text, encoding="utf-8")
    assert run("set", garage, NEXT, "fatigue=4", "said=plantedsaid").status == 0

    run("export", garage, "--to", tmp_path / "plain", "--since", "2026-06-20")
    everything = b"".join(snapshot(tmp_path / "plain").values())
    assert b"planted" not in everything
    assert b"fatigue" not in everything
    assert b"concussion" not in everything
    run("export", garage, "--to", tmp_path / "all", "--since", "2026-06-20", *EVERYTHING)
    asked = b"".join(snapshot(tmp_path / "all").values())
    for word in (b"plantedsaid", b"plantedfall", b"planteddoctor", b"plantedreason", b"fatigue"):
        assert word in asked


def test_a_text_that_a_spreadsheet_would_run_is_defused(run: Runner, garage: Path, tmp_path: Path) -> None:
    assert run("set", garage, NEXT, "aim==1+1").status == 0
    run("export", garage, "--to", tmp_path / "out", "--since", "2026-06-20", "--bike", "magpie")
    cells = [row["aim"] for row in table(tmp_path / "out", "sessions") if row["session"] == NEXT]
    assert cells == ["'=1+1"]


def test_on_a_terminal_it_says_how_far_it_is(
    run: Runner, garage: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sys.stderr.isatty", lambda: True)
    said = run("export", garage, "--to", tmp_path / "out").err
    many = len(table(tmp_path / "out", "sessions"))
    assert f"0 of {many} sessions" in said
    assert f"{many} of {many} sessions, costs" in said
    assert said.rstrip(" ").endswith("\n")
    assert f"{many} of {many} sessions" in said.split("\r")[-1]


@pytest.mark.skipif(shutil.which("sqlite3") is None, reason="the shell of the database is not installed")
def test_the_shell_of_a_database_imports_the_tables_with_the_program_s_own_sums(out: Path) -> None:
    script = "".join(f".import {out / name}.csv {name}\n" for name in ("sessions", "laps", "costs"))
    asked = (
        "select count(*), sum(lap_s) from laps join sessions using (session);\n"
        "select sum(round(amount * 100)) from costs;\n"
    )
    done = subprocess.run(
        ["sqlite3", "-csv", ":memory:"], input=f"{script}{asked}", capture_output=True, text=True, check=True
    )
    laps, cents = done.stdout.split()
    held = [lap.seconds for one in sessions(SAMPLE).values() for lap in one.laps.values()]
    assert laps.split(",")[0] == str(len(held))
    assert Decimal(laps.split(",")[1]).quantize(Decimal("0.001")) == Decimal(str(sum(held))).quantize(
        Decimal("0.001")
    )
    assert Decimal(cents) == sum(Decimal(row["amount"]) for row in table(out, "costs")) * 100


def test_a_disk_that_fills_leaves_nothing(
    run: Runner, garage: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    whole = writing._csv_line
    lines: list[str] = []

    def full(cells: list[str]) -> str:
        lines.append("")
        if len(lines) > 40:
            raise OSError(errno.ENOSPC, "No space left on device")
        return whole(cells)

    monkeypatch.setattr(writing, "_csv_line", full)
    ran = run("export", garage, "--to", tmp_path / "out")
    assert ran.status == 3
    assert ran.err.splitlines()[-1] == "  nothing was written"
    assert list(tmp_path.glob("*out*")) == []


def test_a_folder_with_something_in_it_is_left_alone(run: Runner, garage: Path, tmp_path: Path) -> None:
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "mine").write_text("x", encoding="utf-8")
    ran = run("export", garage, "--to", tmp_path / "out")
    assert (ran.status, ran.err.splitlines()[-1]) == (3, "  name a new folder")
    assert snapshot(tmp_path / "out") == {"mine": b"x"}
