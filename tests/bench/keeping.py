"""Keeping an edit beside a bare durable write: `python -m tests.bench keeping [TIMES]`.

The bare write is the text of the same file written beside, synced, put in place, and its folder synced, in a
folder of its own on the same disk. It stands beside an edit of one line kept with its journal line, as the
screens keep it, one right after the other; and beside the way from a key on a pseudo-terminal to its line in
the journal. There the disk and the processor have rested between keys, as with a rider: so the bare write is
made in turns with the keys, after the same rest. Least and middle of many.
"""

import os
import shutil
import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path

from paddock_tui.records.edits import MISSING, Change, Edit, Step
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.saving import Saved, save
from tests.bench._at_terminal import code_of, opened
from tests.sample import SAMPLE
from tests.widgets.wire import Wire

_REF = Ref("session", "2026-06-20-4-magpie")
"""What the keys change too, on the first row of its set-up."""

_VALUES = ("36 mm", "37 mm")
_REST = 0.3
_LOOK_AGAIN = 0.00005
_GONE_S = 30.0

Found = tuple[list[float], list[float]]
"""The seconds of the bare writes, and of what stands beside them."""


def main(arguments: list[str]) -> int:
    """Print both with their ratios."""
    times = int(arguments[0]) if arguments else 60
    with tempfile.TemporaryDirectory() as folder:
        garage = Path(folder) / "garage"
        shutil.copytree(SAMPLE, garage, ignore=shutil.ignore_patterns(".paddock"))
        path = GarageFiles(garage).path_of(_REF)
        assert path is not None
        bare = partial(_written, Path(folder) / "bare.toml", path.read_bytes())
        edits = _edits(garage, bare, times)
        keys = _keys(garage, bare, times)
    _say("an edit kept with its journal line", edits)
    _say("from a key to its line in the journal", keys)
    return 0


def _edits(garage: Path, bare: Callable[[], None], times: int) -> Found:
    files = GarageFiles(garage)
    found: Found = [], []
    for _ in range(times):
        found[0].append(_taken(bare))
        found[1].append(_taken(lambda: _kept(files)))
    return found


def _keys(garage: Path, bare: Callable[[], None], times: int) -> Found:
    found: Found = [], []
    with opened(code_of(garage)) as wire:
        wire.after("p", 1.0)
        for turn in range(times):
            found[1].append(_taken(partial(_journalled, wire, garage, "+-"[turn % 2])))
            wire.read(_REST)
            found[0].append(_taken(bare))
            wire.read(_REST)
    return found


def _say(name: str, found: Found) -> None:
    for one, times in (("a bare durable write", found[0]), (name, found[1])):
        middle, least = statistics.median(times) * 1000, min(times) * 1000
        sys.stdout.write(f"{one:38}{middle:8.2f} ms in the middle{least:8.2f} ms at least\n")
    bare, other = found
    middle, least = statistics.median(other) / statistics.median(bare), min(other) / min(bare)
    sys.stdout.write(f"{'ratio':38}{middle:8.2f} of the middles  {least:8.2f} of the least\n")


def _taken(act: Callable[[], None]) -> float:
    start = time.perf_counter()
    act()
    return time.perf_counter() - start


def _kept(files: GarageFiles) -> None:
    found = files.data(_REF).get("chain_slack", MISSING)
    edit = Edit(("chain_slack",), found, next(one for one in _VALUES if one != found))
    outcome = save(files, Step("chain slack", (Change(_REF, (edit,)),)))
    assert isinstance(outcome, Saved), outcome


def _journalled(wire: Wire, garage: Path, key: str) -> None:
    """Type a key that changes a value, and wait for the line of it in the journal."""
    before, end = _size(garage), time.perf_counter() + _GONE_S
    wire.type(key)
    while _size(garage) <= before:
        assert time.perf_counter() < end, wire.shown
        time.sleep(_LOOK_AGAIN)


def _size(garage: Path) -> int:
    """Return the bytes of the journal: looked at so often that it takes no more than a list and a status."""
    try:
        with os.scandir(garage / ".paddock" / "journal") as found:
            return sum(one.stat().st_size for one in found)
    except FileNotFoundError:
        return 0


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
