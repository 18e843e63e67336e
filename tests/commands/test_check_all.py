"""`check --all`: everything is read and reviewed, and every problem is listed."""

import datetime as dt
import gc
import json
import re
import shutil
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import Any

import pytest

from paddock_tui.__main__ import INTERRUPTED
from paddock_tui.commands import check_all
from paddock_tui.commands.common import open_to_read
from paddock_tui.commands.shared_out import shared_out
from paddock_tui.store.passing import PassingFiles
from paddock_tui.text import width
from tests.commands.begun import Begun
from tests.commands.running import EARLY, FILE, NEXT, Runner, spoil
from tests.pages.opened import SAMPLE
from tests.small import snapshot


def test_all_of_the_sample_reads_without_a_problem(run: Runner) -> None:
    ran = run("check", SAMPLE, "--all", "--at", EARLY)

    assert (ran.status, ran.err) == (0, "")
    assert ran.out.splitlines()[-1].endswith(" records read, 0 problems")
    assert re.search(rf"  {NEXT}   CARE \d+ \(1 to answer\) · \d+ missing · \d+ not assessed · ", ran.out)


@pytest.mark.parametrize("columns", ["40", "80"])
def test_all_of_a_broken_garage_reads_what_there_is_and_lists_every_problem(
    run: Runner, garage: Path, monkeypatch: pytest.MonkeyPatch, columns: str
) -> None:
    monkeypatch.setenv("COLUMNS", columns)
    (garage / "bikes" / "otter.toml").write_text("x = = 1\n")
    (garage / "riders" / "wim.toml").write_bytes(b"\xff")
    spoil(garage, 'air = "17 C"', 'air = "17,5 C"')
    shutil.rmtree(garage / "tyres")
    (garage / "venues" / "folder.toml").mkdir()
    before = snapshot(garage)

    ran = run("check", garage, "--all")

    assert ran.status == 3
    assert ran.out.splitlines()[-1].endswith("4 problems")
    words = " ".join(ran.out.split())
    for place in ("bikes/otter.toml:1", "riders/wim.toml:1", f"{FILE}:15"):
        assert place in "".join(ran.out.split())
    assert f"{NEXT} HOLD 1" in words
    assert all(width(line) <= int(columns) for line in ran.out.splitlines())
    assert snapshot(garage) == before


def test_all_says_what_is_wrong_in_a_profile(run: Runner, garage: Path) -> None:
    spoil(garage, "traction = 8", "traction = 99", "profiles/magpie-ines-wet.toml")

    ran = run("check", garage, "--all")

    assert ran.status == 0
    assert "hold: " in ran.out[ran.out.index("-- profiles") :]


def test_an_unknown_key_is_a_problem_to_look_at_and_no_failure(run: Runner, garage: Path) -> None:
    spoil(garage, 'initials = "IS"', 'initals = "IS"', "riders/ines.toml")

    ran = run("check", garage, "--all")

    assert ran.status == 0
    assert "initals, a key that this program does not know" in ran.out
    assert ran.out.endswith("1 problem\n")


def test_all_as_json_lists_verdicts_and_problems(run: Runner, garage: Path) -> None:
    spoil(garage, 'air = "17 C"', 'air = "17,5 C"')

    ran = run("check", garage, "--all", "--at", EARLY, "--format", "json")
    found = json.loads(ran.out)

    assert ran.status == 3
    assert list(found) == ["verdicts", "problems"]
    assert {"session": f"session/{NEXT}", "verdict": "CARE"} in found["verdicts"]
    assert found["problems"][0]["file"] == FILE


FORKS = pytest.mark.filterwarnings("ignore:.*fork.*:DeprecationWarning")
"""The idle threads of other tests hold no lock."""


@FORKS
@pytest.mark.parametrize("form", ["text", "json"])
@pytest.mark.parametrize("lost", [(), range(0, 1000, 3), range(1000)], ids=["none", "a third", "all"])
def test_shared_out_among_processes_it_says_the_same_whatever_they_told(
    run: Runner, garage: Path, monkeypatch: pytest.MonkeyPatch, form: str, lost: Sequence[int]
) -> None:
    spoil(garage, 'air = "17 C"', 'air = "17,5 C"')
    spoil(garage, "traction = 8", "traction = 99", "profiles/magpie-ines-wet.toml")
    alone = run("check", garage, "--all", "--at", EARLY, "--format", form)
    told: list[int] = []

    def told_of(work: Callable[[range], Iterator[Any]], among: Sequence[range]) -> Iterator[Any]:
        for place, one in enumerate(shared_out(work, among)):
            if place not in lost:
                told.append(place)
                yield one

    monkeypatch.setattr(check_all, "processors", lambda: 3)
    monkeypatch.setattr(check_all, "FEW", 2)
    monkeypatch.setattr(check_all, "shared_out", told_of)

    assert run("check", garage, "--all", "--at", EARLY, "--format", form) == alone
    assert alone.status == 3
    assert bool(told) == (lost != range(1000))


def test_few_are_judged_by_one_process(run: Runner, garage: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(check_all, "processors", lambda: 8)
    monkeypatch.setattr(check_all, "shared_out", None)

    assert run("check", garage, "--all", "--at", EARLY).status == 0


@FORKS
def test_ended_by_a_key_it_leaves_no_process_behind(
    run: Runner, garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stop(place: int, of: int) -> None:
        if place == of - 3:
            raise KeyboardInterrupt

    monkeypatch.setattr(check_all, "processors", lambda: 2)
    monkeypatch.setattr(check_all, "FEW", 2)
    monkeypatch.setattr(check_all, "_progress", stop)
    begun = Begun(monkeypatch)

    ran = run("check", garage, "--all", "--at", EARLY)

    assert (ran.status, ran.out) == (INTERRUPTED, "")
    assert begun.all_are_gone(2)


def test_what_is_judged_leaves_nothing_behind_that_leads_back_to_itself(garage: Path) -> None:
    files = PassingFiles(garage)
    desk = open_to_read(str(garage), dt.datetime.fromisoformat(EARLY), files=files)
    refs = files.listing("session")
    held = gc.isenabled()
    gc.disable()
    try:
        left = []
        for _ in range(2):
            with files.looked_at_only():
                for ref in refs:
                    check_all._look_at(desk, ref)
            left.append(gc.collect())
    finally:
        if held:
            gc.enable()
    assert left[1] == 0
