"""What is waited for at the start: `python -m tests.bench opening [TIMES]`.

Each figure with what it is compared with, both in this run: the first page and the verdict with an empty app
of the framework, on a pseudo-terminal of 80 by 24; commands with the bare import of the libraries that they
stand on; `--help` with an interpreter that does nothing; and the bytes of the start and of arrows. Of the
screens wall time is taken, of commands a processor's, both sides in turns: a machine that is shared goes at
half its speed for seconds. Told are the least of each and the middle of the ratios.
"""

import resource
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path

from tests.sample import SAMPLE
from tests.widgets.wire import Wire

_EMPTY = """
from textual.app import App
from textual.widgets import Static
class Empty(App):
    def compose(self):
        yield Static("nothing but this")
Empty().run()
"""
_OURS = """
import sys
from paddock_tui.__main__ import script
sys.argv = ["paddock-tui", {garage!r}, "--at", "2026-06-20T12:55:30"]
script()
"""
_LIBRARIES = ("-c", "import attrs, cattrs, tomllib")
_SESSION = "2026-06-20-4-magpie"
_COMMANDS = {
    "check": ("check", "GARAGE"),
    "show": ("show", "GARAGE", _SESSION),
    "slip": ("slip", "GARAGE"),
    "set": ("set", "GARAGE", _SESSION, "air=17"),
    "enter": ("enter", "GARAGE", "t6"),
    "undo": ("undo", "GARAGE"),
}
PATIENCE = 60.0
"""Seconds after which a program that shows nothing is taken for one that died."""

_PAGES = {"garage": "g", "set-up": "p", "session": "s", "going out": "o"}


def main(arguments: list[str]) -> int:
    """Print the table."""
    times = int(arguments[0]) if arguments else 5
    with tempfile.TemporaryDirectory() as folder:
        garage = Path(folder) / "garage"
        shutil.copytree(SAMPLE, garage, ignore=shutil.ignore_patterns(".paddock"))
        _screens(str(garage), times)
        _commands(str(garage), times)
        _arrows(str(garage))
    return 0


def _line(name: str, turns: Sequence[tuple[float, float]]) -> None:
    """Print the least of a figure and of what it is beside, given in s, and the middle of all ratios."""
    least = [min(one) * 1000 for one in zip(*turns, strict=True)]
    ratio = statistics.median(found / beside for found, beside in turns)
    sys.stdout.write(f"{name:34}{least[0]:9.0f} ms{least[1]:9.0f} ms{ratio:8.2f}\n")
    sys.stdout.flush()


def _screens(garage: str, times: int) -> None:
    empty, first, verdict = [], [], []
    for _ in range(times):
        with Wire(_EMPTY, loaded=False) as wire:
            empty.append(_until(wire, "nothing but this"))
        with Wire(_OURS.format(garage=garage), loaded=False) as wire:
            start = time.perf_counter()
            first.append(_until(wire, "waits for the verdict"))
            _until(wire, "? help")
            verdict.append(time.perf_counter() - start)
            wire.type("q")
            wire.ended()
    _line("first page / an empty app", list(zip(first, empty, strict=True)))
    _line("verdict / an empty app", list(zip(verdict, empty, strict=True)))


def _until(wire: Wire, mark: str) -> float:
    """Return the seconds until a text stands on the screen. Raises TimeoutError."""
    start = time.perf_counter()
    while mark not in wire.shown:
        if time.perf_counter() - start > PATIENCE:
            raise TimeoutError(f"{mark!r} does not stand on the screen after {PATIENCE:.0f} s")
        wire.read(0.005, 0.02)
    return time.perf_counter() - start


def _commands(garage: str, times: int) -> None:
    for name, words in _COMMANDS.items():
        filled = [garage if one == "GARAGE" else one for one in words]
        turns = [(_cpu("-m", "paddock_tui", *filled), _cpu(*_LIBRARIES)) for _ in range(times + 2)]
        _line(f"{name} / the libraries' import", turns)
    turns = [(_cpu("-m", "paddock_tui", "--help"), _cpu("-c", "pass")) for _ in range(times + 2)]
    _line("--help / an empty program", turns)


def _cpu(*words: str) -> float:
    """Return the seconds of a processor that a program takes."""
    return _spent(partial(subprocess.run, [sys.executable, *words], capture_output=True, check=False))


def _spent(act: Callable[[], object]) -> float:
    before = _children()
    act()
    return _children() - before


def _children() -> float:
    spent = resource.getrusage(resource.RUSAGE_CHILDREN)
    return spent.ru_utime + spent.ru_stime


def _arrows(garage: str) -> None:
    """Count what the start sends, and of each page what 40 arrows send in the mean."""
    for name, key in _PAGES.items():
        with Wire(_OURS.format(garage=garage), loaded=False) as wire:
            started = wire.read_until("? help")
            if name == "garage":
                sys.stdout.write(f"{'start, first page and verdict':34}{len(started):9} B\n")
            wire.after(key, 1.0)
            arrows = [len(wire.after("\x1b[B", 0.25)) for _ in range(40)]
            sys.stdout.write(f"{f'an arrow on {name}, mean of 40':34}{sum(arrows) / 40:9.0f} B\n")
            sys.stdout.flush()
            wire.type("q")
            wire.ended()
