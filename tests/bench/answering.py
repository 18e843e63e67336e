"""How quickly the screens answer and leave: `python -m tests.bench answering [TIMES] [SESSIONS]`.

On a pseudo-terminal of 80 by 24, with the sample or a career of as many sessions: from the key to the whole
bench page, from `q` to the end of the process, and from a key typed at once on the first page, while
everything is loaded, to the whole page that it brings. Least and middle of many; wall time, so a busy machine
counts.
"""

import contextlib
import os
import select
import shutil
import statistics
import sys
import tempfile
import time
from pathlib import Path

from tests.bench._at_terminal import JUDGED_S, SAMPLE_AT, code_of, opened, wait_until_judged
from tests.bench._career import write_career
from tests.sample import SAMPLE
from tests.widgets.wire import Wire

_EARLY = "psc?b"
"""Keys that lead to another page from the first one."""
_GONE_S = 30.0


def main(arguments: list[str]) -> int:
    """Print the table."""
    times = int(arguments[0]) if arguments else 20
    with tempfile.TemporaryDirectory() as folder:
        garage, at = _garage(Path(folder), int(arguments[1]) if len(arguments) > 1 else 0)
        code = code_of(garage, at)
        bench = []
        with opened(code) as wire:
            for _ in range(times):
                bench.append(_until(wire, "b", "calculators"))
                _until(wire, "g", "garage")
        early = {key: [_early(code, key) for _ in range(max(times // 4, 1))] for key in _EARLY}
        leaving = [_left(code) for _ in range(times)]
    _line("from b to the whole bench page", bench)
    for key, found in early.items():
        _line(f"from {key} on the first page to its own", found)
    _line("from q to the end of the process", leaving)
    return 0


def _garage(folder: Path, sessions: int) -> tuple[Path, str]:
    if sessions:
        career = write_career(folder / "career", sessions)
        return career.root, career.at.isoformat()
    copied = shutil.copytree(SAMPLE, folder / "garage", ignore=shutil.ignore_patterns(".paddock"))
    return Path(copied), SAMPLE_AT


def _line(name: str, found: list[float]) -> None:
    middle, least = statistics.median(found) * 1000, min(found) * 1000
    sys.stdout.write(f"{name:36}{middle:8.1f} ms in the middle{least:8.1f} ms at least\n")
    sys.stdout.flush()


def _until(wire: Wire, key: str, mark: str) -> float:
    """Return the seconds from a key to the last piece of the page that it brings; the mark must be on it."""
    start = last = time.perf_counter()
    wire.type(key)
    while select.select([wire.near], [], [], 0.25)[0] or mark not in wire.shown.split("\n")[0]:
        assert time.perf_counter() - start < _GONE_S, wire.shown
        if select.select([wire.near], [], [], 0)[0]:
            last = _fed(wire)
    return last - start


def _fed(wire: Wire) -> float:
    """Read a piece and return when it came: what our own terminal makes of it takes as long again."""
    piece = os.read(wire.near, 65536)
    came = time.perf_counter()
    wire.terminal.feed(piece)
    return came


def _early(code: str, key: str) -> float:
    """Return the seconds from a key on the first page, typed as soon as that shows, to the page it brings."""
    with Wire(code, loaded=False) as wire:
        start = time.perf_counter()
        while _page(wire) != "garage":
            assert time.perf_counter() - start < JUDGED_S, wire.shown
            wire.read(0.001, 0.01)
        typed = last = time.perf_counter()
        wire.type(key)
        while select.select([wire.near], [], [], 0.5)[0] or _page(wire) in ("", "garage"):
            assert time.perf_counter() - typed < JUDGED_S, wire.shown
            if select.select([wire.near], [], [], 0)[0]:
                last = _fed(wire)
        wire.type("q")
        wire.ended()
    return last - typed


def _page(wire: Wire) -> str:
    """Return what the heading calls the page; a clock that was set stands before that."""
    clock, _, rest = wire.shown.split("\n")[0].partition(" · ")
    return (rest if clock.startswith("clock") else clock).partition(" · ")[0].strip()


def _left(code: str) -> float:
    with Wire(code, loaded=False) as wire:
        wait_until_judged(wire)
        start = time.perf_counter()
        wire.type("q")
        while wire.process.poll() is None:
            if select.select([wire.near], [], [], 0.001)[0]:
                with contextlib.suppress(OSError):
                    os.read(wire.near, 65536)
        return time.perf_counter() - start
