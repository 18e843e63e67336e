"""How figures grow with the garage: `python -m tests.bench sizes [SESSIONS ...] [--only FIGURE ...]`.

Careers of these sizes are written to a temporary folder (15, 1000 and 3000 sessions unless said), every
figure is taken of each in a process of its own, and printed with its ratio to the smallest and the exponent
of its growth between the two largest. Times are a processor's, so that others on the machine count little,
and the least of several, taken of all sizes in turn: a machine that is shared goes at half its speed for
seconds, and whichever size was measured then had that in its ratio. Nothing is asserted: machines differ,
ratios hardly.
"""

import contextlib
import math
import os
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

from paddock_tui.store.listing import RESTS_NS
from tests.bench._career import Career, write_career
from tests.bench._sizes_probe import FIRST, PROBES

SIZES = (15, 1000, 3000)
LEARNING = 2
"""Runs before the first that counts: one keeps what was learnt far back, the next close behind as well."""

ROUNDS = 5
"""Runs that count, of each size in turn."""

ONCE = ("check --all", "j", "l")
"""Figures that take long, and gain nothing by runs before them."""

PATIENCE = 600.0
"""Seconds after which a figure is given up."""

COMMANDS = {
    "check": ("check", "GARAGE", "--at", "AT"),
    "show": ("show", "GARAGE", "IN HAND"),
    "enter": ("enter", "GARAGE", "air 20", "--at", "AT", "--preview"),
    "slip": ("slip", "GARAGE", "--at", "AT"),
    "check --all": ("check", "GARAGE", "--at", "AT", "--all"),
}

FIGURES = (*COMMANDS, FIRST, *PROBES)


def main(arguments: list[str]) -> int:
    """Write the careers, take the figures, print the table."""
    with_only = arguments.index("--only") if "--only" in arguments else len(arguments)
    sizes = tuple(int(one) for one in arguments[:with_only]) or SIZES
    wanted = tuple(arguments[with_only + 1 :]) or FIGURES
    with tempfile.TemporaryDirectory() as folder:
        careers = [write_career(Path(folder) / str(size), size) for size in sizes]
        # Nothing is noted of files that were written a moment ago.
        time.sleep(2 * RESTS_NS / 1e9)
        out = sys.stdout
        out.write(f"{'':14}" + "".join(f"{size:>10}" for size in sizes) + f"{'ratio':>9}{'growth':>8}\n")
        for name in wanted:
            found = _figures(name, careers, Path(folder))
            out.write(_line(name, sizes, found))
            out.flush()
    return 0


def _figures(name: str, careers: list[Career], cache: Path) -> list[float | None]:
    """Take a figure of every career; None of one where it cannot be taken."""
    rounds = 1 if name in ONCE else LEARNING + ROUNDS
    taken = [[_once(name, career, cache) for career in careers] for _ in range(rounds)]
    counted = taken if name in ONCE else taken[LEARNING:]
    return [_least(of_one) for of_one in zip(*counted, strict=True)]


def _least(found: tuple[float | None, ...]) -> float | None:
    known = [one for one in found if one is not None]
    return min(known) if len(known) == len(found) else None


def _once(name: str, career: Career, cache: Path) -> float | None:
    at = career.at.isoformat()
    before = _children_s()
    command = COMMANDS.get(name)
    words = [_filled(word, career) for word in command] if command else []
    module = ["paddock_tui", *words] if command else ["tests.bench._sizes_probe", name, str(career.root), at]
    run = [sys.executable, "-m", *module]
    env = {**os.environ, "XDG_CACHE_HOME": str(cache / "cache"), "XDG_STATE_HOME": str(cache / "state")}
    with contextlib.suppress(subprocess.TimeoutExpired):
        done = subprocess.run(run, capture_output=True, text=True, env=env, timeout=PATIENCE, check=False)
        if done.returncode not in (range(3) if command else (0,)):
            sys.stderr.write(f"{name}: {done.stderr[-500:]}\n")
            return None
        taken = _children_s() - before
        if name == "check --all":
            return taken / len(career.sessions)
        return taken if command else float(done.stdout)
    return None


def _children_s() -> float:
    spent = resource.getrusage(resource.RUSAGE_CHILDREN)
    return spent.ru_utime + spent.ru_stime


def _filled(word: str, career: Career) -> str:
    fills = {"GARAGE": str(career.root), "AT": career.at.isoformat(), "IN HAND": career.in_hand}
    return fills.get(word, word)


def _line(name: str, sizes: tuple[int, ...], found: list[float | None]) -> str:
    figures = "".join(f"{'-' if one is None else _shown(name, one):>10}" for one in found)
    first, last = found[0], found[-1]
    ratio = f"{last / first:9.2f}" if first and last else f"{'-':>9}"
    grown = next(_exponents(sizes, found), None)
    return f"{name:14}{figures}{ratio}" + (f"{grown:8.2f}\n" if grown is not None else f"{'-':>8}\n")


def _exponents(sizes: tuple[int, ...], found: list[float | None]) -> Iterator[float]:
    """Give the exponent of growth between the two largest sizes that have a figure."""
    known = [(size, one) for size, one in zip(sizes, found, strict=True) if one]
    if len(known) > 1:
        (size, one), (larger, other) = known[-2:]
        yield math.log(other / one) / math.log(larger / size)


def _shown(name: str, figure: float) -> str:
    if name == "memory":
        return f"{figure:.0f} MiB"
    return f"{figure * 1000:.1f} ms"
