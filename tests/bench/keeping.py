"""A kept edit beside a bare durable write: `python -m tests.bench keeping [TIMES]`.

An edit of one line is kept with its journal line, as the screens keep it; the bare write is the same file
written beside, synced, put in place, and its folder synced. Both in turns, least and middle of many.
"""

import os
import shutil
import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from paddock_tui.records.edits import MISSING, Change, Edit, Step
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.saving import Saved, save
from tests.sample import SAMPLE

_REF = Ref("session", "2026-06-20-4-magpie")
_VALUES = ("36 mm", "37 mm")


def main(arguments: list[str]) -> int:
    """Print the two and their ratio."""
    times = int(arguments[0]) if arguments else 60
    with tempfile.TemporaryDirectory() as folder:
        garage = Path(folder) / "garage"
        _copied(garage)
        files = GarageFiles(garage)
        path = files.path_of(_REF)
        assert path is not None
        text = path.read_bytes()
        bare, kept = [], []
        for _ in range(times):
            bare.append(_taken(lambda: _written(Path(folder) / "bare.toml", text)))
            kept.append(_taken(lambda: _kept(files)))
    for name, found in (("a bare durable write", bare), ("an edit kept with its journal line", kept)):
        middle, least = statistics.median(found) * 1000, min(found) * 1000
        sys.stdout.write(f"{name:36}{middle:8.2f} ms in the middle{least:8.2f} ms at least\n")
    sys.stdout.write(f"{'ratio':36}{statistics.median(kept) / statistics.median(bare):8.2f}\n")
    return 0


def _taken(act: Callable[[], None]) -> float:
    start = time.perf_counter()
    act()
    return time.perf_counter() - start


def _kept(files: GarageFiles) -> None:
    found = files.data(_REF).get("chain_slack", MISSING)
    edit = Edit(("chain_slack",), found, next(one for one in _VALUES if one != found))
    outcome = save(files, Step("chain slack", (Change(_REF, (edit,)),)))
    assert isinstance(outcome, Saved), outcome


def _written(path: Path, data: bytes) -> None:
    beside = path.with_name(".bare")
    file = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
    try:
        os.write(file, data)
        os.fsync(file)
    finally:
        os.close(file)
    beside.replace(path)
    folder = os.open(path.parent, os.O_RDONLY)
    try:
        os.fsync(folder)
    finally:
        os.close(folder)


def _copied(garage: Path) -> None:
    shutil.copytree(SAMPLE, garage, ignore=shutil.ignore_patterns(".paddock"))
