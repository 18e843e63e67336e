"""What dead processes left half-written is swept with the first step that is kept, and behind it."""

import os
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from paddock_tui.records.edits import MISSING, Change, Edit, Step
from paddock_tui.records.paths import Ref
from paddock_tui.store import files as written_files
from paddock_tui.store import saving
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.journal import entries
from paddock_tui.store.saving import Clash, Saved, save
from paddock_tui.store.tree import Tree

STEP = Step("a note", (Change(Ref("rider", "ines"), (Edit(("remark",), MISSING, "x"),)),))


def test_what_a_dead_process_left_half_written_goes_with_the_first_step(garage: Path) -> None:
    gone = subprocess.run(
        [sys.executable, "-c", "import os; print(os.getpid())"], capture_output=True, check=True
    )
    left = garage / "bikes" / f".magpie.toml.{int(gone.stdout)}-0.paddock-new"
    left.write_text("half")
    files = GarageFiles(garage)

    save(files, STEP)

    assert not left.exists()


def test_the_first_step_is_kept_and_noted_before_the_garage_is_gone_through(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    noted: list[list[str]] = []
    monkeypatch.setattr(saving, "sweep", lambda _: noted.append([one.step.label for one in entries(garage)]))
    files = GarageFiles(garage)

    assert isinstance(save(files, STEP), Saved)
    assert isinstance(save(files, STEP), Clash)
    assert noted == [["a note"]]


def test_a_garage_that_cannot_be_gone_through_changes_nothing_about_the_step(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(_: Tree) -> None:
        raise ZeroDivisionError

    reported: list[Exception] = []
    monkeypatch.setattr(saving, "sweep", fails)
    monkeypatch.setattr(saving, "report", reported.append)

    assert isinstance(save(GarageFiles(garage), STEP), Saved)
    assert [type(one) for one in reported] == [ZeroDivisionError]


def test_what_a_step_that_is_refused_left_is_swept_too(garage: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    swept: list[Tree] = []
    monkeypatch.setattr(saving, "sweep", swept.append)
    files = GarageFiles(garage)
    (garage / "riders" / "ines.toml").chmod(0o400)

    assert not isinstance(save(files, STEP), Saved)
    assert swept == [files.tree]


def test_no_file_is_looked_at_by_itself_to_find_the_folders(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    scan = os.scandir

    def looked_at(**_: Any) -> None:
        raise AssertionError("one file of thousands")

    @contextmanager
    def listing(folder: Path) -> Iterator[list[SimpleNamespace]]:
        with scan(folder) as found:
            yield [
                SimpleNamespace(name=one.name, path=one.path, is_dir=one.is_dir, stat=looked_at)
                for one in found
            ]

    left = garage / "bikes" / ".magpie.toml.999999999-0.paddock-new"
    left.write_text("half")
    monkeypatch.setattr(os, "scandir", listing)

    assert written_files.sweep(Tree(garage)) == [left]
